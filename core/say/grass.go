package say

import (
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
)

// growthSeen is "12 Thimble Lane, front: dormant since 2026-01-04".
func growthSeen(f *core.GrowthSeen) string {
	where := f.Lawn
	if len(f.Zones) > 0 {
		where += ", " + strings.Join(f.Zones, " + ")
	}
	s := where + ": " + label.GrowthWords(f.Growth)
	if f.Since != "" {
		s += " since " + f.Since
	}
	return s
}

// cautioned is "own note, stop: quinclorac on zoysiagrass: burned in 2024".
func cautioned(f *core.Cautioned) string {
	about := f.Product + f.Active
	for _, part := range []string{label.GrassWords(f.Grass), f.Lawn, f.Zone} {
		if part == "" {
			continue
		}
		if about != "" {
			about += " on "
		}
		about += part
	}
	if f.Weight == core.NoCaution {
		return "own note taken back: " + about
	}
	return "own note, " + f.Weight + ": " + about + ": " + f.Says
}
