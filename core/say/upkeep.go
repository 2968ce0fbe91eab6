package say

import (
	"fmt"
	"strings"

	"example.com/tintline/core"
)

func task(f *core.Task) string {
	if f.Retired != "" {
		return "no more upkeep: " + f.TaskName
	}
	return "upkeep: " + f.TaskName + ", " + TaskEvery(f)
}

// TaskEvery says when a task is due: "every 50 engine hours or 200 days".
func TaskEvery(f *core.Task) string {
	var out []string
	if f.EngineHours.Known {
		out = append(out, fmt.Sprintf("%g engine hours", f.EngineHours.V))
	}
	if f.PumpHours.Known {
		out = append(out, fmt.Sprintf("%g pump hours", f.PumpHours.V))
	}
	if f.Gallons.Known {
		out = append(out, f.Gallons.V.Text()+" gal")
	}
	if f.Days.Known {
		every := fmt.Sprintf("%g days", f.Days.V)
		if f.Days.V == 1 {
			every = "day"
		}
		out = append(out, every)
	}
	words := ""
	if len(out) > 0 {
		words = "every " + strings.Join(out, " or ")
		if f.Once != "" {
			words = "once after " + strings.Join(out, " or ")
		}
	}
	if f.Season != "" {
		words = strings.TrimPrefix(words+" and each "+f.Season, " and ")
	}
	return words
}

func upkept(f *core.Upkept) string {
	s := "upkeep done: " + f.Task
	if f.Note != "" {
		s += "; " + f.Note
	}
	if f.Cost.Known {
		s += "; " + f.Cost.V.Text()
	}
	return s
}

func paper(f *core.Paper) string {
	if f.Retired != "" {
		return "not needed any more: " + f.PaperName
	}
	return "paper: " + f.PaperName + ", valid until " + f.Until
}
