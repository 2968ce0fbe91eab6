package check

import (
	"strings"
	"testing"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

// pairIn puts iron to what a compartment of loadedLines holds, after lines about the pair, and fills the hose with it.
func pairIn(letter, lines string) string {
	return lines + `
{"fact":"loaded","into":"` + letter + `","volume_gal":20,"parts":[{"product":"iron","amount_oz":275},{"product":"W1","amount_fl_oz":15}]}
` + hoseOf(letter)
}

func planOf(into string, parts ...core.LoadPart) *core.LoadPlanned {
	return &core.LoadPlanned{Into: into, Volume: measure.Gallons(20), Parts: parts}
}

func fluidOunces(product string, oz float64) core.LoadPart {
	return core.LoadPart{Product: product, Amount: measure.LiquidAmount(measure.FluidOunces(oz))}
}

func ounces(product string, oz float64) core.LoadPart {
	return core.LoadPart{Product: product, Amount: measure.DryAmount(measure.Ounces(oz))}
}

func loadFinding(l Loading, rule, about string) *Finding {
	for i := range l.Findings {
		if f := &l.Findings[i]; f.Rule == rule && (about == "" || f.About == about) {
			return f
		}
	}
	return nil
}

// TestBeforeLoad: a pair that never met is asked about, one that is marked is a stop, with what stands in the tank too; a load
// that was logged all the same ends the ask.
func TestBeforeLoad(t *testing.T) {
	b := play(t, loadedLines+hoseOf("a"))
	both := planOf("c", ounces("iron", 40), fluidOunces("W1", 20))
	l := BeforeLoad(b, clock, both)
	if f := loadFinding(l, "pair", "jar"); f == nil || f.Weight != Ask || !strings.Contains(f.Says, "Never in one tank in this book: iron with W1.") || l.Verdict != Ask {
		t.Errorf("a pair that never met: %+v", l.Findings)
	}
	into := planOf("a", ounces("iron", 40)) // W1 stands there
	if l := BeforeLoad(b, clock, into); len(l.Standing) != 1 || l.Standing[0] != "W1" || len(l.Unmet) != 1 {
		t.Errorf("what stands in the tank: %+v", l)
	}
	if _, _, doubtful := Doubt(b, clock, into); doubtful {
		t.Error("a pair that never met is asked about on its page, not as a slip")
	}
	more(t, b, `{"fact":"jar_tested","products":["W1","iron"],"result":"not_mixing","note":"turns to gel"}`)
	for _, f := range []*core.LoadPlanned{both, into} {
		l := BeforeLoad(b, clock, f)
		stop := loadFinding(l, "pair", "W1 with iron")
		if stop == nil || stop.Weight != Stop || l.Verdict != Stop || !strings.Contains(stop.Says, "Turns to gel.") || len(l.Unmet) > 0 {
			t.Errorf("a marked pair: %+v", l.Findings)
		}
		if words, _, doubtful := Doubt(b, clock, f); !doubtful || !strings.Contains(words, "marked as not to be mixed") {
			t.Errorf("planning it asks nothing: %s", words)
		}
		if _, _, doubtful := Doubt(b, clock, core.LoadedFrom(f)); !doubtful {
			t.Error("loading it asks nothing")
		}
	}
	log(t, b, core.LoadedFrom(both)) // what happened can be written down
	more(t, b, `{"fact":"jar_tested","products":["W1","iron"],"result":"may_mix"}`)
	if l := BeforeLoad(b, clock, both); len(l.Unmet) > 0 || loadFinding(l, "pair", "") != nil {
		t.Errorf("they met: %+v", l.Findings)
	}
}

func TestBeforeLoadNotes(t *testing.T) {
	b := play(t, strings.Replace(loadedLines, `"name":"cool",`, `"name":"cool","agitation":"none",`, 1)+`
{"fact":"product","name":"P1","form":"dry","mixing_class":"wp"}
{"fact":"product","name":"P2","form":"dry","mixing_class":"df"}`)
	l := BeforeLoad(b, clock, planOf("b", ounces("iron", 40), ounces("P2", 4), ounces("P1", 4), fluidOunces("W1", 4)))
	var order []string
	for _, s := range l.Adding.Steps {
		order = append(order, s.Name)
	}
	if got := strings.Join(order, " "); got != "P1 P2 iron W1" {
		t.Error(got)
	}
	for _, want := range []struct{ rule, about, says string }{
		{"mixing", "partners", "4 partners in one tank; more than 3 are not advised."},
		{"mixing", "formulation", "The place of iron and W1 is not known"},
		{"standing", aboutAgitation, "P1 and P2 settle; b has neither jet nor paddle."},
		{"standing", aboutNight, "stands over no night"},
	} {
		f := loadFinding(l, want.rule, want.about)
		if f == nil || f.Weight != Note || !strings.Contains(f.Says, want.says) || f.Ground == "" || f.Source == "" || f.Do == "" {
			t.Errorf("%s: %+v", want.about, f)
		}
	}
	big := planOf("c", ounces("iron", 40))
	big.Volume = measure.Gallons(60)
	if f := loadFinding(BeforeLoad(b, clock, big), "room", ""); f == nil || f.Weight != Stop {
		t.Error("60 gal into a tank with room for 40 are not stopped")
	}
}
