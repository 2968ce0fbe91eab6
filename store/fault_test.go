package store

import (
	"errors"
	"fmt"
	"os"
	"strings"
	"syscall"
	"testing"
)

// failCommit stands in for a disk. Stage 0 stands for everything that fails
// before the new head is written (no room, a write, the first sync): bbolt rolls
// back and nothing is there. Stage 1 comes after a commit that in truth succeeded
// and stands for the second sync reporting an error although the head is written.
// What a real failed sync does is in fault_linux_test.go.

func TestCommitFailsBeforeTheHead(t *testing.T) {
	s := made(t)
	put(t, s, "a", item("1"))
	for kind, cause := range map[error]error{ErrSync: syscall.EIO, ErrFull: syscall.ENOSPC, ErrReadOnly: syscall.EROFS} {
		s.failCommit = func(stage int) error {
			if stage == 0 {
				return &os.PathError{Op: "write", Path: s.path, Err: cause}
			}
			return nil
		}
		_, err := s.Append("b", []Item{item("2")})
		wantKind(t, err, kind)
		if errors.Is(err, ErrUnsure) || !errors.Is(err, cause) {
			t.Errorf("error %v", err)
		}
		s.failCommit = nil
		for range 2 {
			_, err = s.Append("c", []Item{item("3")})
			wantKind(t, err, ErrLatched)
			wantKind(t, s.PutSnapshot(1, nil), ErrLatched)
			if !errors.Is(err, kind) {
				t.Errorf("the latch forgets why: %v", err)
			}
		}
		if n, err := s.Last(); n != 1 || err != nil {
			t.Errorf("Last %d, %v", n, err)
		}
		if there, err := s.Recheck("b"); there || err != nil {
			t.Fatalf("recheck: %v, %v", there, err)
		}
	}
	if a := put(t, s, "b", item("2")); a.Repeated || a.First != 2 {
		t.Errorf("answer %+v", a)
	}
}

func TestCommitFailsAfterTheHead(t *testing.T) {
	s := made(t)
	put(t, s, "a", item("1"))
	s.failCommit = func(stage int) error {
		if stage == 1 {
			return syscall.EIO
		}
		return nil
	}
	_, err := s.Append("b", []Item{item("2")})
	wantKind(t, err, ErrUnsure)
	if !errors.Is(err, ErrSync) {
		t.Errorf("unsure, but why: %v", err)
	}
	s.failCommit = nil
	_, err = s.Append("b", []Item{item("2")})
	wantKind(t, err, ErrLatched)
	there, err := s.Recheck("b")
	if !there || err != nil {
		t.Fatalf("recheck: %v, %v", there, err)
	}
	if a := put(t, s, "b", item("2")); !a.Repeated || a.First != 2 {
		t.Errorf("answer %+v", a)
	}
	put(t, s, "c", item("3"))
}

func TestFileTakenAway(t *testing.T) {
	for _, c := range []struct {
		name string
		do   func(path string) error
	}{
		{"deleted", os.Remove},
		{"moved", func(p string) error { return os.Rename(p, p+".moved") }},
		{"replaced", func(p string) error {
			if err := os.WriteFile(p+".other", []byte("other"), 0o600); err != nil {
				return err
			}
			return os.Rename(p+".other", p)
		}},
		{"copied back", func(p string) error { // same contents, another file
			b, err := os.ReadFile(p)
			if err == nil {
				err = os.Remove(p)
			}
			if err == nil {
				err = os.WriteFile(p, b, 0o600)
			}
			return err
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := made(t)
			put(t, s, "a", item("1"))
			if err := c.do(s.Path()); err != nil {
				t.Skip("not possible here:", err)
			}
			_, err := s.Append("b", []Item{item("2")})
			wantKind(t, err, ErrGone)
			_, err = s.Append("c", []Item{item("3")})
			wantKind(t, err, ErrLatched)
			_, err = s.Recheck("b")
			wantKind(t, err, ErrGone)
			if n, err := s.Last(); n != 1 || err != nil {
				t.Errorf("what is open can still be read: %d, %v", n, err)
			}
			if c.name == "moved" {
				if err := os.Rename(s.Path()+".moved", s.Path()); err != nil {
					t.Fatal(err)
				}
				if there, err := s.Recheck("b"); there || err != nil {
					t.Fatalf("put back: %v, %v", there, err)
				}
				put(t, s, "b", item("2"))
			}
		})
	}
}

func TestFileCutWhileOpen(t *testing.T) {
	for _, size := range []int64{0, 100, pageSize, 2 * pageSize, 3 * pageSize, 5 * pageSize, 40 * pageSize} {
		t.Run(fmt.Sprint(size), func(t *testing.T) {
			s := made(t)
			for i := range 300 {
				put(t, s, fmt.Sprint("a", i), item(strings.Repeat("x", 500), fmt.Sprint("k", i)))
			}
			whole, err := os.ReadFile(s.Path())
			if err != nil {
				t.Fatal(err)
			}
			if err := os.Truncate(s.Path(), size); err != nil {
				t.Fatal(err)
			}
			err = s.Each(1, func(Record) error { return nil })
			if err == nil {
				t.Fatal("a file that was cut is read without an error")
			}
			if err := sentence(err); err != nil {
				t.Error(err)
			}
			if _, err = s.Append("b", []Item{item("2")}); err == nil {
				t.Fatal("a file that was cut is written")
			}
			_, err = s.Recheck("b")
			if err == nil {
				t.Fatal("a file that was cut is opened again")
			}
			if _, err = s.Append("b", []Item{item("2")}); err == nil {
				t.Fatal("written after all")
			}
			// Whole again, it can be used again.
			if err := os.WriteFile(s.Path(), whole, 0o600); err != nil {
				t.Fatal(err)
			}
			if there, err := s.Recheck("a299"); !there || err != nil {
				t.Fatalf("recheck: %v, %v", there, err)
			}
			put(t, s, "b", item("2"))
		})
	}
}

// TestPanicInsideTheEngine lets a commit run into a fault, which no damage of the
// file should be able to cause any more.
func TestPanicInsideTheEngine(t *testing.T) {
	s := made(t)
	put(t, s, "a", item("1"))
	s.failCommit = func(stage int) error {
		if stage == 0 {
			panic("a fault")
		}
		return nil
	}
	_, err := s.Append("b", []Item{item("2")})
	wantKind(t, err, ErrDamaged)
	s.failCommit = nil
	_, err = s.Append("b", []Item{item("2")})
	wantKind(t, err, ErrLatched)
	_, err = s.Last()
	wantKind(t, err, ErrDamaged)
	if there, err := s.Recheck("b"); there || err != nil { // the lock was given back
		t.Fatalf("recheck: %v, %v", there, err)
	}
	put(t, s, "b", item("2"))
}
