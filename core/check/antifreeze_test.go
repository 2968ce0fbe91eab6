package check

import (
	"strings"
	"testing"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

// winterLines put the rig away: antifreeze into a, through pump, hose and gun into a can until it comes undiluted.
const winterLines = `
{"fact":"product","name":"winter can","form":"liquid","kind":"antifreeze"}
{"fact":"loaded","into":"a","volume_gal":6,"parts":[{"product":"winter can","amount_gal":6}]}
{"fact":"lined_up","supply":["a"],"return":"a"}
{"fact":"pushed_back","to":"waste/can","volume_gal":3}
`

// putAway is a rig after the winter list, but for b, which still holds its mix.
func putAway(t *testing.T) *core.Book {
	t.Helper()
	b := play(t, loadedLines+hoseOf("a"))
	empty(t, b, 'a')
	more(t, b, winterLines)
	return b
}

func empty(t *testing.T, b *core.Book, letter byte) {
	t.Helper()
	log(t, b, &core.Dumped{From: "compartment/" + string(letter), To: "waste/antifreeze can", Volume: core.Known(b.Plumbing().Compartment(letter).Liquid.Volume)})
}

// TestAFlushComesToAnEnd: what is proposed, act by act, flushes hose and pump, although the compartment in use holds antifreeze.
func TestAFlushComesToAnEnd(t *testing.T) {
	b := putAway(t)
	log(t, b, &core.VisitBegun{Lawn: "Alder"})
	acts := ""
	for range 4 {
		if v, _ := Antifreeze(b); v == 0 {
			break
		}
		p := Propose(b, Intent{At: clock})
		acts += p.Act + " "
		log(t, b, p.Facts...)
	}
	if v, _ := Antifreeze(b); v != 0 || acts != "line_up push_back " {
		t.Errorf("%safter which %s gal of antifreeze are left", acts, v.Text())
	}
}

// TestAWinterAndASpring: what was put away with antifreeze is a stop on the first lawn, until hose and pump are flushed to a named place and
// the compartment is emptied. Nothing of it reaches a lawn.
func TestAWinterAndASpring(t *testing.T) {
	b := putAway(t)
	empty(t, b, 'b')
	empty(t, b, 'c')
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
	// a feeds the pump with antifreeze: a push from it would never come to an end.
	if p.Act != ActConfirm || !strings.HasPrefix(p.Why, "Empty a into a can and load it with water first. Flush ") {
		t.Fatalf("while a holds antifreeze, proposed %+v", p)
	}
	empty(t, b, 'a')
	if p = Propose(b, Intent{At: clock}); p.Act != ActConfirm || !strings.HasPrefix(p.Why, "Load at least ") {
		t.Fatalf("while a is empty, proposed %+v", p)
	}
	log(t, b, &core.Loaded{Into: "a", Volume: 50 * measure.USGallon})
	p = Propose(b, Intent{At: clock})
	if p.Act != ActPushBack {
		t.Fatalf("proposed %+v", p)
	}
	push, ok := p.Facts[0].(*core.PushedBack)
	if !ok || push.To != string(FlushPlace) {
		t.Fatalf("proposed %+v", p)
	}
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

// TestEachHoseIsFlushed: a second hose that was put away is flushed by its own name; the first one clean is not enough.
func TestEachHoseIsFlushed(t *testing.T) {
	b := play(t, "")
	more(t, b, `{"fact":"rig","name":"truck","compartments":[{"letter":"a","name":"warm","capacity_gal":300,"heel_gal":2},{"letter":"b","name":"cool","capacity_gal":160,"heel_gal":2}],"cell_gal":0.2,"return_line_gal":0.1,"hoses":[{"name":"reel","volume_gal":2},{"name":"short","volume_gal":1}],"applicators":[{"name":"gun","kind":"gun","hose":"reel","delivery_gal_per_1000_sqft":1.5,"flow_gpm":2.5}]}
{"fact":"product","name":"winter can","form":"liquid","kind":"antifreeze"}
{"fact":"loaded","into":"a","volume_gal":12,"parts":[{"product":"winter can","amount_gal":12}]}
{"fact":"lined_up","supply":["a"],"return":"a"}
{"fact":"pushed_back","hose":"reel","to":"waste/can","volume_gal":4}
{"fact":"pushed_back","hose":"short","to":"waste/can","volume_gal":2}`)
	empty(t, b, 'a')
	more(t, b, `{"fact":"loaded","into":"a","volume_gal":50}
{"fact":"pushed_back","hose":"reel","to":"waste/can","volume_gal":3}`)
	if v, in := Antifreeze(b); v < measure.USGallon*9/10 || in > 4*measure.USGallon {
		t.Errorf("with the short hose still full of it, %s gal in %s gal", v.Text(), in.Text())
	}
	more(t, b, `{"fact":"pushed_back","hose":"short","to":"waste/can","volume_gal":2}`)
	if v, _ := Antifreeze(b); v != 0 {
		t.Errorf("after both were flushed, %s gal are left", v.Text())
	}
}
