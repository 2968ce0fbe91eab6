package main

import (
	"sync/atomic"

	"example.com/tintline/store"
)

// held is which file a book is kept in. Actions come one at a time, and one of them may make the file or take another in
// its place; readers beside the screen ask for it meanwhile. The file itself may be used by several at once.
type held struct{ file atomic.Pointer[store.Store] }

// get is the file, nil as long as there is none.
func (h *held) get() *store.Store { return h.file.Load() }

func (h *held) put(file *store.Store) { h.file.Store(file) }

// file is the one that the book is kept in at this moment. Who asks it several things asks for it once.
func (k *keptBook) file() *store.Store { return k.held.get() }
