package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"example.com/tintline/core"
	"example.com/tintline/store"
)

func (a *app) bringBackCommand() *cobra.Command {
	var older bool
	cmd := &cobra.Command{
		Use:   "restore FILE [--older]",
		Short: "Bring the book back from a copy, and what was booked later",
		Long: `Makes the book --book anew from a copy, and from what was booked after it as far as it follows: out of the lines beside
the book, out of what can still be read of a damaged book, and out of later copies beside it. The file that is there is
set aside under another name, never overwritten. It says how many entries came from where, and what is missing.

A book that is whole and holds as much is left as it is, unless --older says to go back to the copy and nothing more.
Text lines, as tintline journal --json prints them, are not a copy: tintline replay makes a book of them.`,
		Example: `  tintline restore truck.db.2026-05-27.copy --book truck.db
  tintline restore /media/stick/truck.db --book truck.db --json`,
		Args: oneArg("a copy of the book"),
		RunE: func(_ *cobra.Command, args []string) error {
			path, err := a.bookPath()
			if err != nil {
				return err
			}
			out, err := a.bringBack(args[0], path, older)
			if err != nil {
				return err
			}
			if a.flags.json {
				return a.printJSON(out)
			}
			return a.print(out.words(path))
		},
	}
	cmd.Flags().BoolVar(&older, "older", false, "go back to the copy although the book is whole and holds more")
	return cmd
}

// restored is the answer to bringing a book back.
type restored struct {
	From        string  `json:"from"`
	Entries     uint64  `json:"entries"`
	FromLines   int     `json:"from_lines"`
	FromOldBook int     `json:"from_old_book"`
	FromCopies  int     `json:"from_copies"`
	Missing     uint64  `json:"missing"`
	SetAside    *string `json:"set_aside"`
	State       string  `json:"state"`
	Journal     string  `json:"journal"`

	lines string // where the lines went that do not belong to the book now
}

func (a *app) bringBack(from, path string, older bool) (*restored, error) {
	if one, err := os.Stat(from); err == nil {
		if other, err := os.Stat(path); err == nil && os.SameFile(one, other) {
			return nil, usage("The copy %s is the book itself.", from)
		}
	}
	copied, err := openCopy(from, path)
	if err != nil {
		return nil, err
	}
	defer func() { _ = copied.Close() }()
	book, err := foldFile(copied)
	if err != nil {
		return nil, unfit(from, path, err)
	}
	there, err := lookAtOld(path)
	if err != nil {
		return nil, err
	}
	r := &rebuilt{book: book, copy: copied, copied: book.Seq()}
	if !older {
		r.gather(path, from)
		if there.whole && (there.entries >= r.book.Seq() || !r.holds(there.entries, there.digest)) {
			return nil, stillWhole(path, there.entries, r)
		}
	}
	return a.putBack(r, from, path, older)
}

// openCopy opens a copy and reads it through.
func openCopy(from, path string) (*store.Store, error) {
	s, err := store.Open(from, storeOptions(true))
	if errors.Is(err, store.ErrForeign) && looksLikeLines(from) {
		f := usage("The file %s holds lines of text; it is not a copy of a book.", from)
		f.do = fmt.Sprintf("Run tintline replay %s --book NEW to make a new book of them.", shellWord(from))
		return nil, f
	}
	if err == nil {
		if err = s.Check(); err == nil {
			return s, nil
		}
		_ = s.Close()
	}
	if errors.Is(err, store.ErrMissing) {
		f := *explain(err)
		f.what, f.do, f.err = fmt.Sprintf("There is no copy at %s.", from), "Check the path; copies beside a book are called BOOK.DATE.copy.", err
		return nil, &f
	}
	return nil, unfit(from, path, err)
}

// unfit is a copy that cannot be used; it names the next best.
func unfit(from, path string, err error) error {
	if !isBroken(err) && !errors.Is(err, core.ErrChain) && !errors.Is(err, core.ErrOrder) && !errors.Is(err, core.ErrCode) {
		return err
	}
	f := *explain(err)
	f.what = strings.Replace(f.what, "The book ", "The copy ", 1)
	f.do, f.code, f.err = "Take another copy; nothing was changed.", exitDamaged, err
	c, holds, ok := furthest(path, func(at looked) bool { return filepath.Clean(at.path) != filepath.Clean(from) })
	if ok {
		f.do = fmt.Sprintf("Run %s to take the copy of %s (%d entries) instead; nothing was changed.", restoreCommand(c.path, path), shortDate(c.date), holds.last)
	}
	return &f
}

func looksLikeLines(path string) bool {
	if st, err := os.Stat(path); err != nil || !st.Mode().IsRegular() {
		return false // whoever opens a pipe waits
	}
	f, err := os.Open(path)
	if err != nil {
		return false
	}
	defer func() { _ = f.Close() }()
	b := make([]byte, 64)
	n, _ := io.ReadFull(f, b)
	return bytes.HasPrefix(bytes.TrimSpace(b[:n]), []byte("{"))
}

// foldFile adds up all entries of a file, which must chain.
func foldFile(s *store.Store) (*core.Book, error) {
	b := core.NewBook(newBookTruck)
	err := s.Each(1, func(r store.Record) error {
		e, err := core.Decode(r.Number, r.Action, r.Body)
		if err == nil {
			err = b.Apply(e)
		}
		if err != nil {
			return unreadable(s.Path(), err)
		}
		return nil
	})
	return b, err
}

// oldBook is what stands in the place of the book.
type oldBook struct {
	whole   bool
	entries uint64
	digest  core.Digest // of its last entry
}

// lookAtOld reads it through. What nobody may take the place of is an error: a book that is open elsewhere or was written
// by a newer version, a folder.
func lookAtOld(path string) (oldBook, error) {
	st, err := os.Stat(path)
	if errors.Is(err, os.ErrNotExist) {
		return oldBook{}, nil
	}
	if err == nil && !st.Mode().IsRegular() {
		return oldBook{}, usage("%s is not an ordinary file.", path)
	}
	s, err := store.Open(path, storeOptions(true))
	if err != nil {
		if isBroken(err) {
			return oldBook{}, nil
		}
		return oldBook{}, err
	}
	defer func() { _ = s.Close() }()
	b, err := foldFile(s)
	if err == nil {
		err = s.Check()
	}
	if errors.Is(err, core.ErrNewer) {
		return oldBook{}, err
	}
	return oldBook{err == nil, b.Seq(), b.Digest()}, nil
}

// stillWhole is a book whose place a copy does not take unasked: it holds as much, or something else.
func stillWhole(path string, has uint64, r *rebuilt) error {
	f := &failure{
		what: fmt.Sprintf("The book %s is whole and holds %d entries; the copy holds %d and nothing is known that would add to it.", path, has, r.copied),
		do:   "Use the book as it is, or say --older to go back to the copy all the same.", code: exitCannot,
	}
	switch {
	case has < r.book.Seq():
		f.what = fmt.Sprintf("The book %s is whole and holds %d entries that are not in the copy: it is another book.", path, has)
		f.do = "Give the copy another place with --book, or say --older to set the book aside for it."
	case has > r.copied:
		f.do = fmt.Sprintf("Use the book as it is, or say --older to go back to the copy all the same: entries %d to %d are then set aside with the old file.", r.copied+1, has)
	}
	return f
}

// putBack writes the book and sets aside what was in its place.
func (a *app) putBack(r *rebuilt, from, path string, older bool) (*restored, error) {
	if err := makeFolder(path); err != nil {
		return nil, err
	}
	now := a.clock().Time()
	aside := freeName(path, now, ".old")
	lines, err := r.keepLines(path, now, older)
	if err != nil {
		return nil, err
	}
	o := storeOptions(false)
	o.Created = r.copy.Meta().Created
	err = store.ReplaceWith(path, aside, r.copy.Meta().BookID, o, func(_ *store.Store, add func(string, []store.Item) error) error {
		return r.fill(add)
	})
	if err != nil {
		if lines != "" {
			_ = os.Rename(lines, linesPath(path)) // nothing has changed
			_ = os.Remove(lines)                  // of two names of one file, a rename leaves both
		}
		return nil, err
	}
	if lines != "" {
		_ = os.Remove(linesPath(path))
	}
	out := &restored{
		From: from, Entries: r.book.Seq(), FromLines: r.took[fromLines], FromOldBook: r.took[fromOldBook], FromCopies: r.took[fromCopies],
		Missing: r.missing(), State: r.book.StateDigest().String(), Journal: r.book.Digest().String(), lines: lines,
	}
	if _, err := os.Lstat(aside); err == nil {
		out.SetAside = &aside
	}
	return out, nil
}

// words say what came from where, in lines.
func (r *restored) words(path string) string {
	var b strings.Builder
	copied := r.Entries - uint64(r.FromLines+r.FromOldBook+r.FromCopies)
	fmt.Fprintf(&b, "%s is back: %d entries, %d of them from %s", path, r.Entries, copied, r.From)
	for _, s := range []struct {
		n    int
		from string
	}{{r.FromLines, "the lines beside the book"}, {r.FromOldBook, "what can still be read of the old file"}, {r.FromCopies, "later copies"}} {
		if s.n > 0 {
			fmt.Fprintf(&b, ", %d from %s", s.n, s.from)
		}
	}
	b.WriteString(".\n")
	switch {
	case r.Missing == 1:
		fmt.Fprintf(&b, "Entry %d is missing; nothing after it could be taken.\n", r.Entries+1)
	case r.Missing > 1:
		fmt.Fprintf(&b, "%d entries are missing: %d, after which nothing follows, to %d. Look on paper for what was booked then.\n", r.Missing, r.Entries+1, r.Entries+r.Missing)
	default:
		b.WriteString("Nothing that is known of is missing.\n")
	}
	if r.SetAside != nil {
		fmt.Fprintf(&b, "The old file stands in %s.\n", *r.SetAside)
	}
	if r.lines != "" {
		fmt.Fprintf(&b, "The lines beside it stand in %s.\n", r.lines)
	}
	fmt.Fprintf(&b, "entries %d\nstate %s\njournal %s\n", r.Entries, r.State, r.Journal)
	return b.String()
}

// fill writes the entries of the copy and those that came after it, and makes their rows anew.
func (r *rebuilt) fill(add func(string, []store.Item) error) error {
	g := &grouped{path: r.copy.Path(), add: add, book: core.NewBook(newBookTruck)}
	err := r.copy.Each(1, func(rec store.Record) error {
		e, err := core.Decode(rec.Number, rec.Action, rec.Body)
		if err != nil {
			return err
		}
		return g.put(e, rec.Body)
	})
	for i := 0; i < len(r.later) && err == nil; i++ {
		err = g.put(r.later[i], r.later[i].Encode())
	}
	if err != nil {
		return err
	}
	return g.flush()
}
