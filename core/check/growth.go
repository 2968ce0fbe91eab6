package check

import (
	"fmt"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
)

// aboutGrowth is what a finding is about that asks how a zone grows.
const aboutGrowth = "growth"

// growthAsked tells whether it has to be asked how a zone of warm-season grass grows, and why: while it comes out of the
// winter (settings growth_ask_from and growth_ask_to), if nothing was said of it since; later, if what was last said is of
// that time.
func growthAsked(b *core.Book, z core.Zone, at core.Moment) (why string, asked bool) {
	if g, ok := label.FindGrass(z.Grass); !ok || g.Season != "warm" || at.Zero() {
		return "", false
	}
	today, year := at.Date(), at.Time().Year()
	from, to := dateIn(year, b.Setting(core.GrowthAskFrom)), dateIn(year, b.Setting(core.GrowthAskTo))
	young := z.Growth == label.Sodded || z.Growth == label.Seeded // its date is that of the sod or the seed
	if today >= from && today <= to {
		if z.Growth == "" || z.GrowthSince < from && !young {
			return "since " + from + " nobody has said how it grows", true
		}
		return "", false
	}
	if today < to {
		to = dateIn(year-1, b.Setting(core.GrowthAskTo))
	}
	if (z.Growth == label.Dormant || z.Growth == label.GreeningUp) && z.GrowthSince <= to {
		return "it was last said to be " + label.GrowthWords(z.Growth) + ", on " + z.GrowthSince, true
	}
	return "", false
}

// dateIn is the date of a month and a day, written as one number, in a year.
func dateIn(year int, monthDay float64) string {
	return fmt.Sprintf("%04d-%02d-%02d", year, int(monthDay)/100, int(monthDay)%100)
}

// growthUnknown asks how zones grow on which something that kills plants, or of which nothing is known, would go: once for
// all zones of a grass of which the same is not known.
func (s *situation) growthUnknown(keys []int32, j judge) []Finding {
	var out []Finding
	var whys []string
next:
	for i, z := range s.zones {
		why, asked := growthAsked(s.b, z, s.in.At)
		if !asked || !s.meansHarm(keys, z, j) {
			continue
		}
		for n := range out {
			if whys[n] == why && out[n].Grass == z.Grass {
				out[n].Zones, out[n].Area = append(out[n].Zones, z.Name), out[n].Area+s.areas[i]
				continue next
			}
		}
		whys = append(whys, why)
		out = append(out, Finding{
			Weight: Ask, About: aboutGrowth, Cure: ActGrowth, Part: PartZone, Grass: z.Grass, Zones: []string{z.Name}, Area: s.areas[i],
			Ground: GroundExtension, Source: s.b.SettingSource(core.GrowthAskFrom), Do: "Say how it grows.",
		})
	}
	for n := range out {
		f := &out[n]
		f.Says = fmt.Sprintf("%s, %s: %s.", joinZones(f.Zones), label.GrassWords(f.Grass), whys[n])
	}
	return out
}

func (s *situation) meansHarm(keys []int32, z core.Zone, j judge) bool {
	for _, k := range keys {
		for _, l := range j.residueLimits(s.b.ProductByKey(k), z) {
			if l.class != 'F' {
				return true
			}
		}
	}
	return false
}

// growthUnchecked counts the zones of which nobody ever said how they grow, where it is not asked.
func growthUnchecked(s *situation) []string {
	n := 0
	for _, z := range s.zones {
		if _, asked := growthAsked(s.b, z, s.in.At); z.Growth == "" && !asked {
			n++
		}
	}
	if n == 0 {
		return nil
	}
	return []string{fmt.Sprintf("growth state: %d of %d %s (never said)", n, len(s.zones), plural(len(s.zones), "zone"))}
}
