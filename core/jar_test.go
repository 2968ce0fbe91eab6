package core

import (
	"fmt"
	"strings"
	"testing"
)

func TestLoadRefusals(t *testing.T) {
	refusals(t, "testdata/refusals_load.tsv", play(t, NewBook(1), withPlan), 12)
}

func jarWords(list []Jar) string {
	var out []string
	for _, j := range list {
		out = append(out, strings.Join(j.Products, "+")+" "+j.Result+strings.Join(j.Signs, ","))
	}
	return strings.Join(out, "; ")
}

// TestJars: a pair is unmet until it is loaded together, stands in a jar or is marked; a mark and a jar that failed hold
// against all that have those products.
func TestJars(t *testing.T) {
	all := []string{"warm weed", "iron", "cool weed"}
	b := play(t, NewBook(1), setUp+`{"fact":"loaded","into":"c","volume_gal":1,"parts":[{"product":"iron","amount_oz":1}]}
`)
	was := b.StateDigest()
	unmet := func() string { return fmt.Sprint(b.Unmet(all)) }
	if b.Met("iron", "cool weed") {
		t.Fatal("the day of setUp loads iron and cool weed together")
	}
	before := unmet()
	if !strings.Contains(before, "[iron cool weed]") || !strings.Contains(before, "[warm weed cool weed]") {
		t.Error(before)
	}
	play(t, b, `{"fact":"jar_tested","products":["iron","cool weed"],"result":"failed","signs":["clumps","warm"],"note":"at 60 F"}`)
	if b.StateDigest() == was {
		t.Error("a jar does not change what the book says")
	}
	if got := jarWords(b.NotToMix(all)); got != "cool weed+iron failedclumps,warm" {
		t.Error(got)
	}
	if got := jarWords(b.NotToMix([]string{"iron", "warm weed"})); got != "" {
		t.Error(got)
	}
	if strings.Contains(unmet(), "[iron cool weed]") {
		t.Error("what stood in a jar still counts as unmet:", unmet())
	}
	play(t, b, `{"fact":"jar_tested","products":["cool weed","iron"],"result":"mixed"}`)
	if got := jarWords(b.NotToMix(all)); got != "" {
		t.Errorf("a later jar of the same products does not count: %s", got)
	}
	play(t, b, `{"fact":"jar_tested","products":["warm weed","cool weed"],"result":"not_mixing","note":"gel"}`)
	if got := jarWords(b.NotToMix(all)); got != "cool weed+warm weed not_mixing" {
		t.Error(got)
	}
	play(t, b, `{"fact":"jar_tested","products":["cool weed","warm weed"],"result":"may_mix"}`)
	if got := jarWords(b.NotToMix(all)) + jarWords(b.MarkedApart()); got != "" {
		t.Error(got)
	}
	play(t, b, `{"fact":"loaded","into":"c","volume_gal":2,"parts":[{"product":"iron","amount_oz":1},{"product":"cool weed","amount_fl_oz":1},{"product":"warm weed","amount_fl_oz":1}]}`)
	for _, p := range [][2]string{{"iron", "cool weed"}, {"cool weed", "iron"}, {"warm weed", "cool weed"}} {
		if !b.Met(p[0], p[1]) {
			t.Errorf("%v were loaded together", p)
		}
	}
	if got := unmet(); got != "[]" {
		t.Error(got)
	}
}

// TestWhatIsTypedWithATick: place and meter readings are in the plan, go when the tick goes, stay when the plan is changed
// before any water, and go into the load.
func TestWhatIsTypedWithATick(t *testing.T) {
	b := play(t, NewBook(1), withPlan+`{"fact":"ticked","list":"load/c","item":"do/place","place":"yard"}
{"fact":"ticked","list":"load/c","item":"do/meter_before","meter_gal":1200}
{"fact":"ticked","list":"load/c","item":"water"}
{"fact":"load_planned","into":"c","volume_gal":30,"mix":"W","for":"gun"}
`)
	p := b.LoadPlan("c")
	if p.Place != "yard" || p.MeterBefore.V.Text() != "1,200.0" || !b.StepTicked(p, StepPlace) || !b.StepTicked(p, StepMeterBefore) || b.StepTicked(p, WaterItem) {
		t.Errorf("after the plan was changed: %+v, %v", p, b.Ticks("load/c"))
	}
	play(t, b, `{"fact":"ticked","list":"load/c","item":"do/meter_after","meter_gal":1229.5}`)
	if p := refused(t, b, `{"fact":"ticked","list":"load/c","item":"do/meter_after","meter_gal":1231}`); p.What != "meter after is ticked already on the list of c." {
		t.Error(p.What)
	}
	play(t, b, `{"fact":"ticked","list":"load/c","item":"do/meter_after","undo":"yes"}`)
	if p := refused(t, b, `{"fact":"ticked","list":"load/c","item":"do/meter_after","meter_gal":1100}`); p.What != "The meter readings are 1,200.0 gal before and 1,100.0 gal after." {
		t.Error(p.What)
	}
	play(t, b, `{"fact":"ticked","list":"load/c","item":"do/meter_after","meter_gal":1229.5}`)
	load := LoadedFrom(b.LoadPlan("c"))
	es, err := b.Prepare("x", Moment{1_779_990_000, -18_000}, load)
	if err != nil {
		t.Fatal(err)
	}
	if err := b.Apply(es[0]); err != nil {
		t.Fatal(err)
	}
	if place, meter := b.LastFill(); load.Place != "yard" || place != "yard" || meter.V.Gallons() != 1229.5 || b.LoadPlan("c") != nil || len(b.Ticks("load/c")) != 0 {
		t.Errorf("%+v, then %s %s", load, place, meter.V.Text())
	}
}
