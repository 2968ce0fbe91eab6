package check

import (
	"testing"

	"example.com/tintline/core/measure"
)

// A hose of 1.72 gal that held a and gets 0.8 gal through the cell from b: next comes a, then what goes over into b.
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
