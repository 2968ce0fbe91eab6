package main

import (
	"bytes"
	"compress/gzip"
	"encoding/json"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"example.com/tintline/store"
)

// earlier are the books of earlier versions in testdata/books, oldest first.
var earlier = []string{"spine", "cab", "grass", "changeover"}

// earlierBook unpacks one into a folder of its own.
func earlierBook(t testing.TB, name string) string {
	t.Helper()
	f, err := os.Open(filepath.Join("..", "..", "testdata", "books", name+".db.gz"))
	if err != nil {
		t.Fatal(err)
	}
	defer func() { _ = f.Close() }()
	z, err := gzip.NewReader(f)
	if err != nil {
		t.Fatal(err)
	}
	b, err := io.ReadAll(z)
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "book.db")
	if err := os.WriteFile(path, b, 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

func earlierExport(t testing.TB, name string) string {
	t.Helper()
	b, err := os.ReadFile(filepath.Join("..", "..", "testdata", "books", name+".jsonl"))
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

func export(t testing.TB, path string) string {
	t.Helper()
	code, out, err := call(t, "", "journal", "--book", path, "--json")
	if code != 0 {
		t.Fatalf("code %d: %s", code, err)
	}
	return out
}

// TestExportsOfTheFirstVersionAreWrittenByteForByte: what holds only the first version's facts is exported now as it was
// then. Of a later version's exports only keys differ that came later and say nothing, which that version wrote out.
func TestExportsOfTheFirstVersionAreWrittenByteForByte(t *testing.T) {
	for _, name := range earlier {
		now, then := export(t, earlierBook(t, name)), earlierExport(t, name)
		if name == "spine" {
			if now != then {
				t.Error("the export of the first version's book is not the one that it wrote")
			}
			continue
		}
		a, b := strings.Split(now, "\n"), strings.Split(then, "\n")
		if len(a) != len(b) {
			t.Fatalf("%s: %d lines, and %d then", name, len(a), len(b))
		}
		for i := range a {
			if a[i] == "" {
				continue
			}
			got, want := ordered(t, a[i]), ordered(t, b[i])
			if why := leftOutSilent(got, want); why != "" {
				t.Errorf("%s, line %d: %s\n%s\n%s", name, i+1, why, a[i], b[i])
			}
		}
	}
}

// object is a JSON object with its keys in order.
type object []struct {
	key   string
	value any
}

func ordered(t *testing.T, text string) any {
	t.Helper()
	dec := json.NewDecoder(strings.NewReader(text))
	dec.UseNumber()
	v, err := orderedValue(dec)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

func orderedValue(dec *json.Decoder) (any, error) {
	tok, err := dec.Token()
	if err != nil {
		return nil, err
	}
	switch tok {
	case json.Delim('{'):
		o := object{}
		for dec.More() {
			key, err := dec.Token()
			if err != nil {
				return nil, err
			}
			v, err := orderedValue(dec)
			if err != nil {
				return nil, err
			}
			o = append(o, struct {
				key   string
				value any
			}{key.(string), v})
		}
		_, err = dec.Token()
		return o, err
	case json.Delim('['):
		list := []any{}
		for dec.More() {
			v, err := orderedValue(dec)
			if err != nil {
				return nil, err
			}
			list = append(list, v)
		}
		_, err = dec.Token()
		return list, err
	}
	return tok, nil
}

// leftOutSilent tells why got is not want without keys that say nothing; empty if it is.
func leftOutSilent(got, want any) string {
	switch w := want.(type) {
	case object:
		g, ok := got.(object)
		if !ok {
			return fmt.Sprintf("%v is no object", got)
		}
		i := 0
		for _, pair := range w {
			if i < len(g) && g[i].key == pair.key {
				if why := leftOutSilent(g[i].value, pair.value); why != "" {
					return pair.key + ": " + why
				}
				i++
				continue
			}
			if s := fmt.Sprint(pair.value); s != "" && s != "<nil>" && s != "[]" && s != "0" {
				return fmt.Sprintf("%s, which was %s, is left out", pair.key, s)
			}
		}
		if i != len(g) {
			return fmt.Sprintf("the key %s was not there", g[i].key)
		}
		return ""
	case []any:
		g, ok := got.([]any)
		if !ok || len(g) != len(w) {
			return fmt.Sprintf("%v is not a list of %d", got, len(w))
		}
		for i := range w {
			if why := leftOutSilent(g[i], w[i]); why != "" {
				return why
			}
		}
		return ""
	}
	if !reflect.DeepEqual(got, want) {
		return fmt.Sprintf("%v was %v", got, want)
	}
	return ""
}

// everything is all that a file holds.
type everything struct {
	Records  []store.Record
	Rows     [][2]string
	At       uint64
	Snapshot string
}

func allOf(t testing.TB, path string) (all everything) {
	t.Helper()
	s, err := store.Open(path, store.Options{ReadOnly: true})
	if err != nil {
		t.Fatal(err)
	}
	defer func() { _ = s.Close() }()
	if err := s.Check(); err != nil {
		t.Fatal(err)
	}
	if err := s.Each(1, func(r store.Record) error {
		r.Body, r.Keys = bytes.Clone(r.Body), cloneKeys(r.Keys)
		all.Records = append(all.Records, r)
		return nil
	}); err != nil {
		t.Fatal(err)
	}
	if err := s.Rows(nil, nil, func(k, v []byte) error {
		all.Rows = append(all.Rows, [2]string{string(k), string(v)})
		return nil
	}); err != nil {
		t.Fatal(err)
	}
	at, body, _, err := s.Snapshot()
	if err != nil {
		t.Fatal(err)
	}
	all.At, all.Snapshot = at, string(body)
	return all
}

// sameBook compares two files, and what the program says of them.
func sameBook(t testing.TB, what, a, b string) {
	t.Helper()
	x, y := allOf(t, a), allOf(t, b)
	if !reflect.DeepEqual(x.Records, y.Records) {
		t.Errorf("%s: the records differ", what)
	}
	if !reflect.DeepEqual(x.Rows, y.Rows) || len(x.Rows) == 0 && len(x.Records) > 100 {
		t.Errorf("%s: the rows differ, %d and %d", what, len(x.Rows), len(y.Rows))
	}
	if x.At != y.At || x.Snapshot != y.Snapshot {
		t.Errorf("%s: the snapshots differ, at %d with %d bytes and at %d with %d", what, x.At, len(x.Snapshot), y.At, len(y.Snapshot))
	}
	if export(t, a) != export(t, b) {
		t.Errorf("%s: the exports differ", what)
	}
}

// replayed makes a book from the export of another.
func replayed(t testing.TB, lines string) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "replayed.db")
	if code, _, err := call(t, lines, "replay", "-", "--book", path); code != 0 {
		t.Fatalf("replay: code %d: %s", code, err)
	}
	return path
}

// TestReplayMakesTheSameBook: journal out and replay in, bit for bit; also from the export that the earlier version itself
// had written.
func TestReplayMakesTheSameBook(t *testing.T) {
	for _, name := range earlier {
		path := earlierBook(t, name)
		if _, err := upgrade(path); err != nil {
			t.Fatal(err)
		}
		lines := export(t, path)
		sameBook(t, name, path, replayed(t, lines))
		sameBook(t, name+", from its own export", path, replayed(t, earlierExport(t, name)))
	}
}

// TestReplayOfWhatIsWorkedOn: the demo's book, with entries after the demo's, the close and the next day.
func TestReplayOfWhatIsWorkedOn(t *testing.T) {
	path := workedBook(t)
	sameBook(t, "the demo, worked on", path, replayed(t, export(t, path)))
}

// TestALineOfANewerVersionMakesNoBook: one sentence, with the line, exit code 7, nothing made.
func TestALineOfANewerVersionMakesNoBook(t *testing.T) {
	lines := strings.Split(earlierExport(t, "spine"), "\n")
	lines[39] = strings.Replace(lines[39], `"fact":"`, `"fact":"polished_`, 1)
	path := filepath.Join(t.TempDir(), "book.db")
	code, out, err := call(t, strings.Join(lines, "\n"), "replay", "-", "--book", path)
	if code != exitNewer || out != "" || !strings.Contains(err, "standard input, line 40: ") || !strings.Contains(err, "a newer version wrote it") {
		t.Errorf("code %d, %q, %q", code, out, err)
	}
	if left, _ := filepath.Glob(filepath.Join(filepath.Dir(path), "*")); len(left) != 0 {
		t.Errorf("it left %v", left)
	}
	if hidden, _ := filepath.Glob(filepath.Join(filepath.Dir(path), ".*")); len(hidden) != 0 {
		t.Errorf("it left %v", hidden)
	}
}

// TestReplayOfEveryFact: a journal by chance with every kind of fact, and with actions of several entries.
func TestReplayOfEveryFact(t *testing.T) {
	text, err := os.ReadFile(filepath.Join("..", "..", "testdata", "story", "every_fact.jsonl"))
	if err != nil {
		t.Fatal(err)
	}
	first := replayed(t, string(text))
	sameBook(t, "every fact", first, replayed(t, export(t, first)))
	if code, v := verifyJSON(t, first); code != 0 || v.Rows != derivedFits || v.Snapshot != derivedFits {
		t.Errorf("code %d, %+v", code, v)
	}
}
