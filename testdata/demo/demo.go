// Package demo holds the journal of an invented operator in an invented town, on a morning when three of
// fifteen lawns are done. Products, labels, lawns and people are made up: nothing in it is advice.
package demo

import _ "embed"

// Journal is one fact a line, as for replay: without digests, to be admitted as if typed.
//
//go:embed demo.jsonl
var Journal string
