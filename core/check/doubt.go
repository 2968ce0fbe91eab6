package check

import (
	"fmt"
	"math"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

// Doubt tells whether something typed looks like a slip, or would be laid under a stop that stands: it is booked only
// after a key of its own. Words say why, do what to look at. It is no refusal; what could not have happened is refused
// by the book, and doubted by nobody.
func Doubt(b *core.Book, at core.Moment, f core.Fact) (words, do string, doubtful bool) {
	es, err := b.Prepare("doubt", at, f)
	if err != nil {
		return "", "", false
	}
	switch f := es[0].What.(type) {
	case *core.GaugeRead:
		return doubtGauge(b, f)
	case *core.PushedBack:
		return doubtPush(b, at, f)
	case *core.Sprayed:
		return doubtSprayed(b, at, f)
	case *core.Spread:
		return doubtSpread(b, at, f)
	case *core.TintSeen:
		return doubtTint(b, at, f)
	case *core.Ran:
		return doubtRan(b, f)
	case *core.LoadPlanned:
		return doubtLoad(b, at, f)
	case *core.Loaded:
		return doubtLoad(b, at, &core.LoadPlanned{Into: f.Into, Volume: f.Volume, Parts: f.Parts, Mix: f.Mix, For: f.For})
	case *core.Weather:
		return doubtWeather(b, at, f)
	case *core.Calibrated:
		return doubtCalibrated(b, f)
	}
	return "", "", false
}

func doubtGauge(b *core.Book, f *core.GaugeRead) (words, do string, doubtful bool) {
	c := b.Plumbing().Compartment(f.Compartment)
	off, band := f.Volume.V-c.Liquid.Volume, b.Band(&c.Tank)
	most := float64(c.Capacity) * b.Setting(core.DoubtGaugePct) / 100
	if band > 0 {
		most = min(most, float64(band)*b.Setting(core.DoubtGaugeBands))
	}
	if math.Abs(float64(off)) <= most {
		return "", "", false
	}
	less := "more"
	if off < 0 {
		off, less = -off, "less"
	}
	return fmt.Sprintf("The gauge of %c says %s; the book has %s, ±%s: %s %s.", f.Compartment, gal(f.Volume.V), gal(c.Liquid.Volume), band.Text(), gal(off), less),
		"Read it again; book it if it is right.", true
}

// doubtPush asks about a push-back into a compartment that the changeover does not use, if that would get more than a
// trace of another mix.
func doubtPush(b *core.Book, at core.Moment, f *core.PushedBack) (words, do string, doubtful bool) {
	if f.To != "" {
		return "", "", false
	}
	uses := append([]byte(nil), b.Plumbing().LineUp.Supply...)
	if c := ToClean(b, likelyNow(b, at)); c != nil {
		uses = append(uses, c.Into)
		for _, l := range c.Legs {
			uses = append(uses, l.Into)
		}
	}
	if strings.IndexByte(string(uses), f.Into) >= 0 {
		return "", "", false
	}
	p := b.Plumbing().Sketch()
	into := p.Compartment(f.Into)
	var foreign measure.Volume
	var from []byte
	for _, l := range p.PushBack(f.Hose, f.Volume, f.Bypass.Or(0), into) {
		for _, o := range l.From {
			if came := b.Origin(o.Key); came.Letter != 0 && came.Letter != f.Into && !sameLiquid(b, came.Letter, f.Into) {
				foreign += measure.Volume(o.N)
				from = append(from, came.Letter)
			}
		}
	}
	share := float64(foreign) / float64(max(into.Liquid.Volume, 1))
	if share*100 <= b.Setting(core.DoubtPushPct) {
		return "", "", false
	}
	return fmt.Sprintf("%s that came from %s would go into %c: %s per cent of it would be another mix.", gal(foreign), letters(from, " and "), f.Into, measure.Multiple(share*100)),
		fmt.Sprintf("Look into which compartment it went; the changeover uses %s.", letters(uses, " or ")), true
}

// likelyNow is the visit now or the next one, by the valves as they stand.
func likelyNow(b *core.Book, at core.Moment) Intent {
	in := Likely(b, Intent{At: at})
	in.From = 0
	return in
}

// sameLiquid tells whether two compartments hold the same products, as strong as each other within the band.
func sameLiquid(b *core.Book, x, y byte) bool {
	p, q := b.Plumbing().Compartment(x), b.Plumbing().Compartment(y)
	if p == nil || q == nil || q.Liquid.Volume == 0 {
		return false
	}
	within := b.Setting(core.StrengthBandPct) / 100
	for _, h := range p.Liquid.Holds.Plus(q.Liquid.Holds) {
		s, t := float64(p.Liquid.Strength(h.Key)), float64(q.Liquid.Strength(h.Key))
		if math.Abs(s-t) > within*max(s, t) {
			return false
		}
	}
	return true
}

// letters names compartments, each once.
func letters(list []byte, joint string) string {
	var out []string
	for _, l := range list {
		if s := string(l); l != 0 && !hasText(out, s) {
			out = append(out, s)
		}
	}
	if len(out) == 0 {
		return "none"
	}
	return strings.Join(out, joint)
}

func doubtWeather(b *core.Book, at core.Moment, f *core.Weather) (words, do string, doubtful bool) {
	w := b.Weather()
	if w == nil || math.Abs(at.MinutesSince(w.At)) > b.Setting(core.DoubtWeatherMin) {
		return "", "", false
	}
	const again = "Look again; book it if it is right."
	before := fmt.Sprintf("%.0f min ago", at.MinutesSince(w.At))
	if f.Wind.Known && w.Wind.Known && math.Abs(f.Wind.V.MPH()-w.Wind.V.MPH()) > b.Setting(core.DoubtWindMPH) {
		return fmt.Sprintf("Wind %s mph; %s it was %s.", mph(f.Wind.V.MPH()), before, mph(w.Wind.V.MPH())), again, true
	}
	if f.Temp.Known && w.Temp.Known && math.Abs(f.Temp.V-w.Temp.V) > b.Setting(core.DoubtTempF) {
		return fmt.Sprintf("%.3g F; %s it was %.3g.", f.Temp.V, before, w.Temp.V), again, true
	}
	return "", "", false
}

// doubtSprayed asks about a zone that has its share already, about gallons that do not go with the area, and about
// what the check stops.
func doubtSprayed(b *core.Book, at core.Moment, f *core.Sprayed) (words, do string, doubtful bool) {
	s, err := lookAtSprayed(b, at, f)
	if err != nil {
		return "", "", false
	}
	if words, twice := s.laidTwice(false); twice {
		return words, "Look which zone it was, or how much of it; book it if it was sprayed twice.", true
	}
	if rate := s.with.Delivery; rate.V > 0 {
		meant := rate.Volume(f.Area.V)
		if times, off := s.farOff(float64(f.Volume.V), float64(meant)); off {
			return fmt.Sprintf("%s on %s is %s times what %s lays, %s.", gal(f.Volume.V), sqft(f.Area.V), times, f.Applicator, gal(meant)),
				"Look at the gallons and the area; book it if they are right.", true
		}
	}
	return s.stopped()
}

// lookAtSprayed and lookAtSpread are the situation in which something was put down.
func lookAtSprayed(b *core.Book, at core.Moment, f *core.Sprayed) (*situation, error) {
	return look(b, Intent{Lawn: f.Lawn, Zones: f.Zones, With: f.Applicator, Volume: f.Volume, Area: f.Area, At: at, Only: OnlySpray})
}

func lookAtSpread(b *core.Book, at core.Moment, f *core.Spread) (*situation, error) {
	return look(b, Intent{
		Lawn: f.Lawn, Zones: f.Zones, With: f.Applicator, Area: f.Area, At: at, Only: OnlySpread,
		Product: f.Product, Amount: core.Known(measure.Mass(f.Amount.N)),
	})
}

func doubtSpread(b *core.Book, at core.Moment, f *core.Spread) (words, do string, doubtful bool) {
	s, err := lookAtSpread(b, at, f)
	if err != nil {
		return "", "", false
	}
	if words, twice := s.laidTwice(true); twice {
		return words, "Look which zone it was, or how much of it; book it if it was spread twice.", true
	}
	if rate, ok := b.DryRate(f.Applicator, f.Product); ok && rate.V > 0 {
		meant := rate.Over(f.Area.V)
		if times, off := s.farOff(float64(f.Amount.N), float64(meant.N)); off {
			return fmt.Sprintf("%s on %s is %s times what is meant, %s.", f.Amount.Text(), sqft(f.Area.V), times, meant.Text()),
				"Look at the weight and the area; book it if they are right.", true
		}
	}
	return s.stopped()
}

// farOff tells whether what was laid is far from what was meant, and how many times it is that.
func (s *situation) farOff(laid, meant float64) (times string, off bool) {
	if meant <= 0 {
		return "", false
	}
	t := laid / meant
	return measure.Multiple(t), t > s.b.Setting(core.DoubtMuch) || t < s.b.Setting(core.DoubtLittle)
}

// laidTwice tells whether a zone would get more than all of it in this visit.
func (s *situation) laidTwice(dry bool) (words string, twice bool) {
	v := s.b.Day().Visiting()
	if v == nil || v.Lawn != s.lawn.LawnName {
		return "", false
	}
	for i, z := range s.zones {
		var had measure.Area
		for _, l := range s.b.Day().LaidAt(v) {
			if l.Zone == z.Name && l.Dry == dry {
				had += l.Area
			}
		}
		if all := had + s.areas[i]; had > 0 && float64(all) > float64(z.Area)*(1+smallShare) {
			return fmt.Sprintf("%s has had %s in this visit: with this it would be %s of %s.", z.Name, sqft(had), all.Text(), sqft(z.Area)), true
		}
	}
	return "", false
}

// stopped asks about what is laid under a stop that stands.
func (s *situation) stopped() (words, do string, doubtful bool) {
	f, stands := s.stands()
	if !stands {
		return "", "", false
	}
	return f.Says, "Give the reason first, or book it as it is if it went down.", true
}
