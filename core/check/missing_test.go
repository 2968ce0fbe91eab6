package check

import (
	"slices"
	"testing"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
)

func missing(b *core.Book) []string {
	var out []string
	for _, m := range StillToEnter(b) {
		out = append(out, m.Product+m.Lawn+m.Zone+": "+m.Field)
		if m.Why == "" {
			out = append(out, "nothing says why")
		}
	}
	return out
}

// relabel enters the next version of a label entry.
func relabel(t *testing.T, b *core.Book, name string, change func(e *label.Entry)) {
	t.Helper()
	p := *b.Product(name)
	change(&p.Label)
	log(t, b, &p)
}

func TestStillToEnter(t *testing.T) {
	b := play(t, rigLines)
	growth := []string{"Firall: growth", "Alderfront: growth", "Alderback: growth", "Gumall: growth"}
	if got := missing(b); !slices.Equal(got, growth) {
		t.Errorf("nothing is aboard: %v", got)
	}
	more(t, b, `{"fact":"loaded","into":"b","volume_gal":100,"mix":"C","for":"gun"}`)
	c1 := []string{"C1: most in a year", "C1: days between", "C1: wind limit", "C1: highest temperature", "C1: rain-free hours"}
	if got := missing(b); !slices.Equal(got, append(c1, growth...)) {
		t.Errorf("one mix is aboard: %v", got)
	}
	more(t, b, `{"fact":"load_planned","into":"c","volume_gal":50,"mix":"I","for":"gun"}`)
	if got := missing(b); !slices.Equal(got, append(c1, growth...)) {
		t.Errorf("iron has all that matters of it: %v", got)
	}
	if got := StillToEnterWords(b); got != "9 figures still to enter for today's 3 visits" {
		t.Error(got)
	}

	// None on the label is entered; so is what the label allows.
	relabel(t, b, "C1", func(e *label.Entry) {
		e.None = []string{label.LimitMostYear, label.LimitDaysBetween, label.LimitTempMax, label.LimitRainFree}
		e.HasWindMax, e.Registration = true, ""
	})
	more(t, b, `{"fact":"growth_seen","lawn":"Alder","growth":"growing","since":"2026-04-10"}
{"fact":"visit_skipped","lawn":"Gum","reason":"gate locked"}
{"fact":"growth_seen","lawn":"Fir","growth":"dormant","since":"2025-11-20"}`)
	if got := missing(b); !slices.Equal(got, []string{"C1: registration", "Firall: growth"}) {
		t.Errorf("%v", got)
	}
	relabel(t, b, "C1", func(e *label.Entry) { e.Registration = "00000-2" })
	more(t, b, `{"fact":"growth_seen","lawn":"Fir","growth":"growing","since":"2026-04-20"}`)
	if got := StillToEnterWords(b); got != "" {
		t.Error(got)
	}

	// What lies in the zones makes more of the label matter.
	fir := *b.Lawn("Fir")
	fir.Zones = []core.Zone{fir.Zones[0]}
	fir.Zones[0].Growth = label.Seeded
	fir.Zones[0].Sites = []core.Site{{Kind: label.SiteWater}, {Kind: label.SiteSeeding}, {Kind: label.SiteBloom, Feet: core.Known(20.0)}}
	log(t, b, &fir)
	want := []string{
		"C1: wait on new turf", "C1: wait before seeding", "C1: strip along water", "C1: bloom",
		"iron: wait on new turf", "iron: wait before seeding", "iron: strip along water", "Firall: feet to the water", "Firall: date of the seeding",
	}
	if got := missing(b); !slices.Equal(got, want) {
		t.Errorf("%v", got)
	}
	relabel(t, b, "iron", func(e *label.Entry) { e.Grasses, e.HasRateHigh, e.Kind = nil, false, "fertiliser" })
	if got := missing(b); !slices.Contains(got, "iron: grasses") || !slices.Contains(got, "iron: highest rate") || !slices.Contains(got, "iron: nitrogen") {
		t.Errorf("%v", got)
	}
	relabel(t, b, "C1", func(e *label.Entry) { e.Grasses = []string{"zoysiagrass"} })
	if got := missing(b); got[0] != "C1: grasses" {
		t.Errorf("it lists no grass of today: %v", got)
	}
	more(t, b, `{"fact":"day_closed"}`)
	if got := missing(b); len(got) != 0 {
		t.Errorf("no visit is ahead: %v", got)
	}
}

// TestOffTheRecord: a herbicide without a registration number stands among what is not checked, a fertiliser does not.
func TestOffTheRecord(t *testing.T) {
	b := play(t, loadedLines+hoseOf("b"))
	const says = "C1: no registration number: the record of it stays incomplete"
	if r := before(t, b, Intent{Lawn: "Fir"}); slices.Contains(r.NotChecked, says) {
		t.Errorf("%v", r.NotChecked)
	}
	relabel(t, b, "C1", func(e *label.Entry) { e.Registration = "" })
	if r := before(t, b, Intent{Lawn: "Fir"}); !slices.Contains(r.NotChecked, says) {
		t.Errorf("%v", r.NotChecked)
	}
	relabel(t, b, "C1", func(e *label.Entry) { e.Kind, e.Actives = "fertiliser", nil })
	if r := before(t, b, Intent{Lawn: "Fir"}); slices.Contains(r.NotChecked, says) {
		t.Errorf("%v", r.NotChecked)
	}
}
