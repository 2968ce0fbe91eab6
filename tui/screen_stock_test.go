package tui

import (
	"fmt"
	"strings"
	"testing"

	"github.com/charmbracelet/x/exp/golden"
)

// stockLines count, buy and plan in the book of climbIn.
const stockLines = `
{"fact":"stocked","product":"Example Cool","what":"bought","packages":2,"package_gal":2.5,"paid_usd":62}
{"fact":"stocked","product":"Example Cool","what":"counted","amount_gal":3.75}
{"fact":"stocked","product":"Example Cool","what":"reorder","amount_gal":4}
{"fact":"stocked","product":"Example Iron","what":"counted","amount_oz":3}
{"fact":"load_planned","into":"c","volume_gal":10,"parts":[{"product":"Example Iron","amount_oz":30.1},{"product":"Example Cool","amount_fl_oz":7.3}]}`

var stockSituations = []struct {
	name string
	cab  func(t *testing.T) *cab
}{
	{"stock_not_counted", func(t *testing.T) *cab { return climbIn(t, emptyTruck).press("g", "y", "s") }},
	{"stock", func(t *testing.T) *cab {
		return climbIn(t, emptyTruck+stockLines).press("g", "y", "s").down("Example Cool")
	}},
	{"stock_line", func(t *testing.T) *cab {
		return climbIn(t, emptyTruck+stockLines).press("g", "y", "s").down("Example Cool").press("enter").types("bought 2 x 2.5 gal 62.00")
	}},
}

// types types without Enter.
func (c *cab) types(s string) *cab {
	for _, r := range s {
		c.send(stroke(string(r)))
	}
	return c
}

func TestStockScreens(t *testing.T) {
	for _, s := range stockSituations {
		for _, size := range [][2]int{{80, 24}, {120, 40}} {
			t.Run(fmt.Sprintf("%s_%dx%d", s.name, size[0], size[1]), func(t *testing.T) {
				golden.RequireEqual(t, []byte(s.cab(t).size(size[0], size[1]).screen()))
			})
		}
	}
}

func TestStockIsEntered(t *testing.T) {
	c := climbIn(t, emptyTruck+stockLines).press("g", "y", "s").down("Example Cool").press("enter")
	c.type_("counted 4 lb").sees("It is liquid and is measured by volume, but 4.00 lb is a weight.")
	c.press("esc").press("enter").types("counted 3.5 gal").sees("would log: counted 3.50 gal of Example Cool (32.0 fl oz less than the book")
	c.press("enter").sees("3.50 gal")
	if got := c.facts(); !strings.HasSuffix(got, "stocked") {
		t.Errorf("logged: %s", got)
	}
}
