package core

import (
	"encoding/json"
	"errors"
	"os"
	"slices"
	"strings"
	"testing"
)

// lineKeys lists every key that a line of a fact can have, with its path, liquid and dry, when every field says something.
func lineKeys(f func() Fact) []string {
	var out []string
	for _, liquid := range []bool{false, true} {
		g := filler{liquid: liquid}
		line := EncodeLine(Entry{Seq: 1, What: g.fact(f(), true)}, 0)
		var v map[string]any
		if err := json.Unmarshal(line, &v); err != nil {
			return []string{"not JSON: " + string(line)}
		}
		out = keysOf(v, f().Name(), out)
	}
	slices.Sort(out)
	return slices.Compact(out)
}

func keysOf(v any, path string, out []string) []string {
	switch v := v.(type) {
	case map[string]any:
		for k, inner := range v {
			out = append(out, path+"."+k)
			if k != "valves" && k != "instead" { // words of the operator; a fact, which has its own lines
				out = keysOf(inner, path+"."+k, out)
			}
		}
	case []any:
		for _, one := range v {
			out = keysOf(one, path, out)
		}
	}
	return out
}

// TestNoKeyOfALineEverDisappears: core/testdata/line_keys.txt is only ever added to, because there are exports that hold
// these keys and programs that read them.
func TestNoKeyOfALineEverDisappears(t *testing.T) {
	text, err := os.ReadFile("testdata/line_keys.txt")
	if err != nil {
		t.Fatal(err)
	}
	recorded := map[string]bool{}
	for _, l := range strings.Split(string(text), "\n") {
		if l != "" && l[0] != '#' {
			recorded[l] = true
		}
	}
	now := map[string]bool{}
	everyKind(t, func(t *testing.T, kind Kind) {
		for _, k := range lineKeys(newFact[kind]) {
			now[k] = true
			if !recorded[k] {
				t.Errorf("add the row %s", k)
			}
		}
	})
	for k := range recorded {
		if !now[k] {
			t.Errorf("the key %s is gone: an export that holds it would not be read any more", k)
		}
	}
}

// TestLaterKeysAreSilent: of a line that says nothing but what the first version of its fact could say, exactly the keys
// of that version stand there, as its first row in core/testdata/stored.txt has them.
func TestLaterKeysAreSilent(t *testing.T) {
	text, err := os.ReadFile("testdata/stored.txt")
	if err != nil {
		t.Fatal(err)
	}
	first := map[string]bool{}
	for _, row := range strings.Split(string(text), "\n") {
		part := strings.SplitN(row, "\t", 3)
		if len(part) < 3 || first[part[0]] {
			continue
		}
		first[part[0]] = true
		l, err := DecodeLine([]byte(part[2]))
		if err != nil {
			t.Fatal(err)
		}
		// What stands in there was written when it was all there was, so a line of it must be the same line still.
		e := Entry{Seq: l.Seq, At: l.At.V, Action: l.Action, Truck: l.Truck, What: l.Fact, Digest: l.Digest}
		if got := string(EncodeLine(e, 0)); got != part[2] {
			t.Errorf("%s is written as\n%s\nand its first version wrote\n%s", part[0], got, part[2])
		}
	}
}

// TestALineOfANewerVersion: a line with a digest was written by a journal, so what is not known in it is of a newer
// version; without one somebody mistyped it.
func TestALineOfANewerVersion(t *testing.T) {
	const digest = `,"digest":"00000000000000000000000000000000"}`
	for _, line := range []string{
		`{"fact":"polished","at":"2026-05-28T09:00:00-05:00","with":"wax"`,
		`{"fact":"visit_done","at":"2026-05-28T09:00:00-05:00","lawn":"77 Fir","mood":"good"`,
		`{"fact":"mix","at":"2026-05-28T09:00:00-05:00","name":"W","parts":[{"product":"weed","rate_nl_per_mm2":1,"phase":2}]`,
		`{"fact":"struck","at":"2026-05-28T09:00:00-05:00","of":1,"instead":{"fact":"polished"}`,
	} {
		_, err := DecodeLine([]byte(line + digest))
		var p *Problem
		if !errors.Is(err, ErrNewer) || !errors.As(err, &p) || strings.Contains(p.What, ". ") || !strings.HasSuffix(p.What, ".") || !strings.Contains(p.What, "newer version") {
			t.Errorf("%s: %v", line, err)
		}
		if _, err = DecodeLine([]byte(line + "}")); !errors.Is(err, ErrRefused) || errors.Is(err, ErrNewer) || !strings.Contains(err.Error(), "allowed are") {
			t.Errorf("%s without a digest: %v", line, err)
		}
	}
	if _, err := DecodeLine([]byte(`{"fact":"visit_done","lawn":7` + digest)); errors.Is(err, ErrNewer) {
		t.Errorf("a wrong text is no newer version: %v", err)
	}
}
