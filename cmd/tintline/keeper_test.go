package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"example.com/tintline/core"
	"example.com/tintline/store"
	"example.com/tintline/tui"
)

var _ tui.Keeper = (*keeper)(nil)

// kept is a book with its keeper and a clock that the test sets.
type kept struct {
	*keptBook
	*keeper
	t    *testing.T
	day  time.Time
	made int
}

func keptAt(t *testing.T, path, day string) *kept {
	t.Helper()
	k := reopened(t, path)
	out := &kept{keptBook: k, keeper: &keeper{b: k.attendant}, t: t}
	out.on(day)
	k.attendant.now = func() time.Time { return out.day }
	t.Cleanup(func() { _ = k.Close() })
	return out
}

func (k *kept) on(day string) {
	d, err := time.Parse(time.DateOnly, day)
	if err != nil {
		k.t.Fatal(err)
	}
	k.day = d.Add(18 * time.Hour)
}

func (k *kept) log(facts ...core.Fact) {
	k.t.Helper()
	k.made++
	id := fmt.Sprint("log", k.made)
	es, err := k.book.Prepare(id, core.At(k.day), facts...)
	if err == nil {
		err = k.write(id, es)
	}
	if err != nil {
		k.t.Fatal(err)
	}
}

func (k *kept) note() { k.log(&core.Noted{Lawn: k.book.Lawns()[0].LawnName, Text: "x"}) }

func (k *kept) wantDaily(said string) {
	k.t.Helper()
	got, err := k.Daily()
	if err != nil || got != said {
		k.t.Errorf("%s: it says %q, %v, not %q", k.day.Format(time.DateOnly), got, err, said)
	}
}

func (k *kept) dates() (out []string) {
	for _, c := range copiesOf(k.keptBook.path) {
		out = append(out, c.date)
	}
	return out
}

func (k *kept) wantDates(want ...string) {
	k.t.Helper()
	if got := k.dates(); fmt.Sprint(got) != fmt.Sprint(want) {
		k.t.Errorf("copies of %v, not %v", got, want)
	}
}

// TestDailyCopy: once a day if something was booked, and again when a day is closed.
func TestDailyCopy(t *testing.T) {
	path := ownBook(t, 40) // in the middle of a day
	k := keptAt(t, path, "2026-06-01")
	k.wantDaily("Copy of 1 Jun made and checked: 40 entries.")
	k.wantDaily("")
	wantLines(t, path, "")
	k.note()
	k.wantDaily("")
	k.wantDates("2026-06-01")
	for k.book.Day().Open {
		k.log(&core.DayClosed{})
	}
	last := k.book.Seq()
	k.wantDaily(fmt.Sprintf("Copy of 1 Jun made and checked: %d entries.", last))
	k.wantDaily("")
	k.wantDates("2026-06-01")
	k.on("2026-06-02")
	k.wantDaily("")
	k.note()
	k.wantDaily(fmt.Sprintf("Copy of 2 Jun made and checked: %d entries.", last+1))
	k.wantDates("2026-06-02", "2026-06-01")
	if at, err := lookAt(copyPath(path, "2026-06-01")); err != nil || at.last != last {
		t.Errorf("the copy of the first day holds %d, %v", at.last, err)
	}
	k.note()
	if said, err := k.Copy(); err != nil || said != fmt.Sprintf("Copy of 2 Jun made and checked: %d entries.", last+2) {
		t.Error(said, err)
	}
	s, err := k.Kept()
	if err != nil || s.Entries != last+2 || s.Days != 14 || len(s.Copies) != 2 || s.Copies[0].Date != "2026-06-02" || s.Lines != 0 || len(s.Notes) != 0 {
		t.Errorf("%+v, %v", s, err)
	}
}

// TestOldCopiesGo: those of this book, by the setting, and never the last two.
func TestOldCopiesGo(t *testing.T) {
	path := ownBook(t, 40)
	k := keptAt(t, path, "2026-06-01")
	names := []string{".2026-05-01.copy.txt", ".2026-5-1.copy", ".copy", ".2026-02-30.copy", ".2026-05-02.copyx"}
	for _, n := range names {
		if err := os.WriteFile(path+n, []byte("mine"), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	foreign, broken := copyPath(path, "2026-01-01"), copyPath(path, "2026-01-02")
	if code, _, said := call(t, "", "demo", "--make", foreign); code != 0 {
		t.Fatal(said)
	}
	if err := os.WriteFile(broken, []byte("was a copy"), 0o600); err != nil {
		t.Fatal(err)
	}
	for day := range 20 {
		k.on(fmt.Sprintf("2026-06-%02d", day+1))
		k.note()
		if _, err := k.Daily(); err != nil {
			t.Fatal(err)
		}
	}
	if got := k.dates(); len(got) != 15+2 || got[0] != "2026-06-20" || got[14] != "2026-06-06" {
		t.Errorf("copies of %v", got)
	}
	for _, p := range []string{foreign, broken} {
		if _, err := os.Stat(p); err != nil {
			t.Error(err)
		}
	}
	for _, n := range names {
		if b, err := os.ReadFile(path + n); string(b) != "mine" {
			t.Errorf("%s: %q, %v", n, b, err)
		}
	}
	k.log(&core.Setting{SettingName: core.CopiesKeptDays, Value: "3"})
	_, _ = os.Remove(foreign), os.Remove(broken)
	k.on("2026-06-21")
	if _, err := k.Daily(); err != nil {
		t.Fatal(err)
	}
	k.wantDates("2026-06-21", "2026-06-20", "2026-06-19", "2026-06-18")
	// A clock that is far ahead for a day takes all but the last two.
	k.on("2031-01-01")
	k.note()
	if _, err := k.Daily(); err != nil {
		t.Fatal(err)
	}
	k.wantDates("2031-01-01", "2026-06-21")
	// And one that is put right again goes on.
	k.on("2026-06-22")
	k.note()
	if _, err := k.Daily(); err != nil {
		t.Fatal(err)
	}
	k.wantDates("2031-01-01", "2026-06-22", "2026-06-21")
}

// TestNoCopiesWanted: then the lines alone hold what came since the last close.
func TestNoCopiesWanted(t *testing.T) {
	path := ownBook(t, 40)
	k := keptAt(t, path, "2026-06-01")
	k.log(&core.Setting{SettingName: core.CopiesKeptDays, Value: "0"})
	k.wantDaily("")
	k.wantDates()
	if first, _, _ := linesHold(linesPath(path)); first != lastOpening(t, path) {
		t.Errorf("the lines begin with %d", first)
	}
	k.log(&core.DayClosed{})
	k.wantDaily("")
	wantLines(t, path, "")
	k.note()
	k.wantDaily("")
	if first, last, _ := linesHold(linesPath(path)); first != k.book.Seq() || last != first {
		t.Errorf("the lines hold %d to %d of %d", first, last, k.book.Seq())
	}
	k.log(&core.Setting{SettingName: core.CopiesKeptDays, Value: core.DefaultSetting})
	k.wantDaily(fmt.Sprintf("Copy of 1 Jun made and checked: %d entries.", k.book.Seq()))
}

// lastOpening is where the lines begin that come after the last close of the book.
func lastOpening(t *testing.T, path string) uint64 {
	t.Helper()
	s, err := store.Open(copyForLook(t, path), storeOptions(true))
	if err != nil {
		t.Fatal(err)
	}
	defer func() { _ = s.Close() }()
	closed, err := lastClose(s, 1)
	if err != nil {
		t.Fatal(err)
	}
	return closed + 1
}

func copyForLook(t *testing.T, path string) string {
	t.Helper()
	to := filepath.Join(t.TempDir(), "look")
	if err := store.Backup(path, to); err != nil {
		t.Fatal(err)
	}
	return to
}

// TestCopyOfAnotherBookStays: a file of the right name that is another's is neither replaced nor removed.
func TestCopyOfAnotherBookStays(t *testing.T) {
	path := ownBook(t, 40)
	k := keptAt(t, path, "2026-06-01")
	to := copyPath(path, "2026-06-01")
	if code, _, said := call(t, "", "demo", "--make", to); code != 0 {
		t.Fatal(said)
	}
	was, _ := os.ReadFile(to)
	_, err := k.Daily()
	if err == nil || !strings.Contains(err.Error(), "is a copy of another book") {
		t.Errorf("%v", err)
	}
	if now, _ := os.ReadFile(to); string(now) != string(was) {
		t.Error("it was replaced")
	}
	if _, last, ok := linesHold(linesPath(path)); !ok || last != 40 {
		t.Error("the lines were begun anew without a copy")
	}
}

// TestVerifiedFromTheScreen reads an open book through.
func TestVerifiedFromTheScreen(t *testing.T) {
	k := keptAt(t, ownBook(t, 40), "2026-06-01")
	share := 0.0
	v, err := k.Verify(func(s float64) { share = s })
	if err != nil || !v.OK || share != 1 || len(v.Says) == 0 {
		t.Errorf("%+v, %v, %v", v, share, err)
	}
	empty := &keeper{b: newBook(filepath.Join(t.TempDir(), "x.db")).attendant}
	if v, err := empty.Verify(nil); err != nil || !v.OK {
		t.Errorf("%+v, %v", v, err)
	}
	if said, err := empty.Daily(); said != "" || err != nil {
		t.Error(said, err)
	}
}

// TestDamagedBookIsNotCopied: a page that went bad under an open book shows when it is copied; the copy of before stays,
// and the sentence names it.
func TestDamagedBookIsNotCopied(t *testing.T) {
	path := ownBook(t, 40)
	k := keptAt(t, path, "2026-06-01")
	k.wantDaily("Copy of 1 Jun made and checked: 40 entries.")
	first, err := os.ReadFile(copyPath(path, "2026-06-01"))
	if err != nil {
		t.Fatal(err)
	}
	k.note()
	f, err := os.OpenFile(path, os.O_RDWR, 0)
	if err != nil {
		t.Fatal(err)
	}
	defer func() { _ = f.Close() }()
	st, _ := f.Stat()
	for at := int64(8192 + 2000); at < st.Size(); at += 4096 {
		if _, err := f.WriteAt([]byte("spoiled by a bad card"), at); err != nil {
			t.Fatal(err)
		}
	}
	k.on("2026-06-02")
	said, err := k.Daily()
	if err == nil || said != "" {
		t.Fatalf("%q, %v", said, err)
	}
	if f := explain(err); f.code != exitDamaged || !strings.HasPrefix(f.do, "End the program and run "+restoreCommand(copyPath(path, "2026-06-01"), path)) {
		t.Errorf("%d: %s %s", f.code, f.what, f.do)
	}
	k.wantDates("2026-06-01")
	if b, _ := os.ReadFile(copyPath(path, "2026-06-01")); string(b) != string(first) {
		t.Error("the copy has changed")
	}
	if first, last, ok := linesHold(linesPath(path)); !ok || first != 41 || last != 41 {
		t.Errorf("the lines hold %d to %d", first, last)
	}
	_ = k.keptBook.Close()
	code, out, complaint := call(t, "", "restore", copyPath(path, "2026-06-01"), "--book", path, "--json")
	if code != 0 || !strings.Contains(out, `"entries":41,"from_lines":1,`) {
		t.Error(out, complaint)
	}
}
