package core

import "testing"

func TestRefusalsOfMoney(t *testing.T) {
	refusals(t, "testdata/refusals_money.tsv", play(t, NewBook(1), setUp), 7)
}
