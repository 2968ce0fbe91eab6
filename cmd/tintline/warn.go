package main

import (
	"encoding/json"
	"fmt"
	"slices"
)

// warn says on standard error what is not right with a book that was opened all the same: one of its two heads is
// damaged, and its last action may be missing, or what stands beside it needs a word.
func (a *app) warn(k *keptBook) {
	if k.file() != nil {
		a.warning(k.file().Warning())
	}
	for _, w := range k.attendant.says() {
		a.warning(w)
	}
}

// warnOfLines says at the end that the lines beside the book could not be written; the entries are in it all the same.
func (a *app) warnOfLines(k *keptBook) {
	if err := k.attendant.lines.trouble(); err != nil {
		f := explain(err)
		a.warning(f.what + " " + f.do)
	}
}

func (a *app) warning(w string) {
	if w == "" || slices.Contains(a.warned, w) {
		return
	}
	a.warned = append(a.warned, w)
	if !a.flags.json {
		_, _ = fmt.Fprintln(a.stderr, w)
		return
	}
	enc := json.NewEncoder(a.stderr)
	enc.SetEscapeHTML(false)
	_ = enc.Encode(struct {
		Warning string `json:"warning"`
	}{w})
}
