package check

import (
	"fmt"
	"testing"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

// A hose of 1.72 gal that held a and gets 0.8 gal through the cell from b: next comes a, then what goes over into b.
// Each stretch stands since the push that brought it: what is further on came earlier, and the hose's first water has no time.
func TestSinceWhenItStands(t *testing.T) {
	b := play(t, loadedLines)
	up := func(letter byte) *core.LinedUp { return &core.LinedUp{Supply: []byte{letter}, Return: letter} }
	push := func(gal float64) *core.PushedBack {
		return &core.PushedBack{Into: 'a', Volume: measure.Gallons(gal)}
	}
	put := func(minute int64, f core.Fact) {
		t.Helper()
		es, err := b.Prepare(fmt.Sprint("put", b.Seq()), core.Moment{Unix: 1_780_000_000 - 1_780_000_000%86400 + 86400 + 8*3600 + 60*minute}, f)
		if err != nil {
			t.Fatal(err)
		}
		if err := b.Apply(es[0]); err != nil {
			t.Fatal(err)
		}
	}
	put(0, up('a'))
	put(0, push(1.1))
	put(10, up('b'))
	put(10, push(0.3))
	put(10, push(0.2))
	put(20, push(0.1))
	clock := func(fromPump float64) string {
		m, known := b.HoseSince("", measure.Gallons(fromPump))
		if !known {
			return "?"
		}
		return m.Clock()
	}
	for at, want := range map[float64]string{0: "08:20", 0.05: "08:20", 0.11: "08:10", 0.59: "08:10", 0.61: "08:00", 1.69: "08:00", 1.71: "?", 9: "?", -1: "?"} {
		if got := clock(at); got != want {
			t.Errorf("at %g gal from the pump: %s, want %s", at, got, want)
		}
	}
	all := StretchesOf(b, "reel")
	if last := all[len(all)-1]; !last.Since.Known || last.Since.V.Clock() != "08:10" && last.Since.V.Clock() != "08:00" {
		t.Errorf("%+v", last)
	}
	if all[0].Since.Known {
		t.Errorf("the first water has a time: %+v", all[0])
	}
	put(60, push(9))
	if all = StretchesOf(b, ""); len(all) != 1 || all[0].Since.V.Clock() != "09:00" {
		t.Errorf("%+v", all)
	}
}

func TestStretchesOfAHose(t *testing.T) {
	b := play(t, loadedLines+`
{"fact":"lined_up","supply":["a"],"return":"a"}
{"fact":"pushed_back","into":"a","volume_gal":9}
{"fact":"lined_up","supply":["b"],"return":"b"}
{"fact":"pushed_back","into":"a","volume_gal":0.8}`)
	all := StretchesOf(b, "")
	if len(all) != 2 || all[0].Mixed() || all[0].Of[0].Letter != 'a' || !all[1].Mixed() {
		t.Fatalf("%+v", all)
	}
	var sum measure.Volume
	for _, s := range all {
		var of measure.Volume
		for _, f := range s.Of {
			of += f.Volume
			if f.Low > f.High || f.Low < 0 || f.High > 1 {
				t.Errorf("%+v", f)
			}
		}
		if of != s.Volume {
			t.Errorf("parts of %s gal in %s gal", of.Text(), s.Volume.Text())
		}
		sum += s.Volume + s.Air
	}
	if sum != b.Plumbing().Hoses[0].Size {
		t.Errorf("stretches of %s gal in a hose of %s", sum.Text(), b.Plumbing().Hoses[0].Size.Text())
	}
	more(t, b, `{"fact":"pushed_back","into":"a","volume_gal":9}
{"fact":"dumped","from":"hose/reel","to":"waste/pail"}`)
	if all = StretchesOf(b, "reel"); len(all) != 1 || all[0].Air == 0 || all[0].Volume != 0 {
		t.Errorf("a hose that was drained: %+v", all)
	}
	if StretchesOf(b, "nobody") != nil {
		t.Error("a hose that the rig has not")
	}
}
