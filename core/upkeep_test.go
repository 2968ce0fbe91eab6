package core

import "testing"

func TestRefusalsOfUpkeep(t *testing.T) {
	refusals(t, "testdata/refusals_upkeep.tsv", play(t, NewBook(1), setUp), 13)
}
