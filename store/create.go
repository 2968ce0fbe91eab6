package store

import (
	"crypto/rand"
	"encoding/hex"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"time"

	"go.etcd.io/bbolt"
)

// Create makes a new file at path, with the id given, and opens it. What stands
// there already is never touched. The file gets its name only when it is whole
// and on the disk.
func Create(path, id string, o Options) (*Store, error) {
	if err := CreateWith(path, id, o, nil); err != nil {
		return nil, err
	}
	o.ReadOnly = false
	return Open(path, o)
}

// CreateWith makes a new file that already holds what fill appends, or no file
// at all. Here one action may not be appended twice. The file is read through
// and checked before it gets its name.
func CreateWith(path, id string, o Options, fill func(appendTo func(action string, items []Item) error) error) error {
	if _, err := os.Lstat(path); err == nil {
		return exists(path, nil)
	} else if !errors.Is(err, fs.ErrNotExist) {
		return blame(path, "made", err)
	}
	return makeNew(path, temporary(path), id, o, fill, publish)
}

// makeNew builds a file under a temporary name, checks it and lets name give it
// its own.
func makeNew(path, temp, id string, o Options, fill func(func(string, []Item) error) error, name func(temp, path string) error) error {
	named := false
	defer func() {
		if !named { // an error, or a panic of fill
			_ = os.Remove(temp)
		}
	}()
	if o.Created == "" {
		o.Created = time.Now().UTC().Format(time.RFC3339)
	}
	m := Meta{Format: Format, Program: o.Program, BookID: id, Created: o.Created}
	if err := build(path, temp, m, fill); err != nil {
		return err
	}
	if err := inspect(path, temp); err != nil {
		return err
	}
	err := name(temp, path)
	named = err == nil
	return err
}

// temporary is a name in the same folder that nobody else has.
func temporary(path string) string {
	var b [6]byte
	_, _ = rand.Read(b[:])
	return filepath.Join(filepath.Dir(path), ".book-"+hex.EncodeToString(b[:])+".new")
}

// build writes the file under its temporary name. Errors speak of path.
func build(path, temp string, m Meta, fill func(func(string, []Item) error) error) error {
	var db *bbolt.DB
	o := &bbolt.Options{
		Timeout:  time.Second,
		PageSize: pageSize,
		OpenFile: func(name string, flag int, mode os.FileMode) (*os.File, error) {
			return os.OpenFile(name, flag|os.O_CREATE|os.O_EXCL, mode)
		},
	}
	err := guard(path, func() (err error) {
		if db, err = bbolt.Open(temp, 0o600, o); err != nil {
			return err
		}
		return db.Update(func(tx *bbolt.Tx) error { return writeFrame(tx, m) })
	})
	if db != nil {
		defer func() { _ = guard(path, db.Close) }()
	}
	if err == nil && fill != nil {
		f := &filler{path: path, db: db, seen: map[string]struct{}{}}
		if err = fill(f.add); err != nil {
			return err // the caller's own, or ours by way of it
		}
		if err = f.err; err == nil {
			err = guard(path, f.flush)
		}
	}
	if err == nil {
		err = guard(path, db.Close)
	}
	return blame(path, "made", err)
}

// writeFrame makes the buckets, what the file says about itself, and a head that
// counts nothing.
func writeFrame(tx *bbolt.Tx, m Meta) error {
	for _, name := range allBuckets {
		if _, err := tx.CreateBucket(name); err != nil {
			return err
		}
	}
	b := tx.Bucket(bucketMeta)
	pairs := m.pairs()
	for _, p := range append(pairs, [2][]byte{metaSeal, sealPairs(pairs)}) {
		if err := b.Put(p[0], p[1]); err != nil {
			return err
		}
	}
	return head{}.write(tx)
}

// filler gathers actions into large commits.
type filler struct {
	path string
	db   *bbolt.DB
	b    batch
	size int
	seen map[string]struct{} // actions of this batch
	err  error
}

// What a commit of the filler holds at most, in records and in bytes.
const (
	flushRecords = 50_000
	flushBytes   = 16 << 20
)

func (f *filler) add(action string, items []Item) error {
	if f.err != nil {
		return f.err
	}
	f.err = blame(f.path, "made", guard(f.path, func() error { return f.take(action, items) }))
	return f.err
}

func (f *filler) take(action string, items []Item) error {
	if err := checkAction(action, items); err != nil {
		return err
	}
	twice := false
	if _, twice = f.seen[action]; !twice {
		var err error
		if twice, err = f.written(action); err != nil {
			return err
		}
	}
	if twice {
		return refused("The action %q comes twice.", action)
	}
	f.seen[action] = struct{}{}
	f.b.add(action, items)
	for _, it := range items {
		f.size += len(it.Body)
		for _, r := range it.Rows {
			f.size += len(r.Value)
		}
	}
	if len(f.b.records) < flushRecords && f.size < flushBytes {
		return nil
	}
	return f.flush()
}

// written tells whether an action is in the file already.
func (f *filler) written(action string) (yes bool, err error) {
	block, want := actionPlace(action)
	err = f.db.View(func(tx *bbolt.Tx) error {
		key := blockKey(block)
		val := tx.Bucket(bucketActions).Get(key)
		if val == nil {
			return nil
		}
		return eachAction(key, val, func(rest [actionRest]byte, first uint64) bool {
			if rest == want {
				num := numberKey(first)
				r, err := parseRecord(num, tx.Bucket(bucketRecords).Get(num), nil)
				yes = err == nil && string(r.action) == action
			}
			return !yes
		})
	})
	return yes, err
}

func (f *filler) flush() error {
	f.b.sort()
	err := f.db.Update(func(tx *bbolt.Tx) error {
		get := func(bucket []byte) func(key []byte) ([]byte, bool, error) {
			bk := tx.Bucket(bucket)
			return func(key []byte) ([]byte, bool, error) {
				v := bk.Get(key)
				return v, v != nil, nil
			}
		}
		if err := f.b.settle(get(bucketActions), get(bucketRows)); err != nil {
			return err
		}
		return f.b.write(tx)
	})
	if err != nil {
		return err
	}
	f.b = batch{h: f.b.h, end: f.b.end}
	f.size = 0
	clear(f.seen)
	return nil
}

// inspect checks the finished file and syncs it.
func inspect(path, temp string) error {
	s, err := Open(temp, Options{ReadOnly: true})
	if err == nil {
		err = errors.Join(s.Check(), s.Close())
	}
	if err != nil {
		return fmt.Errorf("the new file for %s: %w", path, err)
	}
	f, err := os.OpenFile(temp, os.O_RDWR, 0)
	if err != nil {
		return blame(path, "made", err)
	}
	return blame(path, "made", errors.Join(f.Sync(), f.Close()))
}

// publish gives the file its name without taking it from another one.
func publish(temp, path string) error {
	err := os.Link(temp, path)
	switch {
	case err == nil:
		_ = os.Remove(temp) // a second name is untidy, not wrong
	case errors.Is(err, fs.ErrExist):
		return exists(path, err)
	default:
		if err = rename(temp, path); err != nil {
			return blame(path, "made", err)
		}
	}
	if err := syncFolder(filepath.Dir(path)); err != nil {
		_ = os.Remove(path) // made a moment ago, by us
		return blame(path, "made", err)
	}
	return nil
}

// rename is for file systems without links: the name is taken first with an
// empty file, so that nobody else's is replaced.
func rename(temp, path string) error {
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o600)
	if errors.Is(err, fs.ErrExist) {
		return exists(path, err)
	}
	if err != nil {
		return err
	}
	_ = f.Close()
	if err := os.Rename(temp, path); err != nil {
		_ = os.Remove(path)
		return err
	}
	return nil
}
