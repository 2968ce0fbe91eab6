package check

import (
	"bufio"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"reflect"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/tintline/core"
	"example.com/tintline/core/hydraulics"
	"example.com/tintline/core/measure"
)

// changing to a with b in hose and cell, no return line: all that decides is the share of new liquid that is asked for.
func shareBook(t testing.TB, inches, feet, gpm, cell, share float64) *core.Book {
	t.Helper()
	lines := strings.NewReplacer(
		`"cell_gal":0.2,"return_line_gal":0.1`, fmt.Sprintf(`"cell_gal":%g`, cell),
		`"inside_diameter_in":0.375,"length_ft":300`, fmt.Sprintf(`"inside_diameter_in":%g,"length_ft":%g`, inches, feet),
		`"flow_gpm":2.5`, fmt.Sprintf(`"flow_gpm":%g`, gpm),
	).Replace(loadedLines)
	return play(t, lines+hoseOf("b")+fmt.Sprintf(`{"fact":"lined_up","supply":["a"],"return":"a"}
{"fact":"setting","name":"trace_a_ask","value":1}
{"fact":"setting","name":"strength_band_pct","value":50}
{"fact":"setting","name":"clean_not_allowed","value":%g}`, share))
}

// cleanTimes is the changeover with so much on the smear.
func cleanTimes(t testing.TB, b *core.Book, in Intent, times float64) *Changeover {
	t.Helper()
	in.At = clock
	s, err := look(b, in)
	if err != nil {
		t.Fatal(err)
	}
	s.smearTimes = times
	return s.toClean()
}

// Gallons past the hose until the outlet is 90, 95, 99 and 99.9 per cent new, 3 gpm, by cell: table 5.2 of the reference
// for hoses (cell, plug and the dispersion of Wen and Fan in Levenspiel 1999; independent computation with scipy's exponnorm).
var pastTheHose = []struct {
	cell             float64
	narrow, halfInch [4]float64
}{
	{0, [4]float64{0.016, 0.021, 0.030, 0.040}, [4]float64{0.043, 0.055, 0.077, 0.103}},
	{0.05, [4]float64{0.117, 0.151, 0.232, 0.347}, [4]float64{0.126, 0.161, 0.241, 0.356}},
	{0.1, [4]float64{0.231, 0.300, 0.461, 0.692}, [4]float64{0.236, 0.305, 0.466, 0.696}},
	{0.2, [4]float64{0.461, 0.600, 0.921, 1.382}, [4]float64{0.463, 0.602, 0.924, 1.384}},
	{0.3, [4]float64{0.691, 0.899, 1.382, 2.073}, [4]float64{0.693, 0.901, 1.383, 2.074}},
	{0.4, [4]float64{0.921, 1.198, 1.842, 2.763}, [4]float64{0.922, 1.200, 1.843, 2.764}},
	{0.5, [4]float64{1.151, 1.498, 2.303, 3.454}, [4]float64{1.152, 1.499, 2.304, 3.455}},
}

func TestCleanByTheTable(t *testing.T) {
	for _, row := range pastTheHose {
		for i, share := range []float64{0.9, 0.95, 0.99, 0.999} {
			for _, hose := range []struct {
				inches, feet, want float64
			}{{0.375, 200, row.narrow[i]}, {0.5, 300, row.halfInch[i]}} {
				b := shareBook(t, hose.inches, hose.feet, 3, row.cell, share)
				size := b.Plumbing().Hose("reel").Size.Gallons()
				bare := cleanTimes(t, b, Intent{Lawn: "Alder"}, 1)
				if got := bare.Clean.Gallons() - size; math.Abs(got-hose.want) > 0.0006 || math.Abs(bare.NewAt(bare.Clean)-share) > 1e-4 {
					t.Errorf("cell %g, %g in, %g: %.4f gal past the hose, want %.3f; %.5f new", row.cell, hose.inches, share, got, hose.want, bare.NewAt(bare.Clean))
				}
				shown := ToClean(b, Intent{Lawn: "Alder", At: clock})
				if shown.SmearFactor != 1.25 || shown.Margins != "with 1.25 on the smear" || shown.Clean < bare.Clean {
					t.Errorf("cell %g: shown %s with %q, without %s", row.cell, shown.Clean.Text(), shown.Margins, bare.Clean.Text())
				}
				sigma := smearByHand(size, hose.inches, hose.feet, 3)
				if got := shown.Smear.Gallons(); math.Abs(got-1.25*sigma) > 0.0001 {
					t.Errorf("the smear is %.4f gal, want 1.25 times %.4f", got, sigma)
				}
				if row.cell == 0 { // sigma alone: the margin is on all that is past the hose
					if got := shown.Clean.Gallons() - size; math.Abs(got-1.25*(bare.Clean.Gallons()-size)) > 1e-6 {
						t.Errorf("with the margin %.4f gal past the hose, without %.4f", got, bare.Clean.Gallons()-size)
					}
				}
			}
		}
	}
}

// Below a Reynolds number of 12,000 the margin is 1.75.
func TestSmearMarginOfALowFlow(t *testing.T) {
	c := ToClean(shareBook(t, 0.5, 300, 1.5, 0.2, 0.99), Intent{Lawn: "Alder", At: clock})
	if c.SmearFactor != 1.75 || c.Margins != "with 1.75 on the smear" || c.FlowLow || math.Abs(c.Re-6304*1.5) > 10 {
		t.Errorf("%g on the smear at Re %.0f, %q", c.SmearFactor, c.Re, c.Margins)
	}
}

// The balance of a push-back: what has gone, what of it is new, what of the old is left.
func TestCleanByTheCheckValues(t *testing.T) {
	file, err := os.Open("../../testdata/hydraulics/checks.jsonl")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	asked := 0
	for lines := bufio.NewScanner(file); lines.Scan(); {
		var row struct {
			ID, Source, Topic string
			Inputs, Expected  map[string]any
		}
		if err := json.Unmarshal(lines.Bytes(), &row); err != nil {
			t.Fatal(err)
		}
		if row.Topic != "flush-back balance (no bypass)" {
			continue
		}
		asked++
		in := func(key string) float64 { return row.Inputs[key].(float64) }
		b := shareBook(t, in("inside_diameter_in"), in("length_ft"), in("flow_gpm"), in("dead_volume_gal"), in("stop_at_new_fraction"))
		c := cleanTimes(t, b, Intent{Lawn: "Alder"}, 1)
		for key, got := range map[string]measure.Volume{
			"total_flush_gal": c.Clean, "new_liquid_in_flush_gal": c.NewLost, "old_liquid_returned_gal": c.Clean - c.NewLost, "old_liquid_still_in_line_gal": c.Left,
		} {
			if want := row.Expected[key].(float64); math.Abs(got.Gallons()-want) > 1e-5 {
				t.Errorf("%s (%s) %s is %.7f, want %.7f", row.ID, row.Source, key, got.Gallons(), want)
			}
		}
	}
	if asked != 3 {
		t.Errorf("%d rows were asked, not 3", asked)
	}
}

// With a bypass the cell is washed by gun and bypass: as the gun sees it, it is smaller by the gun's share (mass balance).
// What the account makes of the same push is as clean as that.
func TestBypassWashesTheCell(t *testing.T) {
	b := shareBook(t, 0.375, 200, 3, 0.3, 0.99)
	alone := ToClean(b, Intent{Lawn: "Alder", At: clock})
	b = play(t, strings.Replace(loadedLines, `"cell_gal":0.2,"return_line_gal":0.1`, `"cell_gal":0.3,"pump_flow_gpm":7.5`, 1)+hoseOf("b")+`{"fact":"lined_up","supply":["a"],"return":"a"}
{"fact":"setting","name":"trace_a_ask","value":1}`)
	c := ToClean(b, Intent{Lawn: "Alder", At: clock})
	if !c.Bypass || alone.Bypass || math.Abs(c.Cell.Gallons()-0.3*2.5/7.5) > 1e-6 || math.Abs(alone.Cell.Gallons()-0.3) > 1e-6 {
		t.Fatalf("cell %s of 0.30, bypass %v", c.Cell.Text(), c.Bypass)
	}
	if want := 0.1 * math.Log(100); math.Abs(c.Clean.Gallons()-1.72125-want) > 0.003 {
		t.Errorf("clean %.4f gal past the hose, want %.4f and the smear", c.Clean.Gallons()-1.72125, want)
	}
	log(t, b, Pushed(c, c.PushBack)...)
	if again := ToClean(b, Intent{Lawn: "Alder", At: clock}); again != nil {
		t.Errorf("a second push of %s into %c after one of %s", again.PushBack.Text(), again.Into, c.PushBack.Text())
	}
}

// From eight times the strength a share of 0.9 still leaves 0.1 x 8 + 0.9 = 1.7 times (arithmetic).
func TestNineTenthsOfEightTimes(t *testing.T) {
	b := play(t, strings.Replace(rigLines, `"return_line_gal":0.1,`, "", 1)+`
{"fact":"loaded","into":"a","volume_gal":200,"mix":"W","for":"gun"}
{"fact":"loaded","into":"b","volume_gal":100,"mix":"W","for":"ride-on"}
`+hoseOf("b")+`{"fact":"lined_up","supply":["a"],"return":"a"}`)
	c := ToClean(b, Intent{Lawn: "Alder", At: clock})
	if c.DecidedBy != "W1" || !strings.Contains(c.Why, "within 5 per cent") || !strings.Contains(c.Why, "strength_band_pct") || math.Abs(c.Share-0.993) > 0.0005 {
		t.Errorf("%g new, by %s: %s", c.Share, c.DecidedBy, c.Why)
	}
	v := measure.Gallons(1.72125 + 0.2*math.Log(10))
	if got := c.NewAt(v); math.Abs(got-0.9) > 0.001 {
		t.Errorf("%.4f new at %s", got, v.Text())
	}
	log(t, b, &core.PushedBack{Into: 'b', Volume: v})
	meant := float64(b.Plumbing().Compartment('a').Liquid.Strength(0))
	if got := float64(b.Plumbing().Hose("reel").Charge[0].Strength(0)) / meant; math.Abs(got-1.7) > 0.03 {
		t.Errorf("%.3f times the strength meant at the nozzle", got)
	}
}

func TestWhatDecidesClean(t *testing.T) {
	b := play(t, loadedLines+hoseOf("b")+`{"fact":"lined_up","supply":["a"],"return":"a"}`)
	c := ToClean(b, Intent{Lawn: "Alder", At: clock})
	if c.DecidedBy != "C1" || c.Why != "residue on common bermudagrass below 0.001 of the lowest label rate (setting trace_a_ask)" {
		t.Errorf("%s: %s", c.DecidedBy, c.Why)
	}
	more(t, b, `{"fact":"setting","name":"trace_a_ask","value":1}`)
	if c = ToClean(b, Intent{Lawn: "Alder", At: clock}); c.Why != "0.99 new (setting clean_not_allowed)" {
		t.Errorf("%s: %s", c.DecidedBy, c.Why)
	}
}

// A hose that trickles is not pushed out as a plug.
func TestFlowTooLowForAChangeover(t *testing.T) {
	b := shareBook(t, 0.375, 300, 0.4, 0.2, 0.99)
	c := ToClean(b, Intent{Lawn: "Alder", At: clock})
	// 99 per cent take five hose volumes in a laminar hose without radial mixing (Hart and others 2016)
	if !c.FlowLow || !c.Laminar || c.SmearFactor != 0 || math.Abs(c.MinFlow.V.GPM()-0.476) > 0.001 || c.Clean.Gallons() < 4.9*1.72 || c.Clean.Gallons() > 5.5*1.72 {
		t.Errorf("%+v", c)
	}
	var found bool
	for _, f := range before(t, b, Intent{Lawn: "Alder"}).Findings {
		for _, one := range f.All() {
			if one.About == "flow" {
				found = one.Weight == Ask && strings.Contains(one.Says, "too low for a clean changeover: 0.40 gal a minute, at least 0.48") && one.Source != ""
			}
		}
	}
	if !found {
		t.Error("no finding says that the flow is too low")
	}
	for _, f := range before(t, shareBook(t, 0.375, 300, 0.5, 0.2, 0.99), Intent{Lawn: "Alder"}).Findings {
		if f.About == "flow" {
			t.Errorf("0.5 gpm are enough: %+v", f)
		}
	}
}

// muddled turns valves and pushes at will, so that the hose holds whatever it can.
func muddled(t *rapid.T, rig string) *core.Book {
	b := play(t, rig+hoseOf("b"))
	for range rapid.IntRange(0, 5).Draw(t, "turns") {
		l := rapid.SampledFrom([]byte("abc")).Draw(t, "to")
		log(t, b, &core.LinedUp{Supply: []byte{l}, Return: l}, &core.PushedBack{Into: 'c', Volume: measure.Gallons(rapid.Float64Range(0.01, 2.5).Draw(t, "push"))})
	}
	return b
}

func TestCleanByProperties(t *testing.T) {
	asked := 0
	rapid.Check(t, func(t *rapid.T) {
		pump := rapid.SampledFrom([]string{"", `"pump_flow_gpm":7,`}).Draw(t, "pump")
		b := muddled(t, strings.Replace(loadedLines, `"return_line_gal"`, pump+`"return_line_gal"`, 1))
		in := Intent{Lawn: rapid.SampledFrom([]string{"Alder", "Fir"}).Draw(t, "lawn"), From: rapid.SampledFrom([]byte("ab")).Draw(t, "from"), At: clock}
		var first, last *Changeover
		for _, times := range []float64{1, 1.25, 1.75, 3} {
			s, err := look(b, in)
			if err != nil {
				t.Fatal(err)
			}
			s.smearTimes = times
			c := s.toClean()
			if (c == nil) != (last == nil) && times > 1 {
				t.Fatal("a margin decides whether anything has to be pushed")
			}
			if c == nil {
				return
			}
			// Where short parcels of other liquid stand in the hose more smear can thin them sooner, by less than is shown.
			if last != nil && c.Clean < first.Clean || last != nil && first.NewAt(0) < 0.5 && c.Clean+measure.Gallons(0.01) < last.Clean {
				t.Fatalf("clean at %d with %g on the smear, at %d with less", c.Clean, times, last.Clean)
			}
			if last = c; first == nil {
				first = c
			}
		}
		asked++
		// What is left is an integral that is rounded to the unit: it may tell one more.
		const unit = 1
		was, left := -1.0, last.LeftAt(0)
		for v := measure.Volume(0); v < 2*last.PushBack; v += last.PushBack / 97 {
			share, rest := last.NewAt(v), last.LeftAt(v)
			if share < was || share < 0 || share > 1 || rest > left+unit {
				t.Fatalf("at %d: %g new after %g, %d left after %d", v, share, was, rest, left)
			}
			was, left = share, rest
		}
		if last.PushBack < last.Advised || last.Advised < last.Clean || last.Left < 0 || last.LeftShare > 1 || last.NewLost > last.Clean {
			t.Fatalf("%+v", last)
		}
		var sum measure.Volume
		for _, l := range last.Legs {
			sum += l.Volume
		}
		if last.Into != 0 && sum != last.PushBack {
			t.Fatalf("legs of %d make %d of %d", len(last.Legs), sum, last.PushBack)
		}
	})
	if asked < 20 {
		t.Errorf("only %d changeovers were looked at", asked)
	}
}

// What is advised is enough: once it is pushed, nothing is left to push.
func TestAdvisedIsEnough(t *testing.T) {
	asked := 0
	rapid.Check(t, func(t *rapid.T) {
		pump := rapid.SampledFrom([]string{"", `"pump_flow_gpm":7,`}).Draw(t, "pump")
		b := muddled(t, strings.Replace(loadedLines, `"return_line_gal"`, pump+`"return_line_gal"`, 1))
		in := Intent{Lawn: rapid.SampledFrom([]string{"Alder", "Fir"}).Draw(t, "lawn"), At: clock}
		to := rapid.SampledFrom([]byte("ab")).Draw(t, "to")
		if f := rapid.SampledFrom([]float64{0, 0, 0.4, 1}).Draw(t, "drained"); f > 0 { // air runs through with the pump on
			v := measure.Volume(f * float64(b.Plumbing().Hose("reel").Size))
			log(t, b, &core.Dumped{From: "hose/reel", Volume: core.Known(v), To: "waste/pail"})
		}
		steps := Steps(b, in, to)
		pushes := 0
		for _, s := range steps {
			log(t, b, s.Facts...)
			if s.Kind == StepPush {
				pushes++
			}
		}
		if pushes == 0 {
			return
		}
		asked++
		in.From = to
		// One draw in some thousands is left with 0.01 gal, less than a person can push; more is a fault.
		if c := ToClean(b, in); c != nil && c.PushBack > measure.Gallons(0.02) {
			t.Fatalf("after the steps still %s to push, %s decides: %s", c.PushBack.Text(), c.DecidedBy, c.Why)
		}
	})
	if asked < 10 {
		t.Errorf("only %d changeovers were gone", asked)
	}
}

func TestDoubtsAreInTheTable(t *testing.T) {
	if hydraulics.SmearDoubt != 0.2 || hydraulics.FlowDoubt != 0.03 { // the reference for hoses, section 6.6
		t.Errorf("smear %g, flow %g", hydraulics.SmearDoubt, hydraulics.FlowDoubt)
	}
}

// Without the smear the closed form and the account agree on what of the old liquid has left, at each border of the parcels in
// which the account books the washing-out (a sixteenth of the cell); between two of them a parcel is of one strength.
func TestLeftIsWhatTheAccountHas(t *testing.T) {
	b := play(t, strings.Replace(loadedLines, `"return_line_gal":0.1`, `"return_line_gal":0`, 1)+hoseOf("b")+`{"fact":"lined_up","supply":["a"],"return":"a"}`)
	c := cleanTimes(t, b, Intent{Lawn: "Alder"}, 1e-9)
	hose, step := b.Plumbing().Hose("reel").Size, b.Plumbing().Cell.Size/16
	for n := measure.Volume(0); n < 120; n += 7 {
		v := hose + n*step
		var old int64
		for _, l := range b.Plumbing().Sketch().Draw("reel", v, 0) {
			for _, f := range l.From {
				if b.Origin(f.Key).Letter == 'b' {
					old += f.N
				}
			}
		}
		form := c.LeftAt(0) - c.LeftAt(v)
		if d := float64(old-int64(form)) / float64(v); math.Abs(d) > 1e-9 {
			t.Errorf("%d steps: %d nL of the old have left by the account, %d by the closed form: %.1e apart", n, old, form, d)
		}
	}
}

// What a screen asks for at once is what each question answers alone.
func TestBeforeAndCleanAreBefore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := muddled(t, loadedLines)
		in := Intent{Lawn: rapid.SampledFrom([]string{"Alder", "Fir"}).Draw(t, "lawn"), From: rapid.SampledFrom([]byte("abc")).Draw(t, "from"), At: clock}
		r, c, err := BeforeAndClean(b, in)
		if err != nil {
			t.Fatal(err)
		}
		alone, err := Before(b, in)
		if err != nil || !reflect.DeepEqual(r, alone) {
			t.Fatalf("%+v\n%+v %v", r, alone, err)
		}
		if d := ToClean(b, in); !reflect.DeepEqual(c, d) {
			t.Fatalf("%+v\n%+v", c, d)
		}
	})
}
