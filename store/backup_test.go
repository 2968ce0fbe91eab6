package store

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"
)

// checkedCopy reads a copy whole.
func checkedCopy(t testing.TB, path string) contents {
	t.Helper()
	s, err := Open(path, Options{ReadOnly: true})
	if err != nil {
		t.Fatal(err)
	}
	defer func() { _ = s.Close() }()
	if err := s.Check(); err != nil {
		t.Fatal(err)
	}
	if s.Warning() != "" {
		t.Errorf("the copy warns: %s", s.Warning())
	}
	return mustRead(t, s)
}

func TestBackupHoldsWhatTheStoreHolds(t *testing.T) {
	for _, n := range []int{0, 1, 3, 40, 700} {
		s := made(t)
		for i := range n {
			put(t, s, fmt.Sprint("a", i), childItems("r", i)...)
		}
		if n > 3 {
			if err := s.PutSnapshot(2, make([]byte, 9000)); err != nil {
				t.Fatal(err)
			}
		}
		dir := filepath.Dir(s.Path())
		one, two := filepath.Join(dir, "one"), filepath.Join(dir, "two")
		if err := s.Backup(one); err != nil {
			t.Fatal(err)
		}
		if err := Backup(s.Path(), two); err != nil { // the lock is held by s
			t.Fatal(err)
		}
		want := mustRead(t, s)
		if got := checkedCopy(t, one); !same(got, want) {
			t.Errorf("%d actions: the copy holds something else", n)
		}
		a, err1 := os.ReadFile(one)
		b, err2 := os.ReadFile(two)
		if err1 != nil || err2 != nil || !bytes.Equal(a, b) {
			t.Errorf("%d actions: the two ways do not give the same bytes (%v, %v)", n, err1, err2)
		}
		// It is a book like any other: it can be written to, and copied again.
		c := opened(t, one, Options{})
		for i := range 5 {
			put(t, c, fmt.Sprint("after", i), item("x", "k"))
		}
		if err := c.Backup(filepath.Join(dir, "three")); err != nil {
			t.Fatal(err)
		}
		if got := checkedCopy(t, filepath.Join(dir, "three")); len(got.Records) != len(want.Records)+5 {
			t.Errorf("the copy of the copy holds %d records", len(got.Records))
		}
		noLeftovers(t, dir, "a.book", "one", "three", "two")
	}
}

// TestBackupWhileAppending copies the open store while it is written to.
func TestBackupWhileAppending(t *testing.T) {
	s := made(t)
	var mu sync.Mutex
	confirmed := uint64(0)
	stop, done := make(chan bool), make(chan error)
	go func() {
		for i := 0; ; i++ {
			select {
			case <-stop:
				done <- nil
				return
			default:
			}
			a, err := s.Append(fmt.Sprint("r-", i), childItems("r", i))
			if err == nil && i%7 == 3 {
				err = s.PutSnapshot(a.Last, make([]byte, 1000*(i%20)))
			}
			if err != nil {
				done <- err
				return
			}
			mu.Lock()
			confirmed = a.Last
			mu.Unlock()
		}
	}()
	dir := filepath.Dir(s.Path())
	enough := uint64(rounds(500, 20_000))
	for i, least := 0, uint64(0); i < 30 || least < enough; i++ {
		mu.Lock()
		least = confirmed
		mu.Unlock()
		to := filepath.Join(dir, fmt.Sprint("copy", i))
		if err := s.Backup(to); err != nil {
			t.Fatal(err)
		}
		if got := checkedCopy(t, to); uint64(len(got.Records)) < least {
			t.Fatalf("copy %d holds %d records, %d were confirmed", i, len(got.Records), least)
		}
		_ = os.Remove(to)
	}
	close(stop)
	if err := <-done; err != nil {
		t.Fatal(err)
	}
	t.Logf("%d records at the end", confirmed)
}

// TestBackupBesideAWriter copies a file to which another process appends as fast
// as it can.
func TestBackupBesideAWriter(t *testing.T) {
	if raceDetector {
		t.Skip("a copy that is slowed down tenfold finds no moment of rest beside a writer that never pauses; it is made without the detector")
	}
	path := filepath.Join(t.TempDir(), "f") // a disk: the writer waits for its syncs, as it does in use
	s, err := Create(path, "x", Options{})
	if err != nil {
		t.Fatal(err)
	}
	_ = s.Close()
	cmd := childCommand(t, "append", path, "r")
	out, err := cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	defer func() { _ = cmd.Process.Kill(); _ = cmd.Wait() }()
	var mu sync.Mutex
	confirmed, acks := uint64(0), 0
	begun := make(chan bool)
	go func() {
		in := bufio.NewScanner(out)
		for in.Scan() {
			var action string
			var first, last uint64
			if n, _ := fmt.Sscanf(in.Text(), "ack %s %d %d", &action, &first, &last); n == 3 {
				mu.Lock()
				if acks++; acks == 1 {
					close(begun)
				}
				confirmed = last
				mu.Unlock()
			}
		}
	}()
	<-begun
	began := time.Now()
	n := rounds(50, 500)
	for i := range n {
		mu.Lock()
		least := confirmed
		mu.Unlock()
		to := path + fmt.Sprint(".copy", i)
		if err := Backup(path, to); err != nil {
			t.Fatal(err)
		}
		got := checkedCopy(t, to)
		if uint64(len(got.Records)) < least {
			t.Fatalf("copy %d holds %d records, %d were confirmed", i, len(got.Records), least)
		}
		for _, r := range got.Records[max(0, len(got.Records)-3):] {
			if !strings.HasPrefix(string(r.Body), "r ") {
				t.Fatalf("record %d is %q", r.Number, r.Body)
			}
		}
		_ = os.Remove(to)
	}
	mu.Lock()
	defer mu.Unlock()
	t.Logf("%d copies in %v beside %d commits, %d records", n, time.Since(began).Round(time.Millisecond), acks, confirmed)
	noLeftovers(t, filepath.Dir(path), "f")
}

func TestBackupTakesNoNameFromAnother(t *testing.T) {
	s := made(t)
	put(t, s, "a", item("1"))
	dir := filepath.Dir(s.Path())
	other := filepath.Join(dir, "other")
	if err := os.WriteFile(other, []byte("mine"), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink("nothing", filepath.Join(dir, "link")); err != nil {
		t.Fatal(err)
	}
	for _, to := range []string{other, s.Path(), dir, filepath.Join(dir, "link")} {
		for _, err := range []error{s.Backup(to), Backup(s.Path(), to)} {
			if to == s.Path() {
				wantKind(t, err, ErrInput)
			} else {
				wantKind(t, err, ErrExists)
			}
		}
	}
	wantKind(t, s.BackupOver(s.Path()), ErrInput)
	wantKind(t, s.BackupOver(dir), ErrExists)
	if b, _ := os.ReadFile(other); string(b) != "mine" {
		t.Errorf("the other file holds %q", b)
	}
	wantKind(t, s.BackupOver(other), ErrForeign)
	if err := errors.Join(os.Remove(other), CreateWith(other, "another book", Options{}, nil)); err != nil {
		t.Fatal(err)
	}
	wantKind(t, s.BackupOver(other), ErrExists)
	if err := os.WriteFile(other, nil, 0o600); err != nil { // what was a copy once
		t.Fatal(err)
	}
	for range 2 {
		if err := s.BackupOver(other); err != nil {
			t.Fatal(err)
		}
		checkedCopy(t, other)
	}
	wantKind(t, s.Backup(filepath.Join(dir, "no", "where")), ErrIO)
	wantKind(t, Backup(filepath.Join(dir, "nothing"), filepath.Join(dir, "x")), ErrMissing)
	wantKind(t, Backup(dir, filepath.Join(dir, "x")), ErrForeign)
	noLeftovers(t, dir, "a.book", "link", "other")
}

// A file that has lost its name is still whole in the open store.
func TestBackupOfADeletedFile(t *testing.T) {
	s, err := Create(newPath(t), "id", Options{})
	if err != nil {
		t.Fatal(err)
	}
	defer func() { _ = s.Close() }()
	for i := range 100 {
		put(t, s, fmt.Sprint("a", i), childItems("r", i)...)
	}
	want := mustRead(t, s)
	for _, replaced := range []bool{false, true} {
		_ = os.Remove(s.Path())
		if replaced {
			if err := os.WriteFile(s.Path(), []byte("another"), 0o600); err != nil {
				t.Fatal(err)
			}
		}
		_, err := s.Append("more", []Item{item("x")})
		wantKind(t, err, ErrGone)
		to := s.Path() + fmt.Sprint(".saved", replaced)
		if err := s.Backup(to); err != nil {
			t.Fatal(err)
		}
		if got := checkedCopy(t, to); !same(got, want) {
			t.Error("the copy holds something else")
		}
	}
}

// A damaged source is told, and nothing is left; one that is not noticed makes a
// copy that holds the same.
func TestBackupOfADamagedFile(t *testing.T) {
	s := made(t)
	for i := range 300 {
		put(t, s, fmt.Sprint("a", i), childItems("r", i)...)
	}
	want := mustRead(t, s)
	_ = s.Close()
	whole, err := os.ReadFile(s.Path())
	if err != nil {
		t.Fatal(err)
	}
	dir := filepath.Dir(s.Path())
	bad, to := filepath.Join(dir, "bad"), filepath.Join(dir, "copy")
	dice := rand.New(rand.NewPCG(5, 6))
	told := 0
	for range rounds(150, 3000) {
		b := bytes.Clone(whole)
		if dice.IntN(4) == 0 {
			b = b[:dice.IntN(len(b))]
		} else {
			b[dice.IntN(len(b))] ^= 1 << dice.IntN(8)
		}
		if err := os.WriteFile(bad, b, 0o600); err != nil {
			t.Fatal(err)
		}
		err := Backup(bad, to)
		if err == nil {
			// one head may lead back a commit: then the end is missing, and Open warns
			if got := checkedCopy(t, to); len(got.Records) < len(want.Records)-4 {
				t.Fatalf("a copy of %d records", len(got.Records))
			}
			_ = os.Remove(to)
			continue
		}
		told++
		var tr *Trouble
		if !errors.As(err, &tr) || !strings.Contains(tr.What, bad) || strings.Contains(tr.What, ".book-") {
			t.Fatalf("told %v", err)
		}
		noLeftovers(t, dir, "a.book", "bad")
	}
	if told == 0 {
		t.Error("no damage was told")
	}
	t.Logf("%d told", told)
}

func TestSweepUnfinished(t *testing.T) {
	dir := quickDir(t)
	names := []string{".book-0123456789ab.new", ".book-0123456789aZ.new", ".book-x.new", "a.book"}
	for _, n := range names {
		if err := os.WriteFile(filepath.Join(dir, n), nil, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	SweepUnfinished(dir, time.Now().Add(-time.Hour))
	noLeftovers(t, dir, ".book-0123456789aZ.new", ".book-0123456789ab.new", ".book-x.new", "a.book")
	SweepUnfinished(dir, time.Now().Add(time.Hour))
	noLeftovers(t, dir, ".book-0123456789aZ.new", ".book-x.new", "a.book")
}
