package core

import (
	"strings"
	"testing"

	"example.com/tintline/core/fluid"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// drySetUp goes on from setUp with spreaders, a ride-on that also spreads, and dry products.
var drySetUp = strings.Replace(strings.SplitN(strings.TrimSpace(setUp), "\n", 2)[0], `"delivery_gal_per_1000_sqft":0.3,"tank_gal":14}`,
	`"delivery_gal_per_1000_sqft":0.3,"tank_gal":14,"hopper_lb":120},{"name":"spreader","kind":"spreader","hopper_lb":50,"tips":[{"name":"K","delivery_lb_per_1000_sqft":4}]},{"name":"drop","kind":"spreader"}`, 1) + `
{"fact":"product","name":"food","form":"dry","kind":"fertiliser","grasses":["all_turf"],"rate_low_lb_per_1000_sqft":3,"rate_high_lb_per_1000_sqft":3}
{"fact":"product","name":"lime","form":"dry","kind":"lime","grasses":["all_turf"]}
{"fact":"mix","name":"F","parts":[{"product":"food","rate_lb_per_1000_sqft":2.5}]}
{"fact":"mix","name":"FL","parts":[{"product":"food","rate_lb_per_1000_sqft":2},{"product":"lime","rate_lb_per_1000_sqft":1}]}
`

func dryBook(t testing.TB, lines string) *Book {
	t.Helper()
	return play(t, NewBook(1), setUp+drySetUp+lines)
}

// account is what stands at a place of a product.
func account(t testing.TB, b *Book, place, product string) measure.Mass {
	t.Helper()
	k, ok := b.ProductKey(product)
	if !ok {
		t.Fatalf("no product %s", product)
	}
	sum, rows := int64(0), 0
	for _, a := range b.Plumbing().Accounts() {
		if a.Place == fluid.Place(place) {
			sum += a.Products.Of(k)
			rows++
		}
	}
	if rows > 1 {
		t.Errorf("%s has %d accounts", place, rows)
	}
	return measure.Mass(sum)
}

// TestSpreadingABag: "50 pounds treat 6,000 square feet; how much for 9,000? 75 pounds" (Virginia Turfgrass Council
// applicator training, How Much to Use, https://vaturf.org/topics/topic-application-section-two-how-much-to-use-2-2/;
// row va-50lb-6000-9000 of testdata/examples).
func TestSpreadingABag(t *testing.T) {
	b := dryBook(t, "")
	rate := measure.RateOf(measure.DryAmount(measure.Pounds(50)), measure.SquareFeet(6000))
	mustEnter(t, b, &Product{ProductName: "bagged", Label: label.Entry{Form: measure.Dry, Grasses: []string{label.AllTurf}, HasRateLow: true, RateLow: rate, HasRateHigh: true, RateHigh: rate}})
	mustEnter(t, b, &Lawn{LawnName: "Example", Zones: []Zone{{Name: "front", Grass: "tall_fescue", Area: measure.SquareFeet(5400)}, {Name: "back", Grass: "tall_fescue", Area: measure.SquareFeet(3600)}}})
	mustEnter(t, b, &Spread{Lawn: "Example", Applicator: "drop", Product: "bagged"})
	want := map[string]float64{"zone/Example/front": 45, "zone/Example/back": 30, "package/bagged": -75}
	for place, lb := range want {
		if got := account(t, b, place, "bagged").Pounds(); got < lb-1e-9 || got > lb+1e-9 {
			t.Errorf("%s holds %.9f lb, not %g", place, got, lb)
		}
	}
	balanced(t, b)
}

func TestSpreadFromHopperThenFromTheBag(t *testing.T) {
	b := dryBook(t, `{"fact":"loaded","into":"spreader","parts":[{"product":"food","amount_lb":10}],"mix":"F"}`)
	if got := b.MixInHopper("spreader"); got != "F" {
		t.Errorf("the mix in the hopper is %q", got)
	}
	// 7,400 sq ft at 2.5 lb per 1,000 sq ft.
	plan, err := b.ForeseeSpread(&Spread{Lawn: "418 Alder", Applicator: "spreader"})
	if err != nil {
		t.Fatal(err)
	}
	if plan.Fact.Product != "food" || plan.Fact.By != ByArea || plan.FromHopper != measure.Pounds(10) || plan.FromBag != measure.Pounds(8.5) || plan.Stays != 0 {
		t.Errorf("%+v", plan)
	}
	before := b.StateDigest()
	mustEnter(t, b, &Spread{Lawn: "418 Alder", Applicator: "spreader"})
	if b.StateDigest() == before {
		t.Error("a spreading left the book as it was")
	}
	for place, lb := range map[string]float64{"applicator/spreader": 0, "package/food": -18.5, "zone/418 Alder/front": 10, "zone/418 Alder/back": 8.5} {
		if got := account(t, b, place, "food"); got != measure.Pounds(lb) {
			t.Errorf("%s holds %.6f lb of food, not %g", place, got.Pounds(), lb)
		}
	}
	laid := b.Day().Laid[len(b.Day().Laid)-1]
	if !laid.Dry || laid.Volume != 0 || laid.Area != measure.SquareFeet(3400) || laid.Zone != "back" {
		t.Errorf("laid %+v", laid)
	}
	// The hopper is empty; the mix still says how much is meant.
	mustRefuse(t, b, &Spread{Lawn: "77 Fir", Applicator: "spreader"}, "What spreader spread is not said")
	plan, err = b.ForeseeSpread(&Spread{Lawn: "77 Fir", Applicator: "spreader", Product: "food"})
	if err != nil || plan.Fact.Amount.N != int64(measure.Pounds(13)) {
		t.Errorf("%+v %v", plan, err)
	}
	balanced(t, b)
}

func TestHowMuchIsMeant(t *testing.T) {
	b := dryBook(t, "")
	amount := func(applicator, product string) string {
		plan, err := b.ForeseeSpread(&Spread{Lawn: "418 Alder", Zones: []string{"front"}, Applicator: applicator, Product: product})
		if err != nil {
			return err.Error()
		}
		return plan.Fact.Amount.Text()
	}
	for _, row := range []struct{ what, line, applicator, product, want string }{
		{"the label's only rate", "", "drop", "food", "12.0 lb"},
		{"no rate anywhere", "", "drop", "lime", "How much of lime goes on an area is not in the book."},
		{"the mix loaded", `{"fact":"loaded","into":"spreader","mix":"F","parts":[{"product":"food","amount_lb":20}]}`, "spreader", "", "10.0 lb"},
		{"the setting", `{"fact":"fitted","applicator":"spreader","tip":"K"}`, "spreader", "", "16.0 lb"},
	} {
		if row.line != "" {
			play(t, b, row.line)
		}
		if got := amount(row.applicator, row.product); got != row.want {
			t.Errorf("%s: %s, not %s", row.what, got, row.want)
		}
	}
}

func TestMixOfDryProductsGoesDownTogether(t *testing.T) {
	b := dryBook(t, "")
	f, err := b.HopperLoad("ride-on", "FL", measure.Pounds(30))
	if err != nil {
		t.Fatal(err)
	}
	mustEnter(t, b, f)
	mustRefuse(t, b, &Spread{Lawn: "77 Fir", Applicator: "ride-on", Product: "food", Amount: measure.DryAmount(measure.Pounds(5))}, "mixed; food alone does not come out of it")
	mustRefuse(t, b, &Spread{Lawn: "77 Fir", Applicator: "ride-on", Amount: measure.DryAmount(measure.Pounds(31))}, "cannot have come out of it")
	mustEnter(t, b, &Spread{Lawn: "77 Fir", Applicator: "ride-on"}) // 5,200 sq ft at 3 lb
	for _, row := range []struct {
		product string
		lb      float64
	}{{"food", 10.4}, {"lime", 5.2}} {
		if got := account(t, b, "zone/77 Fir/all", row.product); got < measure.Pounds(row.lb)-1000 || got > measure.Pounds(row.lb)+1000 {
			t.Errorf("%.6f lb of %s went down, not %g", got.Pounds(), row.product, row.lb)
		}
	}
	// Tank and hopper are one place.
	k, _ := b.ProductKey("food")
	if got := b.held("applicator/ride-on"); got != measure.Gallons(5) {
		t.Errorf("the tank holds %s", got.Text())
	}
	if got, want := account(t, b, "applicator/ride-on", "food"), b.Plumbing().Hopper("ride-on").Holds.Of(k)+b.Plumbing().Tank("ride-on").Liquid.Holds.Of(k); int64(got) != want {
		t.Errorf("%d and %d", got, want)
	}
	mustEnter(t, b, &Dumped{From: "applicator/ride-on", To: "waste/shed", Amount: Known(measure.Pounds(6))})
	mustRefuse(t, b, &Dumped{From: "applicator/ride-on", To: "package/food"}, "which is not what package/food holds")
	mustEnter(t, b, &Dumped{From: "applicator/ride-on", To: "waste/pad"}) // the tank
	mustEnter(t, b, &Dumped{From: "applicator/ride-on", To: "waste/pad"}) // then the hopper
	if h := b.Plumbing().Hopper("ride-on"); h.Mass() != 0 || h.Flows.Left() != 0 {
		t.Errorf("left in the hopper: %+v", h)
	}
	balanced(t, b)
}

func TestHopperIsEmptiedIntoItsBag(t *testing.T) {
	b := dryBook(t, `{"fact":"loaded","into":"spreader","parts":[{"product":"food","amount_lb":30}]}
{"fact":"dumped","from":"applicator/spreader","to":"package/food","amount_lb":12}
{"fact":"dumped","from":"applicator/spreader","to":"package/food"}
{"fact":"loaded","into":"spreader","parts":[{"product":"lime","amount_lb":50}]}`)
	if got := account(t, b, "package/food", "food"); got != 0 {
		t.Errorf("%.3f lb are missing in the bag", got.Pounds())
	}
	balanced(t, b)
}

// TestOnePassSpraysAndSpreads: both facts in one action, one account for tank and hopper.
func TestOnePassSpraysAndSpreads(t *testing.T) {
	b := dryBook(t, `{"fact":"loaded","into":"ride-on","parts":[{"product":"food","amount_lb":60}]}`)
	es, err := b.Prepare("one", Moment{Unix: 1_780_000_000},
		&Sprayed{Lawn: "77 Fir", Applicator: "ride-on"}, &Spread{Lawn: "77 Fir", Applicator: "ride-on"})
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range es {
		if err := b.Apply(e); err != nil {
			t.Fatal(err)
		}
	}
	if got := account(t, b, "zone/77 Fir/all", "food"); got != measure.Pounds(15.6) {
		t.Errorf("%.4f lb", got.Pounds())
	}
	mustEnter(t, b, &Struck{Of: int64(es[0].Seq), Also: []int64{int64(es[1].Seq)}})
	if got := b.Plumbing().Hopper("ride-on").Mass(); got != measure.Pounds(60) {
		t.Errorf("struck, and the hopper holds %.4f lb", got.Pounds())
	}
	balanced(t, b)
}

func TestFittedTipOutlivesTheRig(t *testing.T) {
	b := dryBook(t, "")
	tips := func(delivery float64, names ...string) *Rig {
		r := *b.Rig()
		r.Applicators = append([]Applicator(nil), r.Applicators...)
		a := &r.Applicators[0]
		a.Delivery, a.Tips = perThousand(delivery), nil
		for i, n := range names {
			a.Tips = append(a.Tips, Tip{Name: n, Delivery: perThousand(float64(i + 1)), Flow: Known(measure.GPM(float64(i + 1)))})
		}
		return &r
	}
	gun := func() float64 { return float64(int(b.Applicator("gun").Delivery.GalPer1000()*1000+0.5)) / 1000 }
	mustEnter(t, b, tips(1.5, "red", "blue"))
	base := b.StateDigest()
	mustEnter(t, b, &Fitted{Applicator: "gun", Tip: "blue"})
	if gun() != 2 || b.FittedTip("gun") != "blue" || b.Applicator("gun").Flow.V != measure.GPM(2) {
		t.Errorf("fitted, and the gun lays %g", gun())
	}
	if b.StateDigest() == base {
		t.Error("a tip fitted says nothing in the digest")
	}
	mustEnter(t, b, tips(1.5, "red", "blue")) // the rig as it was entered
	if gun() != 2 || b.FittedTip("gun") != "blue" {
		t.Errorf("the same rig again took the tip off: %g", gun())
	}
	mustEnter(t, b, tips(2, "red", "blue", "grey")) // the rig in force with one tip more, as a form gives it back
	if gun() != 2 || b.FittedTip("gun") != "blue" {
		t.Errorf("a tip more on the list took the tip off: %g", gun())
	}
	mustEnter(t, b, tips(1.7, "red", "blue")) // another delivery rate, by hand
	if gun() != 1.7 || b.FittedTip("gun") != "" {
		t.Errorf("1.7 by hand, and it is %g with tip %q", gun(), b.FittedTip("gun"))
	}
	mustEnter(t, b, &Fitted{Applicator: "gun", Tip: "red"})
	mustEnter(t, b, tips(1, "blue"))
	if b.FittedTip("gun") != "" || gun() != 1 {
		t.Errorf("a tip that is no longer on the list stays on: %q", b.FittedTip("gun"))
	}
	mustRefuse(t, b, &Fitted{Applicator: "gun", Tip: "red"}, `gun has no tip "red".`)
}

// TestFittedCanBeStruck: the rig as entered is in force again.
func TestFittedCanBeStruck(t *testing.T) {
	b := dryBook(t, "")
	r := *b.Rig()
	r.Applicators = append([]Applicator(nil), r.Applicators...)
	r.Applicators[0].Tips = []Tip{{Name: "red", Delivery: perThousand(3)}}
	mustEnter(t, b, &r)
	before := b.StateDigest()
	mustEnter(t, b, &Fitted{Applicator: "gun", Tip: "red"})
	mustEnter(t, b, &Struck{Of: int64(b.Seq())})
	if b.StateDigest() != before || b.Applicator("gun").Delivery != r.Applicators[0].Delivery {
		t.Errorf("struck, and the gun still lays %s", b.Applicator("gun").Delivery.Text())
	}
}

// TestDryRefusals: as TestRefusals, after a hopper was loaded with 30 lb of food and another with a mix.
func TestDryRefusals(t *testing.T) {
	refusals(t, "testdata/refusals_dry.tsv", dryBook(t, `{"fact":"loaded","into":"spreader","parts":[{"product":"food","amount_lb":30}]}
{"fact":"loaded","into":"ride-on","mix":"FL","parts":[{"product":"food","amount_lb":20},{"product":"lime","amount_lb":10}]}`), 30)
}

func TestNextTipGoesRound(t *testing.T) {
	b := NewBook(1)
	if _, more := b.NextTip("gun"); more {
		t.Error("a book without a rig has a tip")
	}
	play(t, b, `{"fact":"rig","name":"truck","compartments":[{"letter":"a","capacity_gal":300},{"letter":"b","capacity_gal":160}],"hoses":[{"name":"reel","volume_gal":1.5}],"applicators":[{"name":"gun","kind":"gun","hose":"reel","delivery_gal_per_1000_sqft":1.5,"tips":[{"name":"plain","delivery_gal_per_1000_sqft":1.5},{"name":"wide","delivery_gal_per_1000_sqft":2}]},{"name":"backpack","kind":"backpack","hose":"reel","delivery_gal_per_1000_sqft":1,"tank_gal":4,"tips":[{"name":"fan","delivery_gal_per_1000_sqft":1}]}]}`)
	for _, want := range []string{"wide", "plain", "wide"} { // the rig's own 1.5 gal is that of the plain one
		next, more := b.NextTip("gun")
		if next.Name != want || !more {
			t.Fatalf("the next tip is %q, not %q", next.Name, want)
		}
		mustEnter(t, b, &Fitted{Applicator: "gun", Tip: next.Name})
	}
	if _, more := b.NextTip("backpack"); more {
		t.Error("the only tip is on as it is, and is offered")
	}
	mustEnter(t, b, &Fitted{Applicator: "backpack", Tip: "fan"})
	if _, more := b.NextTip("backpack"); more {
		t.Error("the only tip is on, and another is offered")
	}
}

func TestWhatIsLeftInAHopperCovers(t *testing.T) {
	b := dryBook(t, `{"fact":"loaded","into":"spreader","parts":[{"product":"food","amount_lb":30}]}
{"fact":"loaded","into":"ride-on","mix":"FL","parts":[{"product":"food","amount_lb":20},{"product":"lime","amount_lb":10}]}`)
	for _, row := range []struct {
		applicator string
		want       float64
		known      bool
	}{{"spreader", 10_000, true}, {"ride-on", 10_000, true}, {"drop", 0, false}, {"gun", 0, false}} {
		got, known := b.HopperCovers(row.applicator)
		if known != row.known || got.SquareFeet() < row.want-0.01 || got.SquareFeet() > row.want+0.01 {
			t.Errorf("%s covers %.2f sq ft, %v", row.applicator, got.SquareFeet(), known)
		}
	}
	half := b.HopperLoadOf(&Loaded{Into: "ride-on", Mix: "FL", Parts: []LoadPart{{"food", measure.DryAmount(measure.Pounds(20))}, {"lime", measure.DryAmount(measure.Pounds(10))}}}, measure.Pounds(15))
	if half.Parts[0].Amount.N != int64(measure.Pounds(10)) || half.Parts[1].Amount.N != int64(measure.Pounds(5)) || half.Mix != "FL" {
		t.Errorf("%+v", half)
	}
	more, err := b.HopperLoad("ride-on", "", measure.Pounds(3))
	if err != nil || more.Mix != "FL" || more.Parts[0].Amount.N != int64(measure.Pounds(2)) {
		t.Errorf("%+v %v", more, err)
	}
	for _, row := range [][2]string{{"drop", ""}, {"spreader", "nothing like it"}, {"spreader", "W"}} {
		if _, err := b.HopperLoad(row[0], row[1], measure.Pounds(1)); err == nil {
			t.Errorf("%q goes into %s", row[1], row[0])
		}
	}
}
