package core

import (
	"errors"
	"os"
	"strings"
	"testing"
	"time"

	"example.com/tintline/core/fluid"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
	"pgregory.net/rapid"
)

// anyFact draws a fact that could mostly have happened: names from a small stock with some unknown ones,
// volumes around what the parts hold.
type anyFact struct {
	t    *rapid.T
	b    *Book
	date int // the last date opened
}

func (g *anyFact) pick(what string, from ...string) string {
	if rapid.IntRange(0, 40).Draw(g.t, "wrong") == 0 {
		return "nothing like it"
	}
	return rapid.SampledFrom(from).Draw(g.t, what)
}

func (g *anyFact) volume(about float64) measure.Volume {
	if rapid.IntRange(0, 30).Draw(g.t, "tiny") == 0 {
		return measure.Volume(rapid.Int64Range(-1, 9).Draw(g.t, "nL"))
	}
	return measure.Gallons(rapid.Float64Range(0, about).Draw(g.t, "gal"))
}

func (g *anyFact) letter() byte { return rapid.SampledFrom([]byte("aaabbbcg")).Draw(g.t, "letter") }

func (g *anyFact) supply() []byte {
	return []byte(rapid.SampledFrom([]string{"a", "b", "a", "b", "ab", "", "c", "aa"}).Draw(g.t, "supply"))
}

func (g *anyFact) lawn() string { return g.pick("lawn", "L1", "L2") }
func (g *anyFact) applicator() string {
	return g.pick("applicator", "gun", "gun", "ride-on", "spreader", "drop")
}

func (g *anyFact) zones() []string {
	return rapid.SliceOfN(rapid.SampledFrom([]string{"front", "back"}), 0, 2).Draw(g.t, "zones")
}

func (g *anyFact) place() string {
	return g.pick("to", "waste/pad", "waste/pad", "waste/pad", "waste/pad", "zone/L1/front", "compartment/a", "compartment/b", "applicator/ride-on", "compartment/ride-on", "applicator/a", "package/food", "package/lime")
}

func (g *anyFact) rig() *Rig {
	n := rapid.SampledFrom([]int{2, 3, 6}).Draw(g.t, "compartments")
	f := &Rig{RigName: "truck", Cell: g.volume(0.5), ReturnLine: g.volume(0.3)}
	for i := range n {
		full := measure.Gallons(float64(60 + 40*i))
		f.Compartments = append(f.Compartments, RigCompartment{
			Letter: byte('a' + i), Capacity: full, Heel: g.volume(2), Marks: []GaugeMark{{"0", 0}, {"8", g.volume(20)}, {"10", full / 2}, {"F", full}},
		})
	}
	f.Hoses = []RigHose{{Name: "reel", Bore: Known(measure.Inches(0.375)), Length: Known(measure.Feet(float64(rapid.IntRange(50, 300).Draw(g.t, "feet"))))}}
	g.tintable(f)
	if rapid.Bool().Draw(g.t, "pump flow") {
		f.PumpFlow = Known(measure.GPM(rapid.Float64Range(3, 12).Draw(g.t, "pump")))
	}
	f.Applicators = []Applicator{
		{Name: "gun", Type: Gun, Hose: "reel", Delivery: perThousand(1.5), Flow: g.gunFlow()},
		{Name: "ride-on", Type: RideOn, Hose: "reel", Delivery: perThousand(0.3), Tank: measure.Gallons(14), Hopper: measure.Pounds(120)},
		{Name: "spreader", Type: Spreader, Hopper: measure.Pounds(float64(rapid.IntRange(30, 60).Draw(g.t, "hopper")))},
		{Name: "drop", Type: Spreader},
	}
	if rapid.Bool().Draw(g.t, "tips") {
		f.Applicators[0].Tips = []Tip{{Name: "grey", Delivery: perThousand(1)}, {Name: "blue", PSI: Known(40.0), Delivery: perThousand(2), Flow: Known(measure.GPM(3))}}
		f.Applicators[2].Tips = []Tip{{Name: "grey", Delivery: dryRate(3)}}
	}
	f.LineUps = []NamedLineUp{{Name: "a", Valves: map[string]string{"1": "open"}, Supply: []byte("a"), Return: 'a'}}
	return f
}

func perThousand(gallons float64) measure.Rate {
	return measure.Rate{V: gallons * float64(measure.USGallon) / float64(measure.ThousandSquareFeet)}
}

func (g *anyFact) product() *Product {
	f := &Product{ProductName: g.pick("product", "weed", "iron", "green")}
	f.Label = label.Entry{Kind: "herbicide", Grasses: []string{g.pick("grass", "tall_fescue", label.AllTurf)}}
	if f.ProductName == "iron" != (rapid.IntRange(0, 20).Draw(g.t, "other form") == 0) {
		f.Label.Form = measure.Dry
	}
	return f
}

func (g *anyFact) mixRate() measure.Rate {
	return measure.Rate{V: rapid.Float64Range(0.01, 4).Draw(g.t, "rate"), Kind: measure.Kind(rapid.IntRange(0, 1).Draw(g.t, "form"))}
}

func (g *anyFact) loaded() *Loaded {
	f := &Loaded{Into: g.pick("into", "a", "b", "c", "ride-on"), Volume: g.volume(60)}
	switch rapid.IntRange(0, 2).Draw(g.t, "how") {
	case 0:
		f.Mix, f.For = g.pick("mix", "W", "C"), g.applicator()
	case 1:
		for _, p := range rapid.SliceOfN(rapid.SampledFrom([]string{"weed", "iron", "green"}), 0, 2).Draw(g.t, "parts") {
			a := measure.Amount{N: rapid.Int64Range(0, 5e9).Draw(g.t, "amount"), Kind: measure.Liquid}
			if p == "iron" {
				a.Kind = measure.Dry
			}
			f.Parts = append(f.Parts, LoadPart{p, a})
		}
	}
	return f
}

func (g *anyFact) sprayed() *Sprayed {
	f := &Sprayed{Lawn: g.lawn(), Zones: g.zones(), Applicator: g.applicator()}
	switch rapid.IntRange(0, 3).Draw(g.t, "by") {
	case 0:
		f.By = ByGallons
		f.Volume = Known(g.volume(12))
	case 1:
		f.By, f.Before, f.After = ByGauge, Known(g.volume(60)), Known(g.volume(50))
	case 2:
		f.Volume = Known(g.volume(12))
		f.Area = Known(measure.Area(rapid.Int64Range(0, 1e9).Draw(g.t, "area")))
	}
	return f
}

// ticked draws mostly an item of a list that there is, to be ticked or taken back.
func (g *anyFact) ticked() *Ticked {
	plans := g.b.LoadPlans()
	if len(plans) == 0 {
		return &Ticked{List: g.pick("list", "load/a", "other"), Item: "water"}
	}
	p := rapid.SampledFrom(plans).Draw(g.t, "plan")
	f := &Ticked{List: LoadList(p.Into), Item: g.pick("item", "water", "weed", "iron", "green", StepPlace, StepMeterBefore, StepMeterAfter, StepStir+"weed")}
	if hasText(g.b.Ticks(f.List), f.Item) {
		f.Undo = yes
	}
	switch {
	case f.Undo == yes:
	case f.Item == StepPlace:
		f.Place = "yard"
	case f.Item == StepMeterBefore, f.Item == StepMeterAfter:
		f.Meter = Known(1000*measure.USGallon + g.volume(60))
	}
	return f
}

// seqs draws numbers of entries, of the last ones mostly.
func (g *anyFact) seq() int64 {
	return max(int64(g.b.Seq())-rapid.Int64Range(0, 12).Draw(g.t, "back"), -1)
}

func (g *anyFact) struck() *Struck {
	f := &Struck{Of: g.seq(), Reason: "slip"}
	for range rapid.SampledFrom([]int{0, 0, 0, 1, 6}).Draw(g.t, "also") {
		f.Also = append(f.Also, g.seq())
	}
	if rapid.Bool().Draw(g.t, "instead") {
		// Mostly the same kind of fact again, put right.
		for range 20 {
			if f.Instead = g.fact(); g.kindOf(f.Of) == f.Instead.Kind() {
				break
			}
		}
	}
	// Now and then with all that falls short, as the refusal offers.
	if rapid.Bool().Draw(g.t, "all") {
		for n := f.Of + 1; n <= int64(g.b.Seq()); n++ {
			f.Also = append(f.Also, n)
		}
	}
	return f
}

func (g *anyFact) kindOf(seq int64) Kind {
	for _, e := range g.b.Since() {
		if int64(e.Seq) == seq {
			return e.What.Kind()
		}
	}
	return 0
}

func (g *anyFact) fact() Fact {
	kinds := []Kind{
		kindSprayed, kindSprayed, kindSprayed, kindFilled, kindFilled, kindPushedBack, kindLoaded, kindLoaded, kindLoaded, kindGaugeRead, kindGaugeRead,
		kindVisitBegun, kindVisitBegun, kindVisitDone, kindVisitDone, kindVisitSkipped, kindLinedUp, kindLinedUp, kindDumped, kindDumped, kindStruck, kindStruck,
		kindRouted, kindCarriedOver, kindCarriedOver, kindHeld, kindResumed, kindResumed, kindNoted, kindGrowthSeen, kindCautioned,
		kindTintSeen, kindWeather, kindOverridden, kindSetting, kindRinsed, kindLawn, kindMix, kindProduct, kindDayClosed, kindDayOpened, kindDayOpened, kindRig,
		kindLoadPlanned, kindLoadPlanned, kindTicked, kindTicked, kindTicked, kindTicked,
		kindSpread, kindSpread, kindSpread, kindSpread, kindSpread, kindLoaded, kindFitted, kindFitted, kindTintSeen, kindLinedUp, kindRan, kindCleaned, kindMarked,
		kindStocked, kindStocked, kindStocked,
		kindJarTested, kindJarTested,
		kindPlanned, kindPlanned,
		kindCalibrated, kindCalibrated, kindMarked, kindMarked,
		kindTruedUp,
		kindRecorded, kindRecorded, kindRecorded, kindRecorded, kindRecorded, kindRecorded, kindMetered, kindAmended, kindAmended, kindTask, kindTask, kindUpkept, kindUpkept, kindUpkept, kindPaper, kindPaper,
		kindSigned, kindSigned, kindTold, kindTold, kindNeighbour,
		kindPaid, kindPaid, kindInvested, kindInvested,
	}
	switch kind := rapid.SampledFrom(kinds).Draw(g.t, "kind"); kind {
	case kindRig:
		return g.rig()
	case kindProduct:
		return g.product()
	case kindMix:
		return &Mix{MixName: g.pick("mix", "W", "C", "D"), Base: g.pick("base", "", "", "W", "C", "D"), Parts: []MixPart{{Product: g.pick("product", "weed", "iron"), Rate: g.mixRate()}}}
	case kindGrowthSeen:
		f := &GrowthSeen{Lawn: g.lawn(), Growth: g.pick("growth", "dormant", "growing", "seeded", "asleep"), Since: g.pick("since", "", "2026-01-04", "spring")}
		if rapid.Bool().Draw(g.t, "one zone") {
			f.Zones = []string{g.pick("zone", "front", "back")}
		}
		return f
	case kindCautioned:
		return &Cautioned{
			Product: g.pick("product", "", "weed", "iron"), Grass: g.pick("grass", "", "tall_fescue"), Lawn: g.lawn(),
			Weight: g.pick("weight", "stop", "ask", "note", "none", "loud"), Says: "burned in 2024",
		}
	case kindJarTested:
		f := &JarTested{Products: []string{"weed", g.pick("product", "iron", "iron", "green", "weed")}, Result: g.pick("result", JarMixed, JarFailed, JarNotMixing, JarMayMix, "odd")}
		if f.Result == JarFailed {
			f.Signs = []string{g.pick("sign", "layers", "warm", "smell")}
		}
		return f
	case kindLawn:
		f := &Lawn{LawnName: g.lawn(), Zones: []Zone{{Name: "front", Grass: "tall_fescue", Area: 3 * measure.ThousandSquareFeet}}}
		if rapid.IntRange(0, 3).Draw(g.t, "two zones") > 0 {
			f.Zones = append(f.Zones, Zone{Name: "back", Grass: "tall_fescue", Area: measure.Area(rapid.Int64Range(0, 1e9).Draw(g.t, "area"))})
		}
		switch rapid.IntRange(0, 3).Draw(g.t, "priced") {
		case 0:
			f.Price = Known(measure.Money(5500))
		case 1:
			f.Zones[0].Price = Known(measure.Money(2500))
		}
		return f
	case kindDayOpened:
		return &DayOpened{Date: g.day(), Operator: "R. Example", Route: []string{"L1"}}
	case kindDayClosed:
		return &DayClosed{Overnight: "left in"}
	case kindLoaded:
		if rapid.Bool().Draw(g.t, "dry") {
			return g.hopperLoad()
		}
		return g.loaded()
	case kindLoadPlanned:
		f := g.loaded()
		return &LoadPlanned{Into: f.Into, Volume: f.Volume, Parts: f.Parts, Mix: f.Mix, For: f.For}
	case kindPlanned:
		return g.plan()
	case kindTicked:
		return g.ticked()
	case kindStocked:
		return g.stocked()
	case kindSpread:
		return g.spread()
	case kindFitted:
		return &Fitted{Applicator: g.pick("applicator", "gun", "gun", "spreader"), Tip: g.pick("tip", "grey", "blue", ""), Hose: g.pick("on", "", "", "reel", "other")}
	case kindCalibrated:
		return g.calibrated()
	case kindTruedUp:
		return g.truedUp()
	case kindTask, kindUpkept, kindPaper:
		return g.upkeep(kind)
	case kindAmended:
		return g.amended()
	case kindMetered:
		return g.metered()
	case kindRecorded:
		return g.recorded()
	case kindPaid:
		return g.paid()
	case kindInvested:
		return g.invested()
	case kindSprayed:
		return g.sprayed()
	case kindStruck:
		return g.struck()
	case kindSigned, kindTold, kindNeighbour:
		return g.notice(kind)
	default:
		return g.small(kind)
	}
}

// day is a later date each time, so far apart that a journal goes over more years than the book keeps.
func (g *anyFact) day() string {
	return time.Date(2026, 1, 2+211*g.date, 0, 0, 0, 0, time.UTC).Format(time.DateOnly)
}

func (g *anyFact) small(kind Kind) Fact {
	switch kind {
	case kindLinedUp:
		f := &LinedUp{Supply: g.supply()}
		if rapid.Bool().Draw(g.t, "return") {
			f.Return = g.letter()
		}
		return f
	case kindPushedBack:
		f := &PushedBack{Into: g.letter(), Volume: g.volume(6), Hose: g.pick("hose", "", "", "reel", "other")}
		if rapid.IntRange(0, 3).Draw(g.t, "pail") == 0 {
			f.Into, f.To = 0, "waste/pail"
		}
		if rapid.IntRange(0, 3).Draw(g.t, "bypass known") == 0 {
			f.Bypass = Known(g.volume(9))
		}
		return f
	case kindTintSeen:
		return g.tint()
	case kindFilled:
		return &Filled{Applicator: g.applicator(), Volume: g.volume(14)}
	case kindRan, kindCleaned, kindMarked:
		return g.plumbing(kind)
	case kindVisitBegun, kindRouted, kindCarriedOver, kindHeld, kindResumed, kindNoted:
		return g.route(kind)
	case kindVisitSkipped:
		return &VisitSkipped{g.lawn(), g.pick("reason", "rain", "")}
	case kindVisitDone:
		if v := g.b.Day().Visiting(); v != nil {
			return &VisitDone{Lawn: v.Lawn}
		}
		return &VisitDone{Lawn: g.lawn()}
	case kindGaugeRead:
		f := &GaugeRead{Compartment: g.letter(), Volume: Known(g.volume(61))}
		if rapid.IntRange(0, 2).Draw(g.t, "by mark") == 0 {
			f.Volume, f.Mark = Maybe[measure.Volume]{}, g.pick("mark", "0", "3.5", "9 1/4", "F", "8", "12")
		}
		return f
	case kindWeather:
		return &Weather{Wind: Known(measure.MPH(rapid.Float64Range(-1, 20).Draw(g.t, "mph"))), WindFrom: g.pick("from", "SW", "")}
	case kindOverridden:
		return &Overridden{Rule: g.pick("rule", "grass", "dose", "weather"), Lawn: g.lawn(), Zone: g.pick("zone", "", "front", "back"), Reason: "asked for"}
	case kindSetting:
		return &Setting{GaugeErrorPct, g.pick("value", "0", "1", "20")}
	case kindRinsed:
		return &Rinsed{g.letter(), g.volume(20), g.pick("to", "", "waste/pad")}
	default:
		f := &Dumped{From: g.pick("from", "compartment/a", "compartment/b", "hose/reel", "cell", "return_line", "applicator/ride-on", "applicator/spreader"), To: g.place()}
		if rapid.IntRange(0, 4).Draw(g.t, "dry") == 0 {
			f.Amount = Known(measure.Mass(g.pounds(20).N))
			return f
		}
		if rapid.Bool().Draw(g.t, "some") {
			f.Volume = Known(g.volume(5))
		}
		return f
	}
}

// rest is what a random journal leaves: its book, its entries, and what stands in the place of each.
type rest struct {
	book    *Book
	entries []Entry
	// stands is what each entry adds to the sum, nil where it was struck; slot is whose place a strike's
	// instead took.
	stands map[uint64]Fact
	slot   map[uint64]uint64
	counts map[string]int
}

// note keeps, by rules of its own and without the book, what a strike leaves standing.
func (r *rest) note(e Entry) {
	r.entries = append(r.entries, e)
	f, strike := e.What.(*Struck)
	if !strike {
		r.stands[e.Seq] = e.What
		return
	}
	at := func(n int64) uint64 {
		if s, ok := r.slot[uint64(n)]; ok {
			return s
		}
		return uint64(n)
	}
	for _, n := range f.Also {
		r.stands[at(n)] = nil
	}
	of := at(f.Of)
	r.stands[of] = f.Instead
	if f.Instead != nil {
		r.slot[e.Seq] = of
	}
}

// anyJournal enters facts by chance and checks after each what must always hold.
func anyJournal(t *rapid.T, facts int) *rest {
	r := &rest{book: NewBook(3), stands: map[uint64]Fact{}, slot: map[uint64]uint64{}, counts: map[string]int{}}
	g := &anyFact{t: t, b: r.book}
	first := []Fact{
		g.rig(), &Product{ProductName: "weed"}, &Product{ProductName: "iron", Label: label.Entry{Form: measure.Dry}}, &Product{ProductName: "green"},
		&Product{ProductName: "food", Label: label.Entry{Form: measure.Dry, HasRateLow: true, RateLow: dryRate(3), HasRateHigh: true, RateHigh: dryRate(3)}},
		&Product{ProductName: "lime", Label: label.Entry{Form: measure.Dry}}, &Mix{MixName: "F", Parts: []MixPart{{Product: "food", Rate: dryRate(2)}, {Product: "lime", Rate: dryRate(1)}}},
		&Mix{MixName: "W", Parts: []MixPart{{Product: "weed", Rate: measure.Rate{V: 0.4}}, {Product: "iron", Rate: measure.Rate{V: 600, Kind: measure.Dry}}}}, &Mix{MixName: "C", Parts: []MixPart{{Product: "green", Rate: measure.Rate{V: 0.05}}}},
		&Lawn{LawnName: "L1", Zones: []Zone{{Name: "front", Grass: "tall_fescue", Area: 4 * measure.ThousandSquareFeet}, {Name: "back", Grass: "tall_fescue", Area: measure.ThousandSquareFeet}}},
		&Lawn{LawnName: "L2", Zones: []Zone{{Name: "front", Grass: "zoysiagrass", Area: 2 * measure.ThousandSquareFeet}}},
		&DayOpened{Date: "2026-01-01", Operator: "R. Example"}, &Loaded{Into: "a", Volume: measure.Gallons(50), Mix: "W", For: "gun"},
		&Loaded{Into: "b", Volume: measure.Gallons(70), Mix: "C", For: "gun"}, &LinedUp{Supply: []byte("a"), Return: 'a'},
	}
	for i := range facts {
		var f Fact
		if i < len(first) {
			f = first[i]
		} else {
			f = g.fact()
		}
		laid := r.counts["sprayed"]
		r.enter(t, f, Moment{Unix: 1_767_260_000 + int64(i)*60, Offset: -21600})
		if r.counts["sprayed"] > laid && rapid.Bool().Draw(t, "then read and true up") {
			for range 2 {
				r.enter(t, g.truedUp(), Moment{Unix: 1_767_260_000 + int64(i)*60, Offset: -21600})
			}
		}
		if d, ok := f.(*DayOpened); ok && r.book.day.Date == d.Date {
			g.date++
		}
	}
	return r
}

func (r *rest) enter(t *rapid.T, f Fact, at Moment) {
	b := r.book
	before, seq, digest, was := b.StateDigest(), b.Seq(), b.Digest(), b.day.clone()
	es, err := b.Prepare("action", at, f)
	if b.StateDigest() != before || b.Seq() != seq || b.Digest() != digest {
		t.Fatalf("preparing %+v changed the book", f)
	}
	if err != nil {
		var p *Problem
		if !errors.As(err, &p) || p.What == "" || p.Do == "" {
			t.Fatalf("%+v was refused with %v", f, err)
		}
		r.counts["refused "+f.Name()]++
		return
	}
	if err := b.Apply(es[0]); err != nil {
		t.Fatalf("%+v was admitted and not applied: %v", f, err)
	}
	t.Logf("entry %d: %s", es[0].Seq, EncodeLine(es[0], 0))
	r.note(es[0])
	visitsKept(t, was, &b.day, es[0].What)
	r.counts[f.Name()]++
	if f, tint := es[0].What.(*TintSeen); tint && f.teaches() {
		r.counts[taught]++
	}
	balanced(t, b)
}

// balanced checks what must hold of any book.
func balanced(t rapid.TB, b *Book) {
	t.Helper()
	owedSound(t, b)
	driedSound(t, b)
	if s := b.Plumbing().Sum(); s.Volume != 0 || len(s.Holds) != 0 {
		t.Fatalf("the sum over all places is %v", s)
	}
	for i := range b.plumbing.Compartments {
		c := &b.plumbing.Compartments[i]
		if c.Flows.Left() != c.Liquid.Volume || c.Liquid.Volume < 0 || c.Liquid.Volume > c.Capacity {
			t.Fatalf("compartment %c holds %d of %d, by its flows %d", c.Letter, c.Liquid.Volume, c.Capacity, c.Flows.Left())
		}
	}
	for i := range b.plumbing.Tanks {
		if c := &b.plumbing.Tanks[i]; c.Flows.Left() != c.Liquid.Volume || c.Liquid.Volume > c.Capacity {
			t.Fatalf("%s holds %d of %d, by its flows %d", c.Name, c.Liquid.Volume, c.Capacity, c.Flows.Left())
		}
	}
	for list, items := range b.ticks {
		if into := strings.TrimPrefix(list, "load/"); b.plans[into] == nil || len(items) == 0 {
			t.Fatalf("%s is ticked without a plan: %v", list, items)
		}
	}
	balancedHoppers(t, b)
	for _, pl := range b.plumbing.Outside.Places() {
		switch kind, _ := pl.Split(); kind {
		case "water", "package", "zone", "waste", string(fluid.Unexplained):
		default:
			t.Fatalf("liquid left the rig for %s", pl)
		}
	}
}

func facts() int {
	if os.Getenv("TINTLINE_LONG") != "" {
		return 1500
	}
	return 400
}

func TestRandomJournals(t *testing.T) {
	total := map[string]int{}
	rapid.Check(t, func(t *rapid.T) {
		r := anyJournal(t, facts())
		r.remembers(t)
		for k, n := range r.counts {
			total[k] += n
		}
		r.replays(t)
		r.twin(t)
	})
	t.Log(total)
	if total[taught] == 0 {
		t.Error("no changeover had what can be learned from")
	}
	if total[forgot] < 2 {
		t.Errorf("only %d journals went over more years than are kept", total[forgot])
	}
	for _, n := range FactNames() {
		if total[n] < 5 { // seldom ones come about twenty times
			t.Errorf("only %d of %s were admitted; the generator is too poor", total[n], n)
		}
	}
}

// replays folds the journal again from its stored forms and from its lines.
func (r *rest) replays(t *rapid.T) {
	stored, lines := NewBook(0), NewBook(0)
	for _, e := range r.entries {
		back, err := Decode(e.Seq, e.Action, e.Encode())
		if err == nil {
			err = stored.Apply(back)
		}
		if err != nil {
			t.Fatalf("entry %d: %v", e.Seq, err)
		}
		l, err := DecodeLine(EncodeLine(e, 0))
		if err == nil {
			err = lines.Apply(Entry{Seq: l.Seq, At: l.At.V, Action: l.Action, Truck: l.Truck, What: l.Fact, Digest: l.Digest})
		}
		if err != nil {
			t.Fatalf("line %d: %v", e.Seq, err)
		}
	}
	for what, b := range map[string]*Book{"stored entries": stored, "lines": lines} {
		if b.StateDigest() != r.book.StateDigest() || b.Digest() != r.book.Digest() || b.AccountsDigest() != r.book.AccountsDigest() {
			t.Fatalf("folding the %s gives another book", what)
		}
		sameMoves(t, b, r.book)
	}
}

// asWritten enters a fact again as it was written: what nothing was known of then (a bypass, what moved) is not filled in
// anew.
func asWritten(b *Book, at Moment, f Fact) error {
	es, err := b.Prepare("again", at, f)
	if err != nil {
		return err
	}
	es[0].What = f
	es[0].Digest = chain(b.digest, es[0].Seq, es[0].Truck, es[0].body())
	return b.Apply(es[0])
}

// twin enters only what still stands into a new book: a strike equals never entered.
func (r *rest) twin(t *rapid.T) {
	b := NewBook(3)
	for _, e := range r.entries {
		f := r.stands[e.Seq]
		if f == nil {
			continue
		}
		if err := asWritten(b, e.At, f); err != nil {
			t.Fatalf("entry %d stands, but without the struck ones %+v is refused: %v", e.Seq, f, err)
		}
	}
	if b.StateDigest() != r.book.StateDigest() {
		t.Fatalf("a book without the struck entries says something else:\n%v\n%v", r.book.Plumbing().Accounts(), b.Plumbing().Accounts())
	}
	sameMoves(t, b, r.book)
}

func TestCloneIsIndependent(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := anyJournal(t, 60)
		before, base := r.book.StateDigest(), r.book.base.StateDigest()
		moves, baseMoves := movesOf(&r.book.state), movesOf(r.book.base.state)
		c := *r
		c.book = r.book.Clone()
		c.entries = append([]Entry(nil), r.entries...)
		g := &anyFact{t: t, b: c.book, date: 200}
		for i := range 60 {
			c.enter(t, g.fact(), Moment{Unix: 1_780_000_000 + int64(i)})
		}
		if r.book.StateDigest() != before || r.book.base.StateDigest() != base {
			t.Fatal("entering facts into a clone changed the book")
		}
		if movesOf(&r.book.state) != moves || movesOf(r.book.base.state) != baseMoves {
			t.Fatal("entering facts into a clone changed when something moved in the book")
		}
		// And the other way about: the book goes on from where it stood.
		after := c.book.StateDigest()
		g = &anyFact{t: t, b: r.book, date: 200}
		for i := range 30 {
			r.enter(t, g.fact(), Moment{Unix: 1_780_000_000 + int64(i)})
		}
		if c.book.StateDigest() != after {
			t.Fatal("entering facts into the book changed the clone")
		}
	})
}
