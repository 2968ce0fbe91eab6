package check

import (
	"fmt"
	"strings"
	"testing"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
	"example.com/tintline/core/say"
)

const alder = `{"fact":"visit_begun","lawn":"Alder"}
`

func words(facts []core.Fact) string {
	var out []string
	for _, f := range facts {
		out = append(out, say.Fact(f))
	}
	return strings.Join(out, "; ")
}

func proposed(t *testing.T, b *core.Book, act, facts string) Proposal {
	t.Helper()
	p := Propose(b, Intent{At: clock})
	if p.Act != act || words(p.Facts) != facts {
		t.Errorf("proposes %s %q: %s\nwant %s: %s", p.Act, p.Words, words(p.Facts), act, facts)
	}
	return p
}

func TestPartOfAZoneAndTheRestCarriedOver(t *testing.T) {
	b := play(t, loadedLines+hoseOf("a")+alder+`{"fact":"sprayed","lawn":"Alder","zones":["front"],"applicator":"gun","by":"area","area_sqft":3000}`)
	if z := Untreated(b); fmt.Sprint(z) != "[back]" {
		t.Errorf("untreated %v", z)
	}
	if r := fmt.Sprint(RestOf(b)); r != fmt.Sprint([]core.ZoneRest{{Zone: "front", Area: measure.SquareFeet(1000)}, {Zone: "back", Area: measure.SquareFeet(3400)}}) {
		t.Errorf("rest %s", r)
	}
	if s := words(LeaveRest(b, "wind")); s != "carried over: Alder: front 1,000 sq ft, back 3,400 sq ft, wind; left Alder" {
		t.Error(s)
	}
	more(t, b, `{"fact":"sprayed","lawn":"Alder","zones":["back"],"applicator":"gun","by":"area"}`)
	p := proposed(t, b, ActLeave, "left Alder")
	if s := words(p.Else); s != "carried over: Alder: front 1,000 sq ft, part only; left Alder" || p.ElseWords != "leave, and carry over 1,000 sq ft" {
		t.Errorf("%s: %s", p.ElseWords, s)
	}
	log(t, b, LeaveRest(b, "wind")...)
	next := clock
	next.Unix += 24 * 3600
	// Owed lawns come first, then what is left over.
	p = Propose(b, Intent{At: next})
	if open := p.Facts[0].(*core.DayOpened); fmt.Sprint(open.Route) != "[Alder Fir Gum]" {
		t.Errorf("route %v", open.Route)
	}
	log(t, b, p.Facts...)
	// On the road to it, and there, only what is owed is meant: 1,000 sq ft at 1.6 gal (arithmetic).
	for range 2 {
		in := Likely(b, Intent{At: clock})
		if r := before(t, b, in); r.Plan.Area.Text() != "1,000" || r.Plan.Volume.Text() != "1.60" || fmt.Sprint(r.Plan.Zones) != "[front]" {
			t.Errorf("%+v", r.Plan)
		}
		if b.Day().Visiting() == nil {
			more(t, b, alder)
		}
	}
	more(t, b, hoseOf("a"))
	p = Propose(b, Intent{At: clock})
	if p.Act != ActSpray || p.Words != "sprayed 1.60 gal on front" {
		t.Fatalf("%+v", p)
	}
	log(t, b, p.Facts...)
	proposed(t, b, ActLeave, "left Alder")
	if len(b.Owed()) != 0 {
		t.Errorf("%v is owed", b.Owed())
	}
}

func TestWhatIsCarriedOverInAVisitIsNotProposedInIt(t *testing.T) {
	b := play(t, loadedLines+hoseOf("a")+alder+`{"fact":"carried_over","lawn":"Alder","zones":[{"zone":"front","area_sqft":4000}],"reason":"wet"}`)
	if z := Untreated(b); fmt.Sprint(z) != "[back]" {
		t.Errorf("untreated %v", z)
	}
	if r := RestOf(b); len(r) != 1 || r[0].Zone != "back" {
		t.Errorf("rest %v", r)
	}
}

func TestSkipAndCarry(t *testing.T) {
	const skip = "skipped Alder: gate"
	for _, row := range []struct {
		lines string
		carry bool
		want  string
	}{
		{"", false, skip},
		{"", true, skip + "; carried over: Alder, gate"},
		{alder, true, skip + "; carried over: Alder: front 4,000 sq ft, back 3,400 sq ft, gate"},
		{`{"fact":"visit_begun","lawn":"Alder","kind":"look_only"}`, true, skip},
		{
			alder + `{"fact":"sprayed","lawn":"Alder","zones":["front"],"applicator":"gun","by":"area"}`, true,
			"carried over: Alder: back 3,400 sq ft, gate; left Alder",
		},
	} {
		b := play(t, loadedLines+hoseOf("a")+row.lines)
		facts := SkipAndCarry(b, "Alder", "gate", row.carry)
		if s := words(facts); s != row.want {
			t.Errorf("%s\n got %s\nwant %s", row.lines, s, row.want)
		}
		log(t, b, facts...)
		if owed := b.OwedAt("Alder") != nil; owed != strings.Contains(row.want, "carried") {
			t.Errorf("%s owes %v", row.lines, b.Owed())
		}
	}
}

func TestLookOnlyAndSpot(t *testing.T) {
	b := play(t, loadedLines+hoseOf("a")+`{"fact":"visit_begun","lawn":"Alder","kind":"look_only"}`)
	proposed(t, b, ActLeave, "left Alder")
	b = play(t, loadedLines+hoseOf("a")+`{"fact":"gauge_read","compartment":"a","volume_gal":8}
{"fact":"visit_begun","lawn":"Alder","kind":"spot"}`)
	p := proposed(t, b, ActSpray, "") // what is aboard would not do for the lawn, but it need not
	if p.Words != "type the area sprayed on front + back" {
		t.Error(p.Words)
	}
	if r := before(t, b, Intent{Lawn: "Alder", Area: core.Known(measure.SquareFeet(200))}); r.Plan.Volume.Text() != "0.32" { // 1.6 gal per 1,000
		t.Errorf("%+v", r.Plan)
	}
	more(t, b, `{"fact":"sprayed","lawn":"Alder","zones":["back"],"applicator":"gun","by":"area","area_sqft":200}`)
	if p := proposed(t, b, ActLeave, "left Alder"); len(p.Else) != 0 {
		t.Errorf("a spot leaves a rest: %s", words(p.Else))
	}
}

func TestVisitLeftOpenIsEndedWithTheDay(t *testing.T) {
	next := clock
	next.Unix += 24 * 3600
	for _, row := range []struct{ lines, want, route string }{
		{"", "skipped Alder: not ended on 2026-05-28; carried over: Alder: front 4,000 sq ft, back 3,400 sq ft, not ended on 2026-05-28; opened", "[Fir Alder Gum]"},
		{
			`{"fact":"sprayed","lawn":"Alder","zones":["front"],"applicator":"gun","by":"area"}`,
			"carried over: Alder: back 3,400 sq ft, not ended on 2026-05-28; left Alder; opened", "[Fir Alder Gum]",
		},
		{`{"fact":"sprayed","lawn":"Alder","applicator":"gun","by":"area"}`, "left Alder; opened", "[Fir Gum]"},
	} {
		b := play(t, loadedLines+hoseOf("a")+alder+row.lines)
		p := Propose(b, Intent{At: next})
		if p.Act != ActOpenDay || p.Words != "end Alder, open "+next.Date()+"; 2026-05-28 was not closed" || !strings.HasPrefix(words(p.Facts), row.want) {
			t.Errorf("%s %q: %s", p.Act, p.Words, words(p.Facts))
		}
		log(t, b, p.Facts...)
		var route []string
		for _, v := range b.Day().Visits {
			route = append(route, v.Lawn)
		}
		if b.Day().Date != next.Date() || fmt.Sprint(route) != row.route {
			t.Errorf("%s %v", b.Day().Date, route)
		}
	}
}

func TestRouteLeavesOutWhatIsOwedLater(t *testing.T) {
	b := play(t, loadedLines+`{"fact":"routed"}
{"fact":"carried_over","lawn":"Gum","reason":"wet","until":"2026-06-20"}
{"fact":"carried_over","lawn":"Alder","reason":"wet"}`)
	if r := fmt.Sprint(RouteFor(b, "2026-05-29")); r != "[Alder Fir]" {
		t.Error(r)
	}
	if r := fmt.Sprint(RouteFor(b, "2026-06-20")); r != "[Gum Alder Fir]" {
		t.Error(r)
	}
}

func TestHoldIsOfferedWaitsAndEnds(t *testing.T) {
	b := play(t, loadedLines+hoseOf("a")+`{"fact":"weather","wind_mph":12,"wind_from":"W"}`)
	p := Propose(b, Intent{At: clock})
	if p.Act != ActArrived || words(p.Else) != "on hold: wind" || p.ElseWords != "hold the day for wind" {
		t.Fatalf("%+v", p)
	}
	log(t, b, p.Else...)
	if cause, yes := HoldFor(b, clock); yes {
		t.Errorf("a day on hold is to be held for %s", cause)
	}
	p = proposed(t, b, ActHold, "")
	if p.Words != "on hold for wind since 20:26" || p.Why != "An observation of wind of 10 mph or less ends it." || words(p.Else) != "went on after the hold: without a new observation" {
		t.Errorf("%+v", p)
	}
	r := before(t, b, Intent{Lawn: "Alder"})
	f := find(r, "weather")
	if n := len(r.Findings); r.Verdict != Stop || n != 1 || f.Part != PartDay || f.Says != "The day is on hold for wind since 20:26." {
		t.Errorf("%d findings, %+v", n, f)
	}
	more(t, b, `{"fact":"weather","wind_mph":11,"wind_from":"W"}`)
	proposed(t, b, ActHold, "")
	more(t, b, `{"fact":"weather","wind_mph":9,"wind_from":"W"}`)
	p = proposed(t, b, ActHold, "went on after the hold: wind 9 mph")
	if p.Words != "go on: wind 9 mph" {
		t.Error(p.Words)
	}
	log(t, b, p.Facts...)
	proposed(t, b, ActArrived, "arrived at Fir")
	more(t, b, `{"fact":"weather","wind_mph":6,"rain_free_h":1}`)
	if p := Propose(b, Intent{At: clock}); words(p.Else) != "on hold: rain" {
		t.Errorf("%+v", p)
	}
	more(t, b, `{"fact":"held","cause":"rain"}
{"fact":"weather","wind_mph":6}`)
	proposed(t, b, ActHold, "")
	more(t, b, `{"fact":"weather","wind_mph":6,"rain_free_h":6}`)
	proposed(t, b, ActHold, "went on after the hold: no rain for 6 h")
	more(t, b, `{"fact":"held","cause":"a pump belt"}`)
	proposed(t, b, ActHold, "went on after the hold")
}

func TestOldWeatherIsNoReasonToHold(t *testing.T) {
	b := play(t, loadedLines+`{"fact":"weather","wind_mph":12,"wind_from":"W"}`)
	later := clock
	later.Unix += 61 * 60
	if cause, yes := HoldFor(b, later); yes {
		t.Errorf("held for %s", cause)
	}
}

func TestWeatherLimitsAreThoseOfWhatIsLinedUp(t *testing.T) {
	b := play(t, loadedLines+`{"fact":"setting","name":"wind_ask_mph","value":7}`)
	list := func() string {
		var out []string
		for _, l := range WeatherLimits(b) {
			if l.Source == "" || l.Ground == "" {
				t.Errorf("%+v has no source", l)
			}
			out = append(out, strings.TrimSpace(l.Of+" "+l.Says))
		}
		return strings.Join(out, "\n")
	}
	more(t, b, `{"fact":"lined_up","supply":["a"],"return":"a"}`)
	a := list()
	more(t, b, `{"fact":"lined_up","supply":[]}`)
	none := list()
	if !strings.Contains(none, "ask: wind over 7 mph") || !strings.HasPrefix(none, "stop: wind over 10 mph") || !strings.HasSuffix(a, none) || a == none {
		t.Errorf("with a:\n%s\nwith none:\n%s", a, none)
	}
	for _, l := range WeatherLimits(b) {
		if strings.HasPrefix(l.Says, "ask: wind") && l.Source != "set by the operator" {
			t.Errorf("%+v", l)
		}
	}
}
