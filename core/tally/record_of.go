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
	var entries []*label.Entry // of each record: the label entry that was in force
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
				out, entries = append(out, newRecord(b, l, visits[l.Seq], p)), append(entries, &p.Label)
			}
			r := &out[n]
			r.Pieces = append(r.Pieces, nth[place])
			r.Amount.N += h.N
			r.addPiece(b, l)
		}
	}
	nitrogen := map[[2]string]core.Maybe[float64]{}
	for i := range out {
		out[i].judge(b, entries[i])
		out[i].takeYear(b, nitrogen)
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
		Amount: measure.Amount{Kind: e.Form}, Operator: d.Operator, Analysis: analysis(e),
	}
	if r.Pesticide = label.No; e.Pesticide() {
		r.Pesticide = label.Yes
	}
	r.takeSettings(b)
	r.takeLawn(b, l)
	r.takeVisit(d, visit, l)
	r.takeReasons(d, l)
	return r
}

// addPiece adds what a piece that holds the product says of how it was laid.
func (r *Record) addPiece(b *core.Book, l *core.Laid) {
	r.Area += l.Area
	r.Volume += l.Volume
	r.Completed = l.At.Clock()
	r.Mix = joined(r.Mix, mixNames(b, l)...)
	r.Applicator, r.Measured = joined(r.Applicator, l.Applicator), joined(r.Measured, l.By)
	if a := b.Applicator(l.Applicator); a != nil {
		r.Method = joined(r.Method, strings.ReplaceAll(a.Type, "_", "-"))
	}
	r.takeLoad(&l.Load)
	if r.WeatherAt == "" {
		r.takeWeather(b.Day(), l.At)
	}
}

// joined adds to a list that is told with commas what it has not yet.
func joined(list string, more ...string) string {
	have := strings.Split(list, ", ")
	for _, m := range more {
		if !slices.Contains(have, m) {
			have = append(have, m)
		}
	}
	return strings.TrimPrefix(strings.Join(have, ", "), ", ")
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

// takeLoad takes the load of a piece. Of two, the number and the place are the first one's: the lawn was begun from it.
func (r *Record) takeLoad(m *core.LoadMark) {
	if m.Seq == 0 {
		return
	}
	if !r.Load.Known {
		r.Load, r.LoadOrder = core.Known(float64(m.Seq)), core.Known(float64(m.Order()))
		r.LoadLawns = lawnsOf(m)
	}
	r.LoadedAt = joined(r.LoadedAt, m.At.Date()+" "+m.At.Clock())
	if m.Place != "" {
		r.MixedWhere = joined(r.MixedWhere, m.Place)
	}
}

// mostLoadLawns is how many lawns of a load a record names; those before them stand in their own records, with the same load.
const mostLoadLawns = 40

func lawnsOf(m *core.LoadMark) string {
	names := m.Lawns[max(len(m.Lawns)-mostLoadLawns, 0):]
	list := strings.Join(names, "; ")
	if before := m.Order() - int64(len(names)); before > 0 {
		list = fmt.Sprintf("%d before; %s", before, list)
	}
	return list
}

// takeWeather takes each figure as it was last looked at on that day before the piece, and says when: where one observation did not
// have them all, of each.
func (r *Record) takeWeather(d *core.Day, at core.Moment) {
	var wind, temp, other string
	for i := range d.Looked {
		w := &d.Looked[i]
		if w.At.Unix > at.Unix {
			break
		}
		if w.Wind.Known {
			r.Wind, r.WindFrom, wind = core.Known(w.Wind.V.MPH()), w.WindFrom, w.At.Clock()
		}
		if w.Temp.Known {
			r.Temp, temp = w.Temp, w.At.Clock()
		}
		if said := otherWeather(&w.Weather); said != "" {
			r.OtherWeather, other = said, w.At.Clock()
		}
	}
	r.WeatherAt = when([]clocked{{"wind", wind}, {"temperature", temp}, {"other", other}})
}

// clocked is what was looked at, and when; an empty clock is not at all.
type clocked struct{ what, clock string }

// when is the one time of all, or each with its own.
func when(list []clocked) string {
	list = slices.DeleteFunc(list, func(c clocked) bool { return c.clock == "" })
	var all, each []string
	for _, c := range list {
		if !slices.Contains(all, c.clock) {
			all = append(all, c.clock)
		}
		each = append(each, c.what+" "+c.clock)
	}
	if len(all) < 2 {
		return strings.Join(all, "")
	}
	return strings.Join(each, ", ")
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

// judge works out what follows from the amounts: whether it is a spot, whether a trace, what it is for, and its plant food.
func (r *Record) judge(b *core.Book, e *label.Entry) {
	if lawn := b.Lawn(r.Lawn); lawn != nil {
		if z, ok := lawn.Zone(r.Zone); ok && r.Area < z.Area {
			r.Spot = label.Yes
		}
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
	rate := r.Rate()
	if !rate.Known {
		return
	}
	low, _ := e.RatesFor(r.Grass)
	if low.Known && low.V.Kind == rate.V.Kind && rate.V.V < float64(low.V.V*b.Setting(core.ApplicationFromPct)/100) {
		r.Trace = label.Yes
	}
	if n := e.NitrogenPerProduct(); n.Known && n.V > 0 {
		r.Nitrogen = core.Known(poundsPer1000(float64(rate.V.V * n.V)))
	}
	if n := e.PhosphatePerProduct(); n.Known && n.V > 0 {
		r.Phosphate = core.Known(poundsPer1000(float64(rate.V.V * n.V)))
	}
}

// takeYear takes the nitrogen that the zone had in the year up to the end of the day; unknown where the book does not know all of it.
func (r *Record) takeYear(b *core.Book, known map[[2]string]core.Maybe[float64]) {
	if !r.Nitrogen.Known {
		return
	}
	zone := [2]string{r.Lawn, r.Zone}
	n, there := known[zone]
	if !there {
		if sum := b.Season(r.Lawn, r.Zone, r.Date, nil).Nitrogen().Sum; sum.Known {
			n = core.Known(poundsPer1000(sum.V.V))
		}
		known[zone] = n
	}
	r.SeasonNitrogen = n
}

// poundsPer1000 turns nanograms per square millimetre into pounds per 1,000 square feet.
func poundsPer1000(v float64) float64 {
	return v * float64(measure.ThousandSquareFeet) / float64(measure.Pound)
}
