package store

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"strings"
	"testing"
)

func TestCreateOpenAppendRead(t *testing.T) {
	path := newPath(t)
	s, err := Create(path, "book-7", Options{Program: "prog 1.2", Created: "2026-05-04T07:00:00Z"})
	if err != nil {
		t.Fatal(err)
	}
	if n, err := s.Last(); n != 0 || err != nil {
		t.Fatalf("Last of a new store: %d, %v", n, err)
	}
	if a := put(t, s, "first", item("one", "k/1")); a != (Answer{Action: "first", First: 1, Last: 1}) {
		t.Errorf("answer %+v", a)
	}
	if a := put(t, s, "second", item("two"), item("three", "k/2", "m"), item("")); a != (Answer{Action: "second", First: 2, Last: 4}) {
		t.Errorf("answer %+v", a)
	}
	before := mustRead(t, s)
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
	if st, _ := os.Stat(path); st.Mode().Perm() != 0o600 {
		t.Errorf("mode %v", st.Mode())
	}

	s = opened(t, path, Options{})
	if m := s.Meta(); m != (Meta{Format: 2, Program: "prog 1.2", BookID: "book-7", Created: "2026-05-04T07:00:00Z"}) {
		t.Errorf("meta %+v", m)
	}
	if s.Path() != path || s.Warning() != "" {
		t.Errorf("path %q, warning %q", s.Path(), s.Warning())
	}
	after := mustRead(t, s)
	if !same(before, after) {
		t.Errorf("contents changed over reopening:\n%v\n%v", before, after)
	}
	var got []string
	for _, r := range after.Records {
		got = append(got, fmt.Sprintf("%d %s %q %q", r.Number, r.Action, r.Body, r.Keys))
	}
	want := []string{
		`1 first "one" ["k/1"]`, `2 second "two" []`, `3 second "three" ["k/2" "m"]`, `4 second "" []`,
	}
	if strings.Join(got, "\n") != strings.Join(want, "\n") {
		t.Errorf("records:\n%s", strings.Join(got, "\n"))
	}
	if n, _ := s.Last(); n != 4 {
		t.Errorf("Last %d", n)
	}
}

func TestEachFromTheMiddleOfAnAction(t *testing.T) {
	s := made(t)
	put(t, s, "a", item("1"), item("2"), item("3"))
	put(t, s, "b", item("4"), item("5"))
	for from := uint64(0); from < 8; from++ {
		var got []string
		if err := s.Each(from, func(r Record) error {
			got = append(got, r.Action+string(r.Body))
			return nil
		}); err != nil {
			t.Fatal(err)
		}
		all := []string{"a1", "a2", "a3", "b4", "b5"}
		want := all[min(max(int(from), 1)-1, 5):]
		if fmt.Sprint(got) != fmt.Sprint(want) {
			t.Errorf("from %d: %v, want %v", from, got, want)
		}
	}
	stop := errors.New("stop")
	if err := s.Each(1, func(Record) error { return stop }); !errors.Is(err, stop) {
		t.Errorf("error of the callback came back as %v", err)
	}
	if err := s.EachKey(nil, func([]byte, Record) error { return stop }); err != nil {
		t.Errorf("no keys, but %v", err)
	}
}

func TestBytesBelongToTheCaller(t *testing.T) {
	s := made(t)
	put(t, s, "a", item("aaaa", "k1"), item("bbbb", "k2"))
	var kept []Record
	if err := s.Each(1, func(r Record) error {
		kept = append(kept, r)
		r.Body[0] = 'X'
		_ = append(r.Body, "over the edge"...)
		_ = append(r.Keys, []byte("more"))
		return nil
	}); err != nil {
		t.Fatal(err)
	}
	if string(kept[0].Body) != "Xaaa" || string(kept[1].Body) != "Xbbb" || string(kept[1].Keys[0]) != "k2" {
		t.Errorf("records share bytes: %q %q", kept[0].Body, kept[1].Body)
	}
	for range 2 {
		if err := s.EachKey([]byte("k"), func(k []byte, r Record) error {
			if k[0] != 'k' || r.Body[0] == 'X' {
				t.Errorf("a change by the caller came back: %q %q", k, r.Body)
			}
			k[0], r.Body[0], r.Keys[0][0] = 'X', 'X', 'X'
			return nil
		}); err != nil {
			t.Fatal(err)
		}
	}
}

func TestRepeatedActionGetsItsFirstAnswer(t *testing.T) {
	s := made(t)
	first := put(t, s, "a", item("1"), item("2"))
	put(t, s, "b", item("3"))
	again := put(t, s, "a", item("something else"))
	if !again.Repeated || again.First != first.First || again.Last != first.Last {
		t.Errorf("answer %+v, want %+v repeated", again, first)
	}
	if n, _ := s.Last(); n != 3 {
		t.Errorf("Last %d: a repeated action was written", n)
	}
	if a, ok, err := s.Find("b"); !ok || err != nil || a != (Answer{Action: "b", First: 3, Last: 3}) {
		t.Errorf("Find b: %+v %v %v", a, ok, err)
	}
	if _, ok, err := s.Find("c"); ok || err != nil {
		t.Errorf("Find c: %v %v", ok, err)
	}
}

func TestEachKeyGoesByKeyThenNumber(t *testing.T) {
	s := made(t)
	put(t, s, "a", item("1", "b", "a\x00c", "a"), item("2", "a", "a\x00"), item("3", "", "a\x00\xff", "a"))
	for i := range 300 { // numbers of more than one byte
		put(t, s, fmt.Sprint("n", i), item("x", "z"))
	}
	var got []string
	if err := s.EachKey(nil, func(k []byte, r Record) error {
		if string(k) != "z" {
			got = append(got, fmt.Sprintf("%q%d", k, r.Number))
		}
		return nil
	}); err != nil {
		t.Fatal(err)
	}
	want := `""3 "a"1 "a"2 "a"3 "a\x00"2 "a\x00c"1 "a\x00\xff"3 "b"1`
	if strings.Join(got, " ") != want {
		t.Errorf("order %s\nwant  %s", strings.Join(got, " "), want)
	}
	last := uint64(0)
	n := 0
	if err := s.EachKey([]byte("z"), func(_ []byte, r Record) error {
		if r.Number <= last {
			t.Errorf("number %d after %d", r.Number, last)
		}
		last = r.Number
		n++
		return nil
	}); err != nil || n != 300 {
		t.Errorf("%d keys, %v", n, err)
	}
	n = 0
	if err := s.EachKey([]byte("a\x00"), func([]byte, Record) error { n++; return nil }); err != nil || n != 3 {
		t.Errorf("prefix with a zero byte: %d keys, %v", n, err)
	}
}

func TestRefusedRequestsWriteNothing(t *testing.T) {
	s := made(t)
	big := bytes.Repeat([]byte{1}, MaxKey+1)
	for name, f := range map[string]func() error{
		"no name":      func() error { _, err := s.Append("", []Item{item("x")}); return err },
		"long name":    func() error { _, err := s.Append(strings.Repeat("n", MaxAction+1), []Item{item("x")}); return err },
		"no items":     func() error { _, err := s.Append("a", nil); return err },
		"many items":   func() error { _, err := s.Append("a", make([]Item, MaxItems+1)); return err },
		"long key":     func() error { _, err := s.Append("a", []Item{{Keys: [][]byte{big}}}); return err },
		"many keys":    func() error { _, err := s.Append("a", []Item{item("x", "1", "2", "3", "4")}); return err },
		"long body":    func() error { _, err := s.Append("a", []Item{{Body: make([]byte, MaxBody+1)}}); return err },
		"far snapshot": func() error { return s.PutSnapshot(1, nil) },
	} {
		t.Run(name, func(t *testing.T) { wantKind(t, f(), ErrInput) })
	}
	if n, _ := s.Last(); n != 0 {
		t.Errorf("Last %d", n)
	}
	put(t, s, "ok", Item{Body: make([]byte, MaxBody), Keys: [][]byte{big[1:], big[1:], {}}})
	put(t, s, "many", make([]Item, MaxItems)...)
}

func TestSnapshot(t *testing.T) {
	s := made(t)
	if _, _, ok, err := s.Snapshot(); ok || err != nil {
		t.Fatalf("snapshot of a new store: %v %v", ok, err)
	}
	if err := s.DropSnapshot(); err != nil {
		t.Fatal(err)
	}
	put(t, s, "a", item("1"), item("2"))
	for _, body := range [][]byte{[]byte("small"), bytes.Repeat([]byte("large "), 20_000), {}} {
		if err := s.PutSnapshot(2, body); err != nil {
			t.Fatal(err)
		}
		put(t, s, fmt.Sprint("after ", len(body)), item("3"))
		if err := s.Check(); err != nil {
			t.Fatal(err)
		}
		at, got, ok, err := s.Snapshot()
		if at != 2 || !bytes.Equal(got, body) || !ok || err != nil {
			t.Fatalf("snapshot %d, %d bytes, %v, %v", at, len(got), ok, err)
		}
	}
	if err := s.DropSnapshot(); err != nil {
		t.Fatal(err)
	}
	if _, _, ok, _ := s.Snapshot(); ok {
		t.Error("a dropped snapshot is still there")
	}
}

func TestClosedStoreSaysSo(t *testing.T) {
	s := made(t)
	put(t, s, "a", item("1"))
	for range 2 {
		if err := s.Close(); err != nil {
			t.Fatal(err)
		}
	}
	_, err := s.Append("b", []Item{item("2")})
	wantKind(t, err, ErrClosed)
	_, err = s.Last()
	wantKind(t, err, ErrClosed)
	_, err = s.Recheck("a")
	wantKind(t, err, ErrClosed)
}

func TestReadersDoNotHoldUpCommits(t *testing.T) {
	s := made(t)
	put(t, s, "a", item("1"), item("2"), item("3"))
	stop := make(chan struct{})
	bad := make(chan error, 1)
	go func() {
		defer close(bad)
		for {
			select {
			case <-stop:
				return
			default:
			}
			n := uint64(0)
			if err := s.Each(1, func(r Record) error { n = r.Number; return nil }); err != nil || n < 3 {
				bad <- fmt.Errorf("read %d: %w", n, err)
				return
			}
		}
	}()
	for i := range 400 {
		put(t, s, fmt.Sprint(i), item(strings.Repeat("x", i), "k"))
	}
	close(stop)
	if err := <-bad; err != nil {
		t.Error(err)
	}
}
