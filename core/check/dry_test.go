package check

import (
	"errors"
	"strings"
	"testing"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

var dryLines = strings.Replace(rigLines, `"delivery_gal_per_1000_sqft":0.2,"tank_gal":14}`,
	`"delivery_gal_per_1000_sqft":0.2,"tank_gal":14,"hopper_lb":120},{"name":"spreader","kind":"spreader","hopper_lb":50},{"name":"drop","kind":"spreader"}`, 1) + `
{"fact":"product","name":"food","form":"dry","kind":"fertiliser","grasses":["all_turf"],"rate_low_lb_per_1000_sqft":2,"rate_high_lb_per_1000_sqft":4,"wind_max_mph":8}
{"fact":"product","name":"lime","form":"dry","grasses":["tall_fescue"]}
{"fact":"mix","name":"F","parts":[{"product":"food","rate_lb_per_1000_sqft":3}]}
{"fact":"mix","name":"L","parts":[{"product":"lime","rate_lb_per_1000_sqft":10}]}
{"fact":"mix","name":"FL","parts":[{"product":"food","rate_lb_per_1000_sqft":3},{"product":"lime","rate_lb_per_1000_sqft":10}]}
`

func loadOf(into, mix, parts string) string {
	return `{"fact":"loaded","into":"` + into + `","mix":"` + mix + `","parts":[` + parts + `]}` + "\n"
}

const (
	food30 = `{"product":"food","amount_lb":30}`
	lime40 = `{"product":"lime","amount_lb":40}`
)

func lb(pounds float64) core.Maybe[measure.Mass] { return core.Known(measure.Pounds(pounds)) }

// TestDryRules has a row for each thing that is said of a spreading. The limits are those of the label entry and the
// mix; a half and twice are common practice, no source.
func TestDryRules(t *testing.T) {
	food := loadOf("spreader", "F", food30)
	for _, row := range []struct {
		name, lines string
		in          Intent
		verdict     Weight
		rule, says  string
		do          string
	}{
		{"as meant", food, Intent{Lawn: "Fir", With: "spreader"}, None, "", "", ""},
		{"grass not listed", loadOf("spreader", "", `{"product":"lime","amount_lb":40}`), Intent{Lawn: "Alder", With: "spreader", Amount: lb(30)}, Stop, "grass", "The hopper of spreader: lime is not for common bermudagrass; 30.0 lb of it would go on 7,400 sq ft.", "skip the lawn"},
		{"grass not listed, weight not known", loadOf("spreader", "", lime40), Intent{Lawn: "Alder", With: "spreader"}, Stop, "grass", "it would go on 7,400 sq ft", ""},
		{"from the bag", "", Intent{Lawn: "Alder", With: "drop", Product: "lime", Amount: lb(30)}, Stop, "grass", "The bag for drop: lime is not for", ""},
		{"less in stock than from the bag", stockOf("lime", "lb", 20), Intent{Lawn: "Fir", With: "drop", Product: "lime", Amount: lb(52)}, Note, "stock", "52.0 lb of lime would come from the bag, and the stock is 20.0 lb: 32.0 lb short.", "Put at least 32.0 lb more on the truck"},
		{"enough in stock", stockOf("lime", "lb", 52), Intent{Lawn: "Fir", With: "drop", Product: "lime", Amount: lb(52)}, None, "", "", ""},
		{"a stock below nothing", stockOf("lime", "lb", 20) + `{"fact":"loaded","into":"spreader","parts":[{"product":"lime","amount_lb":30}]}` + "\n", Intent{Lawn: "Fir", With: "drop", Product: "lime", Amount: lb(52)}, Note, "stock", "The stock of lime is -10.0 lb: more was put in than was there.", "Count what is there"},
		{"over the label", food, Intent{Lawn: "Fir", With: "spreader", Amount: lb(27)}, Stop, "dose", "1.7 times the mix, 1.3 times the label's most, on 5,200 sq ft", "Spread less: 15.6 lb on 5,200 sq ft would be as meant."},
		{"over the mix", food, Intent{Lawn: "Fir", With: "spreader", Amount: lb(20)}, Ask, "dose", "1.3 times the mix, 1.0 times the label's most", "15.6 lb"},
		{"twice the mix, no label limit", loadOf("spreader", "L", `{"product":"lime","amount_lb":50}`), Intent{Lawn: "Fir", With: "spreader", Amount: lb(104)}, Stop, "dose", "2.0 times the mix", "52.0 lb"},
		{"too little", food, Intent{Lawn: "Fir", With: "spreader", Amount: lb(12)}, Note, "dose", "0.8 times the mix", "Spread more: 15.6 lb"},
		{"far too little", food, Intent{Lawn: "Fir", With: "spreader", Amount: lb(7)}, Ask, "dose", "0.4 times the mix", "15.6 lb"},
		{"under the label, no mix", "", Intent{Lawn: "Fir", With: "drop", Product: "food", Amount: lb(8)}, Note, "dose", "0.8 times the label's lowest rate", "Spread more: 10.4 lb"},
		{"over the label, no mix", "", Intent{Lawn: "Fir", With: "drop", Product: "food", Amount: lb(41.6)}, Stop, "dose", "2.0 times the label's most", "Spread less: 20.8 lb"},
		{"no rate", "", Intent{Lawn: "Fir", With: "drop", Product: "lime"}, Note, "dose", "How much of lime goes on an area is not in the book.", "Give the weight"},
		{"hopper falls short", loadOf("spreader", "F", `{"product":"food","amount_lb":10}`), Intent{Lawn: "Fir", With: "spreader"}, Note, "enough", "The hopper of spreader holds 10.0 lb; Fir needs 15.6 lb: it ends after 3,330 sq ft, and 5.60 lb more must come from the bag.", "Take at least 5.60 lb along"},
		{"mix falls short", loadOf("spreader", "FL", `{"product":"food","amount_lb":3},{"product":"lime","amount_lb":10}`), Intent{Lawn: "Fir", With: "spreader"}, Stop, "enough", "it ends after 1,000 sq ft", "Load 54.6 lb more"},
		{"wind over the label", food + `{"fact":"weather","wind_mph":9}`, Intent{Lawn: "Fir", With: "spreader"}, Stop, "weather", "Wind 9 mph; the label entry of food allows 8.", ""},
	} {
		t.Run(row.name, func(t *testing.T) {
			b := play(t, dryLines+row.lines)
			r := before(t, b, row.in)
			if r.Verdict != row.verdict {
				t.Errorf("the verdict is %v, not %v", r.Verdict, row.verdict)
			}
			for _, f := range r.Findings {
				t.Logf("%s %s: %s | %s", f.Weight, f.Rule, f.Says, f.Do)
				if f.Rule == "line_up" {
					t.Error("the valves are no matter of a spreader")
				}
			}
			if row.rule == "" {
				if len(r.Findings) > 0 {
					t.Errorf("it says %+v", r.Findings)
				}
				return
			}
			f := find(r, row.rule)
			if f == nil || !strings.Contains(f.Says, row.says) || !strings.Contains(f.Do, row.do) {
				t.Errorf("%s says %+v, not %q", row.rule, f, row.says)
			}
		})
	}
}

func TestDryPlan(t *testing.T) {
	b := play(t, dryLines+loadOf("spreader", "F", food30))
	r := before(t, b, Intent{Lawn: "Alder", With: "spreader"})
	p := r.Plan
	if p.Product != "food" || p.Amount.V.Text() != "22.2 lb" || p.HopperStays.V.Pounds() < 7.799 || p.HopperStays.V.Pounds() > 7.801 || p.FromBag.V != 0 || p.Volume != 0 || p.Stays.Known || p.Seconds.Known {
		t.Errorf("%+v", p)
	}
	if c := ToClean(b, Intent{Lawn: "Alder", With: "spreader"}); c != nil {
		t.Errorf("a spreader has a changeover: %+v", c)
	}
	_, err := Before(b, Intent{Lawn: "Alder", With: "spreader", Product: "lime", Amount: lb(3), At: clock})
	var prob *core.Problem
	if !errors.As(err, &prob) || !strings.Contains(prob.What, "does not go on top of it") {
		t.Errorf("another product than the hopper holds: %v", err)
	}
	for what, in := range map[string]Intent{
		"a spreading of nothing":     {With: "drop"},
		"gallons through a spreader": {With: "spreader", Volume: core.Known(measure.Gallons(1))},
		"spraying with a spreader":   {With: "spreader", Only: OnlySpray},
		"pounds through a gun":       {With: "gun", Amount: lb(1)},
		"dry product through a gun":  {With: "gun", Product: "food"},
		"spreading with a gun":       {With: "gun", Only: OnlySpread},
	} {
		in.Lawn, in.At = "Alder", clock
		if _, err := Before(b, in); !errors.As(err, &prob) {
			t.Errorf("%s is judged: %v", what, err)
		}
	}
}

// act plays what is proposed, as Enter would, and says what it was.
func act(t *testing.T, b *core.Book, in Intent) string {
	t.Helper()
	in.At = clock
	p := Propose(b, in)
	if len(p.Facts) > 0 {
		log(t, b, p.Facts...)
	}
	return p.Act + ": " + p.Words
}

func acts(t *testing.T, b *core.Book, in Intent, want ...string) {
	t.Helper()
	for _, w := range want {
		if got := act(t, b, in); got != w {
			t.Fatalf("proposed %q, not %q", got, w)
		}
	}
}

// TestTwoApplicatorsOnOneVisit: the gun, then the spreader, then on.
func TestTwoApplicatorsOnOneVisit(t *testing.T) {
	b := play(t, dryLines+`
{"fact":"loaded","into":"a","volume_gal":200,"mix":"W","for":"gun"}
`+hoseOf("a")+loadOf("spreader", "F", food30)+`{"fact":"visit_begun","lawn":"Alder"}
{"fact":"lined_up","supply":["a"],"return":"a"}`)
	acts(t, b, Intent{With: "gun"}, "spray: sprayed 11.8 gal on front + back")
	acts(t, b, Intent{With: "spreader"}, "spread: spread 22.2 lb of food on front + back")
	acts(t, b, Intent{With: "gun"}, "leave: leave Alder")
}

func TestSpreaderAlone(t *testing.T) {
	b := play(t, dryLines+loadOf("spreader", "F", food30)+`{"fact":"visit_begun","lawn":"Alder"}`)
	in := Intent{With: "spreader"}
	acts(t, b, in, "spread: spread 22.2 lb of food on front + back")
	if left := Untreated(b); len(left) != 2 {
		t.Errorf("without liquid are %v", left)
	}
	acts(t, b, in, "leave: leave Alder")
	// The hopper holds 7.8 lb; Fir takes the rest from the bag, and is asked about nothing.
	more(t, b, `{"fact":"visit_begun","lawn":"Fir"}`)
	acts(t, b, in, "spread: spread 15.6 lb of food on all", "leave: leave Fir")
	// The hopper is empty: what it held last is meant.
	more(t, b, `{"fact":"visit_begun","lawn":"Gum"}`)
	acts(t, b, in, "spread: spread 9.00 lb of food on all", "leave: leave Gum")
}

func TestWeightIsTypedWhereNoRateIsKnown(t *testing.T) {
	b := play(t, dryLines+loadOf("spreader", "", lime40)+`{"fact":"visit_begun","lawn":"Fir"}`)
	p := Propose(b, Intent{With: "spreader", At: clock})
	if p.Act != ActSpread || len(p.Facts) != 0 || p.Words != "type how much lime went on all" || p.Why == "" {
		t.Errorf("%+v", p)
	}
	acts(t, b, Intent{With: "spreader", Amount: lb(20)}, "spread: spread 20.0 lb of lime on all")
}

// TestStopBeforeTheSpreader: what stops is answered before anything is proposed.
func TestStopBeforeTheSpreader(t *testing.T) {
	b := play(t, dryLines+loadOf("spreader", "L", lime40)+`{"fact":"visit_begun","lawn":"Alder"}`)
	p := Propose(b, Intent{With: "spreader", At: clock})
	if p.Act != ActConfirm || p.Words != "answer the stop" {
		t.Errorf("%+v", p)
	}
	more(t, b, `{"fact":"overridden","rule":"grass","lawn":"Alder","product":"lime","reason":"label read"}`)
	// The hopper holds 40 lb and 74 lb are meant: that is only a note.
	acts(t, b, Intent{With: "spreader"}, "spread: spread 74.0 lb of lime on front + back")
}

// TestRideOnSpraysAndSpreadsInOnePass: one key logs both; what was done by another applicator is not done again.
func TestRideOnSpraysAndSpreadsInOnePass(t *testing.T) {
	loads := `
{"fact":"loaded","into":"ride-on","volume_gal":10,"mix":"C","for":"ride-on"}
` + loadOf("ride-on", "F", `{"product":"food","amount_lb":60}`) + `{"fact":"visit_begun","lawn":"Fir"}
`
	in := Intent{With: "ride-on"}
	b := play(t, dryLines+loads)
	r := before(t, b, Intent{Lawn: "Fir", With: "ride-on"})
	if r.Plan.Product != "food" || r.Plan.Amount.V.Text() != "15.6 lb" || r.Plan.Volume.Text() != "1.04" {
		t.Errorf("%+v", r.Plan)
	}
	if r.Verdict > Note { // mesotrione on tall fescue is moderate by a trial, so it is noted
		t.Errorf("%+v", r.Findings)
	}
	acts(t, b, in, "spray: sprayed 1.04 gal and spread 15.6 lb of food on all", "leave: leave Fir")
	if laid := b.Day().Laid; len(laid) != 2 || laid[0].Dry || !laid[1].Dry {
		t.Errorf("%+v", laid)
	}
	b = play(t, dryLines+loads+`{"fact":"spread","lawn":"Fir","applicator":"drop","product":"food","amount_lb":15}`)
	acts(t, b, in, "spray: sprayed 1.04 gal on all", "leave: leave Fir")
	b = play(t, dryLines+loads+`{"fact":"sprayed","lawn":"Fir","applicator":"ride-on"}`)
	acts(t, b, in, "spread: spread 15.6 lb of food on all", "leave: leave Fir")
	b = play(t, dryLines+loads)
	acts(t, b, Intent{With: "ride-on", Only: OnlySpread}, "spread: spread 15.6 lb of food on all", "leave: leave Fir")
	// The wind is asked about once, though two products have limits.
	more(t, b, `{"fact":"weather","wind_mph":9}`)
	n := 0
	for _, f := range before(t, b, Intent{Lawn: "Fir", With: "ride-on"}).Findings {
		if f.Rule == "weather" {
			n++
		}
	}
	if n != 1 {
		t.Errorf("%d findings about the wind", n)
	}
	// Dry product of which no rate is known is not proposed by the way.
	b = play(t, dryLines+`
{"fact":"loaded","into":"ride-on","volume_gal":10,"mix":"C","for":"ride-on"}
`+loadOf("ride-on", "", lime40)+`{"fact":"visit_begun","lawn":"Fir"}
`)
	acts(t, b, in, "spray: sprayed 1.04 gal on all", "spread: type how much lime went on all")
}
