package yard

import (
	"encoding/json"
	"math"
	"strings"
	"testing"

	"example.com/tintline/core"
	"example.com/tintline/core/check"
	"example.com/tintline/core/measure"
)

var clock = core.Moment{Unix: 1_780_000_000}

// play enters lines as if typed.
func play(t testing.TB, lines string) *core.Book {
	t.Helper()
	b := core.NewBook(1)
	for _, s := range strings.Split(strings.TrimSpace(lines), "\n") {
		if s == "" {
			continue
		}
		l, err := core.DecodeLine([]byte(s))
		if err != nil {
			t.Fatalf("%s\n%v", s, err)
		}
		enter(t, b, l.Fact)
	}
	return b
}

func enter(t testing.TB, b *core.Book, f core.Fact) {
	t.Helper()
	es, err := b.Prepare("test", clock, f)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range es {
		if err := b.Apply(e); err != nil {
			t.Fatal(err)
		}
	}
}

const setUp = `
{"fact":"rig","name":"truck","compartments":[{"letter":"a","name":"warm","capacity_gal":300,"heel_gal":2},{"letter":"b","name":"cool","capacity_gal":160,"heel_gal":2},{"letter":"c","name":"small","capacity_gal":20,"heel_gal":0.5}],"cell_gal":0.2,"return_line_gal":0.1,"hoses":[{"name":"reel","inside_diameter_in":0.375,"length_ft":300}],"applicators":[{"name":"gun","kind":"gun","hose":"reel","delivery_gal_per_1000_sqft":1.6,"flow_gpm":2.5},{"name":"ride-on","kind":"ride_on","hose":"reel","delivery_gal_per_1000_sqft":0.2,"tank_gal":14}]}
{"fact":"product","name":"W1","form":"liquid","kind":"herbicide","actives":[{"name":"sulfosulfuron","percent_by_weight":75}],"registration":"00000-1","grasses":["bermudagrass_common","zoysiagrass"],"rate_low_fl_oz_per_1000_sqft":1,"rate_high_fl_oz_per_1000_sqft":1.5,"price_usd":40,"package_fl_oz":64}
{"fact":"product","name":"C1","form":"liquid","kind":"herbicide","actives":[{"name":"mesotrione","lb_per_gal":4}],"registration":"00000-2","grasses":["tall_fescue"],"rate_low_fl_oz_per_1000_sqft":0.1,"rate_high_fl_oz_per_1000_sqft":0.2}
{"fact":"product","name":"iron","form":"dry","kind":"iron","grasses":["all_turf"],"rate_low_oz_per_1000_sqft":1,"rate_high_oz_per_1000_sqft":4}
{"fact":"product","name":"blue","form":"liquid","kind":"tint","grasses":["all_turf"]}
{"fact":"mix","name":"W","parts":[{"product":"W1","rate_fl_oz_per_1000_sqft":1.2}]}
{"fact":"mix","name":"C","parts":[{"product":"C1","rate_fl_oz_per_1000_sqft":0.15},{"product":"iron","rate_oz_per_1000_sqft":2}]}
{"fact":"lawn","name":"Alder","zones":[{"name":"front","grass":"bermudagrass_common","area_sqft":4000},{"name":"back","grass":"bermudagrass_common","area_sqft":3400}]}
{"fact":"lawn","name":"Fir","zones":[{"name":"all","grass":"tall_fescue","area_sqft":5200}]}
{"fact":"lawn","name":"Gum","zones":[{"name":"all","grass":"zoysiagrass","area_sqft":3000}]}
{"fact":"day_opened","date":"2026-05-28","operator":"R. Example","route":["Fir","Alder","Gum"]}
`

const loaded = setUp + `
{"fact":"loaded","into":"a","volume_gal":200,"mix":"W","for":"gun"}
{"fact":"loaded","into":"b","volume_gal":100,"mix":"C","for":"gun"}
{"fact":"loaded","into":"c","volume_gal":4,"mix":"W","for":"ride-on"}
`

// named is a load of products without a mix.
const named = setUp + `{"fact":"loaded","into":"a","volume_gal":30,"parts":[{"product":"W1","amount_fl_oz":9}]}`

func ask(t testing.TB, f func(*core.Book, Ask) (Answer, error), b *core.Book, q Ask) Answer {
	t.Helper()
	q.At = clock
	a, err := f(b, q)
	if err != nil {
		t.Fatal(err)
	}
	if len(a.Steps) == 0 || a.About == "" || a.Kind == "" || len(a.Says) == 0 {
		t.Errorf("an answer without its working: %+v", a)
	}
	if !a.Possible && (a.Why == "" || a.Do == "") {
		t.Errorf("no reason: %+v", a)
	}
	if _, err := json.Marshal(a.Facts); err != nil {
		t.Errorf("%v: %v", a.Facts, err)
	}
	for _, s := range append(append([]string{a.Why, a.Do}, a.Says...), a.Finds()...) {
		if strings.Contains(strings.ToLower(s), "safe") {
			t.Errorf("%q", s)
		}
	}
	return a
}

// Finds are the sentences of the findings.
func (a Answer) Finds() []string {
	var out []string
	for _, f := range a.Findings {
		out = append(out, f.Says)
	}
	return out
}

func says(a Answer, words string) bool { return strings.Contains(strings.Join(a.Says, "\n"), words) }

func number(t testing.TB, a Answer, key string) float64 {
	t.Helper()
	f, ok := a.Facts[key].(float64)
	if !ok {
		t.Fatalf("%s is %v", key, a.Facts[key])
	}
	return f
}

func near(got, want float64) bool { return math.Abs(got-want) <= 1e-6*math.Max(math.Abs(want), 1) }

// What is likely: the emptiest compartment with a mix, made up for the applicator that its strength fits.
func TestWhatIsMostLikely(t *testing.T) {
	b := play(t, loaded)
	if got := Least(b); got != 'c' {
		t.Errorf("the least is %c", got)
	}
	for letter, want := range map[byte]string{'a': "gun", 'b': "gun", 'c': "ride-on"} {
		if got := MadeFor(b, b.MixIn(string(letter)), b.Plumbing().Compartment(letter)); got != want {
			t.Errorf("%c is made up for %q", letter, got)
		}
	}
	if got := Least(core.NewBook(1)); got != 0 {
		t.Errorf("%c of no rig", got)
	}
	if got := Least(play(t, setUp)); got != 'a' {
		t.Errorf("all are empty: %c", got)
	}
}

// A top-up adds 16 gal x 6 fl oz for the ride-on (1.2 / 0.2), and 15.25 gal of water.
func TestTopUpFromTheBook(t *testing.T) {
	b := play(t, loaded)
	got := ask(t, TopUp, b, Ask{})
	if !got.Possible || got.Plan == nil || got.Plan.Into != "c" || got.Plan.Mix != "W" || got.Plan.For != "ride-on" || got.Plan.Volume != measure.Gallons(16) {
		t.Fatalf("%+v", got)
	}
	if p := got.Plan.Parts; len(p) != 1 || !near(measure.Volume(p[0].Amount.N).FluidOunces(), 96) {
		t.Errorf("%+v", p)
	}
	if !near(number(t, got, "water_gal"), 16-96./128) || !says(got, "add W1 96.0 fl oz") {
		t.Errorf("%v %v", got.Facts, got.Says)
	}
	// What is planned is admitted, and books only what is added; then the tank is as strong as meant.
	enter(t, b, got.Plan)
	enter(t, b, core.LoadedFrom(b.LoadPlan("c")))
	c := b.Plumbing().Compartment('c')
	if k, _ := b.ProductKey("W1"); c.Liquid.Volume != measure.Gallons(20) || !near(c.Liquid.Strength(k).PerGallon(measure.Liquid), 6) || b.MixIn("c") != "W" {
		t.Errorf("%v gal of %q", c.Liquid.Volume.Text(), b.MixIn("c"))
	}
	// As full as it can be, nothing is to be added.
	if again := ask(t, TopUp, b, Ask{Into: 'c'}); !again.Possible || again.Plan != nil || !says(again, "nothing is to be added") {
		t.Errorf("%+v", again)
	}
}

// Into an empty compartment the first mix goes that may go on the next lawn, which is Fir with tall fescue.
func TestAnEmptyCompartmentGetsALikelyMix(t *testing.T) {
	b := play(t, setUp)
	if got := ask(t, TopUp, b, Ask{}); got.Plan == nil || got.Plan.Mix != "C" || got.Plan.Volume != measure.Gallons(300) {
		t.Errorf("%+v", got)
	}
	if got := ask(t, Load, b, Ask{}); got.Plan == nil || got.Plan.Mix != "C" {
		t.Errorf("%+v", got)
	}
}

// The ride-on's mix is eight times too strong for the gun: right at 32 gal, which does not fit; in a large tank it fits.
func TestTopUpTooStrong(t *testing.T) {
	b := play(t, loaded)
	got := ask(t, TopUp, b, Ask{Into: 'c', For: "gun"})
	if got.Possible || got.Plan != nil || !strings.Contains(got.Why, "8.00 times the strength meant") || !strings.Contains(got.Do, "right at 32.0 gal, but the tank holds 20.0 gal") {
		t.Errorf("%+v", got)
	}
	// With another applicator's product in it, the rest is named and held against the grasses.
	got = ask(t, TopUp, b, Ask{Into: 'b', Mix: "W", For: "gun"})
	if !got.Possible || !says(got, "C1 9.38 fl oz stays in it") || len(got.Findings) == 0 || got.Findings[0].Weight != check.Stop {
		t.Errorf("%+v", got)
	}
	// Water alone keeps the name of what stands in it.
	weak := play(t, setUp+`{"fact":"loaded","into":"a","volume_gal":10,"parts":[{"product":"W1","amount_fl_oz":30}],"mix":"W","for":"gun"}`)
	got = ask(t, TopUp, weak, Ask{Into: 'a', For: "gun", Volume: core.Known(measure.Gallons(40))})
	if !got.Possible || got.Plan == nil || len(got.Plan.Parts) != 0 || got.Plan.Mix != "" {
		t.Errorf("%+v", got.Plan)
	}
}

// 16 gal for the gun cover 10,000 sq ft and take 12 fl oz; the plan becomes the same load.
func TestLoadFromTheBook(t *testing.T) {
	b := play(t, setUp)
	got := ask(t, Load, b, Ask{Into: 'a', Mix: "W", For: "gun", Area: core.Known(measure.SquareFeet(10_000))})
	if !near(number(t, got, "volume_gal"), 16) || !says(got, "W1 12.0 fl oz") {
		t.Fatalf("%+v", got)
	}
	enter(t, b, got.Plan)
	if p := b.LoadPlan("a"); len(p.Parts) != 1 || p.Parts[0].Amount.Text() != "12.0 fl oz" {
		t.Errorf("%+v", p)
	}
	if got := ask(t, Load, play(t, loaded), Ask{Into: 'a'}); got.Plan.Volume != measure.Gallons(100) || !strings.Contains(got.Findings[0].Says, "200.0 gal are in a already") {
		t.Errorf("%+v", got)
	}
}

// 4 gal at the ride-on's strength become 32 gal for the gun; c holds 20, of which 2.5 gal may be.
func TestDiluteFromTheBook(t *testing.T) {
	b := play(t, loaded)
	got := ask(t, Dilute, b, Ask{Into: 'c'})
	if got.Possible || !near(number(t, got, "strength_ratio"), 0.125) || !near(number(t, got, "most_left_gal"), 2.5) {
		t.Errorf("%+v", got)
	}
	big := play(t, setUp+`{"fact":"loaded","into":"a","volume_gal":4,"mix":"W","for":"ride-on"}`)
	if got := ask(t, Dilute, big, Ask{Into: 'a'}); !got.Possible || got.Plan == nil || !near(got.Plan.Volume.Gallons(), 28) || len(got.Plan.Parts) != 0 {
		t.Errorf("%+v", got)
	}
	// The other way round it takes product: 200 gal at 0.75 fl oz a gal to 6.
	strong := ask(t, Dilute, b, Ask{Into: 'a', For: "ride-on"})
	if !strong.Possible || strong.Plan == nil || len(strong.Plan.Parts) != 1 {
		t.Errorf("%+v", strong)
	}
}

// W is laid at 1.2 fl oz where 1 is the lowest: 200 gal become 240, 20 % more.
func TestStretchFromTheBook(t *testing.T) {
	b := play(t, loaded)
	got := ask(t, Stretch, b, Ask{Into: 'a'})
	if !got.Possible || !near(number(t, got, "total_gal"), 240) || got.Plan == nil || !near(got.Plan.Volume.Gallons(), 40) || !near(number(t, got, "area_sqft"), 238/1.6*1000) {
		t.Fatalf("%+v", got)
	}
	if !strings.Contains(strings.Join(got.Finds(), "\n"), "Control is shorter") || !strings.Contains(strings.Join(got.Finds(), "\n"), "The record says another rate") {
		t.Errorf("%v", got.Finds())
	}
	if some := ask(t, Stretch, b, Ask{Into: 'a', Volume: core.Known(measure.Gallons(5))}); !near(number(t, some, "water_gal"), 5) {
		t.Errorf("%+v", some)
	}
}

// W run into C lays mesotrione on bermudagrass and sulfosulfuron on tall fescue: neither may take it.
func TestBlendFromTheBook(t *testing.T) {
	b := play(t, loaded)
	got := ask(t, Blend, b, Ask{From: 'a', Into: 'b', Volume: core.Known(measure.Gallons(50))})
	if !says(got, "it may go on no grass of the book") || got.Plan != nil || len(got.Facts["lawns_not"].([]string)) != 3 {
		t.Errorf("%+v", got)
	}
	// W into W for another applicator stays W; four times too strong is a stop by the label.
	same := ask(t, Blend, b, Ask{From: 'c'})
	if !strings.Contains(same.About, "of c into a") || !says(same, "it may go on") || !says(same, "not on tall fescue") {
		t.Errorf("%+v", same)
	}
	// What the zone had today, the gate's own rules say of the lawn.
	twice := play(t, loaded+`{"fact":"lined_up","supply":["a"],"return":"a"}
{"fact":"pushed_back","into":"a","volume_gal":8}
{"fact":"visit_begun","lawn":"Gum"}
{"fact":"sprayed","lawn":"Gum","zones":["all"],"applicator":"gun","by":"area"}`)
	if again := ask(t, Blend, twice, Ask{From: 'c', For: "gun", Volume: core.Known(measure.Gallons(0.1))}); !says(again, "of the lawns ahead not on Gum") || !strings.Contains(strings.Join(again.Finds(), "\n"), "Gum: ") {
		t.Errorf("%v %v", again.Says, again.Finds())
	}
	if same.Facts["total_gal"].(float64) != 203.5 {
		t.Errorf("%v", same.Facts["total_gal"])
	}
}

// 2 gal of W thinned 1 to 10 lay 0.109 fl oz: on zoysiagrass and bermudagrass, not on tall fescue.
func TestUseUpFromTheBook(t *testing.T) {
	b := play(t, loaded)
	got := ask(t, UseUp, b, Ask{Into: 'a', Volume: core.Known(measure.Gallons(2))})
	if !got.Possible || !near(number(t, got, "volume_gal"), 22) || !says(got, "Gum: up to 0.44 gal of it, on 3,000 sq ft") || !says(got, "Fir: not there; W1 is not listed for tall fescue") {
		t.Errorf("%+v", got)
	}
	// What got the full rate today has no room for it.
	after := play(t, loaded+`{"fact":"lined_up","supply":["a"],"return":"a"}
{"fact":"pushed_back","into":"a","volume_gal":8}
{"fact":"sprayed","lawn":"Gum","zones":["all"],"applicator":"gun","by":"area"}`)
	got = ask(t, UseUp, after, Ask{Into: 'a', Volume: core.Known(measure.Gallons(2)), Thin: core.Known(1.0)})
	if !says(got, "Gum: not there; W1 would lay 0.594 fl oz") || !says(got, "but 1 to 2.8 would do") {
		t.Errorf("%v", got.Says)
	}
	if got := ask(t, UseUp, play(t, strings.Replace(loaded, `"route":["Fir","Alder","Gum"]`, `"route":[]`, 1)), Ask{Into: 'a'}); got.Possible || !strings.Contains(got.Why, "No lawn is on the list") {
		t.Errorf("%+v", got)
	}
}

func TestTintFromTheBook(t *testing.T) {
	b := play(t, loaded+`{"fact":"loaded","into":"b","volume_gal":20,"parts":[{"product":"blue","amount_fl_oz":30}]}`)
	got := ask(t, Tint, b, Ask{Into: 'b'})
	if !got.Possible || !says(got, "add blue 10.0 fl oz when it is filled to 160.0 gal") || !says(got, "as it stands now") {
		t.Errorf("%+v", got)
	}
	typed := ask(t, Tint, b, Ask{Into: 'b', Dose: core.Known(measure.LiquidAmount(measure.FluidOunces(0.5)))})
	if !says(typed, "now at 0.5 times the dose") || !says(typed, "add blue 50.0 fl oz") {
		t.Errorf("%v", typed.Says)
	}
}

// The heel of 2 gal with three times 16 gal: (2/18)^3 = 0.137 %.
func TestRinseFromTheBook(t *testing.T) {
	got := ask(t, Rinse, play(t, loaded), Ask{Into: 'b'})
	if !near(number(t, got, "fraction_old"), 1./729) || !says(got, "3 times 16.0 gal, 48.0 gal in all") || !says(got, "2 such rinses reach 2 %") {
		t.Errorf("%+v", got)
	}
}

func TestJugFromTheBook(t *testing.T) {
	b := play(t, loaded)
	got := ask(t, Jug, b, Ask{Into: 'a', Loads: 4})
	if !says(got, "4 loads of 16.0 fl oz, each for 13,330 sq ft at 1.20 fl oz per 1,000 sq ft, as in W") {
		t.Errorf("%+v", got.Says)
	}
	got = ask(t, Jug, b, Ask{Name: "W1", Each: core.Known(measure.LiquidAmount(measure.FluidOunces(12)))})
	if !says(got, "5 loads of 12.0 fl oz") || !says(got, "4.00 fl oz left in the package") {
		t.Errorf("%+v", got.Says)
	}
}

// What is marked as not to be mixed is a stop before it goes in, whichever question brings it together; what never met is asked about.
func TestWhatMayNotMeetIsSaid(t *testing.T) {
	marked := loaded + `{"fact":"jar_tested","products":["W1","C1"],"result":"not_mixing"}
{"fact":"mix","name":"both","parts":[{"product":"W1","rate_fl_oz_per_1000_sqft":1.2},{"product":"C1","rate_fl_oz_per_1000_sqft":0.15}]}`
	b := play(t, marked)
	for _, a := range []Answer{
		ask(t, Load, b, Ask{Into: 'a', Mix: "both", For: "gun"}), ask(t, TopUp, b, Ask{Into: 'b', Mix: "W", For: "gun"}), ask(t, Blend, b, Ask{From: 'b', Into: 'a'}),
	} {
		if len(a.Findings) == 0 || a.Findings[0].Weight != check.Stop || !strings.Contains(strings.Join(a.Finds(), "\n"), "W1") {
			t.Errorf("%s: %v", a.Kind, a.Finds())
		}
	}
	unmarked := play(t, strings.Replace(marked, `{"fact":"jar_tested","products":["W1","C1"],"result":"not_mixing"}`, "", 1))
	if a := ask(t, Load, unmarked, Ask{Into: 'a', Mix: "both", For: "gun"}); !strings.Contains(strings.Join(a.Finds(), "\n"), "Never in one tank in this book: W1 with C1") {
		t.Errorf("%v", a.Finds())
	}
}
