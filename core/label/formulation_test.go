package label

import "testing"

func TestFormulations(t *testing.T) {
	for _, row := range []struct {
		letters string
		settles bool
		known   bool
	}{
		{"wg", true, true},
		{"WP", true, true},
		{" 75 DF ", true, true},
		{"sc", true, true},
		{"f", true, true},
		{"ec", false, true},
		{"SL", false, true},
		{"adjuvant", false, true},
		{"", false, false},
		{"xyz", false, false},
		{"75", false, false},
	} {
		if f, ok := FindFormulation(row.letters); ok != row.known || f.Settles != row.settles {
			t.Errorf("%q: %+v %v", row.letters, f, ok)
		}
	}
	for letters, f := range formulations {
		if f.Words == "" || f.Source == "" || f.Letters != letters {
			t.Errorf("%+v", f)
		}
	}
	for i, r := range readCSV("formulations.csv", formulationsCSV) {
		if r[2] != Yes && r[2] != No {
			t.Errorf("row %d says %q", i+2, r[2])
		}
	}
	if rows := readCSV("formulations.csv", formulationsCSV); len(rows) != len(formulations) {
		t.Errorf("%d rows, %d formulations: one stands twice", len(rows), len(formulations))
	}
}
