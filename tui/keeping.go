package tui

// Keeper looks after the file of the book; it is implemented by the command. Its methods are called beside the screen,
// one at a time.
type Keeper interface {
	// Kept tells how the book is kept, without reading it through.
	Kept() (Kept, error)
	// Daily makes the copy of the day if one is due and answers with one quiet sentence; with none if nothing was due.
	Daily() (said string, err error)
	// Copy makes the copy of today now, also in the place of one that was made earlier today.
	Copy() (said string, err error)
	// Verify reads the whole book through; told hears now and then which share is done.
	Verify(told func(share float64)) (Verified, error)
}

// Kept is how the book is kept.
type Kept struct {
	Path    string
	Format  int
	Program string // that made the file
	Made    string // RFC 3339
	Entries uint64
	Bytes   int64
	Days    int // for which copies are kept; 0: none are made
	Copies  []KeptCopy
	Lines   int      // entries in the lines beside the book, since the last copy
	Notes   []string // what the operator should know: the book was made ready for this version, one head is damaged
}

// KeptCopy is a copy that stands beside the book, newest first in a list.
type KeptCopy struct {
	Date  string
	Name  string // of the file
	Bytes int64
}

// Verified is what reading the book through has shown: one sentence each.
type Verified struct {
	OK   bool
	Says []string
}
