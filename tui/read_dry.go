package tui

import (
	"sort"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/check"
	"example.com/tintline/core/measure"
)

// choice is an applicator, and what of two things it is to do.
type choice struct{ name, only string }

// choices lists what the key for the next applicator goes through: one that can spray and spread in one pass stands
// there with each alone, too.
func (m *Model) choices() []choice {
	var out []choice
	for _, n := range m.applicators() {
		out = append(out, choice{n, ""})
		if check.OnePass(m.book, n) {
			out = append(out, choice{n, check.OnlySpray}, choice{n, check.OnlySpread})
		}
	}
	return out
}

// chosenWords says what was chosen, and how much it lays.
func (m *Model) chosenWords(a *core.Applicator) (what, do string) {
	switch {
	case m.only == check.OnlySpray:
		what = "spraying only, with "
	case m.only == check.OnlySpread:
		what = "spreading only, with "
	case check.OnePass(m.book, a.Name):
		what = "spraying and spreading with "
	case !a.Sprays():
		what = "spreading with "
	default:
		what = "spraying with "
	}
	return what + a.Name, m.rate(a)
}

// rate is how much the applicator lays on an area: of liquid, else of what is in its hopper.
func (m *Model) rate(a *core.Applicator) string {
	if a.Sprays() && m.only != check.OnlySpread {
		return rateWords(a)
	}
	product, several := m.book.InHopper(a.Name)
	if product == "" && !several {
		return ""
	}
	if r, ok := m.book.DryRate(a.Name, product); ok {
		return r.Text()
	}
	return ""
}

// sprayer is the applicator that the hose is drawn for: the one chosen, or the first that sprays.
func (m *Model) sprayer() *core.Applicator {
	if a := m.applicator(); a == nil || a.Sprays() {
		return a
	}
	return m.book.Applicator(check.FirstApplicator(m.book))
}

// lays is what would go down by a plan: "7.80 gal", "22.2 lb", or both.
func lays(p check.Plan) string {
	var parts []string
	if p.Volume > 0 {
		parts = append(parts, p.Volume.Text()+" gal")
	}
	if p.Amount.Known {
		parts = append(parts, p.Amount.V.Text())
	}
	return strings.Join(parts, ", ")
}

// laysWords is lays with the name of what is spread.
func laysWords(p check.Plan) string {
	if p.Amount.Known {
		return strings.Replace(lays(p), ", ", " and ", 1) + " of " + p.Product
	}
	return lays(p)
}

// openSpread asks what was spread.
func (m *Model) openSpread(zones string, a *core.Applicator) {
	m.openLine(textLine{
		prompt: "spread on " + zones + " with " + a.Name,
		hint:   "22 lb, or 22 lb and a product's name, or 6200 sqft; a zone's name first limits it",
		read:   func(m *Model, said string) ([]core.Fact, error) { return onlyFact(m.readSpread(said)) },
	})
}

// readSpread reads what was spread: zones, if any are named, then a weight or an area, and a product.
func (m *Model) readSpread(said string) (core.Fact, error) {
	v := m.book.Day().Visiting()
	a := m.applicator()
	if v == nil || a == nil {
		return nil, slip("No visit is begun.", "Arrive first.")
	}
	zones, rest := readZones(said, m.book.Lawn(v.Lawn).ZoneNames())
	if len(zones) == 0 {
		zones = m.got.left
	}
	f := core.Spread{Lawn: v.Lawn, Zones: zones, Applicator: a.Name}
	f.Product, rest = m.cutProduct(rest)
	if one, several := m.book.InHopper(a.Name); f.Product == "" && one == "" && !several {
		f.Product = m.got.report.Plan.Product // the hopper is empty: what it held last
	}
	return readWeighed(f, rest)
}

// readWeighed reads how much a spreading laid: a weight, or an area.
func readWeighed(f core.Spread, rest string) (core.Fact, error) {
	lb, err := measure.ReadMass(rest, "lb")
	if err == nil {
		f.By, f.Amount = core.ByWeight, measure.DryAmount(lb)
		return &f, nil
	}
	if area, wrong := measure.ReadArea(rest, "sqft"); wrong == nil {
		f.By, f.Area = core.ByArea, core.Known(area)
		return &f, nil
	}
	return nil, err
}

// cutProduct takes the name of a dry product from the end, longest first.
func (m *Model) cutProduct(s string) (product, rest string) {
	var names []string
	for _, h := range m.book.Products() {
		if h.Now().Label.Form == measure.Dry {
			names = append(names, h.Name)
		}
	}
	return cutLastName(s, names)
}

func cutLastName(s string, names []string) (name, rest string) {
	sort.SliceStable(names, func(i, j int) bool { return len(names[i]) > len(names[j]) })
	for _, n := range names {
		if rest, ok := cutLastWord(s, n); ok {
			return n, rest
		}
	}
	return "", s
}

// readHopper reads a load of dry product for an applicator's hopper: a weight, then the product or the mix; without
// either it is what the hopper holds. It is no load of the hopper if what is typed is gallons.
func (m *Model) readHopper(a *core.Applicator, said string) (f core.Fact, is bool, err error) {
	if !a.Spreads() {
		return nil, false, nil
	}
	what, rest := m.cutProduct(said)
	if what == "" {
		var mixes []string
		for _, x := range m.book.Mixes() {
			mixes = append(mixes, x.MixName)
		}
		what, rest = cutLastName(said, mixes)
	}
	if _, gallons := measure.ReadVolume(rest, "gal"); gallons == nil && a.Sprays() && what == "" {
		return nil, false, nil
	}
	lb, err := measure.ReadMass(rest, "lb")
	if err != nil {
		return nil, !a.Sprays() || what != "", err
	}
	load, err := m.book.HopperLoad(a.Name, what, lb)
	if err != nil {
		return nil, true, err
	}
	return load, true, nil
}

// hopperHint is what may be typed to log a load of a hopper.
func (m *Model) hopperHint() string {
	for _, a := range m.book.Rig().Applicators {
		if a.Hopper > 0 {
			return "; 50 lb PRODUCT " + a.Name + " loads it"
		}
	}
	return ""
}
