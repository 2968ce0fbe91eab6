package core

import "testing"

func TestRefusalsOfTheRecord(t *testing.T) {
	refusals(t, "testdata/refusals_record.tsv", play(t, NewBook(1), setUp), 9)
}

func TestFieldsOfTheRecord(t *testing.T) {
	seen := map[string]bool{}
	for _, f := range RecordFields() {
		if seen[f.Key] || f.Title == "" || f.Key == "" {
			t.Errorf("the field %+v is there twice, or has no name", f)
		}
		seen[f.Key] = true
		if got, ok := RecordFieldOf(f.Title); !ok || got.Key != f.Key {
			t.Errorf("%q is found as %+v", f.Title, got)
		}
	}
}
