package main

import (
	"encoding/json"
	"fmt"
)

// warn says on standard error what is not right with a book that was opened all the same: one of its two heads is
// damaged, and its last action may be missing.
func (a *app) warn(k *keptBook) {
	if k.file == nil {
		return
	}
	switch w := k.file.Warning(); {
	case w == "":
	case a.flags.json:
		enc := json.NewEncoder(a.stderr)
		enc.SetEscapeHTML(false)
		_ = enc.Encode(struct {
			Warning string `json:"warning"`
		}{w})
	default:
		_, _ = fmt.Fprintln(a.stderr, w)
	}
}
