package check

import (
	"fmt"
	"time"

	"example.com/tintline/core"
)

const rulePapers = "papers"

// papersSoonDays is how many days before its end a paper is noted.
//
// Common practice, no source.
const papersSoonDays = 30

// papersRule: a licence or a certificate whose last day is past is a stop, an insurance an ask; what ends soon is noted. Papers that were
// never entered are not looked at.
func papersRule(s *situation) []Finding {
	today, err := time.Parse(time.DateOnly, s.today())
	if err != nil {
		return nil
	}
	var out []Finding
	for _, p := range s.b.Papers() {
		until, err := time.Parse(time.DateOnly, p.Until)
		if err != nil {
			continue
		}
		days := int(until.Sub(today).Hours() / 24)
		f := Finding{Part: PartDay, About: p.PaperName, Ground: GroundSetting, Source: "the date as the operator entered it; law and licence decide", Figured: core.Known(float64(days)), Unit: "days"}
		switch {
		case days < 0 && (p.Type == "licence" || p.Type == "certification"):
			f.Weight, f.Do = Stop, "Do not spray until it is renewed; then enter the new date under upkeep."
		case days < 0 && p.Type == "insurance":
			f.Weight, f.Do = Ask, "Call the insurer; then enter the new date under upkeep."
		case days < 0:
			f.Weight, f.Do = Note, "Renew it, and enter the new date under upkeep."
		case days <= papersSoonDays:
			f.Weight, f.Do = Note, "Renew it in time."
		default:
			continue
		}
		f.Says = fmt.Sprintf("%s ended on %s.", p.PaperName, p.Until)
		if days >= 0 {
			f.Says = fmt.Sprintf("%s ends on %s, in %d %s.", p.PaperName, p.Until, days, plural(days, "day"))
		}
		out = append(out, f)
	}
	return out
}
