package main

import (
	"fmt"
	"path/filepath"
	"strings"
	"testing"

	"example.com/tintline/core/sheet"
	"example.com/tintline/store"
)

// A file at the limit of one action is imported, and one row more is refused before anything is written.
func TestImportUpToTheLimit(t *testing.T) {
	if sheet.Most != store.MaxItems {
		t.Fatalf("a sheet may hold %d facts and an action %d entries", sheet.Most, store.MaxItems)
	}
	book := filepath.Join(t.TempDir(), "t.db")
	var src strings.Builder
	src.WriteString("lawn,zone,grass,area_sqft\n")
	for i := range sheet.Most {
		fmt.Fprintf(&src, "%d Sample Street,all of it,tall fescue,5000\n", i)
	}
	code, out, stderr := call(t, src.String(), "import", "lawns", "-", "--book", book)
	if want := "lawns from standard input (5000 rows): 5000 new, 0 replaced; entries 1 to 5000.\n"; code != 0 || out != want {
		t.Errorf("code %d, %q, %s", code, out, stderr)
	}
	src.WriteString("one more,all of it,tall fescue,5000\n")
	code, _, stderr = call(t, src.String(), "import", "lawns", "-", "--book", book)
	if code != exitUsage || !strings.HasPrefix(stderr, "standard input, line 5002: This would be entry 5001 of 5001; an action has at most 5000.\n") {
		t.Errorf("code %d, %s", code, stderr)
	}
	code, _, stderr = call(t, strings.Repeat(" ", largestFile+1), "import", "lawns", "-", "--book", book)
	if code != exitUsage || !strings.Contains(stderr, "longer than 16 MiB") {
		t.Errorf("code %d, %s", code, stderr)
	}
}
