package yard

import (
	"slices"
	"strings"
	"testing"

	"example.com/tintline/core"
)

func TestReadPins(t *testing.T) {
	b := core.NewBook(1)
	for _, name := range []string{"418 Alder Court", "77 Fir Lane", "77 Fir Way"} {
		entries, err := b.Prepare("", core.Moment{}, &core.Lawn{LawnName: name, Zones: []core.Zone{{Name: "all", Grass: "tall_fescue", Area: 1e9}}})
		if err != nil {
			t.Fatal(err)
		}
		if err := b.Apply(entries[0]); err != nil {
			t.Fatal(err)
		}
	}
	for _, tt := range []struct{ said, want string }{
		{"418 alder court", "418 Alder Court keeps its place"},
		{"418", "418 Alder Court keeps its place"},
		{"77 Fir Lane 9:00", "77 Fir Lane begins at 09:00 or later"},
		{"77 fir l 9:00 11:30", "77 Fir Lane begins from 09:00 to 11:30"},
		{"77 Fir", "!2 lawns begin with"},
		{"9:00", "!No lawn is named."},
		{"12 Elm", "!There is no lawn \"12 Elm\" in the book."},
		{"418 11:00 9:00", "!418 Alder Court would have to begin between 11:00 and an earlier time."},
	} {
		p, err := ReadPin(b, tt.said)
		got := p.Says()
		if err != nil {
			got = "!" + err.Error()
		}
		if got != tt.want && (!strings.HasPrefix(tt.want, "!") || !strings.HasPrefix(got, tt.want)) {
			t.Errorf("%q is %q, not %q", tt.said, got, tt.want)
		}
	}
	one, two := DayPin{Lawn: "418 Alder Court"}, DayPin{Lawn: "418 Alder Court", From: core.Known(540.0)}
	if got := Pin(Pin(nil, one), one); len(got) != 0 {
		t.Errorf("named twice: %+v", got)
	}
	if got := Pin(Pin(nil, one), two); !slices.Equal(got, []DayPin{two}) {
		t.Errorf("with a time: %+v", got)
	}
}

// TestAPinnedDayKeepsItsOrder: the day by hand, whose best order saves two changeovers, with each visit pinned saves nothing.
func TestAPinnedDayKeepsItsOrder(t *testing.T) {
	b := play(t, fiveLawns)
	free := planOf(t, b)
	var pins []DayPin
	for _, v := range free.Given.Stops {
		pins = Pin(pins, DayPin{Lawn: v.Lawn})
	}
	p, err := PlanDay(b, DayAsk{At: clock, Pins: pins})
	if err != nil {
		t.Fatal(err)
	}
	if p.Better || p.Best.Changeovers != p.Given.Changeovers || !free.Better || len(p.Notes) < len(pins) {
		t.Errorf("%+v saves %+v", pins, p.Saves)
	}
}
