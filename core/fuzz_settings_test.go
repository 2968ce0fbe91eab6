package core

import (
	"errors"
	"math"
	"testing"
)

// FuzzSetting: whatever name and value are set, the book refuses them in two sentences and stays as it was, or has a
// value within the limits, kept as it was typed and read back from its line.
func FuzzSetting(f *testing.F) {
	for i, r := range Settings() {
		f.Add(uint8(i), "", r.DefaultText())
	}
	for i, v := range []string{"1e3", "NaN", "-0", "0x1p-2", "inf", " 7", "½", "default", "12-01 to 03-15", "06-31", "\xff", "1/2", "1_0"} {
		f.Add(uint8(17*i), "", v)
	}
	f.Add(uint8(0), "wind_stop", "8")
	f.Fuzz(func(t *testing.T, which uint8, name, value string) {
		rows := Settings()
		row := rows[int(which)%len(rows)]
		if name == "" {
			name = row.Name
		}
		b := NewBook(1)
		was := b.StateDigest()
		es, err := b.Prepare("x", Moment{Unix: 1_790_000_000}, &Setting{name, value})
		if err != nil {
			var p *Problem
			if !errors.As(err, &p) || p.What == "" || p.Do == "" {
				t.Fatalf("%q to %q: %v is no sentence", name, value, err)
			}
			if b.StateDigest() != was {
				t.Fatalf("%q to %q was refused and changed the book", name, value)
			}
			return
		}
		if err := b.Apply(es[0]); err != nil {
			t.Fatalf("%q to %q was admitted and not applied: %v", name, value, err)
		}
		row, known := settingRow(name)
		if text, set := b.SettingText(name); !known || set != (value != DefaultSetting) || set && text != value {
			t.Fatalf("%q to %q is kept as %q, %v", name, value, text, set)
		}
		if v := b.Setting(name); !row.Text && len(row.Options) == 0 && !(v >= row.Low && v <= row.High) || math.IsNaN(v) {
			t.Fatalf("%q to %q is in force as %g; %g to %g is possible", name, value, v, row.Low, row.High)
		}
		again, err := DecodeLine(EncodeLine(es[0], 0))
		if err != nil {
			t.Fatalf("%q to %q is written as a line that is not read: %v", name, value, err)
		}
		if s, ok := again.Fact.(*Setting); !ok || s.SettingName != name || s.Value != value {
			t.Fatalf("%q to %q comes back as %+v", name, value, again.Fact)
		}
	})
}
