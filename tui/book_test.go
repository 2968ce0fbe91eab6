package tui

import (
	"testing"

	"example.com/tintline/core"
)

// clerk keeps a book that is nowhere.
type clerk struct {
	kept     Kept
	daily    int
	copies   int
	said     string
	err      error
	verified Verified
}

func (k *clerk) Kept() (Kept, error) { return k.kept, nil }

func (k *clerk) Daily() (string, error) {
	k.daily++
	return k.said, k.err
}

func (k *clerk) Copy() (string, error) {
	k.copies++
	k.kept.Copies = append([]KeptCopy{{Date: "2026-05-28", Name: "book.db.2026-05-28.copy", Bytes: 1 << 20}}, k.kept.Copies...)
	k.kept.Lines = 0
	return "The copy of 2026-05-28 was made: book.db.2026-05-28.copy.", k.err
}

func (k *clerk) Verify(told func(float64)) (Verified, error) {
	told(0.5)
	return k.verified, k.err
}

func newClerk() *clerk {
	return &clerk{
		kept: Kept{
			Path: "book.db", Format: 2, Program: "tintline 0.1", Made: "2026-03-02T07:10:00Z", Entries: 12345, Bytes: 3_500_000, Days: 14, Lines: 24,
			Copies: []KeptCopy{{"2026-05-27", "book.db.2026-05-27.copy", 3_400_000}, {"2026-05-26", "book.db.2026-05-26.copy", 3_300_000}},
		},
		verified: Verified{OK: true, Says: []string{"12,345 entries of 58 days follow one from the other.", "Every gallon and every product is somewhere after each of them."}},
	}
}

func keptBy(k *clerk) func(*Options) { return func(o *Options) { o.Keeper = k } }

var bookSituations = []situated{
	{"book_copies", func(t *testing.T) *cab { return climbIn(t, atAlder, keptBy(newClerk())).press("g", "j", "k") }},
	{"book_read_through", func(t *testing.T) *cab { return climbIn(t, atAlder, keptBy(newClerk())).press("g", "j", "k", "v") }},
	{"book_damaged", func(t *testing.T) *cab {
		k := newClerk()
		k.verified = Verified{Says: []string{"Entry 8,112 of 2026-04-30 (sprayed) was changed after it was written: it is whole, but its digest does not follow."}}
		return climbIn(t, atAlder, keptBy(k)).press("g", "j", "k", "v")
	}},
	{"book_copy_failed", func(t *testing.T) *cab {
		k := newClerk()
		k.err = &core.Problem{What: "The copy book.db.2026-05-28.copy could not be made: the disk is full.", Do: "Make room on the disk, then try again.", Err: errDisk}
		c := climbIn(t, atAlder, keptBy(k))
		return c.send(c.model().Init()())
	}},
}

func TestDailyCopyIsAskedForAtTheStartAndAtTheClose(t *testing.T) {
	k := newClerk()
	c := climbIn(t, morning, keptBy(k))
	c.send(c.model().Init()())
	if k.daily != 1 {
		t.Fatalf("asked %d times at the start", k.daily)
	}
	c.press("enter")
	if k.daily != 1 {
		t.Errorf("asked %d times after an arrival", k.daily)
	}
	k.said = "The copy of 2026-05-28 was made."
	c.press("g", "v").press("esc")
	enterFacts(c, &core.DayClosed{})
	if k.daily != 2 {
		t.Errorf("asked %d times after the close", k.daily)
	}
}

// enterFacts gives the screen facts as a key would.
func enterFacts(c *cab, facts ...core.Fact) {
	c.t.Helper()
	m := c.model()
	cmd := m.enter(facts...)
	c.m = m
	c.send(c.run(cmd)...)
}

func TestCopyNow(t *testing.T) {
	k := newClerk()
	c := climbIn(t, atAlder, keptBy(k)).press("g", "j", "k").sees("24 entries since", "book.db.2026-05-27.copy").press("enter")
	c.sees("The copy of 2026-05-28 was made", "Nothing was booked since")
	if k.copies != 1 {
		t.Errorf("%d copies", k.copies)
	}
}

func TestOneThingAtATimeIsDoneToTheFile(t *testing.T) {
	k := newClerk()
	c := climbIn(t, atAlder, keptBy(k)).press("g", "j", "k")
	c.slow = true
	c.press("enter").sees("copying ...").press("enter", "v").sees("copying ...")
	enterFacts(c, &core.DayClosed{})
	c.slow = false
	c.catchUp().catchUp()
	if k.copies != 1 || k.daily != 1 {
		t.Errorf("%d copies, and %d asked for after it", k.copies, k.daily)
	}
}
