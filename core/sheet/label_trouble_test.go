package sheet

import (
	"encoding/csv"
	"errors"
	"strings"
	"testing"

	"example.com/tintline/core"
)

// TestWhatIsWrongWithACell: one bad cell in each column of a label, a zone and a mix says what is wrong and what may stand there.
func TestWhatIsWrongWithACell(t *testing.T) {
	product := map[string]string{"name": "p", "form": "liquid"}
	lawn := map[string]string{"lawn": "x", "zone": "front", "grass": "tall fescue", "area_sqft": "5000"}
	mix := map[string]string{"mix": "m", "product": "example iron 5", "rate": "4 fl oz per 1000 sqft"}
	seen := map[string]bool{}
	for _, r := range []struct {
		kind                        string
		row                         map[string]string
		column, cell, what, allowed string
	}{
		{Products, product, "kind", "a\nb", "control character", "on one line"},
		{Products, product, "registration", strings.Repeat("9", 2001), "2001 letters", "up to 2000"},
		{Products, product, "signal", "cautoin", "is not known here", "danger, warning, caution or none"},
		{Products, product, "mixing_order", "before glue: stir", "is no step of filling a tank", "or before, after or with a step"},
		{Products, product, "restricted", "perhaps", "is not known here", "yes or no"},
		{Products, product, "sites", "a\nb", "control character", "semicolons"},
		{Products, product, "rate_low", "nothing", "does not begin with a number", "or none where the label has no such limit"},
		{Products, product, "rate_high", "4 lb per acre", "is a weight", "both units"},
		{Products, product, "rates", "tall fescue 4 fl oz per acre", "has no colon", "a colon and their rates"},
		{Products, product, "rates", "tal fescue: 4 fl oz per acre", "is not a known grass", "a colon and their rates"},
		{Products, product, "rates", "all_turf: 4 fl oz per acre", "is not a known grass", "a colon and their rates"},
		{Products, product, "rates", "tall fescue: 4 to 8 fl oz", "names no area", "a colon and their rates"},
		{Products, product, "rates", "tall fescue: 4 to 8 lb per acre", "is a weight", "a colon and their rates"},
		{Products, product, "rates", "tall fescue:", "gives no rate", "a colon and their rates"},
		{Products, product, "most_application", "4 fl oz", "names no area", "both units"},
		{Products, product, "most_year", "0 fl oz per acre", "must be more than 0", "both units"},
		{Products, product, "most_times", "0", "out of range: 1 to 366", "1 to 366 (times), or none"},
		{Products, product, "year_days", "none", "is no number", "1 to 1000 (days)"},
		{Products, product, "days_between", "three weeks", "is no number", "0 to 1000 (days)"},
		{Products, product, "days_between", "3 weeks", `"weeks" is no unit here; a figure stands for days`, "0 to 1000 (days)"},
		{Products, product, "days_between", "1001", "out of range: 0 to 1000", "0 to 1000 (days)"},
		{Products, product, "wind_max_mph", "10 gal", "is a volume", "0 to 100 mph"},
		{Products, product, "temp_max_f", "131", "out of range: -20 to 130", "-20 to 130 (F), or none"},
		{Products, product, "temp_min_f", "10 C", "is no unit here", "-20 to 130 (F)"},
		{Products, product, "rain_free_h", "241 h", "out of range: 0 to 240", "0 to 240 (h)"},
		{Products, product, "no_inversion", "x", "is not known here", "yes or no"},
		{Products, product, "first_aid", "a\nb", "control character", "on one line"},
		{Products, product, "emergency_phone", "a\nb", "control character", "on one line"},
		{Products, product, "reentry", "a\nb", "control character", "on one line"},
		{Products, product, "reseed_days", "-1", "out of range", "0 to 1000 (days)"},
		{Products, product, "new_turf_days", "60 h", "is no unit here", "0 to 1000 (days)"},
		{Products, product, "water_ft", "5001", "out of range", "0 to 5000 (ft)"},
		{Products, product, "no_bloom", "none", "is not known here", "yes or no"},
		{Products, product, "mixing_class", "s\tc", "control character", "on one line"},
		{Products, product, "price_usd", "free", "does not begin with a number", "0 to 100,000 dollars"},
		{Products, product, "package", "2.5", "has no unit", "2.5 gal or 50 lb"},
		{Products, product, "package", "50 lb", "is a weight", "2.5 gal or 50 lb"},
		{Products, product, "package", "0 gal", "out of range", "2.5 gal or 50 lb"},
		{Products, product, "package", "10001 gal", "out of range", "2.5 gal or 50 lb"},
		{Products, product, "nitrogen_pct", "101", "out of range", "0 to 100 (%)"},
		{Products, product, "phosphate_pct", "none", "is no number", "0 to 100 (%)"},
		{Products, product, "potash_pct", "-1", "out of range", "0 to 100 (%)"},
		{Products, product, "quick_nitrogen_pct", "200%", "out of range", "0 to 100 (%)"},
		{Products, product, "density_lb_per_gal", "0", "is no weight of a gallon", "up to 20 (lb/gal)"},
		{Products, product, "actives", "2,4-D 3.8 lb/gal most 3 lb", "names no area", "most 0.5 lb per acre per year"},
		{Products, product, "actives", "2,4-D 3.8 lb/gal most 3 pt per acre", "is a volume", "most 0.5 lb per acre per year"},
		{Products, product, "grasses", "turf", "is not a known grass", "all_turf, or some of"},
		{Products, product, "form", "wet", "is not known here", "liquid or dry"},
		{Products, product, "name", "a/b", "slash", "without a slash"},
		{Lawns, lawn, "known_since", "last year", "is not a date", "2026-05-28"},
		{Lawns, lawn, "growth", "asleep", "is not known here", "growing, greening_up, dormant"},
		{Lawns, lawn, "growth_since", "2026-02-30", "is not a date", "2026-05-28"},
		{Lawns, lawn, "cultivar", "a\nb", "control character", "on one line"},
		{Lawns, lawn, "sites", "pond", "is no kind of site", "water, well, edible"},
		{Lawns, lawn, "sites", "water 20 yards", "is no kind of site", "water 20 ft"},
		{Lawns, lawn, "sites", "water 5001 ft", "out of range", "water 20 ft"},
		{Lawns, lawn, "sites", "seeding 2026-13-01", "is not a date", "seeding 2026-09-10"},
		{Lawns, lawn, "latitude", "91", "out of range", "-90 to 90 (degrees)"},
		{Lawns, lawn, "longitude", "west", "is no number", "-180 to 180 (degrees)"},
		{Lawns, lawn, "round_days", "6", "out of range", "7 to 366 (days)"},
		{Lawns, lawn, "window_from", "9 am", "is no time of day", "such as 09:30"},
		{Lawns, lawn, "window_to", "25:00", "is no time of day", "such as 09:30"},
		{Lawns, lawn, "mix", "a/b", "slash", "without a slash"},
		{Mixes, mix, "for", "spring", "is not known here", "first_visits or once_a_year"},
		{Mixes, mix, "target", "a\nb", "control character", "on one line"},
	} {
		seen[r.kind+" "+r.column] = true
		var head, cells []string
		for k, v := range r.row {
			if k != r.column {
				head, cells = append(head, k), append(cells, v)
			}
		}
		var src strings.Builder
		c := csv.NewWriter(&src)
		_ = c.Write(append(head, r.column))
		_ = c.Write(append(cells, r.cell))
		c.Flush()
		_, err := Read(r.kind, "f.csv", []byte(src.String()), filledBook(t))
		var one *Trouble
		if !errors.As(err, &one) {
			t.Errorf("%s %q: read, or refused as %v", r.column, r.cell, err)
			continue
		}
		if one.Line != 2 || one.Column != r.column || !strings.Contains(one.What, r.what) || !strings.Contains(one.Allowed, r.allowed) {
			t.Errorf("%s %q: %+v", r.column, r.cell, one)
		}
		if err := Check(r.kind, r.column, r.cell); err == nil && r.what != "is a weight" {
			t.Errorf("%s %q: a form takes it", r.column, r.cell)
		}
	}
	for _, c := range Columns(Products) {
		if !seen[Products+" "+c.Name] {
			t.Errorf("no bad cell stands for %s", c.Name)
		}
	}
}

// TestUnknownActives: a name that the reference does not have lists the nearest that it has, and how to enter it all the same.
func TestUnknownActives(t *testing.T) {
	row := map[string]string{"name": "p", "form": "liquid", "actives": "mesotrion 4 lb/gal"}
	_, err := Row(Products, row, nil)
	var one *Trouble
	if !errors.As(err, &one) || !strings.Contains(one.What, `"mesotrion" is no active that the reference knows; one that it does not have is written as own: mesotrion`) ||
		!strings.HasPrefix(one.Nearest, "mesotrione") || len(strings.Split(one.Nearest, ", ")) > 3 {
		t.Errorf("%+v (%v)", one, err)
	}
	row["actives"] = "OWN: mesotrion 4 lb/gal; 2,4-D 5%; nitrogen 3%"
	f, err := Row(Products, row, nil)
	if err != nil {
		t.Fatal(err)
	}
	cells := Cells(product(f))
	if a := product(f).Label.Actives; len(a) != 3 || a[0].Name != "mesotrion" || a[0].PoundsPerGallon != 4 || cells["actives"] != "own: mesotrion 4 lb/gal; 2,4-D 5%; nitrogen 3%" {
		t.Errorf("%+v %q", a, cells["actives"])
	}
}

func product(f core.Fact) *core.Product { return f.(*core.Product) }
