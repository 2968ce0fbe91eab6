package check

import (
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/label"
)

// Agitation is how what stands in a compartment is moved about, and for how long it was not.
type Agitation struct {
	Letter  byte
	How     string                  // as the rig says: core.Paddle, core.Jet, core.NotAgitated; empty: it does not say
	At      core.Maybe[core.Moment] // when it last was, as far as the entries say
	Minutes core.Maybe[float64]     // since then
	Settles []string                // the products in it that settle
	Unknown []string                // those of which it is not known
	Unmoved bool                    // something in it settles, and it has stood for longer than the setting settle_min
}

// Agitated lists that of every compartment of the rig.
func Agitated(b *core.Book, at core.Moment) []Agitation {
	var out []Agitation
	for i := range b.Plumbing().Compartments {
		out = append(out, agitationOf(b, &b.Plumbing().Compartments[i], at))
	}
	return out
}

func agitationOf(b *core.Book, c *fluid.Compartment, at core.Moment) Agitation {
	a := Agitation{Letter: c.Letter}
	if set := b.RigCompartment(c.Letter); set != nil {
		a.How = set.Agitation
	}
	if m, ok := b.AgitatedAt(c.Letter, at); ok {
		a.At, a.Minutes = core.Known(m), core.Known(max(at.MinutesSince(m), 0))
	}
	if c.Drawable() == 0 {
		return a
	}
	for _, k := range mixedIn(b, c.Liquid) {
		p := b.ProductByKey(k)
		switch f, ok := label.FindFormulation(p.Label.MixingClass); {
		case !ok:
			a.Unknown = append(a.Unknown, p.ProductName)
		case f.Settles:
			a.Settles = append(a.Settles, p.ProductName)
		}
	}
	a.Unmoved = len(a.Settles) > 0 && a.Minutes.Known && a.Minutes.V > b.Setting(core.SettleMin)
	return a
}

// mixedIn lists the products that a liquid holds as a mix of its own: more than residue, at the delivery of the first
// applicator.
func mixedIn(b *core.Book, l fluid.Liquid) []int32 {
	delivery := 0.0
	if a := b.Applicator(FirstApplicator(b)); a != nil {
		delivery = a.Delivery.V
	}
	var out []int32
	for _, h := range l.Holds {
		if low := usualRate(b, h.Key); float64(l.Strength(h.Key))*delivery > b.Setting(core.ResidueShare)*low {
			out = append(out, h.Key)
		}
	}
	return out
}

// words names the formulations of what settles: "water-dispersible granule".
func (a *Agitation) words(b *core.Book) string {
	var out []string
	for _, n := range a.Settles {
		if f, ok := label.FindFormulation(b.Product(n).Label.MixingClass); ok && !hasText(out, f.Words) {
			out = append(out, f.Words)
		}
	}
	return list(out)
}

// settlingUnchecked names what a note on settling would need and is not entered, where that matters: how the compartment
// lined up is agitated, once a day, and the formulation of what is in it, where nothing but the pump moves it.
func settlingUnchecked(s *situation) []string {
	c := s.supply()
	if c == nil {
		return nil
	}
	a := agitationOf(s.b, c, s.in.At)
	switch {
	case a.How == "" && len(a.Settles) > 0 && !s.saidSince(core.Moment{}):
		return []string{"agitation of " + string(c.Letter) + ": how it is agitated is not entered"}
	case a.How == "" || a.How == core.Paddle || len(a.Unknown) == 0:
		return nil
	}
	out := s.blank("", "formulation", func(e label.Entry) bool { return strings.TrimSpace(e.MixingClass) != "" })
	for _, n := range a.Unknown {
		if letters := strings.TrimSpace(s.b.Product(n).Label.MixingClass); letters != "" {
			out = append(out, n+": whether "+letters+" settles is not in the table")
		}
	}
	return out
}
