package say

import (
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
)

func linedUp(f *core.LinedUp) string {
	s := "no compartment to the pump"
	if len(f.Supply) > 0 {
		s = letters(f.Supply) + " to the pump"
	}
	if f.Return == 0 {
		return "valves: " + s + ", return nowhere"
	}
	return "valves: " + s + ", return to " + string(f.Return)
}

func tintSeen(f *core.TintSeen) string {
	if f.Missed != "" {
		return "no tint came until " + after(f.Volume, f.Seconds)
	}
	words := "tint"
	if f.Direction == core.TowardsClear {
		words = "tint go"
	}
	var seen []string
	for _, m := range []struct{ words, after string }{
		{"the " + words, after(f.Volume, f.Seconds)}, {"half of it", after(f.Half, f.HalfSeconds)}, {"all of it", after(f.Full, f.FullSeconds)},
	} {
		if m.after != "" {
			seen = append(seen, m.words+" after "+m.after)
		}
	}
	s := "saw " + strings.Join(seen, "; ")
	if f.Hose != "" {
		s += ", through " + f.Hose
	}
	return s
}

func after(v core.Maybe[measure.Volume], s core.Maybe[float64]) string {
	var out []string
	if v.Known {
		out = append(out, v.V.Text()+" gal")
	}
	if s.Known {
		out = append(out, number(s.V)+" s")
	}
	return strings.Join(out, ", ")
}

// howMeasured says how a spraying was measured.
var howMeasured = map[string]string{core.ByArea: "by area", core.ByGallons: "by gallons", core.ByGauge: "by gauge"}

func sprayed(f *core.Sprayed) string {
	s := "sprayed " + f.Lawn
	if len(f.Zones) > 0 {
		s += " " + strings.Join(f.Zones, " + ")
	}
	s += ":"
	if f.Volume.Known {
		s += " " + f.Volume.V.Text() + " gal"
	}
	s += " by " + f.Applicator
	if f.Area.Known {
		s += " on " + f.Area.V.Text() + " sq ft"
	}
	if f.By != "" {
		how, ok := howMeasured[f.By]
		if !ok {
			how = f.By
		}
		s += ", " + how
	}
	if f.By == core.ByGauge && f.Before.Known && f.After.Known {
		s += " from " + f.Before.V.Text() + " to " + f.After.V.Text()
	}
	return s + bypass(f.Bypass)
}

func gaugeRead(f *core.GaugeRead) string {
	s := "gauge of " + string(f.Compartment)
	if f.Mark != "" {
		s += ": mark " + f.Mark
	}
	if f.Volume.Known {
		s += ": " + f.Volume.V.Text() + " gal"
	}
	if f.GiveOrTake.Known {
		s += ", give or take " + f.GiveOrTake.V.Text()
	}
	return s
}

func rinsed(f *core.Rinsed) string {
	s := "rinsed " + string(f.Compartment) + " with " + f.Water.Text() + " gal of water"
	if f.To == "" {
		return s + ", left in it"
	}
	return s + ", run out to " + Place(fluid.Place(f.To))
}

func dumped(f *core.Dumped) string {
	if f.Amount.Known {
		return hopperDump(f)
	}
	s := "ran"
	if f.Volume.Known {
		s += " " + f.Volume.V.Text() + " gal"
	} else {
		s += " all"
	}
	return s + " from " + Place(fluid.Place(f.From)) + " to " + Place(fluid.Place(f.To))
}

// Place names a place of the account in words.
func Place(p fluid.Place) string {
	kind, name := p.Split()
	switch kind {
	case "compartment":
		return "compartment " + name
	case "cell":
		return "the mixing cell"
	case "return_line":
		return "the return line"
	case "hose":
		return "the hose " + name
	case "applicator":
		return name // its tank and its hopper are one place
	case "package":
		return "the package of " + name
	case "zone":
		return strings.Replace(name, "/", ", ", 1)
	case "waste":
		return name + " (waste)"
	case "unexplained":
		return "the unexplained"
	}
	return string(p)
}
