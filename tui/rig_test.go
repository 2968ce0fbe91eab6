package tui

import (
	"strings"
	"testing"
)

// tipped is the truck with two tips for its gun, a chart of marks, and a spreader with a tip of its own.
func tipped(t testing.TB) *cab {
	rig, rest, _ := strings.Cut(truck(t), "\n")
	rig = strings.Replace(rig, `"flow_gpm":2.5}`, `"flow_gpm":2.5,"tips":[{"name":"04","pressure_psi":40,"delivery_gal_per_1000_sqft":1.5,"flow_gpm":2.5},{"name":"06","pressure_psi":30,"delivery_gal_per_1000_sqft":2}]}`, 1)
	rig = strings.Replace(rig, `"tank_gal":14}`, `"tank_gal":14},{"name":"spreader","kind":"spreader","hopper_lb":60}`, 1)
	rig = strings.Replace(rig, `"heel_gal":1}`, `"heel_gal":1,"marks":[{"mark":"E","volume_gal":0},{"mark":"F","volume_gal":90}]}`, 1)
	return inRig(t, rig+"\n"+strings.TrimSpace(rest))
}

func (c *cab) chosen() string { m := c.model(); return m.chosen() }

// goesTo moves until a row is chosen.
func (c *cab) goesTo(row, key string) *cab {
	c.t.Helper()
	for range 40 {
		if c.chosen() == row {
			return c
		}
		c.press(key)
	}
	c.t.Fatalf("the row %q cannot be chosen:\n%s", row, c.screen())
	return nil
}

func TestTheRigIsChangedOnItsPage(t *testing.T) {
	c := tipped(t).press("g", "r").sees("truck 3", "reel", "3/8 in x 300 ft", "+ another hose")
	c.press("enter").sees("Change the rig").press("down").typed("0.2").press("pgdown").sees("return line 0.2")
	if got := c.book().Rig().ReturnLine.Text(); got != "0.20" {
		t.Errorf("the return line holds %s", got)
	}
	c.press("down", "enter").sees("Change compartment a", "capacity, gal").typed("290").press("pgdown").sees("290 gal")
	for range 4 {
		c.press("down")
	}
	c.sees("change hose reel").press("down", "enter").sees("Add a hose").typed("1/2 x 50").press("enter").typed("short").press("enter").sees("short")
	if n := len(c.book().Rig().Hoses); n != 2 {
		t.Errorf("%d hoses", n)
	}
	n := len(c.disk.entries)
	c.goesTo("hose/reel", "up").press("enter", "enter").sees("nothing was changed")
	if len(c.disk.entries) != n {
		t.Error("no change was logged")
	}
	for _, e := range c.disk.entries {
		if e.What.Name() != "rig" {
			t.Errorf("a change logged %s", e.What.Name())
		}
	}
}

func TestTheNextTipIsFitted(t *testing.T) {
	c := tipped(t).press("g", "r").seesNot("next tip")
	c.goesTo("applicator/gun", "down")
	c.sees("next tip").press("t").sees("on tip 06").press("t").sees("on tip 04").press("t").sees("on tip 06")
	if got := c.book().Applicator("gun").Delivery.GalPer1000(); got < 1.999 || got > 2.001 {
		t.Errorf("the gun lays %g", got)
	}
	if c.facts() != "fitted fitted fitted" {
		t.Error(c.facts())
	}
}

func TestAPartIsTakenAwayAfterY(t *testing.T) {
	c := tipped(t).press("g", "r")
	c.goesTo("applicator/spreader", "down")
	c.press("x").sees("take applicator spreader out of the rig").press("enter").press("y")
	if n := len(c.book().Rig().Applicators); n != 2 {
		t.Errorf("%d applicators", n)
	}
	c.goesTo("hose/reel", "down")
	c.press("x", "y").sees("NOT BOOKED")
}
