package tui

import (
	"fmt"
	"strconv"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/core"
	"example.com/tintline/core/past"
	"example.com/tintline/tui/theme"
)

// PastReader adds up what went down in years that the book itself no longer keeps; a Reader may be one too.
type PastReader interface {
	// Years asks for what was laid before the book's own day, which is as it stands now.
	Years(own core.Day, q past.Query) ([]past.Year, error)
	// Days hands the rows of ended days to a question; where they do not fit it makes them from the entries and asks again.
	Days(ask func(past.Reader) error) error
}

// pastYears are the years before the last of one lawn or product. They do not change any more, so each is read once.
type pastYears struct {
	q    past.Query
	list []past.Year
	err  error
	done bool
}

// yearsBefore asks for the years that the book does not keep: it has this one and the last.
func (m *Model) yearsBefore(lawn, product string) past.Query {
	year, err := strconv.Atoi(strings.SplitN(m.book.Day().Date, "-", 2)[0])
	if err != nil {
		return past.Query{}
	}
	return past.Query{Lawn: lawn, Product: product, To: fmt.Sprintf("%04d-12-31", year-2)}
}

// pullYears reads them beside the screen, unless they were read already.
func (m *Model) pullYears(lawn, product string) tea.Cmd {
	r, ok := m.reader.(PastReader)
	q := m.yearsBefore(lawn, product)
	if was := m.past[q]; !ok || (was.done && was.err == nil) || q.To == "" || lawn+product == "" {
		return nil
	}
	own := *m.book.Day()
	return guarded(func() tea.Msg {
		list, err := r.Years(own, q)
		return pastYears{q: q, list: list, err: err, done: true}
	})
}

// yearsArrived keeps what was read. What could not be read is asked for again when its page is opened again.
func (m *Model) yearsArrived(y pastYears) {
	next := make(map[past.Query]pastYears, len(m.past)+1) // made anew: the copies of a model share it
	for q, old := range m.past {
		if old.err == nil {
			next[q] = old
		}
	}
	next[y.q] = y
	m.past = next
}

// pastRows say what went down in each of those years.
func (m *Model) pastRows(lawn, product string) []row {
	y := m.past[m.yearsBefore(lawn, product)]
	if !y.done || (y.err == nil && len(y.list) == 0) {
		return nil
	}
	out := []row{blankRow(), sectionRow("years before the last")}
	if y.err != nil {
		what, _ := sentences(y.err)
		return append(out, m.wrapped(theme.Ask, what)...)
	}
	for _, year := range y.list {
		out = append(out, m.fact(theme.Base, year.Name, spentWords(year, product))...)
	}
	return out
}

// spentWords are "12.3 fl oz of weed control, 4 times"; of one product its name is not said again.
func spentWords(y past.Year, product string) string {
	var out []string
	for _, s := range y.Products {
		words := s.Amount.Text()
		if product == "" {
			words += " of " + s.Product
		}
		switch s.Times {
		case 1:
			words += ", once"
		case 2:
			words += ", twice"
		default:
			words += fmt.Sprintf(", %d times", s.Times)
		}
		out = append(out, words)
	}
	if len(out) == 0 {
		return "water alone"
	}
	return strings.Join(out, "; ")
}
