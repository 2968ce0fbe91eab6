package core

import "example.com/tintline/core/measure"

func (g *anyFact) upkeep(kind Kind) Fact {
	task := g.pick("task", "oil", "oil", "oil", "")
	switch kind {
	case kindTask:
		f := &Task{TaskName: task, Season: g.pick("season", "", "", "spring", "summer"), Retired: g.pick("retired", "", "", "", "", "", "yes"), Once: g.pick("once", "", "", "", "", "yes")}
		switch g.pick("every", "hours", "hours", "gallons", "days") {
		case "hours":
			f.EngineHours = Known(50.0)
		case "days":
			f.Days = Known(-1.0)
		case "gallons":
			f.Gallons = Known(500 * measure.USGallon)
		}
		return f
	case kindUpkept:
		return &Upkept{Task: task, Cost: Known(measure.Money(1250)), Date: g.pick("date", "", "", "2026-05-01", "May")}
	}
	return &Paper{PaperName: g.pick("paper", "licence", "insurance", ""), Type: g.pick("kind", "licence", "insurance", "poster"), Until: g.pick("until", "2027-01-31", "2026-01-31", "soon"), Retired: g.pick("retired", "", "", "yes")}
}
