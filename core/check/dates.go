package check

import (
	"fmt"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
)

// What a finding of the dates rule is about: one reason opens one of them.
const (
	aboutDate       = "date"
	aboutPhosphorus = "phosphorus"
)

const placeRules = "set by the operator; local rules decide"

// datesRule: the restricted dates and the phosphorus rule of the operator's place, for what would be put on any zone ahead.
func datesRule(s *situation) []Finding {
	var out []Finding
	for _, k := range s.reaching("") {
		p := s.b.ProductByKey(k)
		for _, ask := range []func(*core.Product) (Finding, bool){s.restricted, s.phosphorus} {
			if f, found := ask(p); found {
				f.Part, f.Product, f.Active, f.Ground, f.Source = PartDay, p.ProductName, p.Label.Words(), GroundSetting, placeRules
				out = append(out, f)
			}
		}
	}
	return out
}

// nutrients is what a product brings of what can be restricted. A fertiliser whose analysis is blank counts as bringing
// what is not entered.
type nutrients struct {
	nitrogen, phosphorus, any     bool
	nitrogenBlank, phosphateBlank bool
}

func nutrientsOf(e label.Entry) nutrients {
	feeds, per := fertilises(e), e.NitrogenPerProduct()
	n := nutrients{
		nitrogen:       !per.Known || per.V > 0,
		nitrogenBlank:  !e.Nitrogen.Known && !per.Known,
		phosphorus:     e.Phosphate.V > 0 || feeds && !e.Phosphate.Known,
		phosphateBlank: !e.Phosphate.Known,
	}
	n.any = feeds || n.nitrogen || n.phosphorus
	return n
}

// brings is what of a restriction holds for a product, in words, and whether only because its analysis is blank; no words
// where none of it holds.
func (n nutrients) brings(what string) (words string, blank bool) {
	switch {
	case what == core.RestrictsNitrogen && n.nitrogen:
		return "nitrogen", n.nitrogenBlank
	case what == core.RestrictsPhosphorus && n.phosphorus:
		return "phosphorus", n.phosphateBlank
	case what == core.RestrictsAny && n.any:
		return "any fertiliser", false
	}
	return "", false
}

// restricted: one finding for all the spans that the day lies in.
func (s *situation) restricted(p *core.Product) (Finding, bool) {
	today, n := s.today(), nutrientsOf(p.Label)
	var spans []string
	sure := false
	for _, r := range s.b.Restricted() {
		if what, blank := n.brings(r.What); what != "" && r.Holds(today) {
			spans = append(spans, fmt.Sprintf("%s from %s to %s", what, r.From, r.To))
			sure = sure || !blank
		}
	}
	if len(spans) == 0 {
		return Finding{}, false
	}
	f := Finding{Weight: Stop, About: aboutDate, Do: fmt.Sprintf("Leave %s out, or wait until the date is open.", p.ProductName)}
	holds := p.ProductName + " falls under it"
	if !sure {
		holds = p.ProductName + " counts as holding it, because its analysis is not entered"
		f.Do += " Enter the analysis if it holds none."
	}
	f.Says = fmt.Sprintf("%s is a restricted date: %s; %s. Local rules decide.", today, list(spans), holds)
	return f, true
}

// phosphorus: the rule of the place that holds all year.
func (s *situation) phosphorus(p *core.Product) (Finding, bool) {
	rule, _ := s.b.SettingText(core.PhosphorusRule)
	n := nutrientsOf(p.Label)
	if !n.phosphorus || rule == "" || rule == core.PhosphorusNone {
		return Finding{}, false
	}
	holds := "holds phosphorus"
	if !p.Label.Phosphate.Known {
		holds = "counts as holding phosphorus, because its analysis is not entered"
	}
	note := ""
	if text, set := s.b.SettingText(core.PhosphorusNote); set {
		note = " (" + text + ")"
	}
	f := Finding{
		Weight: Stop, About: aboutPhosphorus,
		Says: fmt.Sprintf("%s %s, which your place does not allow on lawns%s. Local rules decide.", p.ProductName, holds, note),
		Do:   fmt.Sprintf("Leave %s out.", p.ProductName),
	}
	if rule == core.PhosphorusSoilTest {
		f.Weight = Ask
		f.Says = fmt.Sprintf("%s %s, which your place allows only with a soil test%s. Local rules decide.", p.ProductName, holds, note)
		f.Do = "Look whether there is a soil test for this lawn that asks for it."
	}
	return f, true
}

// datesUnchecked says that the place has its own dates where none are entered.
func datesUnchecked(s *situation) []string {
	if len(s.b.Restricted()) > 0 {
		return nil
	}
	return []string{"restricted dates of the place (none entered; local rules decide)"}
}
