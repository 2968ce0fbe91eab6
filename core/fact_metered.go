package core

import (
	"math"

	"example.com/tintline/core/measure"
)

// Metered: the meters of the truck were read. What was not read is unknown. A meter that was changed for another begins anew.
type Metered struct {
	EngineHours Maybe[float64]
	PumpHours   Maybe[float64]
	Odometer    Maybe[float64] // miles
	Changed     string         // "yes": the meters read here are other ones than before
}

// Kind of the fact.
func (*Metered) Kind() Kind { return kindMetered }

// Name of the fact.
func (*Metered) Name() string { return "metered" }

func (f *Metered) fields(w walker) {
	w.maybeNumber(1, "engine_h", &f.EngineHours)
	w.maybeNumber(2, "pump_h", &f.PumpHours)
	w.maybeNumber(3, "odometer_mi", &f.Odometer)
	w.text(4, "changed", &f.Changed)
}

// Meter is what one meter of the truck says. Run is what it went in all, over all meters that were in its place, since the first reading.
type Meter struct {
	Last Maybe[float64]
	At   Moment
	Run  float64
	// DayRun is what it went up to the last reading before the day was opened, so that Run less DayRun is what it went since.
	DayRun float64
}

// Meters are those of the truck: hours of the engine, hours of the pump, miles.
type Meters struct{ Engine, Pump, Odometer Meter }

// Meters tells what the meters of the truck said last.
func (s *state) Meters() Meters { return s.meters }

// of pairs what was read with its meter.
func (m *Meters) of(f *Metered) []meterRead {
	return []meterRead{
		{&m.Engine, f.EngineHours, "hour meter of the engine", "h"},
		{&m.Pump, f.PumpHours, "hour meter of the pump", "h"},
		{&m.Odometer, f.Odometer, "odometer", "mi"},
	}
}

type meterRead struct {
	meter      *Meter
	read       Maybe[float64]
	name, unit string
}

// The most that a meter can say, and the most that it can go from one reading to the next without being said to be another one.
const (
	mostMetered = 1e7
	mostStep    = 1e5
)

func (s *state) admitMetered(f *Metered) error {
	if f.Changed != "" && f.Changed != yes {
		return refuse("Write yes, or leave it out.", "%q does not say whether the meter was changed.", f.Changed)
	}
	m := s.meters
	none := true
	for _, r := range m.of(f) {
		if !r.read.Known {
			continue
		}
		none = false
		v, last := r.read.V, r.meter.Last
		switch {
		case math.IsNaN(v) || v < 0 || v > mostMetered:
			return refuse("Read it again; it says from 0 to 10,000,000.", "The %s cannot be at %v.", r.name, v)
		case last.Known && v < last.V && f.Changed == "":
			return refuse("Read it again, or say changed yes if it is another meter.", "The %s is at %v %s, less than the %v %s read before.", r.name, v, r.unit, last.V, r.unit)
		case last.Known && v-last.V > mostStep && f.Changed == "":
			return refuse("Read it again, or say changed yes if it is another meter.", "The %s went from %v to %v %s.", r.name, last.V, v, r.unit)
		}
	}
	if none {
		return refuse("Give engine_h, pump_h or odometer_mi.", "No meter was read.")
	}
	return nil
}

func (s *state) applyMetered(e Entry, f *Metered) {
	for _, r := range s.meters.of(f) {
		if !r.read.Known || math.IsNaN(r.read.V) {
			continue
		}
		if m := r.meter; m.Last.Known && f.Changed == "" {
			m.Run += max(r.read.V-m.Last.V, 0)
		}
		r.meter.Last, r.meter.At = r.read, e.At
	}
}

// metersOfDay marks where the meters stood before a day is opened.
func (s *state) metersOfDay() {
	for _, r := range s.meters.of(&Metered{}) {
		r.meter.DayRun = r.meter.Run
	}
}

func (s *state) digestMeters(w *binaryWriter) {
	if s.meters == (Meters{}) {
		return
	}
	w.str("meters")
	for _, r := range s.meters.of(&Metered{}) {
		w.yes(r.meter.Last.Known)
		w.int(int64(math.Float64bits(r.meter.Last.V)))
		w.int(int64(math.Float64bits(r.meter.Run)))
	}
}

func (k *keptCodec) metered(m *Meters) {
	for _, r := range m.of(&Metered{}) {
		k.yes(&r.meter.Last.Known)
		figure(k, &r.meter.Last.V)
		k.moment(&r.meter.At)
		figure(k, &r.meter.Run)
		figure(k, &r.meter.DayRun)
	}
}

// Pumped is all that went through the pump since the book began: onto lawns, back into tanks and out of the hose.
func (s *state) Pumped() measure.Volume { return s.through }
