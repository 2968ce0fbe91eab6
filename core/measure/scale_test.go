package measure

import (
	"math/big"
	"testing"

	"pgregory.net/rapid"
)

func TestReadFigure(t *testing.T) {
	for _, row := range []struct{ text, want string }{
		{"7", "7"},
		{" 7.50 ", "15/2"},
		{"1/4", "1/4"},
		{"7 1/2", "15/2"},
		{"1,250", "1250"},
		{"0", "0"},
		{"", ""},
		{"full", ""},
		{"7 in", ""},
		{"-1", ""},
		{"1/0", ""},
		{"1e3", ""},
		{"NaN", ""},
		{"1 2", ""},
		{"11111111111111111111111111111111111111111111111111111111111111111", ""},
	} {
		got := ""
		if r, ok := ReadFigure(row.text); ok {
			got = r.RatString()
		}
		if got != row.want {
			t.Errorf("%q is read as %q, not %q", row.text, got, row.want)
		}
	}
}

func TestBetween(t *testing.T) {
	for _, row := range []struct {
		at, low, high string
		from, to      Volume
		want          Volume
		ok            bool
	}{
		{"3", "2", "4", 100, 200, 150, true}, // arithmetic
		{"2", "2", "4", 100, 200, 100, true},
		{"4", "2", "4", 100, 200, 200, true},
		{"1/3", "0", "1", 0, 100, 33, true},
		{"1/2", "0", "1", 0, 1, 0, true}, // half to even
		{"1/2", "0", "1", 0, 3, 2, true},
		{"5", "2", "4", 100, 200, 0, false},
		{"1", "2", "4", 100, 200, 0, false},
		{"2", "2", "2", 100, 200, 0, false},
	} {
		at, _ := ReadFigure(row.at)
		low, _ := ReadFigure(row.low)
		high, _ := ReadFigure(row.high)
		if v, ok := Between(at, low, high, row.from, row.to); v != row.want || ok != row.ok {
			t.Errorf("%s of %s to %s: %d %v, not %d %v", row.at, row.low, row.high, v, ok, row.want, row.ok)
		}
	}
}

// A higher mark never means less, and nothing lies outside the two volumes.
func TestBetweenRises(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		figure := func(what string) *big.Rat {
			return big.NewRat(rapid.Int64Range(0, 1e9).Draw(t, what), rapid.Int64Range(1, 1e4).Draw(t, what+" below"))
		}
		low, high, at, other := figure("low"), figure("high"), figure("at"), figure("other")
		from := Volume(rapid.Int64Range(0, 1e15).Draw(t, "from"))
		to := from + Volume(rapid.Int64Range(0, 1e15).Draw(t, "rise"))
		v, ok := Between(at, low, high, from, to)
		w, also := Between(other, low, high, from, to)
		if ok && (v < from || v > to) {
			t.Fatalf("%d is not between %d and %d", v, from, to)
		}
		if ok && also && at.Cmp(other) <= 0 && v > w {
			t.Fatalf("%v gives %d, %v gives %d", at, v, other, w)
		}
	})
}
