package check

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"example.com/tintline/core"
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
)

// Each row is one situation and what the rules must say of it. The limits asked for are the book's own
// label entries and settings; where a rule of thumb stands behind a row, its source column says so.
var ruleRows = []struct {
	name    string
	lines   string
	in      Intent
	rule    string
	weight  Weight
	part    string
	says    string // part of the sentence
	do      string
	verdict Weight
	source  string
}{
	{
		"the compartment itself is wrong for the grass", hoseOf("b"),
		Intent{Lawn: "Alder"},
		"grass", Stop, PartCompartment, "mesotrione is not for common bermudagrass", "Turn to a", Stop,
		"common practice, no source: a mix for one group of grasses is not for another",
	},
	{
		"a mix for warm-season grass on tall fescue", hoseOf("a"),
		Intent{Lawn: "Fir"},
		"grass", Stop, PartCompartment, "sulfosulfuron is not for tall fescue", "Turn to b", Stop,
		"common practice, no source: a mix for warm-season grass is not for tall fescue",
	},
	{
		"a mix for bermudagrass on centipedegrass", hoseOf("a"),
		Intent{Lawn: "Gum"},
		"grass", Stop, PartCompartment, "not for centipedegrass", "Turn to c", Stop,
		"common practice, no source: a mix for bermudagrass and zoysiagrass is not for centipedegrass",
	},
	{
		"a mix whose jar failed", hoseOf("a") + pairIn("a", `{"fact":"jar_tested","products":["iron","W1"],"result":"failed","signs":["clumps"],"note":"at 60 F"}`),
		Intent{Lawn: "Alder"},
		"pair", Stop, PartCompartment, "The jar of W1 and iron failed on 2026-05-28: clumps. At 60 F.", "Do not spray it", Stop,
		"Utah State University extension, jar test, 2012: clumps are a failed jar",
	},
	{
		"a mix marked as not to be mixed", hoseOf("a") + pairIn("a", `{"fact":"jar_tested","products":["W1","iron"],"result":"not_mixing"}`),
		Intent{Lawn: "Alder"},
		"pair", Stop, PartCompartment, "W1 and iron are marked as not to be mixed.", "Do not spray it", Stop, "the operator's own mark",
	},
	{
		"a mark that was taken back", hoseOf("a") + pairIn("a", `{"fact":"jar_tested","products":["W1","iron"],"result":"not_mixing"}
{"fact":"jar_tested","products":["iron","W1"],"result":"may_mix"}`),
		Intent{Lawn: "Alder"},
		"", None, "", "", "", None, "the operator's own mark",
	},
	{
		"a mark against what is there as residue only", hoseOf("a") + `{"fact":"loaded","into":"a","volume_gal":1,"parts":[{"product":"iron","amount_oz":4}]}
{"fact":"jar_tested","products":["W1","iron"],"result":"not_mixing"}
` + hoseOf("a"),
		Intent{Lawn: "Alder"},
		"", None, "", "", "", None, "setting residue_share: below a tenth it is no part of the mix",
	},
	{"iron on any grass", hoseOf("c"), Intent{Lawn: "Gum"}, "", None, "", "", "", None, "label entry lists all turf"},
	{
		"gun strength through the ride-on", `{"fact":"loaded","into":"ride-on","volume_gal":10,"mix":"W","for":"gun"}`,
		Intent{Lawn: "Alder", With: "ride-on"},
		"dose", Ask, PartApplicator, "0.1 times the mix", "weak", Ask, "arithmetic: 0.2 of 1.6 gal per 1,000 sq ft is an eighth",
	},
	{
		"more gallons than the area asks for", hoseOf("a"),
		Intent{Lawn: "Alder", Volume: core.Known(measure.Gallons(17.76))},
		"dose", Stop, PartCompartment, "1.5 times the mix, 1.2 times the label's most", "Lay less", Stop,
		"arithmetic: 17.76 gal on 7,400 sq ft is 2.4 gal per 1,000, 1.5 of 1.6; 1.2 fl oz x 1.5 = 1.8 of 1.5",
	},
	{
		"a little more than the mix", hoseOf("a"),
		Intent{Lawn: "Alder", Volume: core.Known(measure.Gallons(13.0))},
		"dose", Ask, PartCompartment, "1.1 times the mix", "Lay less", Ask, "arithmetic: 13.0 of 11.84 gal",
	},
	{
		"first water of a new rig", `{"fact":"lined_up","supply":["a"],"return":"a"}`,
		Intent{Lawn: "Alder"},
		"dose", Ask, PartHose, "No sulfosulfuron would go down on the first 1,440 sq ft", "Push", Ask, "arithmetic: the hose holds 1.72 gal of water",
	},
	{
		"not enough", hoseOf("c") + `{"fact":"gauge_read","compartment":"c","volume_gal":4}`,
		Intent{Lawn: "Gum"},
		"enough", Stop, PartCompartment, "3.00 gal to give, ±0.90; Gum needs 4.80 gal: it ends after 1,880 sq ft", "Refill", Stop,
		"arithmetic: 3.00 of 4.80 gal on 3,000 sq ft; band 1 per cent of 90 gal",
	},
	{
		"perhaps not enough", hoseOf("c") + `{"fact":"gauge_read","compartment":"c","volume_gal":6}`,
		Intent{Lawn: "Gum"},
		"enough", Ask, PartCompartment, "may fall short", "Read the gauge", Ask, "arithmetic: 5.00 within 0.90 of 4.80",
	},
	{
		"no supply open", `{"fact":"lined_up","supply":[],"return":"a"}`,
		Intent{Lawn: "Alder"},
		"line_up", Stop, PartRig, "run dry", "Turn to a", Stop, "how the rig is plumbed",
	},
	{
		"two supplies open", hoseOf("a") + `{"fact":"lined_up","supply":["a","b"],"return":"a"}`,
		Intent{Lawn: "Alder"},
		"line_up", Stop, PartRig, "each gives 1.2 gal a minute", "Close all supplies but a", Stop, "arithmetic: half of 2.5 gpm",
	},
	{
		"return elsewhere", hoseOf("a") + `{"fact":"lined_up","supply":["a"],"return":"b"}`,
		Intent{Lawn: "Alder"},
		"line_up", Stop, PartRig, "about 5.0 gal a minute of a would run into b", "Turn the return to a", Stop, "setting bypass_flow_gpm",
	},
	{
		"wind over the label", hoseOf("a") + `{"fact":"setting","name":"wind_stop_mph","value":"15"}
{"fact":"weather","wind_mph":11,"wind_from":"W"}`,
		Intent{Lawn: "Alder"},
		"weather", Stop, PartDay, "Wind 11 mph; the label entry of W1 allows 10.", "Wait", Stop, "label entry",
	},
	{
		"wind over the setting, label blank", hoseOf("b") + `{"fact":"weather","wind_mph":10.5,"wind_from":"W"}`,
		Intent{Lawn: "Fir"},
		"weather", Stop, PartDay, "Wind 10.5 mph, over 10", "Wait", Stop, "extension teaching, 3 to 10 mph",
	},
	{
		"wind to ask about", hoseOf("b") + `{"fact":"weather","wind_mph":9,"wind_from":"W"}`,
		Intent{Lawn: "Fir"},
		"weather", Ask, PartDay, "Wind 9 mph, over 8", "downwind", Ask, "university coalition, 3 to 8 mph",
	},
	{
		"hardly any wind", hoseOf("b") + `{"fact":"weather","wind_mph":2,"wind_from":"W"}`,
		Intent{Lawn: "Fir"},
		"weather", Note, PartDay, "inverted", "smoke", Note, "university coalition, 3 to 8 mph",
	},
	{
		"wind not looked at", hoseOf("b") + `{"fact":"weather","temp_f":70}`,
		Intent{Lawn: "Fir"},
		"weather", Ask, PartDay, "The wind is not known", "Look", Ask, "record of wind at each application",
	},
}

func TestRules(t *testing.T) {
	for _, row := range ruleRows {
		t.Run(row.name, func(t *testing.T) {
			b := play(t, loadedLines+row.lines)
			r := before(t, b, row.in)
			if r.Verdict != row.verdict {
				t.Errorf("verdict %v, want %v: %+v", r.Verdict, row.verdict, r.Findings)
			}
			if row.rule == "" {
				if len(r.Findings) > 0 {
					t.Errorf("findings where none are due: %+v", r.Findings)
				}
				return
			}
			f := find(r, row.rule)
			if f == nil {
				t.Fatalf("no finding of rule %s: %+v", row.rule, r.Findings)
			}
			if f.Weight != row.weight || f.Part != row.part || !strings.Contains(f.Says, row.says) || !strings.Contains(f.Do, row.do) {
				t.Errorf("%v %s\n says %s\n do %s\nwant %v %s ...%s... %s", f.Weight, f.Part, f.Says, f.Do, row.weight, row.part, row.says, row.do)
			}
			if f.Ground == "" || f.Source == "" {
				t.Errorf("no ground or source: %+v", f)
			}
		})
	}
}

func TestWeatherByAge(t *testing.T) {
	b := play(t, loadedLines+hoseOf("b"))
	for _, row := range []struct {
		minutes int64
		want    Weight
		says    string
	}{{0, None, ""}, {30, None, ""}, {31, Ask, "31 min old"}, {60, Ask, "60 min old"}, {61, Ask, "not known"}, {-5, Ask, "later than the clock"}} {
		at := clock
		at.Unix += row.minutes * 60
		r, err := Before(b, Intent{Lawn: "Fir", At: at})
		if err != nil {
			t.Fatal(err)
		}
		f := find(r, "weather")
		if (row.want == None) != (f == nil) || f != nil && (f.Weight != row.want || !strings.Contains(f.Says, row.says)) {
			t.Errorf("after %d min: %v %+v", row.minutes, r.Verdict, f)
		}
	}
	empty := play(t, strings.Replace(rigLines, `{"fact":"weather","wind_mph":6,"wind_from":"SW","temp_f":64}`, "", 1))
	if r := before(t, empty, Intent{Lawn: "Fir"}); find(r, "weather") == nil || find(r, "weather").Weight != Ask {
		t.Errorf("no weather logged: %+v", r.Findings)
	}
}

// Each parcel is judged at its own strength over its own area, in the order in which it leaves: what the hose
// holds goes on the first zone.
func TestParcelsFallOnTheFirstZone(t *testing.T) {
	b := play(t, loadedLines+hoseOf("b"))
	more(t, b, `{"fact":"lined_up","supply":["a"],"return":"a"}
{"fact":"lawn","name":"Two","zones":[{"name":"first","grass":"bermudagrass_common","area_sqft":4000},{"name":"second","grass":"zoysiagrass","area_sqft":4000}]}
{"fact":"lawn","name":"Owt","zones":[{"name":"first","grass":"tall_fescue","area_sqft":4000},{"name":"second","grass":"bermudagrass_common","area_sqft":4000}]}`)
	r := before(t, b, Intent{Lawn: "Two"})
	for _, f := range r.Findings {
		if f.Rule == "grass" && f.Grass != "bermudagrass_common" {
			t.Errorf("the tail of b would end on the first zone: %+v", f)
		}
	}
	// hose 1.72 gal and 0.46 gal of tail above a tenth (0.2 ln 10) over 1.6 gal per 1,000 sq ft: 1,364 sq ft (arithmetic)
	if f := find(r, "grass"); f == nil || math.Abs(f.Area.SquareFeet()-1364) > 15 {
		t.Errorf("area %+v", f)
	}
	r = before(t, b, Intent{Lawn: "Owt", Zones: []string{"first"}})
	if f := find(r, "grass"); f == nil || f.Product != "W1" || math.Abs(f.Area.SquareFeet()-(4000-1742.0/1.6)) > 15 { // and a tenth of it is new after 0.2 ln(1/0.9)
		t.Errorf("on fescue the new liquid is wrong once it arrives: %+v", f)
	}
}

func TestOneReasonOpensOneFinding(t *testing.T) {
	b := play(t, loadedLines+hoseOf("b"))
	more(t, b, `{"fact":"product","name":"C2","form":"dry","kind":"herbicide","grasses":["tall_fescue"]}
{"fact":"loaded","into":"b","volume_gal":5,"parts":[{"product":"C2","amount_oz":20}]}
`+hoseOf("b")+`{"fact":"visit_begun","lawn":"Alder"}`)
	stops := func() (n int) {
		for _, f := range before(t, b, Intent{Lawn: "Alder"}).Findings {
			if f.Weight == Stop && f.Rule == "grass" && f.Reason == "" {
				n++
			}
		}
		return n
	}
	if stops() != 2 {
		t.Fatalf("%d stops, want 2", stops())
	}
	log(t, b, &core.Overridden{Rule: "grass", Lawn: "Alder", Product: "C1", Reason: "supervisor decided"})
	if stops() != 1 {
		t.Errorf("%d stops after one reason, want 1", stops())
	}
	log(t, b, &core.Overridden{Rule: "grass", Lawn: "Alder", Product: "C2", Reason: "supervisor decided"})
	if stops() != 0 {
		t.Errorf("%d stops after two reasons, want 0", stops())
	}
	more(t, b, `{"fact":"lined_up","supply":["b"],"return":"b"}`)
	if stops() != 2 {
		t.Errorf("%d stops after the valves were turned, want 2: a reason is for one line-up", stops())
	}
}

// After a reason for the compartment in use, the screen proposes to spray from it and no longer to turn away.
func TestProposalAfterAReason(t *testing.T) {
	b := play(t, loadedLines+hoseOf("b")+`{"fact":"visit_begun","lawn":"Alder"}`)
	if p := Propose(b, Intent{At: clock}); p.Act != ActLineUp {
		t.Fatalf("%+v", p)
	}
	log(t, b, &core.Overridden{Rule: "grass", Lawn: "Alder", Product: "C1", Reason: "supervisor decided"})
	if p := Propose(b, Intent{At: clock}); p.Act != ActSpray {
		t.Errorf("%+v", p)
	}
}

// A day by proposals alone: the verdict is clean whenever the screen proposes to spray. Each changeover sweeps 0.1 gal of
// the return line and half of the cell into the other compartment: 0.2 of 200 gal, 0.0015 of the lowest rate of
// mesotrione, which is asked about from 0.001 and answered here.
func TestProposalsLeadThroughTheDay(t *testing.T) {
	b := play(t, loadedLines)
	var acts []string
	for range 60 {
		p := Propose(b, Intent{At: clock})
		acts = append(acts, p.Act)
		if p.Act == ActSpray {
			r := before(t, b, Intent{Lawn: Subject(b), Zones: Untreated(b)})
			if r.Verdict >= Ask {
				t.Fatalf("proposes to spray under %v", r.Verdict)
			}
			if words, _, doubtful := Doubt(b, clock, p.Facts[0]); doubtful {
				t.Fatalf("what is proposed is doubted: %s", words)
			}
		}
		if p.Act == ActNone {
			t.Fatalf("stuck at %+v after %v", p, acts)
		}
		log(t, b, p.Facts...)
		if p.Act == ActCloseDay {
			break
		}
	}
	// No residue is asked about on the way: the part of the tail that would be goes into a pail.
	want := "arrived line_up push_back spray leave arrived line_up push_back spray leave arrived line_up push_back spray leave close_day"
	if got := strings.Join(acts, " "); got != want {
		t.Errorf("acts:\n%s\nwant:\n%s", got, want)
	}
	if n := len(b.Day().Laid); n != 4 {
		t.Errorf("%d zones laid, want 4", n)
	}
	for _, l := range b.Day().Laid {
		for _, p := range l.Holds {
			prod := b.ProductByKey(p.Key)
			rate := float64(p.N) / float64(l.Area)
			if share := rate / prod.Label.RateHigh.V; share > 0.011 && !prod.Label.Lists(l.Grass) {
				t.Errorf("%s on %s at %.3f of the label's most", prod.ProductName, l.Grass, share)
			}
		}
	}
}

func TestUnknownNamesAreRefused(t *testing.T) {
	b := play(t, loadedLines)
	for _, in := range []Intent{
		{Lawn: "Nowhere"},
		{Lawn: "Alder", Zones: []string{"side"}},
		{Lawn: "Alder", Zones: []string{"front", "front"}},
		{Lawn: "Alder", With: "cannon"},
		{Lawn: "Alder", From: 'f'},
		{Lawn: "Alder", Volume: core.Known(measure.Volume(0))},
	} {
		if _, err := Before(b, in); err == nil {
			t.Errorf("%+v was taken", in)
		}
	}
	if _, err := Before(core.NewBook(1), Intent{Lawn: "Alder"}); err == nil {
		t.Error("a book without a rig was checked")
	}
}

func TestNothingSaysSafe(t *testing.T) {
	for _, row := range ruleRows {
		b := play(t, loadedLines+row.lines)
		r := before(t, b, row.in)
		if text := strings.ToLower(fmt.Sprintf("%+v %+v", r, Propose(b, Intent{At: clock}))); strings.Contains(text, "safe") {
			t.Errorf("%s: %s", row.name, text)
		}
	}
}

func TestNewDateOpensTheNextDay(t *testing.T) {
	b := play(t, loadedLines)
	at := clock
	at.Unix += 24 * 3600
	for at.Date() <= b.Day().Date {
		at.Unix += 24 * 3600
	}
	p := Propose(b, Intent{At: at})
	if p.Act != ActOpenDay || !strings.Contains(p.Words, "was not closed") {
		t.Fatalf("%+v", p)
	}
	log(t, b, p.Facts...)
	if b.Day().Date != at.Date() || len(b.Day().Visits) != 3 || b.Day().Operator != "R. Example" {
		t.Errorf("%+v", b.Day())
	}
}

func TestLineUpIf(t *testing.T) {
	b := play(t, loadedLines+`{"fact":"lined_up","supply":["a"],"return":"a"}`)
	for _, row := range []struct {
		up   fluid.LineUp
		want Weight
	}{
		{fluid.LineUp{Supply: []byte("b"), Return: 'b'}, None},
		{fluid.LineUp{Supply: []byte("b")}, Note},
		{fluid.LineUp{Supply: []byte("b"), Return: 'a'}, Stop},
		{fluid.LineUp{Supply: []byte("ab"), Return: 'a'}, Stop},
		{fluid.LineUp{}, Stop},
	} {
		if f, found := LineUpIf(b, row.up); f.Weight != row.want || found != (row.want > None) || found && f.Rule != "line_up" {
			t.Errorf("%s return %c: %+v", row.up.Supply, row.up.Return, f)
		}
	}
	if f, found := LineUpNow(b); found {
		t.Errorf("asking has turned a valve: %+v", f)
	}
}

func TestLineUpNow(t *testing.T) {
	b := play(t, loadedLines+`{"fact":"lined_up","supply":["a"],"return":"b"}`)
	if f, found := LineUpNow(b); !found || f.Weight != Stop {
		t.Errorf("%v %+v", found, f)
	}
	more(t, b, `{"fact":"lined_up","supply":["a"],"return":"a"}`)
	if f, found := LineUpNow(b); found {
		t.Errorf("%+v", f)
	}
}

// Found from outside: a zone border that falls on a parcel's border left a sliver of a few nanolitres whose
// strength was rounding alone. 200 fl oz in 100 gal at 2 gal per 1,000 sq ft is 4 fl oz, 8.0 times 0.5 (arithmetic).
func TestSliverAtAZoneBorderIsNotJudged(t *testing.T) {
	b := play(t, `
{"fact":"rig","name":"r","compartments":[{"letter":"a","capacity_gal":300},{"letter":"b","capacity_gal":150}],"cell_gal":0.5,"hoses":[{"name":"h","inside_diameter_in":0.375,"length_ft":300}],"applicators":[{"name":"gun","kind":"gun","hose":"h","delivery_gal_per_1000_sqft":2}]}
{"fact":"product","name":"ps","form":"liquid","kind":"herbicide","grasses":["tall_fescue"],"rate_high_fl_oz_per_1000_sqft":0.5}
{"fact":"lawn","name":"L1","zones":[{"name":"f","grass":"tall_fescue","area_sqft":3000},{"name":"b","grass":"tall_fescue","area_sqft":2000}]}
{"fact":"loaded","into":"a","volume_gal":100,"parts":[{"product":"ps","amount_fl_oz":200}]}
{"fact":"lined_up","supply":["a"],"return":"a"}
{"fact":"pushed_back","into":"b","volume_gal":8}`)
	const want = 8.0
	for _, g := range []float64{5, 9, 10, 11, 20} {
		f := find(before(t, b, Intent{Lawn: "L1", Volume: core.Known(measure.Gallons(g))}), "dose")
		if f == nil || math.Abs(f.Multiple.V/(want*g/10)-1) > 1e-3 {
			t.Errorf("%g gal: %+v, want %.4f", g, f, want*g/10)
		}
	}
}

// A trace of a product without a lowest rate on its label, whose own compartment is out of the line, is measured
// against its mix, not against itself.
func TestTraceIsNotMeasuredAgainstItself(t *testing.T) {
	b := play(t, loadedLines+`{"fact":"product","name":"C3","form":"dry","kind":"herbicide","grasses":["tall_fescue"],"rate_high_oz_per_1000_sqft":0.5}
{"fact":"mix","name":"C+","parts":[{"product":"C3","rate_oz_per_1000_sqft":0.35}]}
{"fact":"loaded","into":"c","volume_gal":1,"parts":[{"product":"C3","amount_oz":0.05}]}
`+hoseOf("c"))
	// 0.05 oz in 51 gal is 0.45 per cent of 0.35 oz per 1.6 gal (arithmetic)
	if f := find(before(t, b, Intent{Lawn: "Gum"}), "trace"); f != nil { // noted from 0.005
		t.Errorf("%+v", f)
	}
	if fits := Fits(b, "Gum"); string(fits) != "c" {
		t.Errorf("fits %q", fits)
	}
	more(t, b, `{"fact":"loaded","into":"c","volume_gal":1,"parts":[{"product":"C3","amount_oz":0.2}]}
`+hoseOf("c"))
	// 0.25 oz in 52 gal is 2.2 per cent less the water of the return line; of no active known, asked from 1 and a stop from 5
	if f := find(before(t, b, Intent{Lawn: "Gum"}), "trace"); f == nil || f.Weight != Ask || math.Abs(f.ShareOfLabel.V-0.022) > 0.001 {
		t.Errorf("2 per cent of the mix: %+v", f)
	}
	more(t, b, `{"fact":"loaded","into":"c","volume_gal":1,"parts":[{"product":"C3","amount_oz":0.5}]}
`+hoseOf("c"))
	if f := find(before(t, b, Intent{Lawn: "Gum"}), "trace"); f == nil || f.Weight != Stop || f.Part != PartCompartment {
		t.Errorf("6 per cent of the mix: %+v", f)
	}
	if fits := Fits(b, "Gum"); len(fits) > 0 {
		t.Errorf("fits %q", fits)
	}
}

// A mix for all turf that is still lined up from the lawn before is no reason to treat the next lawn with it; one
// that the operator turned to for this lawn is.
func TestWhatIsLinedUpFromTheLawnBeforeIsNoChoice(t *testing.T) {
	b := play(t, loadedLines+`{"fact":"visit_begun","lawn":"Gum"}
`+hoseOf("c")+`{"fact":"sprayed","lawn":"Gum","applicator":"gun","by":"area"}
{"fact":"visit_done","lawn":"Gum"}`)
	if in := Likely(b, Intent{At: clock}); in.Lawn != "Fir" || in.From != 'b' {
		t.Errorf("on the road: %+v", in)
	}
	more(t, b, `{"fact":"visit_begun","lawn":"Fir"}`)
	if p := Propose(b, Intent{At: clock}); p.Act != ActLineUp || p.LineUp.Return != 'b' {
		t.Errorf("at the lawn: %+v", p)
	}
	more(t, b, `{"fact":"lined_up","supply":["c"],"return":"c"}`)
	if p := Propose(b, Intent{At: clock}); p.Act != ActSpray {
		t.Errorf("turned to c for it: %+v", p)
	}
}
