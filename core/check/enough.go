package check

import (
	"fmt"
	"math"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

// enoughRule: what is left must do for the lawn. Short beyond the band is a stop, within it an ask.
func enoughRule(s *situation) []Finding {
	have, band, name, part := s.stock()
	if name == "" || s.spot() { // how much a spot takes is not known before
		return nil
	}
	want, needs := s.takes()
	f := Finding{
		Part: part, Figured: core.Known(have.Gallons()), Limit: core.Known(want.Gallons()), Unit: "gal",
		Ground: GroundPractice, Source: s.stockSource(),
	}
	does := measure.Area(measure.MulDiv(int64(have), int64(s.area), int64(want)))
	switch {
	case want > have+band:
		f.Weight = Stop
		f.Says = fmt.Sprintf("%s has %s to give, ±%s; %s needs %s: it ends after %s of %s.",
			name, gal(have), band.Text(), s.lawn.LawnName, needs, sqft(does), s.area.Text())
		f.Do = fmt.Sprintf("Refill %s first, or treat %s now and log that.", lower(name), sqft(does))
		if have == 0 {
			f.Do = fmt.Sprintf("Refill %s first.", lower(name))
		}
	case want > have-band:
		f.Weight = Ask
		f.Says = fmt.Sprintf("%s may fall short: %s to give, ±%s, and %s needs %s.", name, gal(have), band.Text(), s.lawn.LawnName, needs)
		f.Do = fmt.Sprintf("Read the gauge of %s first.", lower(name))
	default:
		return nil
	}
	f.Area = s.area - min(does, s.area)
	return []Finding{f}
}

// stockSource is on what the gallons to give and their band rest.
func (s *situation) stockSource() string {
	if s.tank == nil {
		for _, l := range s.up.Supply {
			if _, _, ok := s.b.Expected(s.b.Plumbing().Compartment(l)); ok {
				return "gallons booked, put right by what gauges have shown, give or take one standard deviation"
			}
		}
	}
	return "gallons booked, give or take the band of the settings"
}

func lower(name string) string {
	if name[0] == 'C' || name[0] == 'T' {
		return string(name[0]+'a'-'A') + name[1:]
	}
	return name
}

// stock is what can be drawn for this visit, with its band, which is one standard deviation. Where gauges have shown what the
// applicator puts down, that of the lawn ahead is in it.
func (s *situation) stock() (have, band measure.Volume, name, part string) {
	if s.tank != nil {
		return s.tank.Liquid.Volume, s.b.Band(&s.tank.Tank), "The tank of " + s.with.Name, PartApplicator
	}
	for _, l := range s.up.Supply {
		c := s.b.Plumbing().Compartment(l)
		if v, _, ok := s.b.Expected(c); ok {
			have += max(v-c.Heel, 0)
		} else {
			have += c.Drawable()
		}
		part := s.want / measure.Volume(len(s.up.Supply))
		if _, sd, ok := s.b.ExpectedAfter(c, s.with.Name, part); ok && !s.in.Volume.Known {
			band += sd
		} else {
			band += s.b.Band(&c.Tank)
		}
		if name != "" {
			name += " and "
		}
		name += string(l)
	}
	if name != "" {
		name = "Compartment " + name
	}
	return have, band, name, PartCompartment
}

// takes is what the lawn will take, as far as gauges have shown what the applicator puts down, and that in words. Gallons
// that were named are taken as they are.
func (s *situation) takes() (measure.Volume, string) {
	ratio := s.b.RatioOf(s.with.Name)
	want := measure.Volume(math.RoundToEven(float64(s.want) * ratio))
	if s.in.Volume.Known || want == s.want || want <= 0 {
		return s.want, gal(s.want)
	}
	return want, fmt.Sprintf("%s as %s puts down, %s by its rate", gal(want), s.with.Name, gal(s.want))
}
