package yard

import (
	"encoding/json"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/tintline/core"
	"example.com/tintline/core/check"
	"example.com/tintline/core/measure"
)

// fiveLawns is a day whose plan is worked out by hand below.
const fiveLawns = `
{"fact":"rig","name":"truck","compartments":[{"letter":"a","name":"warm","capacity_gal":60,"heel_gal":1},{"letter":"b","name":"cool","capacity_gal":40,"heel_gal":1}],"cell_gal":0.2,"return_line_gal":0,"hoses":[{"name":"reel","volume_gal":1.8}],"applicators":[{"name":"gun","kind":"gun","hose":"reel","delivery_gal_per_1000_sqft":2,"flow_gpm":4}]}
{"fact":"product","name":"W1","form":"liquid","kind":"herbicide","actives":[{"name":"sulfosulfuron","percent_by_weight":75}],"registration":"00000-1","grasses":["bermudagrass_common"],"rate_low_fl_oz_per_1000_sqft":1,"rate_high_fl_oz_per_1000_sqft":1.5,"price_usd":64,"package_fl_oz":32}
{"fact":"product","name":"C1","form":"liquid","kind":"herbicide","actives":[{"name":"mesotrione","lb_per_gal":4}],"registration":"00000-2","grasses":["tall_fescue"],"rate_low_fl_oz_per_1000_sqft":0.1,"rate_high_fl_oz_per_1000_sqft":0.2,"price_usd":128,"package_fl_oz":64}
{"fact":"product","name":"Fe","form":"liquid","kind":"iron","grasses":["all_turf"],"rate_low_fl_oz_per_1000_sqft":1,"rate_high_fl_oz_per_1000_sqft":6}
{"fact":"mix","name":"warm weed","parts":[{"product":"W1","rate_fl_oz_per_1000_sqft":1}]}
{"fact":"mix","name":"cool weed","parts":[{"product":"C1","rate_fl_oz_per_1000_sqft":0.2}]}
{"fact":"lawn","name":"1 Ash","zones":[{"name":"all","grass":"bermudagrass_common","area_sqft":4000,"growth":"growing","growth_since":"2026-05-01"}]}
{"fact":"lawn","name":"2 Beech","zones":[{"name":"all","grass":"tall_fescue","area_sqft":6000}]}
{"fact":"lawn","name":"3 Cedar","zones":[{"name":"all","grass":"bermudagrass_common","area_sqft":8000,"growth":"growing","growth_since":"2026-05-01"}]}
{"fact":"lawn","name":"4 Dogwood","zones":[{"name":"all","grass":"tall_fescue","area_sqft":5000}]}
{"fact":"lawn","name":"5 Elm","zones":[{"name":"all","grass":"centipedegrass","area_sqft":3000}]}
{"fact":"day_opened","date":"2026-05-28","operator":"R. Example","route":["1 Ash","2 Beech","3 Cedar","4 Dogwood","5 Elm"]}
{"fact":"loaded","into":"a","volume_gal":10,"mix":"warm weed","for":"gun"}
`

func planOf(t testing.TB, b *core.Book, lawns ...string) DayPlan {
	t.Helper()
	p, err := PlanDay(b, DayAsk{Lawns: lawns, At: clock})
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// TestADayByHand: 4 gpm at 2 gal per 1,000 sq ft are 2,000 sq ft a minute: 2 + 3 + 4 + 2.5 = 11.5 min on four lawns; the fifth has no
// mix. Five ways of 10 min, with the one back. The hose holds water: in the order given the valves are turned four times, 12 min, with the grasses together
// twice, 6 min. 11.5 + 50 + 12 = 73.5; 67.5 the other way, and no order does with fewer than two. Warm weed 12,000 sq ft at 2 gal = 24
// gal, cool weed 11,000 = 22. Of W1 12 fl oz at 64 / 32 dollars = 24.00, of C1 2.2 at 2 = 4.40.
func TestADayByHand(t *testing.T) {
	p := planOf(t, play(t, fiveLawns))
	near := func(what string, got, want float64) {
		t.Helper()
		if math.Abs(got-want) > 1e-6*math.Max(1, want) {
			t.Errorf("%s: %g, by hand %g", what, got, want)
		}
	}
	near("minutes as given", p.Given.Minutes.Total(), 73.5)
	near("minutes at best", p.Best.Minutes.Total(), 67.5)
	near("saved", p.Saves.Minutes, 6)
	near("bound", p.Bound, 67.5)
	if p.Given.Changeovers != 4 || p.Best.Changeovers != 2 || p.Saves.Changeovers != 2 || !p.Better || !p.Given.Exact || p.Best.Refills != 0 {
		t.Errorf("%+v", p.Saves)
	}
	if p.Best.Cost != 2840 || len(p.Best.Unpriced) != 0 {
		t.Errorf("it costs %s", p.Best.Cost.Text())
	}
	if len(p.Warnings) != 1 || p.Warnings[0].Lawn != "5 Elm" || !p.Warnings[0].NoMix || !strings.Contains(p.Warnings[0].Says, "sulfosulfuron is not for centipedegrass") {
		t.Errorf("%+v", p.Warnings)
	}
	if l := p.Lines(core.OrderBest)[0]; l.Kind != LineWrong || l.Lawn != "5 Elm" {
		t.Errorf("the first line is %+v", l)
	}
	tanks := p.Best.Loads[0].Tanks
	for i, want := range []struct {
		letter       byte
		mix          string
		had, onLawns float64
	}{{'a', "warm weed", 10, 24}, {'b', "cool weed", 0, 22}} {
		x := tanks[i]
		if x.Letter != want.letter || x.Mix != want.mix || x.For != "gun" {
			t.Errorf("%c holds %s for %s", x.Letter, x.Mix, x.For)
		}
		near("had", x.Had.Gallons(), want.had)
		near("on lawns", x.OnLawns.Gallons(), want.onLawns)
		near("hose and cell", x.Line.Gallons(), 2)
		if x.Add != x.Level-x.Had || x.Level != x.OnLawns+x.Line+x.Heel+x.Reserve || x.Heel != measure.USGallon || x.Reserve.Gallons() < want.onLawns/10 {
			t.Errorf("%+v does not add up", x)
		}
	}
	if s := p.Best.Steps[0].Says; s != "warm weed for gun: 12,000 sq ft at 2.00 gal per 1,000 sq ft = 24.0 gal" {
		t.Error(s)
	}
}

// What is accepted is one plan, its order and its loads; entered, the next plan has nothing to load, and all of it comes to the same
// book when it is replayed.
func TestAPlanIsAccepted(t *testing.T) {
	b := play(t, fiveLawns)
	p := planOf(t, b)
	facts := p.Accept(b, core.OrderBest)
	es, err := b.Prepare("accept", clock, facts...)
	if err != nil {
		t.Fatal(err)
	}
	again := b.Clone()
	for _, e := range es {
		l, err := core.DecodeLine(core.EncodeLine(e, 0))
		if err != nil || b.Apply(e) != nil {
			t.Fatal(err)
		}
		e.What = l.Fact
		if err := again.Apply(e); err != nil {
			t.Fatal(err)
		}
	}
	if again.StateDigest() != b.StateDigest() {
		t.Error("replayed, it is another book")
	}
	var route []string
	for _, v := range b.Day().Next() {
		route = append(route, v.Lawn)
	}
	warm := func(l string) bool { return l == "1 Ash" || l == "3 Cedar" }
	if len(route) != 5 || warm(route[0]) != warm(route[1]) || warm(route[2]) != warm(route[3]) || route[4] != "5 Elm" {
		t.Errorf("the order is %v", route)
	}
	k := b.Planned()
	if k == nil || k.Order != core.OrderBest || k.Saved.V != 6 || k.Changeovers.V != 2 || len(k.Loads) != 2 || k.Cost.V != 2840 || !slices.Equal(k.Lawns(), route) {
		t.Errorf("%+v", k)
	}
	plans := b.LoadPlans()
	if len(plans) != 2 || plans[0].Volume != p.Best.Loads[0].Tanks[0].Add || plans[1].Mix != "cool weed" {
		t.Fatalf("%+v", plans)
	}
	for i := range plans {
		enter(t, b, core.LoadedFrom(&plans[i]))
	}
	for _, tank := range planOf(t, b).Given.Loads[0].Tanks {
		if tank.Add > measure.Gallons(0.05) {
			t.Errorf("%+v is to be loaded once more", tank)
		}
	}
}

// The order given is kept as it is, and no route is written.
func TestTheOrderGivenIsAccepted(t *testing.T) {
	b := play(t, fiveLawns)
	p := planOf(t, b)
	for _, f := range p.Accept(b, core.OrderGiven) {
		if f.Name() == "routed" {
			t.Error("the order was changed")
		}
	}
}

// A product for once a year is planned where none was laid this year and the book knows it, on first visits, and nowhere else.
func TestWhatIsDueOnceAYear(t *testing.T) {
	b := play(t, fiveLawns)
	add := func(lines string) {
		for _, s := range strings.Split(strings.TrimSpace(lines), "\n") {
			l, err := core.DecodeLine([]byte(s))
			if err != nil {
				t.Fatal(err)
			}
			enter(t, b, l.Fact)
		}
	}
	add(`{"fact":"mix","name":"warm and iron","base":"warm weed","parts":[{"product":"Fe","rate_fl_oz_per_1000_sqft":2}],"for":"once_a_year"}
{"fact":"lawn","name":"3 Cedar","known_since":"2025-01-01","zones":[{"name":"all","grass":"bermudagrass_common","area_sqft":8000,"growth":"growing","growth_since":"2026-05-01"}]}`)
	mixOn := func(lawn string) string {
		p := planOf(t, b, lawn)
		return p.Given.Stops[0].Zones[0].Mix
	}
	if got := mixOn("1 Ash"); got != "warm and iron" { // a first visit
		t.Errorf("1 Ash gets %s", got)
	}
	p := planOf(t, b, "1 Ash")
	if len(p.Warnings) != 1 || !strings.Contains(p.Warnings[0].Says, "a first visit: what was laid before") {
		t.Errorf("%+v", p.Warnings)
	}
	add(`{"fact":"lined_up","supply":["a"],"return":"a"}
{"fact":"pushed_back","into":"a","volume_gal":4}
{"fact":"sprayed","lawn":"1 Ash","applicator":"gun","by":"gallons","volume_gal":0.4}
{"fact":"sprayed","lawn":"3 Cedar","applicator":"gun","by":"gallons","volume_gal":0.4}`)
	if got := mixOn("1 Ash"); got != "warm weed" { // nobody knows what was laid before its first entry
		t.Errorf("1 Ash gets %s", got)
	}
	p = planOf(t, b, "1 Ash")
	if len(p.Warnings) != 1 || p.Warnings[0].Weight != check.Note || !strings.Contains(p.Warnings[0].Says, "Whether Fe was laid on all this year before") {
		t.Errorf("%+v", p.Warnings)
	}
	if got := mixOn("3 Cedar"); got != "warm and iron" {
		t.Errorf("3 Cedar gets %s", got)
	}
}

// The mix that is named for a zone goes before others, and why not is said where it may not.
func TestTheMixThatIsMeant(t *testing.T) {
	for _, meant := range []string{"iron", "cool weed", "nothing like it"} {
		b := play(t, fiveLawns+`{"fact":"mix","name":"iron","parts":[{"product":"Fe","rate_fl_oz_per_1000_sqft":2}]}
{"fact":"lawn","name":"1 Ash","zones":[{"name":"all","grass":"bermudagrass_common","area_sqft":4000,"growth":"growing","growth_since":"2026-05-01","mix":"`+meant+`"}]}`)
		p := planOf(t, b, "1 Ash")
		got := p.Given.Stops[0].Zones[0].Mix
		switch meant {
		case "iron":
			if got != "iron" || len(p.Warnings) != 0 {
				t.Errorf("%s, %+v", got, p.Warnings)
			}
		case "cool weed":
			if got != "warm weed" || len(p.Warnings) != 1 || !strings.Contains(p.Warnings[0].Says, "because cool weed: mesotrione is not for") {
				t.Errorf("%s, %+v", got, p.Warnings)
			}
		default:
			if got != "warm weed" || len(p.Warnings) != 1 || !strings.Contains(p.Warnings[0].Says, "the book has no such mix") {
				t.Errorf("%s, %+v", got, p.Warnings)
			}
		}
	}
}

func TestRefusalsOfTheDay(t *testing.T) {
	for _, row := range []struct {
		lines string
		lawns []string
		says  string
	}{
		{"", nil, "The book has no rig yet."},
		{strings.Split(strings.TrimSpace(fiveLawns), "\n")[0], nil, "The book has 0 mixes that can be sprayed"},
		{fiveLawns, []string{"9 Oak"}, `There is no lawn "9 Oak" in the book.`},
		{fiveLawns, []string{"1 Ash", "1 Ash"}, "1 Ash is named twice."},
		{fiveLawns + `{"fact":"routed","lawns":[]}`, nil, "No lawn is left to plan on 2026-05-28."},
	} {
		_, err := PlanDay(play(t, row.lines), DayAsk{Lawns: row.lawns, At: clock})
		if err == nil || !strings.Contains(err.Error(), row.says) {
			t.Errorf("it says %v and should say %s", err, row.says)
		}
	}
}

// No zone gets a mix for which the trigger would say stop, whatever the book: the mix is put into an applicator's own tank and asked about.
func TestNothingIsPlannedThatTheTriggerStops(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		lines := strings.Replace(fiveLawns, `"flow_gpm":4}]`, `"flow_gpm":4},{"name":"trial","kind":"backpack","hose":"reel","delivery_gal_per_1000_sqft":2,"tank_gal":50}]`, 1)
		b := core.NewBook(1)
		add := func(lines string) {
			for _, s := range strings.Split(strings.TrimSpace(lines), "\n") {
				if s == "" {
					continue
				}
				l, err := core.DecodeLine([]byte(s))
				if err != nil {
					t.Fatal(err)
				}
				es, err := b.Prepare("x", clock, l.Fact)
				if err != nil || b.Apply(es[0]) != nil {
					t.Fatal(s, err)
				}
			}
		}
		add(lines)
		draw := func(of ...string) string { return rapid.SampledFrom(of).Draw(t, "line") }
		add(draw("", `{"fact":"product","name":"W1","form":"liquid","kind":"herbicide","actives":[{"name":"sulfosulfuron","percent_by_weight":75}],"registration":"00000-1","grasses":["bermudagrass_common","tall_fescue"],"rate_low_fl_oz_per_1000_sqft":0.5,"rate_high_fl_oz_per_1000_sqft":1,"most_times":1,"days_between":30,"new_turf_days":42}`))
		add(draw("", `{"fact":"mix","name":"iron","parts":[{"product":"Fe","rate_fl_oz_per_1000_sqft":5}]}`))
		add(draw("", `{"fact":"cautioned","product":"C1","lawn":"2 Beech","weight":"stop","says":"killed it"}`))
		add(draw("", `{"fact":"lawn","name":"3 Cedar","zones":[{"name":"all","grass":"bermudagrass_common","area_sqft":8000,"growth":"seeded","growth_since":"2026-05-10"}]}`))
		add(draw("", `{"fact":"lined_up","supply":["a"],"return":"a"}
{"fact":"pushed_back","into":"a","volume_gal":4}
{"fact":"sprayed","lawn":"1 Ash","applicator":"gun","by":"area"}`))
		p, err := PlanDay(b, DayAsk{At: clock})
		if err != nil {
			t.Fatal(err)
		}
		for _, o := range []*DayOrder{&p.Given, &p.Best} {
			for _, s := range o.Stops {
				for _, z := range s.Zones {
					if z.Mix == "" {
						if !slices.ContainsFunc(p.Warnings, func(w DayWarning) bool { return w.Lawn == s.Lawn && w.NoMix }) {
							t.Fatalf("%s gets nothing and no word is said", s.Lawn)
						}
						continue
					}
					try := b.Clone()
					es, err := try.Prepare("x", clock, &core.Loaded{Into: "trial", Volume: measure.Gallons(40), Mix: z.Mix, For: "trial"})
					if err != nil || try.Apply(es[0]) != nil {
						t.Fatal(err)
					}
					r, err := check.Before(try, check.Intent{Lawn: s.Lawn, Zones: []string{z.Zone}, With: "trial", At: clock})
					if err != nil {
						t.Fatal(err)
					}
					for _, f := range r.Findings {
						if f.Weight == check.Stop && slices.Contains([]string{"grass", "dose", "season", "interval", "nitrogen", "site", "dates"}, f.Rule) {
							t.Fatalf("%s on %s: %s", z.Mix, s.Lawn, f.Says)
						}
					}
				}
			}
		}
	})
}

// The document is JSON without null lists, and says what the lines say.
func TestTheDocumentOfADay(t *testing.T) {
	p := planOf(t, play(t, fiveLawns))
	raw, err := json.Marshal(p.Document(core.OrderBest))
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{`"minutes":67.5`, `"no_mix":true`, `"great_circle_mi":null`, `"cost_usd":28.4`, `"had_gal":10`, `"working":["warm weed for gun:`} {
		if !strings.Contains(string(raw), want) {
			t.Errorf("no %s in\n%s", want, raw)
		}
	}
	if text := p.Text(core.OrderGiven); !strings.HasPrefix(text, "plan of 2026-05-28\nSTOP  5 Elm: No mix") {
		t.Error(text)
	}
}

// BenchmarkADayOf30 plans thirty visits with three mixes.
func BenchmarkADayOf30(b *testing.B) {
	lines, route := fiveLawns+`{"fact":"mix","name":"iron","parts":[{"product":"Fe","rate_fl_oz_per_1000_sqft":5}]}`, []string{}
	for i := range 30 {
		grass := []string{"bermudagrass_common", "tall_fescue", "centipedegrass"}[i*7%3]
		lines += fmt.Sprintf("\n"+`{"fact":"lawn","name":"L%d","zones":[{"name":"all","grass":%q,"area_sqft":%d}]}`, i, grass, 3000+100*i)
		route = append(route, fmt.Sprintf("L%d", i))
	}
	book := play(b, lines)
	for range b.N {
		if _, err := PlanDay(book, DayAsk{Lawns: route, At: clock}); err != nil {
			b.Fatal(err)
		}
	}
}

// A plan that is accepted before the day is opened gives its route, and a product that is short is said.
func TestAPlanBeforeTheDay(t *testing.T) {
	lines := strings.Split(strings.TrimSpace(fiveLawns), "\n")
	b := play(t, strings.Join(lines[:len(lines)-2], "\n")+`
{"fact":"stocked","product":"C1","what":"counted","amount_fl_oz":1}`)
	p := planOf(t, b)
	if p.Open || !slices.ContainsFunc(p.Warnings, func(w DayWarning) bool { return w.Lawn == "C1" && strings.Contains(w.Says, "1.00 fl oz are in stock") }) {
		t.Errorf("%+v", p.Warnings)
	}
	for _, f := range p.Accept(b, core.OrderBest) {
		enter(t, b, f)
	}
	if got := check.RouteFor(b, p.Date); !slices.Equal(got, b.Planned().Lawns()) || slices.Equal(got, []string{"1 Ash", "2 Beech", "3 Cedar", "4 Dogwood", "5 Elm"}) {
		t.Errorf("the route is %v", got)
	}
}
