package main

import (
	"bytes"

	"example.com/tintline/core"
	"example.com/tintline/core/past"
	"example.com/tintline/store"
)

// grouped writes entries that were written before into a new file, action by action. Their keys and rows are those that
// follow from the book, as if they were written now; an entry itself stays as it is, byte for byte.
type grouped struct {
	path   string // of the file that they come from
	add    func(string, []store.Item) error
	book   *core.Book // grows by them
	action string
	items  []store.Item
}

// put takes the next entry and its bytes.
func (g *grouped) put(e core.Entry, body []byte) error {
	if e.Action != g.action {
		if err := g.flush(); err != nil {
			return err
		}
	}
	it := store.Item{Body: bytes.Clone(body), Keys: g.book.Keys(e.What, e.At)}
	rows, err := past.Apply(g.book, e)
	if err != nil {
		return unreadable(g.path, err)
	}
	it.Rows = storeRows(rows)
	g.action, g.items = e.Action, append(g.items, it)
	return nil
}

// flush writes the action that is gathered.
func (g *grouped) flush() error {
	if len(g.items) == 0 {
		return nil
	}
	items := g.items
	g.items = nil
	return g.add(g.action, items)
}
