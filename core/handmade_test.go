package core

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
)

func handmadeDay(t *testing.T) *Book {
	t.Helper()
	lines, err := os.ReadFile("../testdata/handmade/day.jsonl")
	if err != nil {
		t.Fatal(err)
	}
	return play(t, NewBook(1), string(lines))
}

// TestHandmadeDay compares a day with figures that were computed outside the program, by closed forms; the
// formulae stand at the head of the file. Volumes to 0.01 gal, amounts to four significant digits.
func TestHandmadeDay(t *testing.T) {
	b := handmadeDay(t)
	rows := handmadeRows(t, "../testdata/handmade/day.csv")
	worst, _ := comparePlaces(t, b, rows, "left/")
	zones, _ := comparePlaces(t, b, rows, "")
	t.Logf("%d places, largest relative difference above traces %.1e", len(rows)-1, max(worst, zones))
	balanced(t, b)
}

// handmadeRows reads a file of figures; the first row names the columns.
func handmadeRows(t *testing.T, name string) [][]string {
	t.Helper()
	f, err := os.Open(name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	return rows
}

// comparePlaces compares the places of the rig whose rows begin with when, or the zones where it is empty. It returns
// the largest relative difference and how many places there were.
func comparePlaces(t *testing.T, b *Book, rows [][]string, when string) (worst float64, places int) {
	t.Helper()
	accounts := map[fluid.Place]fluid.Account{}
	for _, a := range b.Plumbing().Accounts() {
		accounts[a.Place] = a
	}
	for _, row := range rows[1:] {
		place, inside := strings.CutPrefix(row[0], when)
		if when == "" {
			inside = !strings.HasPrefix(place, "left/") && !strings.HasPrefix(place, "pushed/")
			place = "zone/" + place
		}
		if !inside {
			continue
		}
		places++
		a, ok := accounts[fluid.Place(place)]
		if !ok {
			t.Errorf("there is no account %s", place)
		}
		if want := number(t, row[1]); math.Abs(a.Volume.Gallons()-want) > 0.005 {
			t.Errorf("%s holds %.4f gal, not %.4f", place, a.Volume.Gallons(), want)
		}
		for i, name := range rows[0][2:] {
			key, _ := b.ProductKey(name)
			unit := "fl_oz"
			if b.Product(name).Label.Form == measure.Dry {
				unit = "oz"
			}
			got, err := measure.Amount{N: a.Products.Of(key), Kind: b.Product(name).Label.Form}.In(unit)
			if err != nil {
				t.Fatal(err)
			}
			want := number(t, row[2+i])
			if want > 0.01 {
				worst = max(worst, math.Abs(got/want-1))
			}
			// Half of the fourth significant digit; for a trace 60 nL, because each of some 300 parcels that pass
			// is rounded to the unit.
			digit := 0.0
			if want > 0 {
				digit = 0.5 * math.Pow(10, math.Floor(math.Log10(want))-3)
			}
			if trace := measure.Volume(60).FluidOunces(); math.Abs(got-want) > max(digit, trace) {
				t.Errorf("%s holds %.7g %s of %s, not %.7g", place, got, unit, name, want)
			}
		}
	}
	return worst, places
}

func number(t *testing.T, s string) float64 {
	t.Helper()
	f, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// TestOneJournalOneState holds the digest of what the handmade day says. It must be the same on every
// processor and in every version that reads flow model 1; run it with GOAMD64=v3 and on arm64 too, which fuse
// products and sums. When it changes, a day that was booked would be booked otherwise: that needs a new flow
// model, unless the digest itself was given more to say.
func TestOneJournalOneState(t *testing.T) {
	b := handmadeDay(t)
	for what, row := range map[string][2]string{
		"state":    {b.StateDigest().String(), "d0a7ca6e01d9c3a9ed677ba09154551f"},
		"accounts": {b.AccountsDigest().String(), "2e2f28c79ebb89bf19222453514d5aec"},
		"journal":  {b.Digest().String(), "4dc815614de833fd2f205ce66ce6d4ea"},
	} {
		if row[0] != row[1] {
			t.Errorf("the digest of the %s is %s, and was %s", what, row[0], row[1])
		}
	}
}
