package fluid

import (
	"math"

	"example.com/tintline/core/measure"
)

// Parcel is a stretch of the hose: liquid, or air in a hose that was drained.
type Parcel struct {
	Liquid
	Air measure.Volume
}

func (p Parcel) length() measure.Volume { return p.Volume + p.Air }

// Hose holds its charge as parcels; the first leaves the nozzle next, the last has just left the cell.
// Parcels always fill the hose.
type Hose struct {
	Name   string
	Size   measure.Volume
	Charge []Parcel
}

// mergeTolerance is the relative difference in strength under which neighbours become one parcel; the
// amounts are added, nothing is lost.
const mergeTolerance = 1e-3

// drop is a volume so small (10 microlitres) that it is no parcel of its own: rounding to the unit would
// decide its strength. What comes next is mixed into it, so that drop after drop still makes parcels.
const drop = 10_000

// Liquid is all that is in the hose, as if mixed.
func (h *Hose) Liquid() Liquid {
	var l Liquid
	for _, p := range h.Charge {
		l = l.Plus(p.Liquid)
	}
	return l
}

// Air is how much of the hose is empty.
func (h *Hose) Air() measure.Volume {
	var a measure.Volume
	for _, p := range h.Charge {
		a += p.Air
	}
	return a
}

// FromPumpEnd lists the parcels from the pump end to the nozzle.
func (h *Hose) FromPumpEnd() []Parcel {
	out := make([]Parcel, 0, len(h.Charge))
	for i := len(h.Charge) - 1; i >= 0; i-- {
		out = append(out, h.Charge[i])
	}
	return out
}

// AirBefore is how much air leaves until v of liquid has left.
func (h *Hose) AirBefore(v measure.Volume) measure.Volume {
	var air measure.Volume
	for _, p := range h.Charge {
		if v <= 0 {
			break
		}
		air += p.Air
		v -= p.Volume
	}
	return air
}

// push moves the plug on by l and returns what left the nozzle, air left out.
func (h *Hose) push(l Liquid) []Liquid {
	if l.Volume <= 0 {
		return nil
	}
	if n := len(h.Charge); n > 0 && h.Charge[n-1].Air == 0 && (h.Charge[n-1].Volume < drop || alike(h.Charge[n-1].Liquid, l, mergeTolerance)) {
		h.Charge[n-1].Liquid = h.Charge[n-1].Plus(l)
	} else {
		h.Charge = append(h.Charge, Parcel{Liquid: l})
	}
	var out []Liquid
	for over := l.Volume; over > 0 && len(h.Charge) > 0; {
		p := h.Charge[0]
		if p.length() <= over {
			over -= p.length()
			h.Charge = h.Charge[1:]
			if p.Volume > 0 {
				out = append(out, p.Liquid)
			}
			continue
		}
		if p.Air > 0 {
			h.Charge[0].Air -= over
			break
		}
		taken, rest := p.Split(over)
		h.Charge[0].Liquid = rest
		out = append(out, taken)
		break
	}
	return out
}

// drain lets up to v of liquid run out at the nozzle; air takes its place there.
func (h *Hose) drain(v measure.Volume) Liquid {
	var out Liquid
	air := measure.Volume(0)
	charge := append([]Parcel(nil), h.Charge...)
	for len(charge) > 0 && (charge[0].Air > 0 || out.Volume < v) {
		p := charge[0]
		if p.Air > 0 {
			air += p.Air
			charge = charge[1:]
			continue
		}
		taken, rest := p.Split(v - out.Volume)
		out, air = out.Plus(taken), air+taken.Volume
		if rest.Volume > 0 {
			charge[0].Liquid = rest
			break
		}
		charge = charge[1:]
	}
	if air > 0 {
		charge = append([]Parcel{{Air: air}}, charge...)
	}
	h.Charge = charge
	return out
}

// resize makes the hose larger by air at the nozzle, or smaller as far as it holds air there.
func (h *Hose) resize(size measure.Volume) bool {
	charge := append([]Parcel(nil), h.Charge...)
	switch d := size - h.Size; {
	case d > 0:
		// One parcel of air at the nozzle, never two: what may be cut off again is the first parcel's air.
		if len(charge) > 0 && charge[0].Air > 0 {
			charge[0].Air += d
		} else {
			charge = append([]Parcel{{Air: d}}, charge...)
		}
	case d < 0:
		if len(charge) == 0 || charge[0].Air < -d {
			return false
		}
		charge[0].Air += d
		if charge[0].Air == 0 {
			charge = charge[1:]
		}
	}
	h.Size, h.Charge = size, charge
	return true
}

// BoreVolume is the volume of a hose by its bore d and length L: pi/4 d^2 L (geometry), rounded to the nL,
// relative error below 1e-15; d up to 12 in and L up to 10,000 ft.
func BoreVolume(bore, length measure.Length) measure.Volume {
	const cubicMicrometresPerNanolitre = 1e6
	mm := float64(bore) * float64(bore) / cubicMicrometresPerNanolitre
	return measure.Volume(math.RoundToEven(mm * float64(length) * (math.Pi / 4)))
}
