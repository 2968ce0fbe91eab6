package disktrace

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"
)

// pictures are all images of a log, in words.
func pictures(t *testing.T, l *Log, c Choice) map[string]bool {
	t.Helper()
	out := map[string]bool{}
	err := l.Images(c, func(i Image) error {
		var b strings.Builder
		for _, n := range slices.Sorted(maps.Keys(i.Files)) {
			fmt.Fprintf(&b, "%s=%s ", n, strings.ReplaceAll(string(i.Files[n]), "\x00", "."))
		}
		out[strings.TrimSpace(b.String())] = true
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return out
}

func TestWhatIsNotSyncedMayBeMissing(t *testing.T) {
	l := &Log{Start: map[string][]byte{"f": []byte("..")}, IDs: map[string]int{"f": 1}, Ops: []Op{
		{Kind: Write, File: 1, At: 0, Data: []byte("A")},
		{Kind: Write, File: 1, At: 1, Data: []byte("B")},
		{Kind: Sync, File: 1, Since: 2},
		{Kind: Write, File: 1, At: 0, Data: []byte("C")},
	}}
	got := pictures(t, l, Choice{Random: 8})
	for _, want := range []string{"f=..", "f=A.", "f=.B", "f=AB", "f=CB"} {
		if !got[want] {
			t.Errorf("no image %s", want)
		}
	}
	if len(got) != 5 {
		t.Errorf("images %v", got)
	}
	if got = pictures(t, l, Choice{Random: 8, NoSync: true}); !got["f=C."] {
		t.Errorf("without syncs: %v", got)
	}
}

// A sync covers what had ended when it began.
func TestASyncCoversWhatWasBeforeIt(t *testing.T) {
	l := &Log{Start: map[string][]byte{"f": []byte(".")}, IDs: map[string]int{"f": 1}, Ops: []Op{
		{Kind: Write, File: 1, Data: []byte("A")},
		{Kind: Sync, File: 1, Since: 0},
	}}
	if got := pictures(t, l, Choice{From: 2}); !got["f=."] || !got["f=A"] {
		t.Errorf("images %v", got)
	}
}

func TestSectorsAreTornApart(t *testing.T) {
	l := &Log{Start: map[string][]byte{"f": nil}, IDs: map[string]int{"f": 1}, Ops: []Op{
		{Kind: Write, File: 1, At: 500, Data: []byte(strings.Repeat("x", 1000))},
		{Kind: Write, File: 1, At: 0, Data: []byte("y")},
	}}
	sizes := map[int]bool{}
	if err := l.Images(Choice{Random: 40}, func(i Image) error {
		sizes[strings.Count(string(i.Files["f"]), "x")] = true
		return nil
	}); err != nil {
		t.Fatal(err)
	}
	// 12 bytes in the first sector, 512 in the second, 476 in the third
	for _, n := range []int{0, 12, 512, 476, 524, 488, 988, 1000} {
		if !sizes[n] {
			t.Errorf("no image with %d bytes of the write", n)
		}
	}
}

// A name is certain after a sync of the folder only.
func TestNamesWaitForTheFolder(t *testing.T) {
	l := &Log{Start: map[string][]byte{"f": []byte("old")}, IDs: map[string]int{"f": 1}, Ops: []Op{
		{Kind: Create, File: 2, Name: "n"},
		{Kind: Write, File: 2, Data: []byte("new")},
		{Kind: Sync, File: 2, Since: 2},
		{Kind: Link, File: 1, Name: "f", To: "kept"},
		{Kind: SyncFolder, Name: ".", Since: 4},
		{Kind: Rename, File: 2, Name: "n", To: "f"},
		{Kind: SyncFolder, Name: ".", Since: 6},
	}}
	got := pictures(t, l, Choice{Random: 8})
	for _, want := range []string{
		"f=old", "f=old n=", "f=old n=new", "f=old kept=old", "f=old kept=old n=new", "f=new kept=old",
	} {
		if !got[want] {
			t.Errorf("no image %q", want)
		}
	}
	if got = pictures(t, l, Choice{Random: 8, From: 7}); len(got) != 1 || !got["f=new kept=old"] {
		t.Errorf("at the end: %v", got)
	}
}
