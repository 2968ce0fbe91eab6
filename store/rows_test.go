package store

import (
	"errors"
	"fmt"
	"strings"
	"testing"
)

func withRows(it Item, kv ...string) Item {
	for i := 0; i < len(kv); i += 2 {
		it.Rows = append(it.Rows, Row{[]byte(kv[i]), []byte(kv[i+1])})
	}
	return it
}

func rowsOf(t testing.TB, s *Store, from, to []byte) string {
	t.Helper()
	var got []string
	if err := s.Rows(from, to, func(k, v []byte) error {
		got = append(got, string(k)+"="+string(v))
		return nil
	}); err != nil {
		t.Fatal(err)
	}
	return strings.Join(got, " ")
}

func TestRowsArePutAndReplaced(t *testing.T) {
	s := made(t)
	if got := rowsOf(t, s, nil, nil); got != "" {
		t.Errorf("a new store has rows %s", got)
	}
	put(t, s, "a", withRows(item("1"), "b", "1", "d", "2"), withRows(item("2"), "c", "3", "b", "4"))
	put(t, s, "b", withRows(item("3"), "d", "", "a", "5"))
	put(t, s, "b", withRows(item("3"), "d", "a repeated action writes nothing"))
	for _, c := range []struct{ from, to, want string }{
		{"", "", "a=5 b=4 c=3 d="},
		{"b", "", "b=4 c=3 d="},
		{"b", "d", "b=4 c=3"},
		{"bb", "c\x00", "c=3"},
		{"x", "", ""},
	} {
		var to []byte
		if c.to != "" {
			to = []byte(c.to)
		}
		if got := rowsOf(t, s, []byte(c.from), to); got != c.want {
			t.Errorf("from %q to %q: %s, want %s", c.from, c.to, got, c.want)
		}
	}
	stop := errors.New("stop")
	if err := s.Rows(nil, nil, func(_, _ []byte) error { return stop }); !errors.Is(err, stop) {
		t.Errorf("error of the callback came back as %v", err)
	}
}

func TestRowsThatCannotBeStored(t *testing.T) {
	s := made(t)
	many := item("x")
	for i := range MaxRows + 1 {
		many = withRows(many, fmt.Sprint(i), "")
	}
	for _, it := range []Item{
		withRows(item("x"), "", "v"),
		withRows(item("x"), strings.Repeat("k", MaxKey+1), "v"),
		withRows(item("x"), "k", strings.Repeat("v", MaxRow+1)),
		many,
	} {
		_, err := s.Append("a", []Item{it})
		wantKind(t, err, ErrInput)
	}
	put(t, s, "a", withRows(item("x"), strings.Repeat("k", MaxKey), strings.Repeat("v", MaxRow)))
}

func TestRowsOfAFailedCommit(t *testing.T) {
	s := made(t)
	put(t, s, "a", withRows(item("1"), "k", "old"))
	for stage, want := range []string{"k=old", "k=new m=more"} {
		s.failCommit = func(at int) error {
			if at == stage {
				return errors.New("a fault")
			}
			return nil
		}
		items := []Item{withRows(item("2"), "k", "new", "m", "more")}
		if _, err := s.Append("b", items); err == nil {
			t.Fatal("no error")
		}
		s.failCommit = nil
		if there, err := s.Recheck("b"); there != (stage == 1) || err != nil {
			t.Fatalf("recheck: %v, %v", there, err)
		}
		if got := rowsOf(t, s, nil, nil); got != want {
			t.Errorf("after a failure at stage %d: %s, want %s", stage, got, want)
		}
		if err := s.Check(); err != nil {
			t.Error(err)
		}
	}
}
