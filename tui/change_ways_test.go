package tui

import (
	"fmt"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
	"github.com/muesli/termenv"
	"pgregory.net/rapid"

	"example.com/tintline/core"
	"example.com/tintline/core/check"
	"example.com/tintline/core/measure"
	"example.com/tintline/tui/theme"
)

// pumped is the truck with a pump of 10 gpm and the tints of its compartments, a to c.
func pumped(t testing.TB, tints ...string) string {
	t.Helper()
	rig := strings.Split(truck(t), "\n")[0]
	swap := func(old, with string) {
		if !strings.Contains(rig, old) {
			t.Fatal("the truck has changed: ", old)
		}
		rig = strings.Replace(rig, old, with, 1)
	}
	swap(`"cell_gal":0.2`, `"cell_gal":0.2,"pump_flow_gpm":10`)
	for i, colour := range []string{"yellow", "blue", "red"} {
		if i < len(tints) {
			swap(`"colour":"`+colour+`"`, `"colour":"`+colour+`","tint":"`+tints[i]+`"`)
		}
	}
	return rig + "\n"
}

// beforeTurning is atAlder with the valves still on b.
var beforeTurning = strings.TrimSuffix(atAlder, "\n"+`{"fact":"lined_up","supply":["a"],"return":"a"}`)

// noRoute is the morning of a day without a lawn.
var noRoute = strings.Replace(morning, `"route":["77 Fir Lane","418 Alder Court","12 Fir Lane","9 Oak Street","31 Maple Drive","5 Birch Row","60 Elm Street","2 Willow Way","14 Cedar Court"]`, `"route":[]`, 1)

// almostFull leaves room for less in b than the hose holds.
const almostFull = `
{"fact":"gauge_read","compartment":"b","volume_gal":159.2}`

// twoReels is the truck with a second reel on which the ride-on hangs; the gun stays on the first.
func twoReels(t testing.TB) string {
	t.Helper()
	rig := strings.Split(truck(t), "\n")[0]
	const one, ride = `{"name":"reel","inside_diameter_in":0.375,"length_ft":300}`, `"kind":"ride_on","hose":"reel","delivery_gal_per_1000_sqft":0.3,"tank_gal":14`
	if !strings.Contains(rig, one) || !strings.Contains(rig, ride) {
		t.Fatal("the truck has changed")
	}
	rig = strings.Replace(rig, one, one+`,{"name":"left","inside_diameter_in":0.5,"length_ft":150}`, 1)
	return strings.Replace(rig, ride, `"kind":"gun","hose":"left","delivery_gal_per_1000_sqft":1,"flow_gpm":3`, 1) + "\n"
}

// slowGun is the truck with a gun so slow that the liquid in the hose does not surely mix across it.
func slowGun(t testing.TB) string {
	t.Helper()
	rig := strings.Split(truck(t), "\n")[0]
	if !strings.Contains(rig, `"flow_gpm":2.5`) {
		t.Fatal("the truck has changed")
	}
	return strings.Replace(rig, `"flow_gpm":2.5`, `"flow_gpm":0.4`, 1) + "\n"
}

// changeSituations are those of a changeover on a rig as it is.
var changeSituations = []situated{
	{"change_ways", func(t *testing.T) *cab { return climbIn(t, pumped(t, "blue", "none")+beforeTurning).press("t", "a") }},
	{"change_ways_end", func(t *testing.T) *cab {
		return climbIn(t, pumped(t, "blue", "none")+beforeTurning).press("t", "a", "w", "w", "pgdown", "pgdown")
	}},
	{"change_swept_first", func(t *testing.T) *cab {
		return climbIn(t, pumped(t, "blue", "none")+beforeTurning).press("t", "a", "w", "w", "w", "enter")
	}},
	{"change_sweeping", func(t *testing.T) *cab {
		return climbIn(t, pumped(t, "blue", "none")+beforeTurning).press("t", "a", "w", "w", "w", "enter", "enter").passes(time.Second)
	}},
	{"change_swept", func(t *testing.T) *cab {
		return climbIn(t, pumped(t, "blue", "none")+beforeTurning).press("t", "a", "w", "w", "w", "enter", "enter").passes(6 * time.Second)
	}},
	{"change_alike", func(t *testing.T) *cab {
		return climbIn(t, pumped(t, "blue", "blue")+atAlder).press("t", "enter", "enter").passes(30 * time.Second)
	}},
	{"change_towards_clear", func(t *testing.T) *cab { return climbIn(t, pumped(t, "none", "blue")+atAlder).press("t") }},
	{"change_fading", func(t *testing.T) *cab {
		return climbIn(t, pumped(t, "none", "blue")+atAlder).press("t", "enter", "enter").passes(53*time.Second).press("t", "t")
	}},
	{"change_on_the_cab", func(t *testing.T) *cab {
		return climbIn(t, pumped(t, "blue", "none")+atAlder).press("t", "enter", "enter").passes(30 * time.Second).press("esc")
	}},
	{"change_no_lawn", func(t *testing.T) *cab { return climbIn(t, noRoute).press("t", "a") }},
	{"change_runs_over", func(t *testing.T) *cab { return climbIn(t, atAlder+almostFull).press("t") }},
	{"change_slow_gun", func(t *testing.T) *cab { return climbIn(t, slowGun(t)+atAlder).press("t") }},
	{"change_second_reel", func(t *testing.T) *cab { return climbIn(t, twoReels(t)+atAlder).press("h") }},
}

// TestThreeTints: the key is pressed at the first of the colour, at half and at all of it; what it means next stands on it.
func TestThreeTints(t *testing.T) {
	c := climbIn(t, pumped(t, "blue", "none")+atAlder).press("t", "enter", "enter").passes(10*time.Second + 41*time.Second)
	c.sees("t tint", "t when the tint comes").press("t").sees("tint seen after", "t half", "t when half of the colour is there")
	c.passes(2*time.Second).press("t").sees("half of the colour after", "t full", "t when all of it is there")
	c.passes(2 * time.Second).press("t").sees("full colour after").seesNot("t full")
	c.passes(20 * time.Second).sees("let go of the trigger").seesNot("It is not clean yet")
	c.press("enter", "enter").sees("booked")
	var f *core.TintSeen
	for _, e := range c.disk.entries {
		if seen, ok := e.What.(*core.TintSeen); ok {
			f = seen
		}
	}
	if f == nil || !f.Seconds.Known || !(f.HalfSeconds.V > f.Seconds.V) || !(f.FullSeconds.V > f.HalfSeconds.V) || f.Direction != core.TowardsTint || !f.Flow.Known {
		t.Fatalf("logged %s: %+v", c.facts(), f)
	}
	if l := c.book().Learned("reel"); l.N != 1 || l.FromRig {
		t.Errorf("nothing was learned: %+v", l)
	}
}

// TestAlikeGoesByGallons: where no tint tells two liquids apart no key asks for it, no bell rings for it and none is missed.
func TestAlikeGoesByGallons(t *testing.T) {
	bells := 0
	c := climbIn(t, pumped(t, "blue", "blue")+atAlder, func(o *Options) { o.Bell = func() { bells++ } })
	c.press("t").sees("None tells them apart: go by gallons").press("enter", "enter").passes(10*time.Second + 41*time.Second)
	c.seesNot("t tint", "z no tint").sees("no tint tells them apart: go by gallons")
	if bells != 1 {
		t.Errorf("%d bells as the new liquid came", bells)
	}
	if c.passes(25 * time.Second).sees("clean enough").seesNot("No tint seen?"); bells != 3 { // the other place, and clean
		t.Errorf("%d bells in all", bells)
	}
	c.press("t", "z").seesNot("tint seen")
	if got := c.facts(); got != "" {
		t.Errorf("logged: %s", got)
	}
}

func TestTowardsClearTheColourGoes(t *testing.T) {
	c := climbIn(t, pumped(t, "none", "blue")+atAlder).press("t").sees("The colour fades from", "that is late")
	c.press("enter", "enter").passes(20*time.Second).sees("s until colour fades, s until clean", "t fade")
	c.passes(32*time.Second).press("t").sees("the colour fades after", "t half").press("t").sees("half of the colour is gone after", "t gone")
	c.press("t").sees("the last of the colour is gone after")
}

// TestPailIsLogged: the way is chosen with w, the steps follow it, and what goes into the pail is logged as gone there.
func TestPailIsLogged(t *testing.T) {
	c := climbIn(t, pumped(t, "blue", "none")+beforeTurning).press("t", "a").sees("► tail into a", "bypass first")
	c.press("w").sees("► all into b").press("w").sees("► tail into a pail", "into a pail, then")
	c.press("enter").goesOn().sees("into a pail").press("enter").passes(10*time.Second + 43*time.Second).sees("into a pail, for")
	c.passes(10 * time.Second).sees("let go of the trigger").press("enter").sees("gal into a pail, then").press("enter").sees("booked")
	if got := c.facts(); got != "lined_up pushed_back pushed_back pushed_back" {
		t.Fatalf("logged: %s", got)
	}
	if f := c.disk.entries[2].What.(*core.PushedBack); f.To != check.Pail || f.Into != 0 || !f.Bypass.Known {
		t.Errorf("%+v", f)
	}
}

func (c *cab) goesOn() *cab { return c.press("pgdown") }

// TestSweptFirst: the return stays until the bypass has washed the cell; how long it ran is logged, then the hose is pushed
// out, and it is what the book says that has to be pushed.
func TestSweptFirst(t *testing.T) {
	bells := 0
	c := climbIn(t, pumped(t, "blue", "none")+beforeTurning, func(o *Options) { o.Bell = func() { bells++ } }).press("t", "a", "w", "w", "w")
	c.sees("► bypass first").press("enter").sees("leave the return on b", "start: pump on, gun shut")
	if up := c.book().Plumbing().LineUp; string(up.Supply) != "a" || up.Return != 'b' {
		t.Fatalf("%+v", up)
	}
	c.press("enter").sees("gun shut, pump on: supply a, return still b", "s until you turn the return to a").passes(6 * time.Second)
	if c.sees("turn the return to a now"); bells != 1 {
		t.Errorf("%d bells", bells)
	}
	c.press("enter").sees("start: the count-down").seesNot("leave the return")
	if got := c.facts(); got != "lined_up ran lined_up" || c.book().Plumbing().LineUp.Return != 'a' {
		t.Errorf("logged: %s", got)
	}
	c.press("enter").passes(70*time.Second).sees("let go of the trigger").press("enter", "enter", "esc").seesNot("STOP")
}

// TestFrontMoves: while it runs, the pipe of page and cab shows the new liquid come nearer, and the book does not change.
func TestFrontMoves(t *testing.T) {
	c := climbIn(t, atAlder)
	before := c.book().StateDigest()
	c.press("t", "enter", "enter").passes(11 * time.Second)
	news := func() int {
		for _, l := range strings.Split(c.screen(), "\n") {
			if _, hose, ok := strings.Cut(l, "]"); ok && strings.Contains(l, "pump [") {
				return strings.Count(hose, "a")
			}
		}
		t.Fatalf("no pipe:\n%s", c.screen())
		return 0
	}
	last := news()
	for range 4 {
		c.passes(8 * time.Second)
		if now := news(); now <= last {
			t.Errorf("%d columns of a, then %d:\n%s", last, now, c.screen())
		}
		last = news()
	}
	c.sees("of the old liquid is left", "s until clean, with 1.25 on the smear")
	c.press("esc").sees("change tint in", "clean in", "STOP")
	if got := news(); got < last {
		t.Errorf("the cab shows %d columns of a, the page %d", got, last)
	}
	if c.book().StateDigest() != before {
		t.Error("counting changed the book")
	}
}

// TestRunsKeepAColumn: however short a run is, it has a column, and the runs stand in their order.
func TestRunsKeepAColumn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var runs []check.Run
		var all []stretch
		for i := range rapid.IntRange(1, 12).Draw(t, "runs") {
			r := check.Run{Key: int32(i), Air: i%5 == 4, Volume: measure.Volume(rapid.Int64Range(int64(measure.Millilitre), 9e9).Draw(t, "volume"))}
			runs = append(runs, r)
			all = append(all, stretch{volume: r.Volume, key: r.Key, air: r.Air})
		}
		keys := columnKeys(all, rapid.IntRange(len(runs), 60).Draw(t, "columns"))
		showRuns(keys, runs)
		i := 0
		for _, k := range keys {
			if i < len(runs) && k == runKey(runs[i]) {
				i++
			}
		}
		if i < len(runs) {
			t.Fatalf("run %d of %v is not in %v", i, runs, keys)
		}
	})
}

// TestPipeWithAirWaterAndShortParcels: a millilitre of another mix between air and water is still seen.
func TestPipeWithAirWaterAndShortParcels(t *testing.T) {
	c := climbIn(t, morning+`
{"fact":"pushed_back","into":"b","volume_gal":0.8}
{"fact":"lined_up","supply":["c"],"return":"c"}
{"fact":"pushed_back","into":"c","volume_gal":0.35}
{"fact":"lined_up","supply":["b"],"return":"b"}
{"fact":"pushed_back","into":"b","volume_gal":0.3}`)
	pipe := ""
	for _, l := range strings.Split(c.screen(), "\n") {
		if _, hose, ok := strings.Cut(l, "]"); ok && strings.Contains(l, "pump [") {
			pipe = hose
		}
	}
	if b, c, e := strings.Index(pipe, "b"), strings.Index(pipe, "c"), strings.LastIndex(pipe, "bb"); b < 0 || c < b || e < c {
		t.Errorf("%q", pipe)
	}
}

// TestHoseOfTheApplicator: with two reels the pipe and the changeover are those of the applicator chosen, and the entries
// name the hose.
func TestHoseOfTheApplicator(t *testing.T) {
	c := climbIn(t, twoReels(t)+atAlder).sees("reel ", "gun gives  B").press("h").sees("left ", "ride-on gives")
	c.press("t").sees("clean").press("enter", "enter").passes(100*time.Second).sees("let go of the trigger").press("enter", "enter").sees("booked")
	for _, e := range c.disk.entries {
		if f, ok := e.What.(*core.PushedBack); ok && f.Hose != "left" {
			t.Errorf("%+v", f)
		}
	}
	if len(c.disk.entries) == 0 {
		t.Error("nothing was logged")
	}
}

// TestLinesNameTheHose: what is typed goes through the hose of the applicator chosen, at the flow of what hangs on it.
func TestLinesNameTheHose(t *testing.T) {
	c := climbIn(t, twoReels(t)+atAlder).press("p").type_("24 s b").press("h", "p").type_("20 s b").press("p").type_("tint 41 s half 45 s full 50 s")
	first, second := c.disk.entries[0].What.(*core.PushedBack), c.disk.entries[1].What.(*core.PushedBack)
	if first.Hose != "reel" || !near(first.Volume.Gallons(), 1) || second.Hose != "left" || !near(second.Volume.Gallons(), 1) {
		t.Errorf("%+v, %+v", first, second)
	}
	if f := c.disk.entries[2].What.(*core.TintSeen); f.Hose != "left" || f.Seconds.V != 41 || f.HalfSeconds.V != 45 || f.FullSeconds.V != 50 {
		t.Errorf("%+v", f)
	}
	climbIn(t, twoReels(t)+atAlder).press("h", "t", "enter", "l").type_("40 s").sees("typed: ", "gal into").seesNot("typed: 2.00 gal") // the air that came first is no gallons
}

func near(a, b float64) bool { return a-b < 0.001 && b-a < 0.001 }

// TestCountsFiveFramesASecond: a count-down asks for no more ticks than that, and for one at a time.
func TestCountsFiveFramesASecond(t *testing.T) {
	c := climbIn(t, atAlder)
	asked := 0
	m := c.model()
	m.after = func(d time.Duration, msg tea.Msg) tea.Cmd {
		if _, ok := msg.(counted); ok {
			if asked++; d < time.Second/5 {
				t.Errorf("a tick after %v", d)
			}
		}
		return nil
	}
	c.m = m
	c.press("t", "enter", "enter").passes(20 * time.Second)
	if asked > 101 || asked < 90 {
		t.Errorf("%d ticks in 20 s", asked)
	}
}

func TestDryRunWithNoLawnAhead(t *testing.T) {
	c := climbIn(t, noRoute).press("t", "a").sees("no lawn ahead: judged at", "STOP if the trigger is pulled then", "ways of the tail", "turn supply and return to a")
	c.press("enter").goesOn().sees("lid of a")
}

// TestRunsOverIsSaidBefore: with the gallons, and nothing can be logged that would not fit.
func TestRunsOverIsSaidBefore(t *testing.T) {
	c := climbIn(t, atAlder+almostFull).press("t").sees("b has room for 0.80 gal", "would run over")
	c.press("enter").sees("a can").press("enter").passes(90 * time.Second).press("enter").sees("gal into a pail").press("enter").sees("booked")
	if f, ok := c.disk.entries[0].What.(*core.PushedBack); !ok || f.To != check.Pail || c.book().Plumbing().Compartment('b').Liquid.Volume.Gallons() > 159.21 {
		t.Errorf("logged: %s", c.facts())
	}
}

// TestChangeKeepsItsWordsInEveryTheme: sun, night and no colour say the same.
func TestChangeKeepsItsWordsInEveryTheme(t *testing.T) {
	for _, name := range []string{"change_running", "change_ways", "change_fading"} {
		words := situation(t, name).screen()
		for _, th := range theme.Names() {
			for _, p := range []termenv.Profile{termenv.Ascii, termenv.ANSI, termenv.TrueColor} {
				if got := ansi.Strip(situation(t, name, inTheme(th, p)).screen()); got != words {
					t.Errorf("%s in %s: %s", name, th, got)
				}
			}
		}
	}
}

// BenchmarkFrame is one frame of the count-down.
func BenchmarkFrame(b *testing.B) {
	c := climbIn(b, pumped(b, "blue", "none")+atAlder)
	c.press("t", "enter", "enter").passes(40 * time.Second)
	m := c.model()
	for i := 0; b.Loop(); i++ {
		next, _ := m.Update(counted{m.turn.turn})
		_ = fmt.Sprint(len(next.View()))
	}
}
