package main

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// FuzzReplay: whatever lines are given, they make a book, whole, or one sentence and no file. A book that was made
// comes back from its own journal to the last bit, and the same lines entered one by one make the same book.
func FuzzReplay(f *testing.F) {
	f.Add([]byte(""))
	f.Add([]byte("\n \r\n{}\n"))
	f.Add([]byte(`{"fact":"setting","name":"theme","value":"sun"}` + "\n" + `{"fact":"setting","name":"theme","value":"default","at":"2026-05-28T09:42:00-05:00"}`))
	f.Add([]byte(`{"fact":"setting","name":"theme","value":"sun","action":"one"}` + "\n" + `{"fact":"setting","name":"theme","value":"sun","action":"one"}`))
	f.Add([]byte(`{"fact":"setting","name":"theme","value":"sun","seq":2}`))
	f.Add([]byte(`{"fact":"mix","name":"W","parts":[]}` + "\x00" + `{`))
	for _, name := range []string{"../../testdata/demo/demo.jsonl", "../../testdata/handmade/bypass.jsonl"} {
		text, err := os.ReadFile(name)
		if err != nil {
			f.Fatal(err)
		}
		lines := strings.SplitAfter(string(text), "\n")
		f.Add([]byte(strings.Join(lines[:min(12, len(lines))], "")))
	}
	dir := inMemory(f)
	f.Fuzz(func(t *testing.T, lines []byte) {
		if len(lines) > 1<<16 {
			return
		}
		first, second, third := filepath.Join(dir, "1"), filepath.Join(dir, "2"), filepath.Join(dir, "3")
		for _, p := range []string{first, second, third} {
			_, _ = os.Remove(p), os.Remove(linesPath(p))
		}
		code, out, said := call(t, string(lines), "replay", "-", "--json", "--book", first)
		if code != 0 {
			oneSentence(t, lines, code, out, said)
			if _, err := os.Lstat(first); err == nil {
				t.Fatalf("%q was refused and left a file", lines)
			}
			return
		}
		code, journal, said := call(t, "", "journal", "--json", "--book", first)
		if code != 0 {
			t.Fatalf("%q: the journal of the new book: exit %d, %s", lines, code, said)
		}
		if code, again, said := call(t, journal, "replay", "-", "--json", "--book", second); code != 0 || again != out {
			t.Fatalf("%q: its journal makes %s, not %s (exit %d, %s)", lines, again, out, code, said)
		}
		if !strings.Contains(out, `"entries":0,`) {
			if code, _, said := call(t, string(lines), "enter", "-", "--json", "--book", third); code != 0 {
				t.Fatalf("%q was replayed and is not entered: exit %d, %s", lines, code, said)
			}
			if one, other := digests(t, first), digests(t, third); one != other {
				t.Fatalf("%q: replayed %s, entered %s", lines, one, other)
			}
		}
	})
}

// oneSentence: a refusal is one object with two sentences, on stderr alone, under a code of the contract.
func oneSentence(t *testing.T, lines []byte, code int, out, said string) {
	t.Helper()
	var p struct{ Problem, Do string }
	if err := json.Unmarshal([]byte(said), &p); err != nil || p.Problem == "" || p.Do == "" || out != "" {
		t.Fatalf("%q: exit %d, stdout %q, stderr %q", lines, code, out, said)
	}
	if code != exitCannot && code != exitUsage && code != exitNewer {
		t.Fatalf("%q: exit %d, %s", lines, code, said)
	}
}

func digests(t *testing.T, book string) string {
	t.Helper()
	code, out, said := call(t, "", "status", "--json", "--book", book)
	var s struct {
		Entries        float64
		State, Journal string
	}
	if err := json.Unmarshal([]byte(out), &s); err != nil || code != 0 || s.State == "" {
		t.Fatalf("status: exit %d, %s, %v", code, said, err)
	}
	return fmt.Sprint(s.Entries, s.State, s.Journal)
}

// inMemory is a folder in memory if there is one: these trials are about contents, not about the disk.
func inMemory(t testing.TB) string {
	t.Helper()
	dir, err := os.MkdirTemp("/dev/shm", "tintline-test-")
	if err != nil {
		return t.TempDir()
	}
	t.Cleanup(func() { _ = os.RemoveAll(dir) })
	return dir
}
