package say

import (
	"fmt"
	"strings"

	"example.com/tintline/core"
)

func metered(f *core.Metered) string {
	var out []string
	for _, m := range []struct {
		name string
		read core.Maybe[float64]
		unit string
	}{{"engine", f.EngineHours, "h"}, {"pump", f.PumpHours, "h"}, {"odometer", f.Odometer, "mi"}} {
		if m.read.Known {
			out = append(out, fmt.Sprintf("%s %v %s", m.name, m.read.V, m.unit))
		}
	}
	s := "read the meters: " + strings.Join(out, ", ")
	if f.Changed != "" {
		s += "; another meter than before"
	}
	return s
}
