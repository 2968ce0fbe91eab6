package store

import (
	"bufio"
	"bytes"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// TestKillLosesNothing kills a child that appends, at random moments, and
// compares the file with what the child had confirmed. A kill does not test the
// syncs (the kernel keeps what was written); it tests that a commit is whole or
// not there, and that an action can be repeated.
func TestKillLosesNothing(t *testing.T) {
	path := filepath.Join(t.TempDir(), "f") // a disk: most of the time goes into syncs
	s, err := Create(path, "x", Options{})
	if err != nil {
		t.Fatal(err)
	}
	_ = s.Close()
	var confirmed, extra, early int
	r := rand.New(rand.NewPCG(1, 2))
	n := rounds(60, 250)
	for round := range n {
		run := fmt.Sprint("r", round)
		acks := killed(t, path, run, round, time.Duration(r.IntN(30_000))*time.Microsecond)
		if len(acks) == 0 {
			early++
		}
		confirmed += len(acks)

		s, err := Open(path, Options{Wait: 5 * time.Second})
		if err != nil {
			t.Fatalf("round %d: %v", round, err)
		}
		if s.Warning() != "" {
			t.Errorf("round %d: %s", round, s.Warning())
		}
		if err := s.Check(); err != nil {
			t.Fatalf("round %d: %v", round, err)
		}
		i := 0
		for ; i < len(acks); i++ {
			checkAck(t, s, run, i, acks[i])
		}
		// The one after the last confirmed may be there or not; repeated, it is
		// there once.
		action := fmt.Sprintf("%s-%d", run, i)
		_, there, err := s.Find(action)
		if err != nil {
			t.Fatal(err)
		}
		a, err := s.Append(action, childItems(run, i))
		if err != nil || a.Repeated != there {
			t.Fatalf("round %d: repeated %v, there %v, %v", round, a.Repeated, there, err)
		}
		if there {
			extra++
		}
		if err := s.Close(); err != nil {
			t.Fatal(err)
		}
	}
	shutDown(t, opened(t, path, Options{}))
	t.Logf("%d kills, %d before the first action; %d actions confirmed, none missing; %d written and not confirmed",
		n, early, confirmed, extra)
}

// killed runs the child, ends it some time after it has opened the file (every
// tenth: after it was started) and returns its confirmations.
func killed(t *testing.T, path, run string, round int, after time.Duration) (acks []string) {
	t.Helper()
	cmd := childCommand(t, "append", path, run)
	out, err := cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	kill := func() { time.AfterFunc(after, func() { _ = cmd.Process.Kill() }) }
	if round%10 == 9 {
		kill()
	}
	in := bufio.NewReader(out)
	for {
		line, err := in.ReadString('\n')
		switch {
		case err != nil: // a torn line confirms nothing
			_ = cmd.Wait()
			return acks
		case line == "open\n":
			if round%10 != 9 {
				kill()
			}
		case strings.HasPrefix(line, "ack "):
			acks = append(acks, strings.TrimSpace(line))
		default:
			t.Fatalf("child says: %s", line)
		}
	}
}

func checkAck(t *testing.T, s *Store, run string, i int, ack string) {
	t.Helper()
	a, ok, err := s.Find(fmt.Sprintf("%s-%d", run, i))
	if err != nil || !ok {
		t.Fatalf("confirmed %q, but found: %v, %v", ack, ok, err)
	}
	if got := fmt.Sprint("ack ", a.Action, " ", a.First, " ", a.Last); got != ack {
		t.Fatalf("confirmed %q, but found %q", ack, got)
	}
	v, err := s.view()
	if err != nil {
		t.Fatal(err)
	}
	defer s.done(v)
	for j, want := range childItems(run, i) {
		r, err := v.whole(a.First + uint64(j))
		if err != nil || !bytes.Equal(r.Body, want.Body) || r.Action != a.Action {
			t.Fatalf("record %d is %q of %s, %v", a.First+uint64(j), r.Body, r.Action, err)
		}
	}
}

func TestBusyInAnotherProcess(t *testing.T) {
	s := made(t)
	out, err := childCommand(t, "open", s.Path(), "").CombinedOutput()
	if !strings.Contains(string(out), "is open in another copy") {
		t.Errorf("child says %s, %v", out, err)
	}
	_ = s.Close()

	cmd := childCommand(t, "hold", s.Path(), "")
	in, err1 := cmd.StdinPipe()
	pipe, err2 := cmd.StdoutPipe()
	if err1 != nil || err2 != nil {
		t.Fatal(err1, err2)
	}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	if line, err := bufio.NewReader(pipe).ReadString('\n'); line != "open\n" {
		t.Fatal(line, err)
	}
	for _, o := range []Options{{}, {ReadOnly: true}} {
		_, err = Open(s.Path(), o)
		wantKind(t, err, ErrBusy)
	}
	_ = in.Close()
	_ = cmd.Wait()
	opened(t, s.Path(), Options{})
}

func TestKilledWhileMakingLeavesNoHalfFile(t *testing.T) {
	// The name is given last: whatever is cut off before leaves no file at path.
	path := newPath(t)
	err := CreateWith(path, "x", Options{}, func(add func(string, []Item) error) error {
		if err := add("a", []Item{item("1")}); err != nil {
			return err
		}
		if _, err := os.Lstat(path); err == nil {
			t.Error("the file has its name before it is whole")
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	opened(t, path, Options{})
}
