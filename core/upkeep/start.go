package upkeep

import (
	_ "embed"
	"encoding/csv"
	"strconv"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

//go:embed starting.csv
var startingText string

//go:embed lists.csv
var listsText string

func rows(name, text string) [][]string {
	out, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil {
		panic("core/upkeep/" + name + ": " + err.Error()) // embedded, and read by every test
	}
	return out[1:]
}

// Starting are the tasks to start with. Each names where its interval comes from; the machine's own manual goes before, and the
// operator changes them.
func Starting() []core.Task {
	var out []core.Task
	for _, r := range rows("starting.csv", startingText) {
		number := func(i int) core.Maybe[float64] {
			v, err := strconv.ParseFloat(r[i], 64)
			return core.Maybe[float64]{V: v, Known: err == nil}
		}
		f := core.Task{TaskName: r[0], EngineHours: number(1), PumpHours: number(2), Days: number(4), Season: r[5], Once: r[6], Words: r[7], Source: r[8]}
		if gal := number(3); gal.Known {
			f.Gallons = core.Known(measure.Gallons(gal.V))
		}
		out = append(out, f)
	}
	return out
}

// StartFacts set up those of the starting tasks that the book does not have.
func StartFacts(b *core.Book) []core.Fact {
	var out []core.Fact
	for _, f := range Starting() {
		if b.Upkeep(f.TaskName) == nil {
			out = append(out, &f)
		}
	}
	return out
}

// ListItem is a line of a check list.
type ListItem struct {
	Item, Source string
	Done         bool
}

// Lists names the check lists.
func Lists() []string {
	var out []string
	for _, r := range rows("lists.csv", listsText) {
		if len(out) == 0 || out[len(out)-1] != r[0] {
			out = append(out, r[0])
		}
	}
	return out
}

// ListName is the list as it is ticked: the winter and the spring list are new each year, that before the first stop each day.
func ListName(list, date string) string {
	if list == "first stop" || len(date) < 4 {
		return list + " " + date
	}
	return list + " " + date[:4]
}

// List is a check list as it stands on a date.
func List(b *core.Book, list, date string) []ListItem {
	ticked := map[string]bool{}
	for _, t := range b.Ticks(core.CheckList(ListName(list, date))) {
		ticked[t] = true
	}
	var out []ListItem
	for _, r := range rows("lists.csv", listsText) {
		if r[0] == list {
			out = append(out, ListItem{r[1], r[2], ticked[r[1]]})
		}
	}
	return out
}
