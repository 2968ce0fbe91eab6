package main

import (
	"example.com/tintline/core/audit"
	"example.com/tintline/store"
)

// beside holds what a file keeps beside its entries against what the entries come to.
type beside struct {
	file *store.Store
	a    *audit.Audit
}

func newBeside(file *store.Store, a *audit.Audit) *beside {
	return &beside{file: file, a: a}
}

// after looks at the book after an entry.
func (b *beside) after(uint64) {}

// end compares, and says what came out.
func (b *beside) end(v *verified) {
	v.Snapshot, v.Rows = asideNone, asideNone
}
