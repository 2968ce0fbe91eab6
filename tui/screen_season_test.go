package tui

import (
	"fmt"
	"strings"
	"testing"

	"github.com/charmbracelet/x/exp/golden"
)

// fedYear are some days of a year with a feed that holds nitrogen, two catch tests, and stock.
const fedYear = `{"fact":"product","name":"Example Feed","form":"liquid","kind":"fertiliser","grasses":["all_turf"],"rate_low_fl_oz_per_1000_sqft":6,"rate_high_fl_oz_per_1000_sqft":18,"nitrogen_pct":20,"phosphate_pct":4,"density_lb_per_gal":10,"most_year_fl_oz_per_1000_sqft":40,"days_between":21,"package_gal":2.5}
{"fact":"mix","name":"feed","parts":[{"product":"Example Feed","rate_fl_oz_per_1000_sqft":12}]}
{"fact":"stocked","product":"Example Feed","what":"bought","packages":3,"package_gal":2.5,"paid_usd":120}
{"fact":"stocked","product":"Example Feed","what":"reorder","amount_gal":7}
{"fact":"loaded","into":"b","volume_gal":100,"mix":"feed","for":"gun"}
{"fact":"lined_up","supply":["b"],"return":"b"}
{"fact":"day_opened","date":"2026-03-12","operator":"R. Example"}
{"fact":"sprayed","lawn":"77 Fir Lane","applicator":"gun","by":"gallons","volume_gal":8}
{"fact":"sprayed","lawn":"12 Fir Lane","applicator":"gun","by":"gallons","volume_gal":9.3}
{"fact":"calibrated","applicator":"gun","accepted":"yes","delivery_gal_per_1000_sqft":1.56}
{"fact":"day_closed"}
{"fact":"day_opened","date":"2026-04-02","operator":"R. Example"}
{"fact":"sprayed","lawn":"418 Alder Court","applicator":"gun","by":"gallons","volume_gal":11}
{"fact":"day_closed"}
{"fact":"day_opened","date":"2026-04-20","operator":"R. Example"}
{"fact":"sprayed","lawn":"77 Fir Lane","applicator":"gun","by":"gallons","volume_gal":7.5}
{"fact":"calibrated","applicator":"gun","accepted":"yes","delivery_gal_per_1000_sqft":1.44}
{"fact":"day_closed"}
{"fact":"day_opened","date":"2026-05-28","operator":"R. Example","route":["77 Fir Lane"]}
{"fact":"sprayed","lawn":"12 Fir Lane","applicator":"gun","by":"gallons","volume_gal":8.5}`

// TestSeasonOfTheYear: what is due stands first; the views follow one another; Enter opens a lawn's season, and older years are read
// beside the screen.
func TestSeasonOfTheYear(t *testing.T) {
	c := climbIn(t, decade+firLaid).size(80, 40)
	c.press("g", "n", "s").sees("2026, what is due", "4.00 gal sprayed", "77 Fir Lane", "2026-07-09", "Due on 2026-07-09: last treated on 2026-05-28, and a round of 42 days.")
	c.down("77 Fir Lane").press("enter").sees("Season 2026: 77 Fir Lane", "1 round in 2026", "Example Cool", "once", "per 1,000 sq ft, last 2026-05-28")
	c.press("left").sees("Season 2025", "2.00 gal sprayed", "The year is over").seesNot("again").press("left").sees("Season 2024", "8.00 gal sprayed", "The book keeps limits and dates of this year and the last")
	c.press("esc").sees("2026, what is due")
	c.press("right").sees("by lawn", "sq ft", "N lb", "all").press("right").sees("by product and stock", "not counted")
	c.press("right").sees("by grass", "tall fescue").press("right").sees("by round", "round 1").press("right").sees("plots", "gallons by day", "2026-05-28", "4.0", "0 ", "gal")
	c.press("right").sees("what is due").press("left").sees("plots")
	c.press("l").typed("2023").press("enter").sees("2023, plots", "2023-05-01", "12.0")
	c.press("l").typed("next").press("enter").sees(`"next" is no year.`)
}

// TestSeasonFromTheLawn: the page of a lawn leads to its season.
func TestSeasonFromTheLawn(t *testing.T) {
	c := climbIn(t, decade+firLaid).size(80, 40)
	c.press("g", "l").press("y").sees("Season 2026: 77 Fir Lane").press("esc").sees("what may go on it")
	c.press("y", "l").typed("5").press("enter").sees("Give 7 to 366 days.").press("esc", "l").typed("soon").press("enter").sees(`"soon" is no number of days.`).press("esc")
	c.press("l").typed("35").press("enter").sees("Due on 2026-07-02", "a round of 35 days", "lawn's own.")
	c.press("l").typed("off").press("enter").sees("Due on 2026-07-09", "a round of 42 days")
	if got := c.facts(); got != "lawn lawn" {
		t.Errorf("logged: %s", got)
	}
}

// TestSeasonNeedsNoColour: the pictures have letters alone, and say all there is.
func TestSeasonNeedsNoColour(t *testing.T) {
	for _, size := range [][2]int{{80, 24}, {120, 40}} {
		for _, view := range []struct {
			name  string
			right int
		}{{"due", 0}, {"by lawn", 1}, {"product", 2}, {"plots", 5}, {"lawn", 0}} {
			t.Run(fmt.Sprintf("%s/%dx%d", view.name, size[0], size[1]), func(t *testing.T) {
				c := climbIn(t, fedYear).size(size[0], size[1]).press("g", "n", "s")
				c.press(strings.Split(strings.Repeat("right ", view.right), " ")[:view.right]...)
				if view.name == "lawn" {
					c.press("enter")
				}
				golden.RequireEqual(t, []byte(c.screen()))
			})
		}
	}
}
