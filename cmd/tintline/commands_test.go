package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/spf13/cobra"

	"example.com/tintline/core"
	"example.com/tintline/core/glance"
	"example.com/tintline/core/tally"
	"example.com/tintline/store"
)

// call runs the program in this process.
func call(t testing.TB, stdin string, args ...string) (code int, stdout, stderr string) {
	t.Helper()
	var out, err bytes.Buffer
	a := &app{
		stdin: strings.NewReader(stdin), stdout: &out, stderr: &err,
		getenv: func(string) string { return "" },
		now:    func() time.Time { return time.Date(2026, 5, 28, 17, 0, 0, 0, time.UTC) },
	}
	code = a.run(args)
	return code, out.String(), err.String()
}

func commands(t testing.TB) []*cobra.Command {
	t.Helper()
	a := &app{}
	root := a.root()
	return append([]*cobra.Command{root}, root.Commands()...)
}

func TestEveryCommandHasExamples(t *testing.T) {
	for _, c := range commands(t) {
		if c.Example == "" || c.Short == "" {
			t.Errorf("%s has no example or no short description", c.CommandPath())
		}
		for _, line := range strings.Split(c.Example, "\n") {
			if !strings.Contains(line, "tintline") {
				t.Errorf("%s: the example %q does not call the program", c.CommandPath(), line)
			}
		}
		code, out, err := call(t, "", append(strings.Fields(c.CommandPath())[1:], "--help")...)
		if code != 0 || err != "" || !strings.Contains(out, strings.TrimSpace(strings.Split(c.Example, "\n")[0])) {
			t.Errorf("%s --help: code %d, %q, no example in\n%s", c.CommandPath(), code, err, out)
		}
	}
}

// TestReadmeCommands: what the README says to type exists.
func TestReadmeCommands(t *testing.T) {
	text, err := os.ReadFile(filepath.Join("..", "..", "README.md"))
	if err != nil {
		t.Skip("there is no README yet")
	}
	known := map[string]bool{"completion": true} // the library's own, added when the program runs
	for _, c := range commands(t)[1:] {
		known[c.Name()] = true
	}
	for _, m := range regexp.MustCompile("(?m)^ *\\$? *tintline ([a-z]+)|`tintline ([a-z]+)").FindAllStringSubmatch(string(text), -1) {
		if name := m[1] + m[2]; !known[name] {
			t.Errorf("the README says tintline %s, which is no command", name)
		}
	}
}

func TestNothingIsCalledSafe(t *testing.T) {
	for _, c := range commands(t) {
		if text := c.Short + c.Long + c.Example; strings.Contains(strings.ToLower(text), "safe") {
			t.Errorf("%s: %s", c.CommandPath(), text)
		}
	}
}

func TestStoreCodes(t *testing.T) {
	for _, tc := range []struct {
		kind error
		code int
	}{
		{store.ErrMissing, 1},
		{store.ErrExists, 1},
		{store.ErrInput, 2},
		{store.ErrBusy, 5},
		{store.ErrEmpty, 6},
		{store.ErrShort, 6},
		{store.ErrForeign, 6},
		{store.ErrDamaged, 6},
		{store.ErrNewer, 7},
		{store.ErrFull, 8},
		{store.ErrReadOnly, 8},
		{store.ErrSync, 8},
		{store.ErrUnsure, 8},
		{store.ErrLatched, 8},
	} {
		err := fmt.Errorf("while testing: %w", &store.Trouble{What: "What.", Do: "Do.", Kind: tc.kind})
		if f := explain(err); f.code != tc.code || f.what != "What." || f.do != "Do." {
			t.Errorf("%v: %+v, want code %d", tc.kind, f, tc.code)
		}
	}
	if f := explain(errors.New("odd")); f.code != 1 || f.what == "" || f.do == "" {
		t.Errorf("any other error: %+v", f)
	}
}

// TestDemoAddsUp: the accounts of the demo's book sum to nothing by column, and its tally adds up.
func TestDemoAddsUp(t *testing.T) {
	path := filepath.Join(t.TempDir(), "demo.db")
	if code, _, err := call(t, "", "demo", "--make", path); code != 0 {
		t.Fatal(err)
	}
	var s glance.Document
	read(t, &s, "status", "--book", path, "--json")
	var volume int64
	products := map[string]int64{}
	for _, a := range s.Accounts {
		volume += a.Volume
		for _, p := range a.Products {
			switch {
			case (p.NL == nil) == (p.NG == nil):
				t.Errorf("%s at %s has both units or none", p.Product, a.Place)
			case p.NL != nil:
				products[p.Product] += *p.NL
			default:
				products[p.Product] += *p.NG
			}
		}
	}
	if volume != 0 {
		t.Errorf("all volumes come to %d nl", volume)
	}
	for p, n := range products {
		if n != 0 {
			t.Errorf("%s comes to %d", p, n)
		}
	}
	var y tally.Document
	read(t, &y, "tally", "--book", path, "--json")
	var to, mixes, lawns float64
	for _, c := range y.Compartments {
		to += c.ToLawns
		if left := c.Start + c.Loaded + c.PushedIn - c.Drawn - c.Other + c.Unexplained; math.Abs(left-c.Left) > 1e-9 {
			t.Errorf("%s: %g is left, the flows come to %g", c.Letter, c.Left, left)
		}
	}
	for _, m := range y.Mixes {
		mixes += m.Volume
	}
	for _, l := range y.Lawns {
		lawns += l.Volume
	}
	for _, sum := range []float64{to, mixes, lawns, s.Today.Volume} {
		if math.Abs(sum-y.All.Volume) > 1e-9 {
			t.Errorf("%g gal, all is %g", sum, y.All.Volume)
		}
	}
}

func read(t testing.TB, into any, args ...string) {
	t.Helper()
	code, out, stderr := call(t, "", args...)
	if code != 0 {
		t.Fatalf("%v: code %d, %s", args, code, stderr)
	}
	dec := json.NewDecoder(strings.NewReader(out))
	dec.DisallowUnknownFields()
	if err := dec.Decode(into); err != nil {
		t.Fatalf("%v: %v", args, err)
	}
}

// TestJournalLinesAreRead: every line that the journal writes can be read again.
func TestJournalLinesAreRead(t *testing.T) {
	path := filepath.Join(t.TempDir(), "demo.db")
	if code, _, err := call(t, "", "demo", "--make", path); code != 0 {
		t.Fatal(err)
	}
	_, out, _ := call(t, "", "journal", "--book", path, "--json")
	for _, line := range strings.Split(strings.TrimSpace(out), "\n") {
		l, err := core.DecodeLine([]byte(line))
		if err != nil || !l.HasDigest || l.Action == "" || l.Seq == 0 {
			t.Errorf("%s: %v", line, err)
		}
	}
}

// TestKeysOfRestoredEntries: a restored entry is found under the same keys as the one that was typed.
func TestKeysOfRestoredEntries(t *testing.T) {
	dir := t.TempDir()
	first, second := filepath.Join(dir, "a.db"), filepath.Join(dir, "b.db")
	if code, _, err := call(t, "", "demo", "--make", first); code != 0 {
		t.Fatal(err)
	}
	_, lines, _ := call(t, "", "journal", "--book", first, "--json")
	if code, _, err := call(t, lines, "replay", "-", "--book", second); code != 0 {
		t.Fatal(err)
	}
	if a, b := keysIn(t, first), keysIn(t, second); a != b {
		t.Errorf("typed:\n%s\nrestored:\n%s", a, b)
	}
}

func keysIn(t testing.TB, path string) string {
	t.Helper()
	s, err := store.Open(path, store.Options{ReadOnly: true})
	if err != nil {
		t.Fatal(err)
	}
	var out strings.Builder
	if err := s.EachKey(nil, func(key []byte, r store.Record) error {
		fmt.Fprintf(&out, "%s %d\n", key, r.Number)
		return nil
	}); err != nil {
		t.Fatal(err)
	}
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
	return out.String()
}
