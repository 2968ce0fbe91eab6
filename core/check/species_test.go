package check

import (
	"encoding/csv"
	"fmt"
	"os"
	"strings"
	"testing"

	"example.com/tintline/core"
)

// species.csv holds what published tables and pages say of an active on a grass, read from them and not through the
// reader of the reference: the pre-emergence table of the University of Tennessee (2015) row by row, pages of Georgia,
// Florida, Mississippi State and Arkansas, and whatever source that was read calls a grass not tolerant. Where another source is stricter, its id (or that it was recalled) and the
// weight stand in the last two columns. How the turf stands and how the product goes down are those of which the row speaks.
func speciesRows(t *testing.T) [][]string {
	t.Helper()
	file, err := os.Open("testdata/species.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	return rows[1:]
}

// listedFor is a book with a product of these actives that is listed for all turf, on a lawn of a grass.
func listedFor(t *testing.T, actives, grass, growth, form string) *core.Book {
	t.Helper()
	var list []string
	for _, a := range strings.Split(actives, " + ") {
		list = append(list, fmt.Sprintf(`{"name":%q}`, a))
	}
	zone := fmt.Sprintf(`,"growth":%q,"growth_since":"2026-05-20"`, growth)
	lines := strings.Replace(lawnOf("X", grass, zone, "2026-05-28"), `{"name":"X"}`, strings.Join(list, ","), 1)
	if form == "spread" {
		lines = strings.NewReplacer(
			`{"name":"ride-on","kind":"ride_on","hose":"h","tank_gal":200,"delivery_gal_per_1000_sqft":1}`, `{"name":"ride-on","kind":"spreader","hopper_lb":100}`,
			`"form":"liquid"`, `"form":"dry"`, "rate_low_fl_oz", "rate_low_lb", "rate_high_fl_oz", "rate_high_lb",
			`"volume_gal":100,"parts":[{"product":"P","amount_fl_oz":100}]`, `"parts":[{"product":"P","amount_lb":50}]`,
		).Replace(lines)
	}
	return play(t, lines)
}

func TestPublishedTablesThroughTheCheck(t *testing.T) {
	tennessee, warned := 0, 0
	for _, row := range speciesRows(t) {
		active, grass, rating, growth, form, source, stricter, weight := row[0], row[1], row[2], row[3], row[4], row[5], row[6], row[7]
		if source == "UT-PRE15" {
			tennessee++
		}
		low, high := None, None
		switch rating {
		case "moderate":
			low, high = Note, Note
		case "not_tolerant":
			low, high = Ask, Ask
		case "dormant_only":
			high = None
		}
		if stricter != "" {
			low = map[string]Weight{"note": Note, "ask": Ask, "stop": Stop}[weight]
			high = low
		}
		name := fmt.Sprintf("%s on %s (%s, %s, %s)", active, grass, rating, growth, source)
		f := find(before(t, listedFor(t, active, grass, growth, form), Intent{Lawn: "L", With: "ride-on"}), "grass")
		got := None
		if f != nil {
			got = f.Weight
		}
		if got < low || got > high {
			t.Errorf("%s: %v, want %v to %v: %+v", name, got, low, high, f)
			continue
		}
		if got >= Ask {
			warned++
			if !strings.HasPrefix(f.Source, "label entry of P, 00000-9; ") || len(f.Source) < len("label entry of P, 00000-9; ")+10 || !strings.Contains(f.Says, "the label entry lists it; the reference") || f.Ground == GroundRecalled {
				t.Errorf("%s: %s | %s", name, f.Says, f.Source)
			}
		}
		if stricter != "" && !strings.Contains(f.Says, stricter) {
			t.Errorf("%s: %s does not stand in %s", name, stricter, f.Says)
		}
		if rating == "dormant_only" {
			f := find(before(t, listedFor(t, active, grass, "growing", form), Intent{Lawn: "L", With: "ride-on"}), "grass")
			if f == nil || f.Weight != Ask {
				t.Errorf("%s, on growing turf: %+v", name, f)
			}
		}
	}
	if tennessee != 35 || warned < 150 {
		t.Errorf("%d rows of Tennessee, %d warnings", tennessee, warned)
	}
}
