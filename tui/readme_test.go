package tui

import (
	"cmp"
	"flag"
	"fmt"
	"os"
	"strings"
	"testing"
)

// keyTable is the table of all keys as it stands in README.md, made from the bindings.
func keyTable() string {
	specs := newPages()
	keys := newKeys(specs)
	var b strings.Builder
	b.WriteString("| key | on the cab screen |\n|---|---|\n| `a` to `f` | turn supply and return to that compartment |\n")
	row := func(k, words string) {
		fmt.Fprintf(&b, "| `%s` | %s |\n", cmp.Or(strings.TrimSpace(k), "space"), strings.ReplaceAll(words, "|", "or"))
	}
	for _, k := range keys {
		if k.act != actTake && k.act != actRun && k.long != "" {
			row(strings.Join(k.Keys(), "` `"), k.long)
		}
	}
	for _, s := range specs {
		head := "\n| " + strings.ToLower(s.title)
		if s.key != "" {
			way := "`g` `" + s.key + "`"
			for _, list := range specs {
				if list.page == s.under && list.key != "" {
					way = "`g` `" + list.key + "` `" + s.key + "`"
				}
			}
			head += " (" + way + ")"
		}
		head += " | |\n|---|---|\n"
		for _, k := range keys {
			if k.act == actRun && k.page == s.page && k.long != "" && !k.unlisted {
				b.WriteString(head)
				head = ""
				row(strings.Join(k.Keys(), "` `"), k.long)
			}
		}
	}
	return b.String()
}

// TestReadmeListsTheKeys holds README's table of keys to the bindings; -update writes it anew.
func TestReadmeListsTheKeys(t *testing.T) {
	const begin, end, path = "<!-- keys: made from the bindings -->\n", "<!-- end of keys -->", "../README.md"
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	before, rest, found := strings.Cut(string(text), begin)
	was, after, closed := strings.Cut(rest, end)
	if !found || !closed {
		t.Fatal("README.md has no place for the table of keys")
	}
	now := keyTable()
	if was == now {
		return
	}
	if f := flag.Lookup("update"); f != nil && f.Value.String() == "true" {
		if err := os.WriteFile(path, []byte(before+begin+now+end+after), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	t.Errorf("README.md's table of keys is not that of the bindings; go test ./tui -run Readme -update writes it. It should be\n%s", now)
}
