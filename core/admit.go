package core

import (
	"fmt"
	"strings"
	"time"
	"unicode"

	"example.com/tintline/core/measure"
)

// admit says whether a fact entered at that time could have happened. It only reads. It is no check: what is wrong for the grass
// can still have happened, and is written down.
func (s *state) admit(f Fact, at Moment) error {
	switch f := f.(type) {
	case *Rig:
		return s.admitRig(f)
	case *Product:
		return s.admitProduct(f)
	case *Mix:
		return s.admitMix(f)
	case *Lawn:
		return admitLawn(f)
	case *GrowthSeen:
		return s.admitGrowthSeen(f, at)
	case *Cautioned:
		return s.admitCautioned(f)
	case *JarTested:
		return s.admitJarTested(f)
	case *Noted:
		return s.admitNoted(f)
	case *Setting:
		return admitSetting(f)
	case *DayPlanned:
		return s.admitDayPlanned(f)
	case *Stocked:
		return s.admitStocked(f)
	case *Signed:
		return s.admitSigned(f, at)
	case *Told:
		return s.admitTold(f, at)
	case *Neighbour:
		return s.admitNeighbour(f)
	case *Paid:
		return s.admitPaid(f)
	case *Invested:
		return s.admitInvested(f)
	}
	return s.admitDayFact(f, at)
}

func (s *state) admitDayFact(f Fact, at Moment) error {
	switch f := f.(type) {
	case *DayOpened:
		return s.admitDayOpened(f)
	case *DayClosed:
		return s.needDay("close it")
	case *VisitBegun:
		return s.admitVisitBegun(f, at)
	case *VisitSkipped:
		return s.admitVisitSkipped(f)
	case *VisitDone:
		return s.admitVisitDone(f)
	case *Routed:
		return s.admitRouted(f)
	case *CarriedOver:
		return s.admitCarriedOver(f, at)
	case *Held:
		return s.admitHeld(f)
	case *Resumed:
		return s.admitResumed()
	case *Weather:
		return admitWeather(f)
	case *Overridden:
		return s.admitOverridden(f)
	case *Recorded:
		return s.admitRecorded(f)
	}
	return s.admitMove(f)
}

// admitMove admits what moves liquid or product, or measures it.
func (s *state) admitMove(f Fact) error {
	switch f := f.(type) {
	case *Loaded:
		return s.admitLoaded(f)
	case *LinedUp:
		return s.admitLinedUp(f)
	case *PushedBack:
		return s.admitPushedBack(f)
	case *TintSeen:
		return s.admitTint(f)
	case *Filled:
		return s.admitFilled(f)
	case *Sprayed:
		return s.admitSprayed(f)
	case *GaugeRead:
		return s.admitGauge(f)
	case *Rinsed:
		return s.admitRinsed(f)
	case *Dumped:
		return s.admitDumped(f)
	case *LoadPlanned:
		return s.admitLoadPlanned(f)
	case *Ticked:
		return s.admitTicked(f)
	case *Fitted:
		return s.admitFitted(f)
	case *Spread:
		return s.admitSpread(f)
	case *Ran:
		return s.admitRan(f)
	case *Cleaned:
		return s.admitCleaned(f)
	case *Marked:
		return s.admitMarked(f)
	case *Calibrated:
		return s.admitCalibrated(f)
	case *TruedUp:
		return s.admitTruedUp(f)
	case *Amended:
		return s.admitAmended(f)
	case *Metered:
		return s.admitMetered(f)
	case *Task:
		return s.admitTask(f)
	case *Upkept:
		return s.admitUpkept(f)
	case *Paper:
		return s.admitPaper(f)
	}
	return refuse("Use a version that knows it.", "This fact is not known.")
}

// name refuses what could not stand on one line of a screen or in a place's name.
func name(what, s string) error {
	switch {
	case strings.TrimSpace(s) == "":
		return refuse("Give it a name.", "The name of the %s is empty.", what)
	case s != strings.TrimSpace(s):
		return refuse("Take the spaces off.", "The name of the %s, %q, begins or ends with a space.", what, s)
	case len([]rune(s)) > LongestName:
		return refuse(fmt.Sprintf("Shorten it to %d.", LongestName), "The name of the %s has %d letters; %d are allowed.", what, len([]rune(s)), LongestName)
	case strings.ContainsRune(s, '/'):
		return refuse("Write it without.", "The name of the %s, %q, holds a slash, which parts the names of places.", what, s)
	}
	for _, r := range s {
		if unicode.IsControl(r) {
			return refuse("Write it on one line.", "The name of the %s holds a control character.", what)
		}
	}
	return nil
}

func unique(what string, names []string) error {
	seen := map[string]bool{}
	for _, n := range names {
		if seen[n] {
			return refuse("Name it once, or give each a name of its own.", "The %s %q is named twice.", what, n)
		}
		seen[n] = true
	}
	return nil
}

// What an amount can be at most.
const (
	largestAmount = int64(10_000_000_000_000_000) // 10,000 kg, or more than 2 million gal
	// strongest is how much of a dry product a load may hold, ng/nL: 5 kg/L, heavier than any powder. It
	// keeps a thousand tanks of it within an int64.
	strongest = 5000
)

func positive(what string, v measure.Volume) error {
	if v <= 0 {
		return refuse("Give more than 0 gal.", "%s is %s gal.", what, v.Text())
	}
	return bounded(what, v)
}

func bounded(what string, v measure.Volume) error {
	if v < 0 || v > LargestVolume {
		return refuse("Give 0 to 10,000 gal.", "%s is %s gal.", what, v.Text())
	}
	return nil
}

func (s *state) needDay(to string) error {
	if !s.day.Open {
		return refuse("Open the day first.", "No day is open, so you cannot %s.", to)
	}
	return nil
}

func (s *state) needRig() error {
	if s.rig == nil {
		return refuse("Enter the rig first.", "The book has no rig yet.")
	}
	return nil
}

func (s *state) admitDayOpened(f *DayOpened) error {
	if _, err := time.Parse(time.DateOnly, f.Date); err != nil {
		return refuse("Write it as in 2026-05-28.", "%q is not a date.", f.Date)
	}
	if f.FlowModel != FlowModel {
		return refuse("Leave flow_model out.", "There is no flow model %d; this version knows %d.", f.FlowModel, FlowModel)
	}
	if strings.TrimSpace(f.Operator) == "" {
		return refuse("Say who works today.", "The day has no operator.")
	}
	if s.day.Date != "" && f.Date <= s.day.Date {
		if s.day.Open && f.Date == s.day.Date {
			return refuse("Go on with it.", "%s is open already.", f.Date)
		}
		return refuse("Open a later date.", "%s was opened already; %s does not come after it.", s.day.Date, f.Date)
	}
	for _, l := range f.Route {
		if s.Lawn(l) == nil {
			return s.noLawn(l)
		}
	}
	return unique("lawn on the route", f.Route)
}

func (s *state) noZone(l *Lawn, zone string) error {
	return refuse("It has "+strings.Join(l.ZoneNames(), ", ")+".", "The lawn %s has no zone %q.", l.LawnName, zone)
}

func (s *state) noLawn(n string) error {
	return refuse("Enter the lawn first, or write its name as it stands in the book.", "There is no lawn %q in the book.", n)
}
