package tui

import (
	"strings"
	"testing"

	"example.com/tintline/core"
	"example.com/tintline/core/past"
)

// Years reads what the file would: the rows that the old entries ended.
func (c *cab) Years(own core.Day, q past.Query) ([]past.Year, error) {
	var list []past.Laid
	err := c.Days(func(read past.Reader) (err error) {
		list, err = past.Earlier(own, read, q)
		return err
	})
	return q.Years(list), err
}

// Days hands over those rows.
func (c *cab) Days(ask func(past.Reader) error) error {
	if c.disk.err != nil {
		return c.disk.err
	}
	b, kept := core.NewBook(1), &past.Folded{}
	for _, e := range c.old {
		if err := kept.Apply(b, e); err != nil {
			return err
		}
	}
	return ask(kept.Read)
}

// decade are days of four years: the book keeps what was laid in the last two of them.
const decade = `{"fact":"loaded","into":"b","volume_gal":100,"mix":"fescue, bluegrass","for":"gun"}
{"fact":"lined_up","supply":["b"],"return":"b"}
{"fact":"day_opened","date":"2023-05-01","operator":"R. Example"}
{"fact":"sprayed","lawn":"77 Fir Lane","applicator":"gun","by":"gallons","volume_gal":4}
{"fact":"sprayed","lawn":"77 Fir Lane","applicator":"gun","by":"gallons","volume_gal":4}
{"fact":"sprayed","lawn":"77 Fir Lane","applicator":"gun","by":"gallons","volume_gal":4}
{"fact":"day_closed"}
{"fact":"day_opened","date":"2024-06-01","operator":"R. Example"}
{"fact":"sprayed","lawn":"77 Fir Lane","applicator":"gun","by":"gallons","volume_gal":8}
{"fact":"day_opened","date":"2025-06-01","operator":"R. Example"}
{"fact":"sprayed","lawn":"77 Fir Lane","applicator":"gun","by":"gallons","volume_gal":2}
{"fact":"day_closed"}
{"fact":"day_opened","date":"2026-05-28","operator":"R. Example"}
{"fact":"visit_begun","lawn":"77 Fir Lane"}`

func TestYearsBeforeTheLast(t *testing.T) {
	c := climbIn(t, decade).size(80, 150).press("g", "l")
	c.sees("years before the last", "2024", "0.799 fl oz of Example Cool, once", "2023", "Example Cool, 3 times")
	_, years, _ := strings.Cut(c.screen(), "years before the last")
	years, _, _ = strings.Cut(years, "history")
	if strings.Contains(years, "2025") || strings.Contains(years, "2026") || strings.Index(years, "2024") > strings.Index(years, "2023") {
		t.Errorf("the years are\n%s", years)
	}
	c.press("esc", "esc", "g", "p").down("Example Cool").press("enter").sees("years before the last", "3 times").seesNot("of Example Cool, 3")
	c.press("esc", "down").down("Example Warm").press("enter").seesNot("years before the last")
}

func TestYearsThatCannotBeRead(t *testing.T) {
	c := climbIn(t, decade)
	c.size(80, 150).disk.err = &core.Problem{What: "The file cannot be read.", Do: "Look at the card."}
	c.press("esc", "esc", "g", "p").down("Example Cool").press("enter").sees("years before the last", "The file cannot be read.")
	c.disk.err = nil
	c.press("esc", "enter").sees("3 times").seesNot("The file cannot be read.")
}
