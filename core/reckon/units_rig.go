package reckon

import (
	"strings"

	"example.com/tintline/core/hydraulics"
	"example.com/tintline/core/measure"
)

// Units beside those of units.csv in which measures of a rig are told and answered.
var (
	flowUnits   = []string{"gpm", "gal_per_min", "l_per_min", "fl_oz_per_min"}
	secondsUnit = map[string]float64{"s": 1, "min": 60, "h": 3600}
	// tankVolumes are the units of what is in a tank.
	tankVolumes = []string{"gal", "fl_oz", "pt", "qt", "l", "ml"}
)

// micrometres in an inch and in a metre, exactly (NIST SP 811).
const (
	perInch  = 25_400
	perMetre = 1_000_000
)

// section gives the factor to mm2 of a unit of area, or of the square of a unit of length as drawings have it: in2, ft2, cm2.
func section(unit string) (float64, bool) {
	if f, ok := factor("area", unit); ok {
		return f, true
	}
	side, square := strings.CutSuffix(unit, "2")
	f, ok := factor("length", side)
	return f * f / 1e6, square && ok // um2 to mm2: a million to one
}

// duration gives the factor to seconds.
func duration(unit string) (float64, bool) {
	f, ok := secondsUnit[unit]
	return f, ok
}

// pull gives the factor to m/s2 of a unit of length in a second squared, m_s2 or ft_s2.
func pull(unit string) (float64, bool) {
	length, ok := strings.CutSuffix(unit, "_s2")
	f, known := factor("length", length)
	return f / perMetre, ok && known
}

// strengthOf gives the factor of an amount of one kind in a volume, oz_gal or oz_per_gal.
func strengthOf(kind string) func(string) (float64, bool) {
	return func(unit string) (float64, bool) {
		if f, ok := per(kind, "volume")(unit); ok {
			return f, true
		}
		i := strings.LastIndexByte(unit, '_')
		if i < 0 {
			return 0, false
		}
		return per(kind, "volume")(unit[:i] + "_per_" + unit[i+1:])
	}
}

// seconds answers a time.
func (a answers) seconds(prefix string, s float64) {
	for _, u := range []string{"s", "min", "h"} {
		a[prefix+u] = s / secondsUnit[u]
	}
}

// flow answers a flow.
func (a answers) flow(prefix string, f measure.Flow) {
	a.plain(prefix, "flow", flowUnits, float64(f))
}

// gallons answers an estimate of a volume.
func (a answers) gallons(prefix string, g hydraulics.Gallons) {
	a.plain(prefix, "volume", volumeUnits, float64(g)*float64(measure.USGallon))
}

// bare reads an input that has no unit; given is false where it is not there.
func (in *inputs) bare(key string, positive bool) (v float64, given bool, err error) {
	if _, given = in.value[key]; !given {
		return 0, false, nil
	}
	v, err = in.number(key, positive)
	return v, true, err
}

// word reads an input that is a word, in small letters; empty where it is not there.
func (in *inputs) word(key string) string {
	in.taken[key] = true
	return strings.ToLower(in.value[key])
}

// several reads quantities of one kind, by the words before their units.
func (in *inputs) several(unit func(string) (float64, bool), positive bool, names ...string) (map[string]quantity, error) {
	out := map[string]quantity{}
	for _, name := range names {
		q, err := in.one(name+"_", unit, positive)
		if err != nil {
			return nil, err
		}
		if q.given {
			out[name] = q
		}
	}
	return out, nil
}
