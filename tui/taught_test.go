package tui

import (
	"fmt"
	"math"
	"strings"
	"testing"
)

// gunPutsMore is a morning on which the gauge of a was read after each two lawns, and the gun puts down so much of what is
// thought; two lawns are sprayed after the last reading.
func gunPutsMore(ratio float64, rounds int) string {
	lines := []string{morning, `{"fact":"lined_up","supply":["a"],"return":"a"}`, `{"fact":"gauge_read","compartment":"a","volume_gal":200}`}
	const thought = (8.8 + 7.4) * 1.5 // gallons for both lawns
	jobs := []string{`{"fact":"sprayed","lawn":"31 Maple Drive","applicator":"gun","by":"area"}`, `{"fact":"sprayed","lawn":"418 Alder Court","applicator":"gun","by":"area"}`}
	left := 200.0
	for range rounds {
		left -= thought * ratio
		lines = append(append(lines, jobs...), fmt.Sprintf(`{"fact":"gauge_read","compartment":"a","volume_gal":%g}`, math.Round(left*2)/2))
	}
	return strings.Join(append(lines, jobs...), "\n")
}

func TestWhatTheGaugeTeachesIsSeen(t *testing.T) {
	climbIn(t, morning).press("g", "y", "g").sees("What the gauge teaches", "not yet known", "no reading of a gauge", "A catch test tells it today").
		press("enter").sees("Gauges", "not today")
	climbIn(t, gunPutsMore(1.12, 1)).press("g", "y", "g").sees("1 reading of the 3")
	c := climbIn(t, gunPutsMore(1.12, 5)).press("g", "y", "g")
	c.sees("more than you think", "5 readings.", "1.50 gal per 1,000 sq ft is counted")
	c.goesTo("ride-on", "down").press("o").sees("Calibrate", "ride-on")
	climbIn(t, gunPutsMore(1.12, 5)).press("g", "g").sees("gun: You put down", "expected, ±").press("t").sees("What the gauge teaches")
}
