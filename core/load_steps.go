package core

import (
	"sort"
	"strings"

	"example.com/tintline/core/measure"
)

// The steps of a load besides water and products, as items of its list. A product's name holds no slash, so none is called so.
const (
	StepGear        = "do/gear"
	StepJar         = "do/jar"
	StepPlace       = "do/place"
	StepAirGap      = "do/air_gap"
	StepMeterBefore = "do/meter_before"
	StepAgitator    = "do/agitator"
	StepStir        = "do/stir/" // behind it the product after which it is stirred
	StepRinse       = "do/rinse"
	StepRest        = "do/rest_of_water"
	StepMeterAfter  = "do/meter_after"
	StepLabelled    = "do/cap_and_label"
)

// earlySteps come before any water: a plan that is changed leaves them done.
var earlySteps = []string{StepGear, StepJar, StepPlace, StepAirGap, StepMeterBefore}

var lateSteps = []string{StepAgitator, StepRinse, StepRest, StepMeterAfter, StepLabelled}

var stepWords = map[string]string{
	StepGear: "protective equipment", StepJar: "jar test", StepPlace: "place of mixing", StepAirGap: "air gap", StepMeterBefore: "meter before",
	StepAgitator: "agitator on", StepRinse: "containers rinsed", StepRest: "rest of the water", StepMeterAfter: "meter after", StepLabelled: "cap and label",
}

// ItemWords is what an item of a list is called: a product and water by their names, a step in words.
func ItemWords(item string) string {
	if w, ok := stepWords[item]; ok {
		return w
	}
	if p, ok := strings.CutPrefix(item, StepStir); ok {
		return "stirred after " + p
	}
	return item
}

// isStep tells whether a plan has such a step.
func (f *LoadPlanned) isStep(item string) bool {
	if p, ok := strings.CutPrefix(item, StepStir); ok {
		for _, part := range f.Parts {
			if part.Product == p {
				return true
			}
		}
		return false
	}
	return containsText(earlySteps, item) || containsText(lateSteps, item)
}

// mayTick refuses a tick that stands, one that is taken back and does not, and what goes with another item.
func (f *Ticked) mayTick(into string, done bool) error {
	words := ItemWords(f.Item)
	switch {
	case done && f.Undo == "":
		return refuse("Go on with the next one.", "%s is ticked already on the list of %s.", words, into)
	case !done && f.Undo == yes:
		return refuse("Tick it when it is in.", "%s is not ticked on the list of %s.", words, into)
	case f.Place != "" && (f.Item != StepPlace || f.Undo == yes):
		return refuse("Give it with "+StepPlace+".", "A place of mixing goes with %s of the list of %s, not with %s.", StepPlace, into, f.Item)
	case f.Meter.Known && (f.Item != StepMeterBefore && f.Item != StepMeterAfter || f.Undo == yes):
		return refuse("Give it with "+StepMeterBefore+" or "+StepMeterAfter+".", "A meter reading goes with no other item of the list of %s, and not with %s.", into, f.Item)
	}
	return admitMeter(f.Meter)
}

// MostOnMeter is the highest reading of a water meter, 10,000,000 gal: far above any counter.
const MostOnMeter = 10_000_000 * measure.USGallon

func admitMeter(readings ...Maybe[measure.Volume]) error {
	for _, m := range readings {
		if m.Known && (m.V < 0 || m.V > MostOnMeter) {
			return refuse("Give 0 to 10,000,000 gal.", "The meter reading is %s gal.", m.V.Text())
		}
	}
	return nil
}

func admitMeters(before, after Maybe[measure.Volume]) error {
	if before.Known && after.Known && after.V < before.V {
		return refuse("Correct a reading; after is the higher one.", "The meter readings are %s gal before and %s gal after.", before.V.Text(), after.V.Text())
	}
	return admitMeter(before, after)
}

// note puts what was typed with a tick into the plan, which is made anew: copies of the state share it.
func (f *Ticked) note(p *LoadPlanned) *LoadPlanned {
	c := *p
	switch f.Item {
	case StepPlace:
		c.Place = f.Place
	case StepMeterBefore:
		c.MeterBefore = f.Meter
	case StepMeterAfter:
		c.MeterAfter = f.Meter
	default:
		return p
	}
	return &c
}

// takeOver keeps what was done before the first water of a plan that takes the place of another, and what was typed with it.
func (f *LoadPlanned) takeOver(old *LoadPlanned, done, still []string) (*LoadPlanned, []string) {
	c := *f
	for _, item := range earlySteps {
		if !hasText(done, item) {
			continue
		}
		still = append(still, item)
		if item == StepPlace && c.Place == "" {
			c.Place = old.Place
		}
		if item == StepMeterBefore && !c.MeterBefore.Known {
			c.MeterBefore = old.MeterBefore
		}
	}
	sort.Strings(still)
	return &c, still
}

// lastFill is where the last load was mixed, and what the water meter showed after it.
type lastFill struct {
	Place string
	Meter Maybe[measure.Volume]
}

// LastFill is where the last load that says so was mixed, and the last reading of the water meter.
func (s *state) LastFill() (place string, meter Maybe[measure.Volume]) {
	return s.filledAt.Place, s.filledAt.Meter
}

func (s *state) noteFill(f *Loaded) {
	if f.Place != "" {
		s.filledAt.Place = f.Place
	}
	if f.MeterAfter.Known {
		s.filledAt.Meter = f.MeterAfter
	}
}
