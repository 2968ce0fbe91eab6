package check

import (
	"strings"
	"testing"

	"example.com/tintline/core"
)

// winterLines put the rig away: antifreeze into a, through pump, hose and gun into a can until it comes undiluted.
const winterLines = `
{"fact":"product","name":"winter can","form":"liquid","kind":"antifreeze"}
{"fact":"dumped","from":"compartment/a","to":"waste/pad","volume_gal":%A}
{"fact":"loaded","into":"a","volume_gal":6,"parts":[{"product":"winter can","amount_gal":6}]}
{"fact":"lined_up","supply":["a"],"return":"a"}
{"fact":"pushed_back","to":"waste/can","volume_gal":3}
`

// TestAWinterAndASpring: what was put away with antifreeze is a stop on the first lawn, until hose and pump are flushed to a named place and
// the compartment is emptied. Nothing of it reaches a lawn.
func TestAWinterAndASpring(t *testing.T) {
	b := play(t, loadedLines+hoseOf("a"))
	left := b.Plumbing().Compartment('a').Liquid.Volume
	for _, s := range strings.Split(strings.TrimSpace(winterLines), "\n") {
		if strings.Contains(s, "%A") {
			log(t, b, &core.Dumped{From: "compartment/a", To: "waste/pad", Volume: core.Known(left)})
			continue
		}
		l, err := core.DecodeLine([]byte(s))
		if err != nil {
			t.Fatal(err)
		}
		log(t, b, l.Fact)
	}
	v, in := Antifreeze(b)
	if v <= 0 || float64(v) < 0.95*float64(in) {
		t.Fatalf("%s gal of antifreeze in %s gal of hose and pump", v.Text(), in.Text())
	}
	in2 := Intent{Lawn: "Alder", From: 'a', At: clock}
	f := find(before(t, b, in2), "line_up")
	if f == nil || f.Weight != Stop || !strings.Contains(f.Says, "of antifreeze stand in the") || !strings.Contains(f.Do, "not onto grass") {
		t.Fatalf("the first line-up says %+v", f)
	}
	p := Propose(b, Intent{At: clock})
	if p.Act == ActArrived {
		log(t, b, p.Facts...)
		p = Propose(b, Intent{At: clock})
	}
	push, ok := p.Facts[0].(*core.PushedBack)
	if p.Act != ActPushBack || !ok || push.To != string(FlushPlace) {
		t.Fatalf("proposed %+v", p)
	}
	// In spring the compartment is emptied and rinsed first: what the flush draws is water then.
	log(t, b, &core.Dumped{From: "compartment/a", To: "waste/antifreeze can", Volume: core.Known(b.Plumbing().Compartment('a').Liquid.Volume)})
	log(t, b, &core.Loaded{Into: "a", Volume: 50 * 3_785_411_784})
	log(t, b, push)
	if v, _ := Antifreeze(b); v != 0 {
		t.Errorf("after the flush %s gal of antifreeze are left", v.Text())
	}
	for _, f := range before(t, b, in2).Findings {
		if strings.Contains(f.Says, "antifreeze stand") || strings.Contains(f.Says, "gal of antifreeze in") {
			t.Errorf("after the flush: %+v", f)
		}
	}
	for i := range b.Day().Laid {
		for _, h := range b.Day().Laid[i].Holds {
			if b.ProductByKey(h.Key).ProductName == "winter can" {
				t.Error("antifreeze reached a lawn")
			}
		}
	}
}

// TestPapersEnd: what an operator entered ends; unknown papers say nothing.
func TestPapersEnd(t *testing.T) {
	for _, c := range []struct {
		paper  string
		weight Weight
		says   string
	}{
		{`{"fact":"paper","name":"licence","kind":"licence","until":"2020-01-01"}`, Stop, "licence ended on 2020-01-01."},
		{`{"fact":"paper","name":"turf","kind":"certification","until":"2020-01-01"}`, Stop, "turf ended on 2020-01-01."},
		{`{"fact":"paper","name":"insurance","kind":"insurance","until":"2020-01-01"}`, Ask, "insurance ended on 2020-01-01."},
		{`{"fact":"paper","name":"course","kind":"training","until":"2020-01-01"}`, Note, "course ended on 2020-01-01."},
		{`{"fact":"paper","name":"licence","kind":"licence","until":"2999-01-01"}`, 0, ""},
	} {
		b := play(t, loadedLines+hoseOf("a")+c.paper)
		f := find(before(t, b, Intent{Lawn: "Alder", From: 'a', At: clock}), rulePapers)
		if c.says == "" {
			if f != nil {
				t.Errorf("%s: %+v", c.paper, f)
			}
			continue
		}
		if f == nil || f.Weight != c.weight || f.Says != c.says || f.Do == "" || f.Source == "" {
			t.Errorf("%s: %+v", c.paper, f)
		}
	}
}
