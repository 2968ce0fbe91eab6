package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"example.com/tintline/core"
	"example.com/tintline/core/past"
	"example.com/tintline/store"
)

// readBeside reads again and again until it is told to stop.
func readBeside(t *testing.T, reads ...func() error) (stop func()) {
	over := make(chan struct{})
	var readers sync.WaitGroup
	for _, read := range reads {
		readers.Go(func() {
			for {
				select {
				case <-over:
					return
				default: // the file may be given back between being asked for and being read
					if err := read(); err != nil && !errors.Is(err, store.ErrClosed) && !errors.Is(err, store.ErrGone) {
						t.Error(err)
						return
					}
				}
			}
		})
	}
	stop = sync.OnceFunc(func() {
		close(over)
		readers.Wait()
	})
	t.Cleanup(stop)
	return stop
}

// TestReadersBesideAFileThatChanges: the pages and the keeper go on reading while one action makes the file and another
// takes it from where it was brought back to. The race detector is what this is for.
func TestReadersBesideAFileThatChanges(t *testing.T) {
	path := filepath.Join(t.TempDir(), "truck.db")
	k := newBook(path)
	t.Cleanup(func() { _ = k.Close() })
	j, keep := screenJournal{k}, &keeper{b: k.attendant}
	stop := readBeside(t,
		func() error { _, err := j.Last(0, 5); return err },
		func() error { _, err := j.OfLawn("L1", 5); return err },
		func() error { _, err := j.Years(core.Day{}, past.Query{Lawn: "L1", To: "2020-12-31"}); return err },
		func() error { _, err := keep.Kept(); return err },
	)
	act := func(id, line string) ([]core.Entry, error) {
		l, err := core.DecodeLine([]byte(line))
		if err != nil {
			t.Fatal(err)
		}
		es, err := k.book.Clone().Prepare(id, core.Moment{Unix: 1_780_000_000}, l.Fact)
		if err != nil {
			t.Fatal(line, err)
		}
		return es, j.Append(id, es)
	}
	for n, line := range strings.Split(strings.TrimSpace(pastSetUp), "\n") {
		es, err := act(fmt.Sprint("set up ", n), line)
		if err == nil {
			err = k.book.Apply(es[0])
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	if err := os.Remove(path); err != nil {
		t.Fatal(err)
	}
	const last = `{"fact":"noted","lawn":"L1","text":"x"}`
	es, err := act("last", last)
	if !errors.Is(err, store.ErrGone) {
		t.Fatalf("kept in a file that is gone, or refused as %v", err)
	}
	saved, _ := filepath.Glob(path + ".*.saved")
	if len(saved) != 1 {
		t.Fatalf("saved as %v", saved)
	}
	if code, _, said := call(t, "", "restore", saved[0], "--book", path); code != 0 {
		t.Fatal(said)
	}
	if err := j.Append("last", es); err != nil {
		t.Fatal(err)
	}
	stop()
	if list, err := j.Last(0, 1); err != nil || len(list) != 1 || list[0].Digest != es[0].Digest {
		t.Errorf("the last entry is %v, %v", list, err)
	}
}
