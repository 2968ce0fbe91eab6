package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// TestOneHeadDamagedIsSaidByThoseWhoWrite: a book of which one head is damaged may have lost its last action. Whoever adds
// to it hears so, before anything is added.
func TestOneHeadDamagedIsSaidByThoseWhoWrite(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "book.db")
	if code, _, err := call(t, "", "demo", "--make", path); code != 0 {
		t.Fatal(err)
	}
	good, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	csv := filepath.Join(dir, "lawns.csv")
	if err := os.WriteFile(csv, []byte("lawn,zone,grass,area_sqft\nx,y,tall fescue,5000\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, args := range [][]string{
		{"enter", "-"}, {"enter", "-", "--json"}, {"import", "lawns", csv}, {"import", "lawns", csv, "--json"}, {"setup", "lawn"},
	} {
		for head := range 2 {
			b := append([]byte(nil), good...)
			b[head*4096+60] ^= 0x10
			if err := os.WriteFile(path, b, 0o600); err != nil {
				t.Fatal(err)
			}
			_, _, said := call(t, `{"fact":"setting","name":"theme","value":"sun"}`+"\n", append(args, "--book", path)...)
			if strings.Count(said, "One of the two heads") != 1 || !strings.Contains(said, "may be missing.") {
				t.Errorf("%v with head %d damaged says %q", args, head, said)
			}
		}
	}
}
