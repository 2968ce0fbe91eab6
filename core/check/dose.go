package check

import (
	"fmt"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
)

const (
	// overLabel is how far above the label's most counts as above it: rounding of rates as printed, no
	// allowance. common practice, no source.
	overLabel = 1.005
	// doubled is the multiple of the mix from which an unlisted limit no longer matters: a double dose is a
	// stop even where the label entry has no highest rate. common practice, no source.
	doubled = 2.0
	// halved is the multiple under which a lawn counts as not treated. common practice, no source.
	halved = 0.5
	// smallShare of the area may be too weak without being asked about. common practice, no source.
	smallShare = 0.02
)

// doseRule judges each parcel's dose against the label's most and against the mix that is meant: too strong
// for the label is a stop, too strong for the mix an ask, or a stop from twice on where the label entry has
// no limit; too weak wastes the visit and is an ask.
func doseRule(s *situation) []Finding {
	var out []Finding
	for _, k := range s.dosed() {
		out = append(out, s.perZone("dose", k, func() (wrong []Finding) {
			if f, found := s.tooStrong(k); found {
				wrong = append(wrong, f)
			}
			// that the hose holds too little of the new mix is said once, by the stop that has it pushed out
			if f, found := s.tooWeak(k); found && !(s.hoseStopped && f.PushBack.Known) {
				wrong = append(wrong, f)
			}
			if len(wrong) == 0 {
				wrong = s.referenceOnce(k)
			}
			return wrong
		})...)
	}
	return out
}

// dosed lists the products that would leave the nozzle and those of the mix that is meant, in order.
func (s *situation) dosed() []int32 {
	out := s.products()
	if s.meant == nil {
		return out
	}
	for _, p := range s.meant.Parts {
		if k, ok := s.b.ProductKey(p.Product); ok && !has(out, k) {
			out = append(out, k)
		}
	}
	return out
}

func has(list []int32, k int32) bool {
	for _, l := range list {
		if l == k {
			return true
		}
	}
	return false
}

func (s *situation) band() float64 { return s.b.Setting(core.StrengthBandPct) / 100 * slack }

func (s *situation) tooStrong(k int32) (Finding, bool) {
	prod := s.b.ProductByKey(k)
	meant, mixed := s.meantRate(prod.ProductName)
	var v measure.Volume
	var f Finding
	var worst struct {
		parcel        fluid.Liquid
		grass         string
		dose, earlier float64
		weighs        float64 // against the label's most, else against the mix
	}
	s.eachParcel(func(z core.Zone, l fluid.Liquid) {
		earlier := s.earlier(z, k)
		d, most := s.dose(l, k)+earlier, mostOn(prod, z.Grass)
		if (most == 0 || d <= float64(most*overLabel)) && (!mixed || d <= float64(meant*(1+s.band()))) {
			return
		}
		v += l.Volume
		f.also(z.Name)
		weighs := d / meant
		if most > 0 {
			weighs = d / most
		}
		if worst.dose == 0 || weighs > worst.weighs {
			worst.parcel, worst.grass, worst.dose, worst.earlier, worst.weighs = l, z.Grass, d, earlier, weighs
		}
	})
	if v == 0 {
		return Finding{}, false
	}
	f = Finding{
		Weight: Ask, Product: prod.ProductName, Active: prod.Label.Words(), Zones: f.Zones, Area: s.cover(v),
		Limit: core.Known(1.0), Unit: "multiple", Ground: GroundPractice, Source: "mix as entered",
	}
	s.multiplesOn(&f, k, worst.dose, worst.grass)
	f.Figured = f.TimesMix
	f.Part = s.strongPart(k)
	switch most := mostOn(prod, worst.grass); {
	case most > 0 && f.Multiple.V > overLabel:
		f.Weight, f.Ground, f.Source = Stop, GroundLabel, labelSource(prod)
		f.Figured = f.Multiple
	case most == 0 && f.TimesMix.Or(0) >= doubled:
		f.Weight = Stop
	}
	f.Says = fmt.Sprintf("%s would go down at %s, on %s.", called(prod), strengthWords(&f, mostOn(prod, worst.grass) > 0), s.on(&f))
	s.doAboutStrength(&f, worst.parcel)
	if worst.earlier > 0 {
		s.overAgain(&f, k, worst.earlier)
	}
	return f, true
}

// strengthWords is "5.0 times the mix, 3.8 times the label's most".
func strengthWords(f *Finding, labelled bool) string {
	var words []string
	if f.TimesMix.Known {
		words = append(words, measure.Multiple(f.TimesMix.V)+" times the mix")
	}
	if labelled {
		times := measure.Multiple(f.Multiple.V)
		if times == "1.0" && f.Multiple.V > overLabel { // so that it is not told as what is allowed
			times = figure(f.Multiple.V, 3)
		}
		words = append(words, times+" times the label's most")
	}
	return strings.Join(words, ", ")
}

// strongPart says where liquid of the wrong strength stands first: in the hose, or in what it is drawn from.
func (s *situation) strongPart(k int32) string {
	if s.tank != nil {
		return PartApplicator
	}
	c := s.supply()
	h := s.b.Plumbing().Hose(s.with.Hose)
	if c == nil || h == nil {
		return PartHose
	}
	tol := s.band()
	in := float64(c.Liquid.Strength(k))
	for _, p := range h.Charge {
		if d := float64(p.Strength(k)) - in; max(d, -d) > float64(tol*in) {
			return PartHose
		}
	}
	return PartCompartment
}

func (s *situation) doAboutStrength(f *Finding, l fluid.Liquid) {
	switch f.Part {
	case PartHose:
		if c := s.toClean(); c != nil {
			f.PushBack = core.Known(c.PushBack)
			f.Do = pushWords(c)
			return
		}
	case PartApplicator:
		if s.alone {
			f.Do = anotherMix
			return
		}
		f.Do = fmt.Sprintf("Do not spray from %s; dilute or empty its tank first.", s.with.Name)
		return
	}
	if max(f.TimesMix.Or(0), f.Multiple.Or(0)) >= doubled {
		f.Do = fmt.Sprintf("This load is mixed for another applicator: do not lay it with %s.", s.with.Name)
		return
	}
	f.Do = fmt.Sprintf("Lay less: %s gal per 1,000 sq ft would be the strength meant.", perThousand(s, f))
}

// perThousand is the delivery at which the dose would be the one meant.
func perThousand(s *situation, f *Finding) string {
	r := measure.Rate{V: s.delivery() / max(f.TimesMix.Or(0), f.Multiple.Or(1))}
	return fmt.Sprintf("%.2f", r.GalPer1000())
}

func (s *situation) tooWeak(k int32) (Finding, bool) {
	prod := s.b.ProductByKey(k)
	meant, mixed := s.meantRate(prod.ProductName)
	if !mixed {
		return Finding{}, false
	}
	var v, half measure.Volume
	var f Finding
	weakest, grass := -1.0, ""
	s.eachParcel(func(z core.Zone, l fluid.Liquid) {
		d := (s.dose(l, k) + s.earlier(z, k)) / meant
		if d >= 1-s.band() {
			return
		}
		v += l.Volume
		f.also(z.Name)
		if d < halved {
			half += l.Volume
		}
		if weakest < 0 || d < weakest {
			weakest, grass = d, z.Grass
		}
	})
	want, _ := s.judged()
	if v == 0 || float64(v) < float64(smallShare*float64(want)) {
		return Finding{}, false
	}
	f = Finding{
		Weight: Note, Product: prod.ProductName, Active: prod.Label.Words(), Zones: f.Zones, Area: s.cover(v), Part: s.strongPart(k),
		TimesMix: core.Known(weakest), Figured: core.Known(weakest), Limit: core.Known(1.0), Unit: "multiple", Ground: GroundPractice, Source: "mix as entered",
	}
	f.Multiple = f.TimesMix
	if most := mostOn(prod, grass); most > 0 {
		f.Multiple = core.Known(weakest * meant / most)
	}
	if float64(half) >= float64(smallShare*float64(want)) {
		f.Weight = Ask
	}
	f.Says = fmt.Sprintf("%s would go down at %s times the mix, on %s.", called(prod), measure.Multiple(weakest), s.on(&f))
	if weakest < 0.05 {
		f.Says = fmt.Sprintf("No %s would go down on the first %s.", called(prod), s.on(&f))
	}
	f.Do = "Change over first, or expect weak control there."
	if f.Part == PartHose {
		if c := s.toClean(); c != nil {
			f.PushBack = core.Known(c.PushBack)
			f.Do = pushWords(c)
		}
	}
	return f, true
}
