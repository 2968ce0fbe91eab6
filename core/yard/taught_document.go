package yard

import (
	"fmt"
	"strings"

	"example.com/tintline/core"
)

// Document is what gauges teach, for a script.
func (t Teaching) Document() map[string]any {
	applicators, tanks, read := []map[string]any{}, []map[string]any{}, []map[string]any{}
	for i := range t.Applicators {
		applicators = append(applicators, t.Applicators[i].document())
	}
	for _, e := range t.Tanks {
		tanks = append(tanks, map[string]any{
			"compartment": string(e.Letter), "booked_gal": e.Booked.Gallons(), "expected_gal": e.Expected.Gallons(), "sd_gal": e.SD.Gallons(),
		})
	}
	for _, r := range t.Readings {
		read = append(read, map[string]any{
			"compartment": string(r.Letter), "at": r.At.String(), "booked_gal": r.Booked.Gallons(), "read_gal": r.Read.Gallons(), "off_gal": r.Off().Gallons(),
		})
	}
	return map[string]any{"applicators": applicators, "expected": tanks, "readings_today": read}
}

func (t *TaughtOf) document() map[string]any {
	out := map[string]any{
		"applicator": t.Applicator, "verdict": t.Verdict, "readings": t.Readings, "readings_odd": t.Odd, "readings_needed": t.Needed, "used": t.Enough,
		"ratio": nil, "ratio_sd": nil, "counted_gal_per_1000_sqft": t.Delivery.GalPer1000(), "lays_gal_per_1000_sqft": nil,
		"says": t.Says, "means": t.Means, "test": t.Test,
	}
	if t.Readings > 0 {
		out["ratio"], out["ratio_sd"] = t.Ratio, t.SD
	}
	if t.Lays.Known {
		out["lays_gal_per_1000_sqft"] = t.Lays.V.GalPer1000()
	}
	working := []string{}
	for _, s := range t.Steps {
		working = append(working, s.Says)
	}
	out["working"] = working
	return out
}

// Text is what gauges teach, as people read it.
func (t Teaching) Text() string {
	var w strings.Builder
	w.WriteString("What the gauge teaches\n")
	for i := range t.Applicators {
		a := &t.Applicators[i]
		fmt.Fprintf(&w, "%s\n  %s\n", a.Applicator, a.Says)
		for _, s := range a.Means {
			fmt.Fprintf(&w, "  %s\n", s)
		}
		fmt.Fprintf(&w, "  %s\n", a.Test)
	}
	if len(t.Applicators) == 0 {
		w.WriteString("  the rig has no applicator that sprays and has a delivery rate\n")
	}
	for _, e := range t.Tanks {
		fmt.Fprintf(&w, "%s\n", e.Says())
	}
	for _, r := range t.Readings {
		fmt.Fprintf(&w, "%s\n", ReadingSays(r))
	}
	for i := range t.Applicators {
		for n, s := range t.Applicators[i].Steps {
			if n == 0 {
				fmt.Fprintf(&w, "working, %s\n", t.Applicators[i].Applicator)
			}
			fmt.Fprintf(&w, "  %s\n", s.Says)
		}
	}
	w.WriteString(GiveOrTake + "\n")
	return w.String()
}

// GiveOrTake says what it is.
const GiveOrTake = "Give or take is one standard deviation: it holds about two times in three."

// ReadingSays is a reading of the day in one line.
func ReadingSays(r core.Reading) string {
	switch off := r.Off(); {
	case off > 0:
		return fmt.Sprintf("%c read %s at %s, %s more than booked", r.Letter, gallons(r.Read), r.At.Clock(), gallons(off))
	case off < 0:
		return fmt.Sprintf("%c read %s at %s, %s less than booked", r.Letter, gallons(r.Read), r.At.Clock(), gallons(-off))
	}
	return fmt.Sprintf("%c read %s at %s, as booked", r.Letter, gallons(r.Read), r.At.Clock())
}
