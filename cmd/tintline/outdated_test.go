package main

import (
	"bytes"
	"path/filepath"
	"strings"
	"testing"
)

// TestRowsOfTheVersionBefore: a book whose ended days have no application record beside the entries is read as it stands, is not called
// damaged, and is made anew by the first command that writes.
func TestRowsOfTheVersionBefore(t *testing.T) {
	const state = "1a8ad7072fe9ea6e78a7d76f428a8bef" // as the version said that made it
	path := earlierBook(t, "mixing")
	was := mustBytes(t, path)
	if got, want := export(t, path), earlierExport(t, "mixing"); got != want {
		t.Error("the export is not the one that its version wrote")
	}
	code, v := verifyJSON(t, path)
	if code != 0 || v.Rows != derivedOlder || v.State == nil || *v.State != state {
		t.Errorf("code %d, %+v", code, v)
	}
	ask := []string{"records", "--from", "2026-04-01", "--to", "2026-05-28", "--as", "csv", "--book", path}
	code, before, said := call(t, "", ask...)
	if code != 0 || said != "" || !strings.Contains(before, "2026-04-09") || !strings.Contains(before, "2026-05-28") {
		t.Errorf("code %d, %q\n%s", code, said, before)
	}
	if !bytes.Equal(was, mustBytes(t, path)) {
		t.Error("reading changed the file")
	}
	code, _, said = call(t, reading, "enter", "-", "--book", path)
	if code != 0 || said != "The book was made ready for this version; the file as it was is kept as "+path+".format-2.\n" {
		t.Fatalf("code %d, %q", code, said)
	}
	if !bytes.Equal(was, mustBytes(t, path+".format-2")) {
		t.Error("the file that is kept is not the one that was")
	}
	if code, v := verifyJSON(t, path); code != 0 || v.Rows != derivedFits || v.Snapshot != derivedFits {
		t.Errorf("code %d, %+v", code, v)
	}
	if code, after, said := call(t, "", ask...); code != 0 || said != "" || after != before {
		t.Errorf("code %d, %q: the records are not those of the entries", code, said)
	}
	if code, _, said := call(t, reading, "enter", "-", "--book", path); code != 0 || said != "" {
		t.Errorf("the second time: code %d, %q", code, said)
	}
	if names := namesIn(t, filepath.Dir(path)); strings.Contains(names, ".book-") || strings.Contains(names, "format-2.2") {
		t.Errorf("left over: %s", names)
	}
}
