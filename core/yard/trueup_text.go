package yard

import (
	"fmt"
	"strings"

	"example.com/tintline/core/measure"
)

// Text is a true-up as people read it.
func (t *TrueUp) Text() string {
	var w strings.Builder
	w.WriteString("gauge of " + t.Tank + ": " + t.Shown.Words() + "\n")
	if t.Why != "" {
		w.WriteString("  " + t.Why + "\n  " + t.Do + "\n")
	}
	for _, f := range t.Findings {
		w.WriteString(strings.ToUpper(f.Weight.String()) + "  " + f.Says + "\n      " + f.Do + "\n")
	}
	for i := range t.Lawns {
		for _, l := range t.Lawns[i].Words() {
			w.WriteString("  " + l + "\n")
		}
	}
	w.WriteString("working\n")
	for _, s := range t.Steps {
		w.WriteString("  " + s.Says + "\n")
	}
	return w.String()
}

// Words are one spraying: the gallons first, then product by product, then what is left of the year.
func (l *TruedLawn) Words() []string {
	out := []string{fmt.Sprintf("%s, %s: %s gal logged, %s gal as the gauge says", l.Lawn, l.Zone, l.Logged.Text(), l.Now.Text())}
	for i := range l.Doses {
		out = append(out, "  "+l.Doses[i].Words())
	}
	for _, s := range l.Sums {
		out = append(out, fmt.Sprintf("  %s: %.2f -> %.2f times its yearly limit", s.Name, s.Before, s.After))
	}
	return out
}

// Words are a product's dose before and after: "weed 1.1 -> 1.3 fl oz per 1,000 sq ft, 1.00 -> 1.20 times the mix".
func (d *TruedDose) Words() string {
	per := func(r measure.Rate) string { return r.Over(measure.ThousandSquareFeet).Text() }
	s := fmt.Sprintf("%s %s -> %s per 1,000 sq ft", d.Product, per(d.Before), per(d.After))
	if d.TimesMix[0].Known {
		s += fmt.Sprintf(", %.2f -> %.2f times the mix", d.TimesMix[0].V, d.TimesMix[1].V)
	}
	switch {
	case d.TimesMost[0].Known:
		s += fmt.Sprintf(", %.2f -> %.2f times the label's most", d.TimesMost[0].V, d.TimesMost[1].V)
	default:
		s += ", the label's most is not entered"
	}
	if low := d.Lowest; low.Known && d.After.V < low.V.V && low.V.V > 0 {
		s += fmt.Sprintf(", %.2f times its lowest", d.After.V/low.V.V)
	}
	return s
}

// Document is a true-up for a script. Figures that are not known are null.
func (t *TrueUp) Document() map[string]any {
	lawns, left, found := []document{}, []document{}, []document{}
	for i := range t.Lawns {
		lawns = append(lawns, t.Lawns[i].document())
	}
	for i := range t.Left {
		l := &t.Left[i]
		left = append(left, document{"lawn": l.Lawn, "zone": l.Zone, "by": l.By, "logged_gal": l.Logged.Gallons()})
	}
	for _, f := range t.Findings {
		found = append(found, document{"weight": f.Weight.String(), "says": f.Says, "do": f.Do, "source": f.Source})
	}
	return document{
		"tank": t.Tank, "read_at": t.Shown.At.String(), "since": t.Shown.Since.String(), "since_what": t.Shown.By,
		"difference_gal": t.Shown.Off.Gallons(), "give_or_take_gal": t.Band.Gallons(), "today_gal": t.Share.Gallons(), "proposed": t.Fact != nil,
		"why": orNull(t.Why), "do": orNull(t.Do), "lawns": lawns, "left": left, "findings": found, "working": working(t.Steps),
	}
}

func (l *TruedLawn) document() document {
	doses, sums := []document{}, []document{}
	for i := range l.Doses {
		d := &l.Doses[i]
		one := document{"product": d.Product, "crosses": d.Crosses}
		unit := "_gal_per_1000_sqft"
		per := func(r measure.Rate) float64 { return measure.Volume(r.Over(measure.ThousandSquareFeet).N).Gallons() }
		if d.Before.Kind == measure.Dry {
			unit = "_lb_per_1000_sqft"
			per = func(r measure.Rate) float64 { return measure.Mass(r.Over(measure.ThousandSquareFeet).N).Pounds() }
		}
		one["before"+unit], one["after"+unit] = per(d.Before), per(d.After)
		for n, key := range []string{"before", "after"} {
			one["times_mix_"+key], one["times_label_most_"+key] = nil, nil
			if d.TimesMix[n].Known {
				one["times_mix_"+key] = d.TimesMix[n].V
			}
			if d.TimesMost[n].Known {
				one["times_label_most_"+key] = d.TimesMost[n].V
			}
		}
		doses = append(doses, one)
	}
	for _, s := range l.Sums {
		sums = append(sums, document{"name": s.Name, "before_share": s.Before, "after_share": s.After, "crosses": s.Crosses})
	}
	return document{
		"lawn": l.Lawn, "zone": l.Zone, "applicator": l.Applicator, "by": l.By, "logged_gal": l.Logged.Gallons(), "after_gal": l.Now.Gallons(),
		"area_sqft": l.Area.SquareFeet(), "doses": doses, "yearly": sums,
	}
}
