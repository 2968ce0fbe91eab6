package tui

import (
	"strings"
	"testing"
	"time"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

// charted is the truck with a chart of marks for the gauge of a, entered over the old rig.
func charted(t testing.TB) string {
	rig := strings.Split(truck(t), "\n")[0]
	const heel = `"capacity_gal":300,"heel_gal":2`
	if !strings.Contains(rig, heel) {
		t.Fatal("the truck has changed")
	}
	return "\n" + strings.Replace(rig, heel, heel+`,"marks":[{"mark":"1","volume_gal":20},{"mark":"2","volume_gal":90},{"mark":"3","volume_gal":170},{"mark":"4","volume_gal":240},{"mark":"F","volume_gal":300}]`, 1)
}

func TestGaugesShowBookedAndRead(t *testing.T) {
	c := climbIn(t, morning).press("o").type_("b 97").press("g", "g")
	c.sees("bermuda, zoysia", "200.0", "not today", "97.0", "-3.00", "09:42")
	c.press("c").sees("log what the gauge of c reads").press("enter").sees("gauge of c reads", "gallons, 0 to 90")
	c.type_("95").sees("cannot say 95.0 gal", "Give 0 to 90.0 gal.", "95")
	c.press("esc", "enter").type_("39").sees("booked gauge of c: 39.0 gal", "-1.00")
	if c.facts() != "gauge_read gauge_read" {
		t.Errorf("logged: %s", c.facts())
	}
}

func TestGaugeByTapsAlone(t *testing.T) {
	c := climbIn(t, morning+charted(t)).tapOn("g pages").tapOn("Gauges").tapOn("bermuda, zoysia")
	c.sees("gauge of a", "booked 200.0 gal").sees("the gauge stands at mark 3").tapOn("240.0").tapOn("170.0").sees("the gauge stands at mark 3").tapOn("Enter  the gauge")
	c.sees("30.0 gal less", "book it: gauge of a: mark 3").wait(time.Second).tapOn("y yes").sees("booked gauge of a: mark 3", "-30.0")
	f := c.disk.entries[0].What.(*core.GaugeRead)
	if f.Mark != "3" || f.Volume != core.Known(measure.Gallons(170)) {
		t.Errorf("logged %+v", f)
	}
}

func TestAFigureThatCanBeAMarkIsAskedFor(t *testing.T) {
	c := climbIn(t, morning+charted(t)).press("g", "g", "enter", "l")
	c.type_("3").sees("3 can be gallons or a mark of the gauge of a.", "Type 3 gal, or mark 3.")
	for _, row := range []struct{ said, want string }{
		{"mark 2.5", "mark 2.5: 130.0 gal"}, {"190", "a: 190.0 gal"}, {"F", "mark F: 300.0 gal"}, {"3 gal", "a: 3.00 gal"},
	} {
		c := climbIn(t, morning+charted(t)).press("g", "g", "enter", "l").type_(row.said).wait(time.Second)
		if c.model().ask.open() { // it is far off what is booked
			c.press("y")
		}
		c.sees("booked gauge of a", row.want)
	}
	climbIn(t, morning+charted(t)).press("o").type_("a mark 9").sees("does not reach the mark", "a mark 9")
}
