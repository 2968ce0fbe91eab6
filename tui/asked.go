package tui

import (
	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/core"
	"example.com/tintline/core/past"
)

// asked is what a page asked of the rows of past days, and what came of it. It stands as long as the page asks for the same and
// the book has not moved on.
type asked struct {
	page   page
	what   string
	seq    uint64
	answer any
	err    error
	done   bool
}

// askPast puts a question to the rows of past days beside the screen, on a book of its own. What is the question in words: the answer of
// another one is dropped when it comes. Nothing is asked again while the answer to the same question stands.
func (m *Model) askPast(p page, what string, f func(b *core.Book, read past.Reader) (any, error)) tea.Cmd {
	was, now := m.replies[p], asked{page: p, what: what, seq: m.book.Seq()}
	if was.what == what && was.seq == now.seq && was.err == nil {
		return nil
	}
	r, ok := m.reader.(PastReader)
	if !ok {
		now.err, now.done = slip("There is no book to read past days from.", "Open one."), true
		m.keepAsked(now)
		return nil
	}
	m.keepAsked(now)
	b := m.book.Clone()
	return guarded(func() tea.Msg {
		out := now
		out.done = true
		out.err = r.Days(func(read past.Reader) (err error) {
			out.answer, err = f(b, read)
			return err
		})
		return out
	})
}

// askedArrived keeps an answer if it is still wanted.
func (m *Model) askedArrived(a asked) {
	if was := m.replies[a.page]; was.what == a.what && was.seq == a.seq {
		m.keepAsked(a)
	}
}

// keepAsked makes the list anew: models before this one keep theirs.
func (m *Model) keepAsked(a asked) {
	next := make(map[page]asked, len(m.replies)+1)
	for p, was := range m.replies {
		next[p] = was
	}
	next[a.page] = a
	m.replies = next
}
