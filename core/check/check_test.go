package check

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

// tester is a test, or a property.
type tester interface {
	Helper()
	Fatal(args ...any)
	Fatalf(format string, args ...any)
}

// play enters lines as if typed.
func play(t tester, lines string) *core.Book {
	t.Helper()
	b := core.NewBook(1)
	more(t, b, lines)
	return b
}

var clock = core.Moment{Unix: 1_780_000_000}

func more(t tester, b *core.Book, lines string) {
	t.Helper()
	for _, s := range strings.Split(strings.TrimSpace(lines), "\n") {
		if s == "" {
			continue
		}
		l, err := core.DecodeLine([]byte(s))
		if err != nil {
			t.Fatalf("%s\n%v", s, err)
		}
		log(t, b, l.Fact)
	}
}

func log(t tester, b *core.Book, facts ...core.Fact) {
	t.Helper()
	es, err := b.Prepare("test", clock, facts...)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range es {
		if err := b.Apply(e); err != nil {
			t.Fatal(err)
		}
	}
}

const rigLines = `
{"fact":"rig","name":"truck","compartments":[{"letter":"a","name":"warm","capacity_gal":300,"heel_gal":2},{"letter":"b","name":"cool","capacity_gal":160,"heel_gal":2},{"letter":"c","name":"iron","capacity_gal":90,"heel_gal":1}],"cell_gal":0.2,"return_line_gal":0.1,"hoses":[{"name":"reel","inside_diameter_in":0.375,"length_ft":300}],"applicators":[{"name":"gun","kind":"gun","hose":"reel","delivery_gal_per_1000_sqft":1.6,"flow_gpm":2.5},{"name":"ride-on","kind":"ride_on","hose":"reel","delivery_gal_per_1000_sqft":0.2,"tank_gal":14}]}
{"fact":"product","name":"W1","form":"liquid","kind":"herbicide","actives":[{"name":"sulfosulfuron","percent_by_weight":75}],"registration":"00000-1","grasses":["bermudagrass_common","zoysiagrass"],"rate_low_fl_oz_per_1000_sqft":1,"rate_high_fl_oz_per_1000_sqft":1.5,"wind_max_mph":10}
{"fact":"product","name":"C1","form":"liquid","kind":"herbicide","actives":[{"name":"mesotrione","lb_per_gal":4}],"registration":"00000-2","grasses":["tall_fescue"],"rate_low_fl_oz_per_1000_sqft":0.1,"rate_high_fl_oz_per_1000_sqft":0.2}
{"fact":"product","name":"iron","form":"dry","kind":"iron","grasses":["all_turf"],"rate_low_oz_per_1000_sqft":1,"rate_high_oz_per_1000_sqft":4}
{"fact":"mix","name":"W","parts":[{"product":"W1","rate_fl_oz_per_1000_sqft":1.2}]}
{"fact":"mix","name":"C","parts":[{"product":"C1","rate_fl_oz_per_1000_sqft":0.15}]}
{"fact":"mix","name":"I","parts":[{"product":"iron","rate_oz_per_1000_sqft":2}]}
{"fact":"lawn","name":"Alder","zones":[{"name":"front","grass":"bermudagrass_common","area_sqft":4000},{"name":"back","grass":"bermudagrass_common","area_sqft":3400}]}
{"fact":"lawn","name":"Fir","zones":[{"name":"all","grass":"tall_fescue","area_sqft":5200}]}
{"fact":"lawn","name":"Gum","zones":[{"name":"all","grass":"centipedegrass","area_sqft":3000}]}
{"fact":"day_opened","date":"2026-05-28","operator":"R. Example","route":["Fir","Alder","Gum"]}
{"fact":"weather","wind_mph":6,"wind_from":"SW","temp_f":64}
`

const loadedLines = rigLines + `
{"fact":"loaded","into":"a","volume_gal":200,"mix":"W","for":"gun"}
{"fact":"loaded","into":"b","volume_gal":100,"mix":"C","for":"gun"}
{"fact":"loaded","into":"c","volume_gal":50,"mix":"I","for":"gun"}
`

// hoseOf fills hose and cell with a compartment's liquid.
func hoseOf(letter string) string {
	return fmt.Sprintf(`{"fact":"lined_up","supply":[%q],"return":%q}
{"fact":"pushed_back","into":%q,"volume_gal":8}
`, letter, letter, letter)
}

func find(r Report, rule string) *Finding {
	for i := range r.Findings {
		if r.Findings[i].Rule == rule {
			return &r.Findings[i]
		}
	}
	return nil
}

func before(t testing.TB, b *core.Book, in Intent) Report {
	t.Helper()
	in.At = clock
	r, err := Before(b, in)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// smearByHand is the sigma of a hose in gallons, by the relation of Wen and Fan (Levenspiel 1999) and water of 20 C, of which
// 1 gpm through 3/8 in has a Reynolds number of 8405.
func smearByHand(gal, inches, feet, gpm float64) float64 {
	re := 8405 * gpm * 0.375 / inches
	number := 3.0e7/math.Pow(re, 2.1) + 1.35/math.Pow(re, 0.125)
	return gal * math.Sqrt(2*number*inches/(12*feet))
}

func TestOldMixInHoseIsAStopUntilPushedBack(t *testing.T) {
	b := play(t, loadedLines+hoseOf("b"))
	more(t, b, `{"fact":"lined_up","supply":["a"],"return":"a"}`)
	r := before(t, b, Intent{Lawn: "Alder"})
	f := find(r, "grass")
	if r.Verdict != Stop || f == nil || f.Product != "C1" || f.Part != PartHose || !f.PushBack.Known {
		t.Fatalf("verdict %v, %+v", r.Verdict, f)
	}
	for _, f := range r.Findings {
		t.Logf("%s %s: %s | %s", f.Weight, f.Rule, f.Says, f.Do)
	}
	c := ToClean(b, Intent{Lawn: "Alder"})
	t.Logf("%+v", *c)
	// hose and cell as in the closed form: Vh + Vm ln(old/tolerance) (Levenspiel 1999, mixed flow then plug flow). Mesotrione
	// is HRAC 27, asked about from 0.001 of its lowest rate; the changeover aims at that less the slack of the steps. Old is
	// what the cell holds, 1.47 of the lowest rate, less what the bypass has swept into a: 0.1 of 200 gal.
	const swept = 0.1 / 200
	// The smear puts sigma^2/(2 Vm) to it, with 1.25 on sigma (shortcut for a cell of more than two sigma).
	old := f.ShareOfLabel.V
	smear := 1.25 * smearByHand(1.72125, 0.375, 300, 2.5)
	want := b.Plumbing().Hose("reel").Size.Gallons() + 0.2*math.Log(old*(1-swept)/(0.001/slack)) + smear*smear/(2*0.2)
	if got := c.Clean.Gallons(); math.Abs(got-want) > 0.0005 {
		t.Errorf("clean after %.4f gal, want %.4f", got, want)
	}
	if math.Abs(c.Share-(1-0.001/slack/old)) > 1e-6 || c.DecidedBy != "C1" || c.Into != 'b' {
		t.Errorf("share %v decided by %v into %c", c.Share, c.DecidedBy, c.Into)
	}
	// Where residue matters less, the 0.99 of the setting decides: common practice, no source.
	mild := b.Clone()
	more(t, mild, `{"fact":"setting","name":"trace_a_ask","value":1}`)
	want = b.Plumbing().Hose("reel").Size.Gallons() + 0.2*math.Log(100) + smear*smear/(2*0.2)
	if c := ToClean(mild, Intent{Lawn: "Alder"}); math.Abs(c.Clean.Gallons()-want) > 0.00001 || math.Abs(c.Share-0.99) > 1e-12 {
		t.Errorf("clean after %.4f gal, want %.4f, at %v", c.Clean.Gallons(), want, c.Share)
	}
	// Until hose and cell were timed one goes on by a tenth of the hose and half of the cell's part, as squares.
	if u := math.Hypot(0.1*1.72125, 0.5*(c.Clean.Gallons()-1.72125)); math.Abs(c.Advised.Gallons()-c.Clean.Gallons()-u) > 0.0001 || c.PushBack < c.Advised || c.PushBack > c.Advised+measure.Gallons(0.01) {
		t.Errorf("clean at %s, advised %s, push back %s, %.4f gal uncertain", c.Clean.Text(), c.Advised.Text(), c.PushBack.Text(), u)
	}
	// The tail into a would be asked about there (see TestWaysOfTheTail): what washes the cell three times goes into a pail.
	if len(c.Legs) != 3 || c.Legs[0].Into != 'b' || c.Legs[1].To != Pail || c.Legs[2].Into != 'a' || c.Legs[0].Volume+c.Legs[1].Volume+c.Legs[2].Volume != c.PushBack {
		t.Errorf("legs %+v", c.Legs)
	}
	log(t, b, &core.PushedBack{Into: c.Into, Volume: c.PushBack})
	if c := ToClean(b, Intent{Lawn: "Alder"}); c != nil {
		t.Errorf("still to clean: %+v", *c)
	}
	r = before(t, b, Intent{Lawn: "Alder"})
	for _, f := range r.Findings { // that a holds a little of it now may be noted
		if f.Weight > Note || f.Part != PartCompartment && f.About != aboutStrainers {
			t.Errorf("%s %s: %s | %s", f.Weight, f.Rule, f.Says, f.Do)
		}
	}
	p := Propose(b, Intent{At: clock})
	if p.Act != ActArrived {
		t.Errorf("proposes %+v", p)
	}
}

// An eighth of the delivery needs eight times the strength: common practice, no source.
func TestEightTimesTheStrength(t *testing.T) {
	b := play(t, rigLines+`
{"fact":"loaded","into":"a","volume_gal":200,"mix":"W","for":"gun"}
{"fact":"loaded","into":"b","volume_gal":100,"mix":"W","for":"ride-on"}
{"fact":"lined_up","supply":["b"],"return":"b"}
{"fact":"pushed_back","into":"c","volume_gal":8}`)
	r := before(t, b, Intent{Lawn: "Alder"})
	f := find(r, "dose")
	if r.Verdict != Stop || f == nil || measure.Multiple(f.TimesMix.V) != "8.0" || !strings.Contains(f.Says, "8.0 times the mix") {
		t.Fatalf("verdict %v %+v", r.Verdict, f)
	}
	t.Log(f.Says, f.Do)
	more(t, b, `{"fact":"lined_up","supply":["a"],"return":"a"}`)
	c := ToClean(b, Intent{Lawn: "Alder"})
	t.Logf("%+v", *c)
	if math.Abs(c.Share-0.993) > 0.0005 {
		t.Errorf("from eight times the strength: share %v", c.Share)
	}
	b = play(t, rigLines+`
{"fact":"loaded","into":"a","volume_gal":200,"mix":"W","for":"gun"}
{"fact":"loaded","into":"b","volume_gal":100,"mix":"W","for":"ride-on"}
`+hoseOf("a")+`{"fact":"lined_up","supply":["b"],"return":"b"}`)
	c = ToClean(b, Intent{Lawn: "Alder"})
	if math.Abs(c.Share-0.943) > 0.0005 {
		t.Errorf("back again: share %v", c.Share)
	}
}
