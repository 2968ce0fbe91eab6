package check

import (
	"fmt"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

// enoughRule: what is left must do for the lawn. Short beyond the band is a stop, within it an ask.
func enoughRule(s *situation) []Finding {
	have, band, name, part := s.stock()
	if name == "" || s.spot() { // how much a spot takes is not known before
		return nil
	}
	f := Finding{
		Part: part, Figured: core.Known(have.Gallons()), Limit: core.Known(s.want.Gallons()), Unit: "gal",
		Ground: GroundPractice, Source: "gallons booked, give or take the band of the settings",
	}
	does := measure.Area(measure.MulDiv(int64(have), int64(s.area), int64(s.want)))
	switch {
	case s.want > have+band:
		f.Weight = Stop
		f.Says = fmt.Sprintf("%s has %s to give, ±%s; %s needs %s: it ends after %s of %s.",
			name, gal(have), band.Text(), s.lawn.LawnName, gal(s.want), sqft(does), s.area.Text())
		f.Do = fmt.Sprintf("Refill %s first, or treat %s now and log that.", lower(name), sqft(does))
		if have == 0 {
			f.Do = fmt.Sprintf("Refill %s first.", lower(name))
		}
	case s.want > have-band:
		f.Weight = Ask
		f.Says = fmt.Sprintf("%s may fall short: %s to give, ±%s, and %s needs %s.", name, gal(have), band.Text(), s.lawn.LawnName, gal(s.want))
		f.Do = fmt.Sprintf("Read the gauge of %s first.", lower(name))
	default:
		return nil
	}
	f.Area = s.area - min(does, s.area)
	return []Finding{f}
}

func lower(name string) string {
	if name[0] == 'C' || name[0] == 'T' {
		return string(name[0]+'a'-'A') + name[1:]
	}
	return name
}

// stock is what can be drawn for this visit, with its band.
func (s *situation) stock() (have, band measure.Volume, name, part string) {
	if s.tank != nil {
		return s.tank.Liquid.Volume, s.b.Band(&s.tank.Tank), "The tank of " + s.with.Name, PartApplicator
	}
	for _, l := range s.up.Supply {
		c := s.b.Plumbing().Compartment(l)
		have += c.Drawable()
		band += s.b.Band(&c.Tank)
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
