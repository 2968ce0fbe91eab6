package core

import "testing"

func TestRefusalsOfPlumbing(t *testing.T) {
	refusals(t, "testdata/refusals_plumbing.tsv", NewBook(1), 26)
}
