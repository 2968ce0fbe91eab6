package setup

import (
	"math"
	"strings"
	"testing"

	"example.com/tintline/core"
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
)

// TestCoupledHoses: the volumes of lengths on one reel add (pi/4 d^2 L, geometry): 0.5737 and 1.0200 gal for 100 ft of 3/8
// and 1/2 in (reference table of hose volumes, recomputed).
func TestCoupledHoses(t *testing.T) {
	for _, c := range []struct {
		said   string
		gal    float64
		bore   measure.Length
		feet   float64
		doubt  float64
		typed  string
		volume bool
	}{
		{"3/8 x 200 + 1/2 x 100", 2*0.57375 + 1.0200, measure.Inches(0.375), 300, 0.10, "2.17 gal", true},
		{"1/2x100+3/8x200", 2*0.57375 + 1.0200, measure.Inches(0.375), 300, 0.10, "2.17 gal", true},
		{"3/8 x 100 + 3/8 x 200", 3 * 0.57375, measure.Inches(0.375), 300, 0.10, "3/8 x 300", false},
	} {
		b := core.NewBook(1)
		facts, err := answer(t, Rig, "", b, Answers{"compartments": "200 100", "hose": c.said})
		enter(t, b, facts, err)
		h := b.Rig().Hoses[0]
		if math.Abs(h.Volume.Gallons()-c.gal) > 0.0005 || h.Bore.V != c.bore || math.Abs(h.Length.V.Feet()-c.feet) > 1e-6 {
			t.Errorf("%s: %.4f gal, %s by %.2f ft", c.said, h.Volume.Gallons(), boreText(h.Bore.V), h.Length.V.Feet())
		}
		if by := fluid.BoreVolume(h.Bore.V, h.Length.V); (h.Volume != by) != c.volume {
			t.Errorf("%s: the volume is %s, by bore and length %s", c.said, h.Volume.Text(), by.Text())
		}
		if l := b.Learned(""); math.Abs(float64(l.HoseSD)/float64(l.Hose)-c.doubt) > 1e-6 {
			t.Errorf("%s: known to %s of %s", c.said, l.HoseSD.Text(), l.Hose.Text())
		}
		if got := HoseText(h); got != c.typed {
			t.Errorf("%s stands as %q, not %q", c.said, got, c.typed)
		}
		facts, err = answer(t, Hose, "reel", b, Answers{"hose": "1/2 x 200 + 5/8 x 50"})
		if err != nil || len(facts) != 1 || facts[0].(*core.Rig).Hoses[0].Volume.Text() != "2.84" {
			t.Errorf("the hose's own form: %v, %v", facts, err)
		}
	}
	for said, says := range map[string]string{
		"3/8 x 200 +":             "has not both a bore and a length",
		"3/8 x 200 + 1/2":         "has not both a bore and a length",
		"3/8 x 200 + x 100":       "has not both a bore and a length",
		"3/8 x 0":                 "out of range",
		"3/8 x 200 + 1/2 x 0":     "out of range",
		"0 x 200 + 1/2 x 100":     "out of range",
		"3/8 x 200 + 13 x 100":    "out of range",
		"0 gal":                   "out of range",
		"3/8 x 200 + 1.7 gal":     "has not both a bore and a length",
		"3/8 x 9000 + 3/8 x 9000": "",
	} {
		_, err := answer(t, Rig, "", core.NewBook(1), Answers{"compartments": "200 100", "hose": said})
		if err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%q: %v", said, err)
		}
	}
}
