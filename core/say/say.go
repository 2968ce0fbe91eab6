package say

import (
	"fmt"
	"strings"

	"example.com/tintline/core"
)

// Fact is what a fact says, in words without a full stop.
func Fact(f core.Fact) string {
	switch f := f.(type) {
	case *core.Rig:
		return rig(f)
	case *core.Product:
		return product(f)
	case *core.Mix:
		return mix(f)
	case *core.Lawn:
		return lawn(f)
	case *core.GrowthSeen:
		return growthSeen(f)
	case *core.Cautioned:
		return cautioned(f)
	case *core.JarTested:
		return jarTested(f)
	case *core.Noted:
		return "note on " + f.Lawn + ": " + f.Text
	case *core.Setting:
		if f.Value == core.DefaultSetting {
			return "set " + f.SettingName + " back to its default"
		}
		return "set " + f.SettingName + " to " + f.Value
	case *core.Struck:
		return struck(f)
	case *core.Stocked:
		return stocked(f)
	case *core.Signed:
		return signed(f)
	case *core.Told:
		return told(f)
	case *core.Neighbour:
		return neighbour(f)
	case *core.Paid:
		return paid(f)
	case *core.Invested:
		return invested(f)
	}
	return dayFact(f)
}

func dayFact(f core.Fact) string {
	switch f := f.(type) {
	case *core.DayOpened:
		return dayOpened(f)
	case *core.DayClosed:
		return dayClosed(f)
	case *core.VisitBegun:
		return visitBegun(f)
	case *core.VisitSkipped:
		return "skipped " + f.Lawn + ": " + f.Reason
	case *core.VisitDone:
		return left(f)
	case *core.Routed:
		return routed(f)
	case *core.CarriedOver:
		return carriedOver(f)
	case *core.Held:
		return "on hold: " + f.Cause
	case *core.Resumed:
		return resumed(f)
	case *core.Weather:
		return weather(f)
	case *core.Overridden:
		return overridden(f)
	case *core.Recorded:
		return recorded(f)
	}
	return move(f)
}

// move is what was moved, or measured.
func move(f core.Fact) string {
	switch f := f.(type) {
	case *core.Loaded:
		return loaded(f)
	case *core.LinedUp:
		return linedUp(f)
	case *core.PushedBack:
		return pushedBack(f)
	case *core.TintSeen:
		return tintSeen(f)
	case *core.Filled:
		return fmt.Sprintf("filled %s with %s gal through the hose", f.Applicator, f.Volume.Text()) + bypass(f.Bypass)
	case *core.Sprayed:
		return sprayed(f)
	case *core.GaugeRead:
		return gaugeRead(f)
	case *core.Rinsed:
		return rinsed(f)
	case *core.Dumped:
		return dumped(f)
	case *core.LoadPlanned:
		return loadPlanned(f)
	case *core.DayPlanned:
		return dayPlanned(f)
	case *core.Ticked:
		return ticked(f)
	case *core.Calibrated:
		return calibrated(f)
	case *core.TruedUp:
		return truedUp(f)
	case *core.Amended:
		return amended(f)
	case *core.Metered:
		return metered(f)
	case *core.Task:
		return task(f)
	case *core.Upkept:
		return upkept(f)
	case *core.Paper:
		return paper(f)
	case *core.Fitted:
		return fitted(f)
	case *core.Spread:
		return spread(f)
	case *core.Ran:
		return ran(f)
	case *core.Cleaned:
		return cleaned(f)
	case *core.Marked:
		return marked(f)
	}
	return "a fact that this version has no words for"
}

// and joins a list as it is spoken, "a, b and c".
func and(list []string) string {
	if len(list) < 2 {
		return strings.Join(list, "")
	}
	last := len(list) - 1
	return strings.Join(list[:last], ", ") + " and " + list[last]
}

func count(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}

// letters names compartments, "a and b".
func letters(l []byte) string {
	var out []string
	for _, c := range l {
		out = append(out, string(c))
	}
	return and(out)
}
