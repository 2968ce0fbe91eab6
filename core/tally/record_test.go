package tally_test

import (
	"slices"
	"testing"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
	"example.com/tintline/core/tally"
)

// keys gathers the keys of a walk.
type keys []string

func (k *keys) Text(key string, _ *string)                { *k = append(*k, key) }
func (k *keys) Number(key string, _ *core.Maybe[float64]) { *k = append(*k, key) }
func (k *keys) Area(key string, _ *measure.Area)          { *k = append(*k, key) }
func (k *keys) Volume(key string, _ *measure.Volume)      { *k = append(*k, key) }
func (k *keys) Amount(key string, _ *measure.Amount)      { *k = append(*k, key) }

// TestARecordWalksEveryField: what the table of fields names is what a record holds, in the same order; rate and dilution follow.
func TestARecordWalksEveryField(t *testing.T) {
	var got keys
	(&tally.Record{}).Walk(&got)
	at := 0
	for _, f := range core.RecordFields() {
		if f.Key == "rate" || f.Key == "dilution" {
			continue
		}
		if at >= len(got) || got[at] != f.Key {
			t.Fatalf("the walk has %v at %d, the table %s", got[min(at, len(got)):], at, f.Key)
		}
		at++
		if r := (&tally.Record{}); f.Fill != r.Fill(f.Key, "1") && f.Fill {
			t.Errorf("%s cannot be filled", f.Key)
		}
	}
	if at != len(got) {
		t.Errorf("not in the table: %v", got[at:])
	}
	if cells := (&tally.Record{}).Cells(); !slices.Contains(got, "date") || len(cells) < len(got) {
		t.Errorf("%d cells for %d fields", len(cells), len(got))
	}
}
