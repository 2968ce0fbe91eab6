package check

import (
	"sort"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

// rules lists the rules in the order in which findings of one weight are shown. One rule, one file.
var rules = []struct {
	name string
	ask  func(*situation) []Finding // of what is sprayed; nil: it is no matter of this rule
	dry  func(*situation) []Finding // of what is spread; nil: it is no matter of this rule, or both are asked about at once
	both bool                       // ask is about what is sprayed and what is spread
}{
	{"grass", grassRule, dryGrassRule, false},
	{"dose", doseRule, dryDoseRule, false},
	{"season", seasonRule, nil, true},
	{"interval", intervalRule, nil, true},
	{"nitrogen", nitrogenRule, nil, true},
	{"trace", traceRule, nil, false},
	{"enough", enoughRule, dryEnoughRule, false},
	{"line_up", lineUpRule, nil, false},
	{"weather", weatherRule, nil, true},
	{"site", siteRule, nil, true},
	{"dates", datesRule, nil, true},
	{"standing", standingRule, nil, false},
	{rulePair, pairRule, nil, false},
	{ruleStock, nil, dryStockRule, false},
	{ruleNotice, noticeRule, nil, true},
	{rulePapers, papersRule, nil, true},
}

// Before says what would happen if the trigger were pulled now. The error is a Problem: the intent names
// something that the book does not have.
func Before(b *core.Book, in Intent) (Report, error) {
	s, err := look(b, in)
	if err != nil {
		return Report{}, err
	}
	return s.report(), nil
}

// BeforeAndClean is Before and ToClean of the same intent: what both rest on is worked out once.
func BeforeAndClean(b *core.Book, in Intent) (Report, *Changeover, error) {
	s, err := look(b, in)
	if err != nil {
		return Report{}, nil, err
	}
	return s.report(), s.toClean(), nil
}

func (s *situation) report() Report { return s.reportOf(func(string) bool { return true }) }

// reportOf asks some of the rules.
func (s *situation) reportOf(asked func(rule string) bool) Report {
	r := Report{Plan: s.plan(), NotChecked: s.notChecked()}
	for _, rule := range rules {
		if !asked(rule.name) || (rule.name == ruleNotice && !s.somebodyToTell()) || (rule.name == rulePapers && len(s.b.Papers()) == 0) {
			continue
		}
		var found []Finding
		if rule.ask != nil && (s.wet || rule.both) {
			found = rule.ask(s)
		}
		if s.dry != nil && rule.dry != nil {
			for _, f := range rule.dry(s) {
				f.Dry = true
				found = append(found, f)
			}
		}
		if len(found) == 0 && (rule.ask != nil || s.dry != nil) {
			r.Quiet++
		}
		for i := range found {
			found[i].Rule = rule.name
		}
		r.Findings = append(r.Findings, s.merged(found)...)
	}
	r.sort()
	r.some(func(f *Finding) bool {
		if f.Reason == "" {
			r.Verdict = max(r.Verdict, f.Weight)
		}
		return false
	})
	return r
}

// sort puts the heaviest first. Before a push the valves have to stand right: a stop about them comes first, unless one is
// about the compartment itself and has them turned anyhow.
func (r *Report) sort() {
	turned := r.some(func(f *Finding) bool { return f.Weight == Stop && f.Part == PartCompartment })
	valves := func(f *Finding) bool { return !turned && f.Weight == Stop && f.Rule == "line_up" }
	sort.SliceStable(r.Findings, func(i, j int) bool {
		a, b := &r.Findings[i], &r.Findings[j]
		if a.Weight != b.Weight {
			return a.Weight > b.Weight
		}
		return valves(a) && !valves(b)
	})
}

func (s *situation) plan() Plan {
	p := Plan{Volume: s.want, Area: s.area, With: s.with.Name}
	for _, z := range s.zones {
		p.Zones = append(p.Zones, z.Name)
	}
	s.planDry(&p)
	switch c := s.supply(); {
	case !s.wet:
		return p
	case s.tank != nil:
		p.Stays = core.Known(max(s.tank.Liquid.Volume-s.want, 0))
	case c != nil:
		if len(s.up.Supply) == 1 {
			p.From = c.Letter
			p.Stays = core.Known(s.after.Compartment(c.Letter).Liquid.Volume)
		}
	}
	if s.with.Flow.Known {
		p.Seconds = core.Known(s.with.Flow.V.Seconds(s.want))
	}
	return p
}

func plural(n int, word string) string {
	if n == 1 {
		return word
	}
	return word + "s"
}

func gal(v measure.Volume) string { return v.Text() + " gal" }

func sqft(a measure.Area) string { return a.Text() + " sq ft" }
