package audit

import (
	"errors"
	"fmt"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
	"example.com/tintline/core/say"
)

// Kind is what is wrong.
type Kind string

// The kinds of finding.
const (
	Changed    Kind = "changed"    // whole, and not what was written: it does not follow from what stands before it
	Damaged    Kind = "damaged"    // not whole any more
	Unbalanced Kind = "unbalanced" // it follows, and the accounts do not add up after it
	Unreadable Kind = "unreadable" // whole, and no entry that this version can read
)

// Finding is one thing that is wrong, in one sentence that says how far what stands before it is to be believed.
type Finding struct {
	Entry uint64 // the entry at which it shows; 0: none
	Kind  Kind
	Says  string
	Err   error // the cause; may be nil
}

// Audit reads a journal, entry by entry from the first.
type Audit struct {
	// Apply adds an entry to the book; nil: core's own. Who wants to see what comes out on the way puts it here.
	Apply func(*core.Book, core.Entry) error

	// OldKeys: the file was made when entries stood under fewer keys; those that differ are counted and no finding.
	OldKeys bool

	Book     *core.Book
	Findings []Finding
	Entries  uint64 // seen
	Days     int    // opened
	Rekeyed  int    // entries under the keys of an older version

	ledger ledger
	before core.Digest // of the last entry seen, as it stands there
	blind  bool        // that digest is not known
	folded bool        // the book has all entries seen
	broken uint64      // the first entry that does not follow; 0: none
	off    total       // what the places came to after the last entry; nothing, if they were right
}

// New begins to read the journal of a truck.
func New(truck uint32) *Audit {
	return &Audit{Book: core.NewBook(truck), folded: true}
}

// Whole tells whether all entries seen follow from one another and stand in the book.
func (a *Audit) Whole() bool { return a.folded }

// Add reads the next entry. Once one does not follow, nothing is added up any more, because what comes after rests on it;
// whether the entries after it follow from one another is still looked at.
func (a *Audit) Add(e core.Entry, keys [][]byte) {
	a.Entries++
	if _, opened := e.What.(*core.DayOpened); opened {
		a.Days++
	}
	follows := e.Seq == a.Entries && (a.blind || e.Follows(a.before))
	a.before, a.blind = e.Digest, false
	if !follows {
		a.breaks(e)
		return
	}
	if !a.folded {
		return
	}
	a.keys(e, keys)
	a.closing(e)
	apply := a.Apply
	if apply == nil {
		apply = (*core.Book).Apply
	}
	if err := apply(a.Book, e); err != nil {
		a.folded = false
		a.find(e.Seq, Unreadable, err, "%s is whole and follows, and cannot be added up: %v. %s", a.name(e), err, a.believed(e.Seq-1))
		return
	}
	a.balance(e)
}

// Unreadable takes an entry that is whole and cannot be read; e has its number, and its digest if there is one.
func (a *Audit) Unreadable(e core.Entry, err error) {
	a.Entries++
	a.before, a.blind = e.Digest, e.Digest == core.Digest{}
	a.folded = false
	if a.broken == 0 {
		a.broken = e.Seq
	}
	if errors.Is(err, core.ErrNewer) {
		a.find(e.Seq, Unreadable, err, "Entry %d was written by a newer version: %v. %s", e.Seq, err, a.believed(e.Seq-1))
		return
	}
	a.find(e.Seq, Changed, err, "Entry %d is whole and is not in the form in which entries are written, so it was changed: %v. %s", e.Seq, err, a.believed(e.Seq-1))
}

// Damage takes what stopped the reading: an entry of the file that is not whole any more.
func (a *Audit) Damage(err error) {
	a.folded = false
	a.find(0, Damaged, err, "%s %s", err.Error(), a.believed(a.Entries))
}

// Structure takes what is wrong with the file around its entries, which were all read.
func (a *Audit) Structure(err error) {
	a.find(0, Damaged, err, "%s Each entry by itself was read whole.", err.Error())
}

func (a *Audit) find(seq uint64, kind Kind, err error, format string, args ...any) {
	a.Findings = append(a.Findings, Finding{seq, kind, fmt.Sprintf(format, args...), err})
}

// name says which entry it is, of which day and what it says.
func (a *Audit) name(e core.Entry) string {
	date := e.At.Date()
	if a.Book.Day().Open {
		date = a.Book.Day().Date
	}
	if f, ok := e.What.(*core.DayOpened); ok {
		date = f.Date
	}
	return fmt.Sprintf("Entry %d of %s (%s)", e.Seq, date, say.Fact(e.What))
}

// believed says up to where the journal is as it was written.
func (a *Audit) believed(last uint64) string {
	if a.broken != 0 {
		last = min(last, a.broken-1)
	}
	switch last {
	case 0:
		return "Nothing before it can be held against it."
	case 1:
		return "Entry 1 is as it was written."
	}
	return fmt.Sprintf("Entries 1 to %d are as they were written.", last)
}

// breaks notes an entry that does not follow from the one before. Either it was changed and kept its digest, or the one
// before was changed and got a digest of its own that fits; the two look the same.
func (a *Audit) breaks(e core.Entry) {
	before := e.Seq - 1
	says := "it was changed after it was written"
	if before > 0 {
		says = fmt.Sprintf("it, or entry %d before it, was changed after it was written", before)
		before--
	}
	err := error(core.ErrChain)
	if a.broken == 0 {
		a.broken = before + 1
	}
	a.folded = false
	a.find(e.Seq, Changed, err, "%s is whole and does not follow from what stands before it: %s. %s", a.name(e), says, a.believed(before))
}

// keys holds the keys under which the entry can be found against those that follow from the book.
func (a *Audit) keys(e core.Entry, keys [][]byte) {
	want := a.Book.Keys(e.What, e.At)
	same := len(want) == len(keys)
	for i := 0; same && i < len(want); i++ {
		same = string(want[i]) == string(keys[i])
	}
	switch {
	case same:
	case a.OldKeys:
		a.Rekeyed++
	default:
		a.find(e.Seq, Changed, nil, "%s stands under the keys %q and should stand under %q: it would not be found by them. The entry itself is as it was written.", a.name(e), keys, want)
	}
}

// closing holds the accounts against the digest that was written at the close of a day.
func (a *Audit) closing(e core.Entry) {
	f, ok := e.What.(*core.DayClosed)
	if !ok || f.Accounts == "" {
		return
	}
	if got := a.Book.AccountsDigest().String(); got != f.Accounts {
		a.find(e.Seq, Unbalanced, nil, "%s holds the digest %s of all accounts, and they come to %s: this program adds the entries before it up to something else. The entries themselves are as they were written.", a.name(e), f.Accounts, got)
	}
}

// balance adds up all places after an entry.
func (a *Audit) balance(e core.Entry) {
	t := a.ledger.sum(a.Book, e.What)
	if t.same(a.off) {
		return // right, or as wrong as it was said to be
	}
	a.off = t
	if t.nothing() {
		return
	}
	much := ""
	if t.volume != 0 {
		much = fmt.Sprintf("%d nL (%s gal)", t.volume, measure.Volume(t.volume).Text())
	}
	for key, n := range t.products {
		if n == 0 {
			continue
		}
		if much != "" {
			much += ", "
		}
		much += fmt.Sprintf("%d units of %s", n, a.product(key))
	}
	a.find(e.Seq, Unbalanced, nil, "After %s all places together hold %s more than nothing; every sum must be zero.", lower(a.name(e)), much)
}

func (a *Audit) product(key int) string {
	if all := a.Book.Products(); key < len(all) {
		return all[key].Name
	}
	return fmt.Sprintf("product %d", key)
}

func lower(s string) string { return "e" + s[1:] }
