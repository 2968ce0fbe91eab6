package tui

import (
	"fmt"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
	"example.com/tintline/core/upkeep"
)

// openDone asks what it cost and what was done; both may stay empty.
func (m *Model) openDone(task string) {
	m.openLine(textLine{
		prompt: task + " done", hint: "Enter alone will do; or what it cost and what was done: 14.50 new filter", tells: true,
		read: func(_ *Model, said string) ([]core.Fact, error) {
			f := &core.Upkept{Task: task, Note: strings.TrimSpace(said)}
			first, rest, _ := strings.Cut(f.Note, " ")
			if v, err := measure.ReadMoney(first, "usd"); err == nil {
				f.Cost, f.Note = core.Known(v), strings.TrimSpace(rest)
			}
			return []core.Fact{f}, nil
		},
	})
}

func (m *Model) openTask() tea.Cmd {
	m.openLine(textLine{
		prompt: "task", hint: "a name, every, a figure, engine hours, pump hours, gal or days; or each spring, each autumn", tells: true,
		read: func(_ *Model, said string) ([]core.Fact, error) { return onlyFact(readTask(said)) },
	})
	return nil
}

// readTask reads "engine oil every 50 engine hours or 200 days each spring".
func readTask(said string) (core.Fact, error) {
	words := strings.Fields(said)
	at := len(words)
	for i, w := range words {
		if w == "every" || w == "each" || w == "once" {
			at = i
			break
		}
	}
	if at == 0 || at == len(words) {
		return nil, slip("It is not said what is to be done, or when.", "Type oil every 50 engine hours; grease every 7 days; hose each autumn.")
	}
	f := &core.Task{TaskName: strings.Join(words[:at], " "), Source: "set by the operator"}
	for i := at; i < len(words); i++ {
		w := words[i]
		switch {
		case w == "every", w == "or", w == "and", w == "each", w == "after", w == "hours", w == "h":
		case w == "once":
			f.Once = "yes"
		case w == core.SpringTask || w == core.AutumnTask:
			f.Season = w
		default:
			v, figure := figureIn(w)
			if !figure || i+1 >= len(words) {
				return nil, slip(fmt.Sprintf("%q is no figure with its unit.", w), "Type a figure and engine hours, pump hours, gal or days.")
			}
			i++
			switch unit := words[i]; {
			case strings.HasPrefix("engine", unit):
				f.EngineHours = core.Known(v)
			case strings.HasPrefix("pump", unit):
				f.PumpHours = core.Known(v)
			case strings.HasPrefix("gallons", unit):
				f.Gallons = core.Known(measure.Gallons(v))
			case strings.HasPrefix("days", unit):
				f.Days = core.Known(v)
			default:
				return nil, slip(fmt.Sprintf("%q is no unit of an interval.", unit), "Use engine hours, pump hours, gal or days.")
			}
		}
	}
	return f, nil
}

func (m *Model) openPaper() tea.Cmd {
	was := ""
	if name, ok := strings.CutPrefix(m.chosen(), paperRow); ok {
		was = name + " "
	}
	m.openLine(textLine{
		prompt: "paper", was: was, hint: "a name with licence, certificate, insurance or training in it, its last day, number, hours: turf licence 2027-03-31 number 00000-7 6 h", tells: true,
		read: func(m *Model, said string) ([]core.Fact, error) { return onlyFact(m.readPaper(said)) },
	})
	return nil
}

// readPaper reads "turf licence 2027-03-31 number 00000-7 6 h"; what a paper of that name had and is not said stays.
func (m *Model) readPaper(said string) (core.Fact, error) {
	f := &core.Paper{}
	var name []string
	words := strings.Fields(said)
	for i := 0; i < len(words); i++ {
		w := words[i]
		v, figure := figureIn(w)
		switch {
		case len(w) == len("2027-03-31") && strings.Count(w, "-") == 2:
			f.Until = w
		case w == "number" && i+1 < len(words):
			i++
			f.Number = words[i]
		case figure && i+1 < len(words) && strings.HasPrefix("hours", words[i+1]):
			i++
			f.Training = core.Known(v)
		default:
			name = append(name, w)
		}
	}
	f.PaperName = strings.Join(name, " ")
	for _, old := range m.book.Papers() {
		if old.PaperName == f.PaperName {
			f.Type = old.Type
			if f.Number == "" {
				f.Number = old.Number
			}
			if !f.Training.Known {
				f.Training = old.Training
			}
		}
	}
	for _, k := range [][2]string{{"licen", "licence"}, {"certif", "certification"}, {"insur", "insurance"}, {"train", "training"}} {
		if f.Type == "" && strings.Contains(strings.ToLower(f.PaperName), k[0]) {
			f.Type = k[1]
		}
	}
	if f.Type == "" {
		f.Type = "other"
	}
	if f.Until == "" {
		return nil, slip("The paper has no last day.", "Type its name and its last day, as in licence 2027-03-31.")
	}
	return f, nil
}

func (m *Model) retireUpkeep() tea.Cmd {
	kind, name, _ := strings.Cut(m.chosen(), "/")
	if kind+"/" == taskRow {
		m.put(question{facts: []core.Fact{&core.Task{TaskName: name, Retired: "yes"}}, words: "take the task " + name + " away"})
		return nil
	}
	m.put(question{facts: []core.Fact{&core.Paper{PaperName: name, Retired: "yes"}}, words: "take the paper " + name + " away"})
	return nil
}

// openGlycol works out what antifreeze comes to; nothing is logged.
func (m *Model) openGlycol() tea.Cmd {
	m.openLine(textLine{
		prompt: "antifreeze", hint: "per cent as the can says, gallons poured, gallons of water left: 25 4 1.5",
		then: func(m *Model, said string) (*textLine, error) {
			var v []float64
			for _, w := range strings.Fields(strings.NewReplacer("%", " ", "gal", " ", "into", " ", "of", " ", "water", " ").Replace(said)) {
				f, figure := figureIn(w)
				if !figure {
					return nil, slip(fmt.Sprintf("%q is no figure.", w), "Type per cent, gallons poured and gallons left: 25 4 1.5.")
				}
				v = append(v, f)
			}
			if len(v) != 3 {
				return nil, slip("Three figures are needed.", "Type per cent, gallons poured and gallons left: 25 4 1.5.")
			}
			pct, err := upkeep.Thinned(v[0], measure.Gallons(v[1]), measure.Gallons(v[2]))
			if err != nil {
				return nil, err
			}
			f, err := upkeep.Freezes(pct)
			if err != nil {
				return nil, err
			}
			return nil, slip(upkeep.GlycolWords(pct, f), "Nothing was logged; Esc leaves it.")
		},
		read: func(*Model, string) ([]core.Fact, error) { return nil, nil },
	})
	return nil
}

func figureIn(w string) (float64, bool) {
	v, ok := measure.ReadFigure(w)
	if !ok {
		return 0, false
	}
	f, _ := v.Float64()
	return f, true
}
