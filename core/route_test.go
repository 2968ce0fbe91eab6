package core

import (
	"slices"
	"strings"
	"testing"

	"example.com/tintline/core/measure"
	"pgregory.net/rapid"
)

// route draws a fact about the visits of the day.
func (g *anyFact) route(kind Kind) Fact {
	switch kind {
	case kindVisitBegun:
		f := &VisitBegun{Lawn: g.lawn(), Type: g.pick("kind", "", "", Round, First, Spot, LookOnly, CallBack)}
		if rapid.Bool().Draw(g.t, "cause") {
			f.Cause = "brown ring"
		}
		if rapid.IntRange(0, 2).Draw(g.t, "arrived") == 0 {
			at := g.b.LastAt()
			at.Unix -= rapid.Int64Range(-1, 10).Draw(g.t, "minutes") * 60
			f.Arrived = at.Clock()
		}
		return f
	case kindRouted:
		return &Routed{rapid.SliceOfN(rapid.SampledFrom([]string{"L1", "L2"}), 0, 2).Draw(g.t, "lawns")}
	case kindCarriedOver:
		f := &CarriedOver{Lawn: g.lawn(), Reason: g.pick("reason", "wind", ""), Until: g.pick("until", "", "", "2026-06-01", "2099-01-01")}
		for _, z := range g.zones() {
			f.Zones = append(f.Zones, ZoneRest{z, measure.Area(rapid.Int64Range(-1, 3e8).Draw(g.t, "rest"))})
			if rapid.IntRange(0, 5).Draw(g.t, "none") == 0 {
				f.Zones[len(f.Zones)-1].Area = 0
			}
		}
		return f
	case kindHeld:
		return &Held{g.pick("cause", "wind", "rain", "")}
	case kindResumed:
		return &Resumed{"it dropped"}
	}
	return &Noted{g.lawn(), g.pick("text", "gate sticks", "dog is in at ten", "")}
}

// planned lists the lawns still planned, and how many visits there are of each lawn.
func planned(d *Day) (next []string, of map[string]int) {
	of = map[string]int{}
	for _, v := range d.Visits {
		of[v.Lawn]++
		if v.State == Planned {
			next = append(next, v.Lawn)
		}
	}
	return next, of
}

// visitsKept: no visit is lost or doubled by what only orders, carries over or ends them.
func visitsKept(t rapid.TB, was Day, is *Day, f Fact) {
	t.Helper()
	before, of := planned(&was)
	after, now := planned(is)
	switch f := f.(type) {
	case *Routed:
		if !slices.Equal(after, f.Lawns) {
			t.Fatalf("the route is %v and %v is planned", f.Lawns, after)
		}
		ended := slices.DeleteFunc(was.Visits, func(v Visit) bool { return v.State == Planned })
		if n := len(is.Visits) - len(after); n != len(ended) || !slices.EqualFunc(ended, is.Visits[:n], func(a, b Visit) bool { return a.Lawn == b.Lawn && a.State == b.State }) {
			t.Fatalf("a new route changed what was begun or ended: %v to %v", ended, is.Visits)
		}
	case *CarriedOver, *VisitSkipped, *VisitDone:
		if len(was.Visits) != len(is.Visits) || len(before)-len(after) > 1 {
			t.Fatalf("%s made %v of %v", f.Name(), is.Visits, was.Visits)
		}
	case *VisitBegun:
		if more := len(is.Visits) - len(was.Visits); more > 1 || (more == 1) == slices.Contains(before, f.Lawn) || now[f.Lawn] < of[f.Lawn] {
			t.Fatalf("beginning %s made %v of %v", f.Lawn, is.Visits, was.Visits)
		}
	}
}

// owedSound: what is owed is more than 0 and no more than the zone has, each lawn and zone once.
func owedSound(t rapid.TB, b *Book) {
	t.Helper()
	lawns := map[string]bool{}
	for _, o := range b.Owed() {
		if lawns[o.Lawn] || len(o.Zones) == 0 {
			t.Fatalf("%s is owed twice or not at all: %v", o.Lawn, b.Owed())
		}
		lawns[o.Lawn] = true
		zones := map[string]bool{}
		for _, r := range o.Zones {
			z, ok := b.Lawn(o.Lawn).Zone(r.Zone)
			if !ok || zones[r.Zone] || r.Area <= 0 || r.Area > z.Area {
				t.Fatalf("%s %s owes %d of %d", o.Lawn, r.Zone, r.Area, z.Area)
			}
			zones[r.Zone] = true
		}
	}
}

const twoLawns = `{"fact":"day_closed"}
{"fact":"day_opened","date":"2026-05-29","operator":"R. Example","route":["418 Alder","77 Fir"]}`

// at enters lines at a time of day.
func at(t *testing.T, b *Book, clock string, lines ...string) {
	t.Helper()
	when, err := ParseMoment("2026-05-29T" + clock + "-05:00")
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range lines {
		l, err := DecodeLine([]byte(s))
		if err != nil {
			t.Fatal(err)
		}
		es, err := b.Prepare("", when, l.Fact)
		if err != nil {
			t.Fatalf("%s\n%v", s, err)
		}
		for _, e := range es {
			if err := b.Apply(e); err != nil {
				t.Fatal(err)
			}
		}
	}
}

func refusedAt(t *testing.T, b *Book, clock, line, says string) {
	t.Helper()
	when, _ := ParseMoment("2026-05-29T" + clock + "-05:00")
	l, err := DecodeLine([]byte(line))
	if err != nil {
		t.Fatal(err)
	}
	if _, err := b.Prepare("", when, l.Fact); err == nil || !strings.Contains(err.Error(), says) {
		t.Errorf("%s\nsays %v and should say %q", line, err, says)
	}
}

func TestVisitBeginsWhenTheOperatorArrived(t *testing.T) {
	b := play(t, NewBook(1), setUp+`{"fact":"day_closed"}`)
	at(t, b, "08:00:30", `{"fact":"day_opened","date":"2026-05-29","operator":"R. Example","route":["418 Alder","77 Fir"]}`)
	refusedAt(t, b, "09:42:10", `{"fact":"visit_begun","lawn":"77 Fir","arrived":"09:43"}`, "Arrived at 09:43 would be later than now, 09:42.")
	refusedAt(t, b, "09:42:10", `{"fact":"visit_begun","lawn":"77 Fir","arrived":"07:59"}`, "before the day was opened, at 08:00")
	refusedAt(t, b, "09:42:10", `{"fact":"visit_begun","lawn":"77 Fir","arrived":"25:00"}`, `"25:00" is no time of day.`)
	refusedAt(t, b, "09:42:10", `{"fact":"visit_begun","lawn":"77 Fir","kind":"party"}`, `"party" is no kind of visit.`)
	refusedAt(t, b, "09:42:10", `{"fact":"visit_begun","lawn":"77 Fir","kind":"call_back"}`, "The call-back at 77 Fir has no cause.")
	// The spraying was logged before the arrival was, but happened after it.
	at(t, b, "09:40:00", `{"fact":"sprayed","lawn":"77 Fir","applicator":"gun","by":"area"}`)
	at(t, b, "09:42:10", `{"fact":"visit_begun","lawn":"77 Fir","kind":"first","arrived":"9:35"}`)
	v := b.Day().Visiting()
	if v.Begun.Clock() != "09:35" || v.Kind != First || len(b.Day().LaidAt(v)) != 1 {
		t.Errorf("%+v with %d laid", v, len(b.Day().LaidAt(v)))
	}
	at(t, b, "09:50:40", `{"fact":"visit_done","lawn":"77 Fir"}`)
	refusedAt(t, b, "10:00:00", `{"fact":"visit_begun","lawn":"77 Fir","arrived":"09:49"}`, "before 77 Fir was left, at 09:50")
	at(t, b, "10:00:00", `{"fact":"visit_begun","lawn":"77 Fir","kind":"call_back","cause":"missed strip","arrived":"09:50"}`)
	v = b.Day().Visiting()
	if v.Begun.Time().Format("15:04:05") != "09:50:40" || v.Cause != "missed strip" || len(b.Day().LaidAt(v)) != 0 {
		t.Errorf("%+v with %d laid", v, len(b.Day().LaidAt(v)))
	}
	if first := &b.Day().Visits[1]; first.Lawn != "77 Fir" || len(b.Day().LaidAt(first)) != 1 {
		t.Errorf("the first visit laid %d", len(b.Day().LaidAt(first)))
	}
}

func TestRouteIsWhatIsPlanned(t *testing.T) {
	b := play(t, NewBook(1), setUp+twoLawns+`
{"fact":"visit_begun","lawn":"77 Fir"}
{"fact":"visit_done","lawn":"77 Fir"}
{"fact":"routed","lawns":["77 Fir","418 Alder"]}`)
	var got []string
	for _, v := range b.Day().Visits {
		got = append(got, v.Lawn+" "+v.State)
	}
	if s := strings.Join(got, ", "); s != "77 Fir done, 77 Fir planned, 418 Alder planned" {
		t.Error(s)
	}
	mustEnter(t, b, &Routed{})
	if n := len(b.Day().Next()); n != 0 {
		t.Errorf("%d visits are planned", n)
	}
}

func TestWhatIsCarriedOverIsOwedUntilItIsLaid(t *testing.T) {
	b := play(t, NewBook(1), setUp+twoLawns+`
{"fact":"visit_begun","lawn":"418 Alder"}
{"fact":"sprayed","lawn":"418 Alder","zones":["front"],"applicator":"gun","by":"area","area_sqft":3000}
{"fact":"carried_over","lawn":"418 Alder","reason":"wind"}
{"fact":"visit_done","lawn":"418 Alder"}
{"fact":"carried_over","lawn":"77 Fir","reason":"rain","until":"2026-06-02"}`)
	if v := b.Day().Visits[1]; v.State != Skipped || v.Reason != "carried over: rain" {
		t.Errorf("the planned visit is %+v", v)
	}
	if s := owedWords(b); s != "418 Alder front 1,000 back 3,400 since 2026-05-29; 77 Fir all 5,200 since 2026-05-29" {
		t.Fatal(s)
	}
	play(t, b, `{"fact":"day_closed"}
{"fact":"day_opened","date":"2026-05-30","operator":"R. Example","route":["418 Alder"]}
{"fact":"visit_begun","lawn":"418 Alder"}`)
	// Area by zone is what is owed, not what the zones have: 1,000 + 3,400 (arithmetic).
	mustEnter(t, b, &Sprayed{Lawn: "418 Alder", Applicator: "gun"})
	var laid []string
	for _, l := range b.Day().Laid {
		laid = append(laid, l.Zone+" "+l.Area.Text())
	}
	if s := strings.Join(laid, ", "); s != "front 1,000, back 3,400" {
		t.Error(s)
	}
	if rest := b.RestAt(b.Day().Visiting()); len(rest) != 0 {
		t.Errorf("%v is left", rest)
	}
	if s := owedWords(b); s != "77 Fir all 5,200 since 2026-05-29" {
		t.Error(s)
	}
	mustRefuse(t, b, &CarriedOver{Lawn: "418 Alder", Reason: "wind"}, "Nothing is left to do on 418 Alder")
	mustEnter(t, b, &CarriedOver{Lawn: "77 Fir", Zones: []ZoneRest{{"all", 0}}, Reason: "customer did it"})
	if len(b.Owed()) != 0 {
		t.Error(owedWords(b))
	}
}

func owedWords(b *Book) string {
	var out []string
	for _, o := range b.Owed() {
		s := o.Lawn
		for _, z := range o.Zones {
			s += " " + z.Zone + " " + z.Area.Text()
		}
		out = append(out, s+" since "+o.Since)
	}
	return strings.Join(out, "; ")
}

func TestASpotTreatsNothingOfWhatIsOwed(t *testing.T) {
	b := play(t, NewBook(1), setUp+twoLawns+`
{"fact":"carried_over","lawn":"77 Fir","reason":"rain"}
{"fact":"visit_begun","lawn":"77 Fir","kind":"spot"}
{"fact":"sprayed","lawn":"77 Fir","applicator":"gun","by":"area","area_sqft":200}`)
	if s := owedWords(b); s != "77 Fir all 5,200 since 2026-05-29" {
		t.Error(s)
	}
}

func TestZonesTakenAwayAreNotOwed(t *testing.T) {
	b := play(t, NewBook(1), setUp+twoLawns+`
{"fact":"carried_over","lawn":"418 Alder","reason":"rain"}
{"fact":"lawn","name":"418 Alder","zones":[{"name":"front","grass":"bermudagrass_common","area_sqft":2000}]}`)
	if s := owedWords(b); s != "418 Alder front 2,000 since 2026-05-29" {
		t.Error(s)
	}
}

func TestHoldIsAStateOfTheDay(t *testing.T) {
	b := play(t, NewBook(1), setUp+twoLawns)
	mustRefuse(t, b, &Resumed{}, "The day is not on hold.")
	mustEnter(t, b, &Held{"wind"})
	mustRefuse(t, b, &Held{"wind"}, "The day is on hold already, for wind since")
	mustEnter(t, b, &Held{"rain"})
	if h := b.Day().Hold; h == nil || h.Cause != "rain" {
		t.Errorf("%+v", h)
	}
	mustEnter(t, b, &Resumed{})
	mustEnter(t, b, &Held{"rain"})
	play(t, b, `{"fact":"day_closed"}`)
	if b.Day().Hold != nil {
		t.Error("a closed day waits")
	}
}

func TestLastNotesAreKept(t *testing.T) {
	b := play(t, NewBook(1), setUp)
	for _, n := range strings.Split("one two three four five six seven eight nine", " ") {
		c := b.Clone()
		mustEnter(t, b, &Noted{"77 Fir", n})
		mustEnter(t, c, &Noted{"77 Fir", "the clone's"})
	}
	notes := b.Notes("77 Fir")
	if len(notes) != 8 || notes[0].Text != "two" || notes[7] != (LawnNote{"2026-05-28", "nine"}) {
		t.Errorf("%v", notes)
	}
}

// A visit of yesterday that is ended this morning does not make yesterday longer.
func TestEndingYesterdaysVisitDoesNotLengthenIt(t *testing.T) {
	b := play(t, NewBook(1), setUp+`{"fact":"visit_begun","lawn":"77 Fir"}`)
	last := b.Day().Last
	at(t, b, "07:00:00", `{"fact":"visit_done","lawn":"77 Fir"}`)
	if b.Day().Last != last {
		t.Errorf("the day lasted until %s", b.Day().Last)
	}
}

// Whatever can be read can be applied, and leaves what is owed sound.
func TestWildFactsOfTheRouteAreApplied(t *testing.T) {
	kinds := []Kind{kindRouted, kindCarriedOver, kindCarriedOver, kindHeld, kindResumed, kindNoted, kindVisitBegun, kindVisitSkipped, kindVisitDone, kindLawn, kindDayOpened, kindDayClosed}
	start := play(t, NewBook(1), setUp)
	applied := 0
	rapid.Check(t, func(t *rapid.T) {
		b := start.Clone()
		for range 12 {
			kind := rapid.SampledFrom(kinds).Draw(t, "kind")
			f := (&filler{t: t}).fact(newFact[kind](), false)
			tame(t, f)
			b.apply(Entry{Seq: uint64(rapid.IntRange(0, 60).Draw(t, "seq")), At: Moment{Unix: rapid.Int64Range(-1e11, 2e11).Draw(t, "at")}, What: f})
			owedSound(t, b)
			for i := range b.Day().Visits {
				v := &b.Day().Visits[i]
				for _, r := range b.RestAt(v) {
					z, _ := b.Lawn(v.Lawn).Zone(r.Zone)
					if r.Area <= 0 || r.Area > z.Area {
						t.Fatalf("%s has %d of %d left", r.Zone, r.Area, z.Area)
					}
				}
			}
			b.StateDigest()
			applied++
		}
	})
	if applied < 500 {
		t.Errorf("only %d were applied", applied)
	}
}

// tame gives a fact of chance a lawn and zones that the book knows, now and then.
func tame(t *rapid.T, f Fact) {
	const lawn = "418 Alder"
	if l, ok := f.(*Lawn); ok { // two zones of one name were never admitted
		l.LawnName, l.Zones = lawn, l.Zones[:min(len(l.Zones), 2)]
		for i, n := range []string{"front", "side"}[:len(l.Zones)] {
			l.Zones[i].Name = n
		}
	}
	if rapid.IntRange(0, 3).Draw(t, "wild") == 0 {
		return
	}
	switch f := f.(type) {
	case *CarriedOver:
		f.Lawn = lawn
		for i := range f.Zones {
			f.Zones[i].Zone = rapid.SampledFrom([]string{"front", "back", "side"}).Draw(t, "zone")
		}
	case *Routed:
		f.Lawns = append(f.Lawns, lawn)
	case *VisitBegun:
		f.Lawn, f.Arrived = lawn, rapid.SampledFrom([]string{"", "09:35", "half nine"}).Draw(t, "arrived")
	case *VisitSkipped:
		f.Lawn = lawn
	case *VisitDone:
		f.Lawn = lawn
	case *Noted:
		f.Lawn = lawn
	}
}
