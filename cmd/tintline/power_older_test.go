package main

import (
	"bytes"
	"compress/gzip"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"sync"
	"testing"

	"example.com/tintline/store"
)

// older is a book of an earlier version, with what its journal comes to.
var older = sync.OnceValues(func() ([]byte, string) {
	f, err := os.Open(filepath.Join("..", "..", "testdata", "books", "spine.db.gz"))
	if err != nil {
		return nil, err.Error()
	}
	defer func() { _ = f.Close() }()
	z, err := gzip.NewReader(f)
	if err != nil {
		return nil, err.Error()
	}
	b, err := io.ReadAll(z)
	if err != nil {
		return nil, err.Error()
	}
	dir, err := os.MkdirTemp("", "tintline-older-")
	if err != nil {
		return nil, err.Error()
	}
	defer func() { _ = os.RemoveAll(dir) }()
	if err = os.WriteFile(filepath.Join(dir, "b"), b, 0o600); err != nil {
		return nil, err.Error()
	}
	v, _, err := readThrough(filepath.Join(dir, "b"))
	if err != nil {
		return nil, err.Error()
	}
	return b, fmt.Sprint(v.Entries, " ", *v.Journal)
})

// readThrough is verify of a file, with its format.
func readThrough(path string) (v verified, format uint32, err error) {
	file, err := store.Open(path, storeOptions(true))
	if err != nil {
		return v, 0, err
	}
	v, format = verifyFile(file, nil), file.Meta().Format
	if err = file.Close(); err == nil && !v.OK {
		err = fmt.Errorf("verify says %+v %+v", v.Changed, v.Damaged)
	}
	return v, format, err
}

func startOlder(t testing.TB, _ *story, dir string) {
	t.Helper()
	b, said := older()
	if b == nil {
		t.Fatal(said)
	}
	if err := os.WriteFile(filepath.Join(dir, "b"), b, 0o600); err != nil {
		t.Fatal(err)
	}
}

// oldOrReady: the old file stands there as it was, or the new one with the same entries, and the old one beside it. The fact is there if
// it was confirmed; entered again it is there once.
func oldOrReady(_ *story, path, said string) error {
	b, was := older()
	v, format, err := readThrough(path)
	if err != nil {
		return err
	}
	now, err := os.ReadFile(path)
	if err != nil {
		return err
	}
	if format == 1 {
		if !bytes.Equal(now, b) {
			return errors.New("the old file is not as it was")
		}
		if said != "" {
			return errConfirmed
		}
	} else {
		if kept, err := os.ReadFile(path + ".format-1"); err != nil || !bytes.Equal(kept, b) {
			return fmt.Errorf("the file as it was is not beside it: %w", errors.Join(errConfirmed, err))
		}
		if said != "" && fmt.Sprint(v.Entries, " ", *v.Journal) == was {
			return errConfirmed
		}
	}
	if code, _, complaint := run(oneFact, "enter", "-", "--book", path); code != 0 {
		return fmt.Errorf("going on: exit %d, %s", code, complaint)
	}
	var entries uint64
	if _, err := fmt.Sscan(was, &entries); err != nil {
		return err
	}
	if v, _, err = readThrough(path); err == nil && v.Entries != entries+1 {
		err = fmt.Errorf("%d entries, the old file had %d", v.Entries, entries)
	}
	return err
}
