package tally

import (
	"fmt"
	"slices"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// RecordsOf are the rows of the application record of the book's day, as it stands, in the order in which they were laid.
func RecordsOf(b *core.Book) []Record {
	d := b.Day()
	visits := visitsOf(d)
	var out []Record
	at := map[recordKey]int{}
	nth := map[[2]string]int64{}
	for i := range d.Laid {
		l := &d.Laid[i]
		place := [2]string{l.Lawn, l.Zone}
		nth[place]++
		for j, h := range l.Holds {
			p := versionOf(b, l, j, h.Key)
			k := recordKey{visits[l.Seq], l.Lawn, l.Zone, p.ProductName}
			n, seen := at[k]
			if !seen {
				n, at[k] = len(out), len(out)
				out = append(out, newRecord(b, l, visits[l.Seq], p))
			}
			r := &out[n]
			r.Pieces = append(r.Pieces, nth[place])
			r.Amount.N += h.N
			r.Area += l.Area
			r.Volume += l.Volume
			r.Completed = l.At.Clock()
			r.addMix(mixNames(b, l))
		}
	}
	for i := range out {
		out[i].judge(b)
		out[i].takeNotices(b)
		out[i].fillIn(d.Recorded)
	}
	return out
}

type recordKey struct {
	visit               int
	lawn, zone, product string
}

// versionOf is the label entry that was in force for a product when it was laid.
func versionOf(b *core.Book, l *core.Laid, j int, key int32) *core.Product {
	h := b.ProductVersions(key)
	if j < len(l.Versions) && int(l.Versions[j]) < len(h.Versions) {
		return &h.Versions[l.Versions[j]]
	}
	return h.Now()
}

// newRecord is the row of a product of a piece, without the amounts.
func newRecord(b *core.Book, l *core.Laid, visit int, p *core.Product) Record {
	d, e := b.Day(), &p.Label
	r := Record{
		Date: d.Date, Opened: d.Seq, Seq: l.Seq, Lawn: l.Lawn, Zone: l.Zone, Grass: l.Grass, Product: p.ProductName,
		Kind: e.Kind, Registration: e.Registration, Actives: e.Words(), Signal: e.Signal, Restricted: e.Restricted, Reentry: e.Reentry,
		Amount: measure.Amount{Kind: e.Form}, Applicator: l.Applicator, Measured: l.By, Operator: d.Operator, Analysis: analysis(e),
		MixedWhere: l.Load.Place,
	}
	if a := b.Applicator(l.Applicator); a != nil {
		r.Method = strings.ReplaceAll(a.Type, "_", "-")
	}
	if r.Pesticide = label.No; e.Pesticide() {
		r.Pesticide = label.Yes
	}
	r.takeSettings(b)
	r.takeLawn(b, l)
	r.takeVisit(d, visit, l)
	r.takeLoad(&l.Load)
	r.takeWeather(d, l.At)
	r.takeReasons(d, l)
	return r
}

func (r *Record) takeSettings(b *core.Book) {
	for _, s := range []struct {
		name string
		to   *string
	}{
		{core.Licence, &r.Licence},
		{core.LicenceCategory, &r.Category},
		{core.Supervisor, &r.Supervisor},
		{core.SupervisorLicence, &r.SupervisorLicence},
		{core.Helpers, &r.Helpers},
		{core.Business, &r.Business},
		{core.BusinessAddress, &r.BusinessAddress},
		{core.BusinessPhone, &r.BusinessPhone},
		{core.BusinessLicence, &r.BusinessLicence},
	} {
		*s.to, _ = b.SettingText(s.name)
	}
}

func (r *Record) takeLawn(b *core.Book, l *core.Laid) {
	lawn := b.Lawn(l.Lawn)
	if lawn == nil {
		return
	}
	r.Customer, r.Phone, r.Site = lawn.Customer, lawn.Phone, lawn.Address
	r.ZIP, r.Town, r.County = lawn.ZIP, lawn.Town, lawn.County
	if r.CustomerAddress = lawn.CustomerAddress; r.CustomerAddress == "" {
		r.CustomerAddress = lawn.Address
	}
	if z, ok := lawn.Zone(l.Zone); ok {
		r.SoilTest = z.SoilTest
		if l.Area < z.Area {
			r.Spot = label.Yes
		}
	}
}

func (r *Record) takeVisit(d *core.Day, visit int, l *core.Laid) {
	if visit == 0 {
		r.Arrived = l.At.Clock()
		return
	}
	v := &d.Visits[visit-1]
	r.Arrived = v.Begun.Clock()
	if v.Begun.Unix > l.At.Unix {
		r.Arrived = l.At.Clock()
	}
}

func (r *Record) takeLoad(m *core.LoadMark) {
	if m.Seq == 0 {
		return
	}
	r.Load, r.LoadOrder = core.Known(float64(m.Seq)), core.Known(float64(len(m.Lawns)))
	r.LoadLawns = strings.Join(m.Lawns, "; ")
	r.LoadedAt = m.At.Date() + " " + m.At.Clock()
}

// takeWeather takes the last observation before; each figure as it was last looked at on that day.
func (r *Record) takeWeather(d *core.Day, at core.Moment) {
	for i := range d.Looked {
		w := &d.Looked[i]
		if w.At.Unix > at.Unix {
			break
		}
		r.WeatherAt = w.At.Clock()
		if w.Wind.Known {
			r.Wind, r.WindFrom = core.Known(w.Wind.V.MPH()), w.WindFrom
		}
		if w.Temp.Known {
			r.Temp = w.Temp
		}
		if other := otherWeather(&w.Weather); other != "" {
			r.OtherWeather = other
		}
	}
}

func otherWeather(w *core.Weather) string {
	var out []string
	if w.Humidity.Known {
		out = append(out, fmt.Sprintf("humidity %.0f %%", w.Humidity.V))
	}
	if w.RainFree.Known {
		out = append(out, fmt.Sprintf("rain in %.0f h", w.RainFree.V))
	}
	if w.Inversion != "" {
		out = append(out, "inversion "+w.Inversion)
	}
	return strings.Join(out, "; ")
}

// takeReasons lists what was gone on with on that lawn before, in spite of a finding.
func (r *Record) takeReasons(d *core.Day, l *core.Laid) {
	var out []string
	for i := range d.Reasons {
		f := &d.Reasons[i].What
		if d.Reasons[i].Seq > l.Seq || f.Lawn != l.Lawn || (f.Zone != "" && f.Zone != l.Zone) || (f.Product != "" && f.Product != r.Product) {
			continue
		}
		if said := f.Rule + ": " + f.Reason; !slices.Contains(out, said) {
			out = append(out, said)
		}
	}
	r.Reasons = strings.Join(out, "; ")
}

func mixNames(b *core.Book, l *core.Laid) []string {
	var out []string
	for _, p := range origins(l) {
		if name := mixOf(b.Origin(p.Key)); !slices.Contains(out, name) {
			out = append(out, name)
		}
	}
	return out
}

func (r *Record) addMix(names []string) {
	have := strings.Split(r.Mix, ", ")
	for _, n := range names {
		if !slices.Contains(have, n) {
			have = append(have, n)
		}
	}
	r.Mix = strings.TrimPrefix(strings.Join(have, ", "), ", ")
}

// analysis is nitrogen-phosphate-potash by weight, "25-0-5"; empty where none of it is entered.
func analysis(e *label.Entry) string {
	if !e.Nitrogen.Known && !e.Phosphate.Known && !e.Potash.Known {
		return ""
	}
	part := func(m measure.Maybe[float64]) string {
		if !m.Known {
			return "?"
		}
		return figure(m.V)
	}
	return part(e.Nitrogen) + "-" + part(e.Phosphate) + "-" + part(e.Potash)
}

// judge works out what follows from the amounts: whether it is a trace, what it is for, and its plant food.
func (r *Record) judge(b *core.Book) {
	p := b.Product(r.Product)
	rate := r.Rate()
	if p == nil || !rate.Known {
		return
	}
	low, _ := p.Label.RatesFor(r.Grass)
	if low.Known && low.V.Kind == rate.V.Kind && rate.V.V < float64(low.V.V*b.Setting(core.ApplicationFromPct)/100) {
		r.Trace = label.Yes
	}
	for _, name := range strings.Split(r.Mix, ", ") {
		if m := b.Mix(name); m != nil && r.Target == "" {
			for _, part := range m.Parts {
				if part.Product == r.Product {
					r.Target = part.Target
				}
			}
		}
	}
	if n := p.Label.NitrogenPerProduct(); n.Known && n.V > 0 {
		r.Nitrogen = core.Known(poundsPer1000(float64(rate.V.V * n.V)))
	}
	if n := p.Label.PhosphatePerProduct(); n.Known && n.V > 0 {
		r.Phosphate = core.Known(poundsPer1000(float64(rate.V.V * n.V)))
	}
}

// poundsPer1000 turns nanograms per square millimetre into pounds per 1,000 square feet.
func poundsPer1000(v float64) float64 {
	return v * float64(measure.ThousandSquareFeet) / float64(measure.Pound)
}
