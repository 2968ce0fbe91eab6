package core

import (
	"example.com/tintline/core/measure"
)

// Teaching is on what it rests what a gauge teaches of an applicator, as it stood when the reading was logged: standard
// uncertainties, and shares of what went. Readings that were logged without it teach nothing.
type Teaching struct {
	ReadSD  measure.Volume // of the reading
	Step    measure.Volume // between two readings that the gauge can tell apart; 0: not known
	TankSD  measure.Volume // of what was loaded, each time
	Moved   float64        // of what was pushed, rinsed or ran, as a share
	Job     float64        // by which one job differs from the next, as a share
	Drift   float64        // of a factor in a day, as a share
	OddSDs  float64        // a reading that lies further off is not learned from
	Factors []TeachingFactor
}

// TeachingFactor is how well the factor of an applicator was known before any reading, as a share.
type TeachingFactor struct {
	Applicator string
	SD         float64
}

func teachingFields(w walker, t *Teaching) {
	w.volume(1, "read_sd", &t.ReadSD)
	w.volume(2, "step", &t.Step)
	w.volume(3, "tank_sd", &t.TankSD)
	w.number(4, "moved_share", &t.Moved)
	w.number(5, "job_share", &t.Job)
	w.number(6, "drift_share", &t.Drift)
	w.number(7, "odd_sds", &t.OddSDs)
	list(w, 8, "factors", &t.Factors, func(w walker, f *TeachingFactor) {
		w.text(1, "applicator", &f.Applicator)
		w.number(2, "sd_share", &f.SD)
	})
}

// teachingOf gathers the figures in force for a reading of a tank that holds so much, with its standard uncertainty where
// the chart tells it.
func (s *state) teachingOf(capacity measure.Volume, read Maybe[measure.Volume], applicators ...string) Teaching {
	t := Teaching{
		TankSD: share(capacity, s.Setting(GaugeErrorPct)/100), Moved: s.Setting(RateErrorPct) / 100, Job: s.Setting(JobErrorPct) / 100,
		Drift: s.Setting(FactorDriftPct) / 100, OddSDs: s.Setting(FactorOddSDs),
	}
	t.ReadSD = read.Or(t.TankSD)
	for _, a := range applicators {
		t.Factors = append(t.Factors, TeachingFactor{a, s.factorSD(a)})
	}
	return t
}

// factorSD is how well the factor of an applicator is known before any reading: better where a test of it, with the tip that
// is on, was accepted not long ago.
func (s *state) factorSD(applicator string) float64 {
	const day = 86_400
	if r := s.rateOf(applicator, s.TipOn(applicator), ""); r != nil {
		if days := float64(s.day.Opened.Unix-r.At.Unix) / day; days <= s.Setting(FactorTestedDays) {
			return s.Setting(FactorTestedPct) / 100
		}
	}
	return s.Setting(FactorErrorPct) / 100
}

// admitTeaching refuses figures that could not be reckoned with.
func admitTeaching(all []Teaching) error {
	if len(all) > 1 {
		return refuse("Leave teaching out; it is filled in.", "There are %d sets of figures for one reading.", len(all))
	}
	for _, t := range all {
		ok := t.ReadSD >= 0 && t.Step >= 0 && t.TankSD >= 0 && len(t.Factors) <= mostFactors
		for _, v := range []float64{t.Moved, t.Job, t.Drift, t.OddSDs} {
			ok = ok && v >= 0 && v <= 1000
		}
		for _, v := range []measure.Volume{t.ReadSD, t.Step, t.TankSD} {
			ok = ok && bounded("A figure", v) == nil
		}
		for _, f := range t.Factors {
			ok = ok && f.SD >= 0 && f.SD <= 1000
		}
		if !ok {
			return refuse("Leave teaching out; it is filled in.", "The figures of what the reading teaches cannot be reckoned with.")
		}
	}
	return nil
}

// teachesReading is what a reading of a compartment rests on.
func (s *state) teachesReading(c *RigCompartment, f *GaugeRead) []Teaching {
	var drew []string
	if i := s.gauged.tankAt(f.Compartment); i >= 0 {
		for _, d := range s.gauged.tanks[i].draws {
			drew = append(drew, d.applicator)
		}
	}
	t := s.teachingOf(c.Capacity, f.GiveOrTake, drew...)
	t.Step = s.readingStep(c, f)
	return []Teaching{t}
}

// teachesJob is what a spraying by gauge rests on: two readings of the tank that it came from.
func (s *state) teachesJob(a *Applicator, area measure.Area) []Teaching {
	capacity := a.Tank
	if open := s.plumbing.LineUp.Supply; capacity == 0 && len(open) > 0 {
		if c := s.plumbing.Compartment(open[0]); c != nil {
			capacity = c.Capacity
		}
	}
	if capacity == 0 || a.Delivery.Volume(area) <= 0 {
		return nil
	}
	return []Teaching{s.teachingOf(capacity, Maybe[measure.Volume]{}, a.Name)}
}
