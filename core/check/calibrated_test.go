package check

import (
	"math"
	"testing"

	"example.com/tintline/core"
)

// gunLays is an accepted test of the gun that says so much more than the 1.6 gal it was entered with.
func gunLays(gal string) string {
	return `{"fact":"calibrated","applicator":"gun","accepted":"yes","runs":[{"seconds":77},{"seconds":78},{"seconds":79}],"course_ft":200,"swath_ft":5,"caught":[{"volume_gal":` + gal + `}]}
`
}

// What is loaded already keeps its strength: the rule of doses finds by itself that a gun which lays more lays more product.
func TestATestSpeaksThroughTheDose(t *testing.T) {
	dose := func(lines string) *Finding {
		b := play(t, loadedLines+hoseOf("a")+alder+lines)
		v, err := Before(b, Intent{Lawn: "Alder", With: "gun", At: clock})
		if err != nil {
			t.Fatal(err)
		}
		for i := range v.Findings {
			if v.Findings[i].Rule == "dose" {
				return &v.Findings[i]
			}
		}
		return nil
	}
	if f := dose(""); f != nil {
		t.Errorf("before the test: %+v", f)
	}
	// 1.2 fl oz per 1,000 sq ft at 1.6 gal; at 2.2 gal it is 1.65 less what the water of the hose thinned, and the label allows 1.5.
	f := dose(gunLays("2.2"))
	if f == nil || f.Weight != Stop || math.Abs(f.Multiple.V-1.1) > 0.02 {
		t.Fatalf("after it: %+v", f)
	}
	// What is loaded after it is made up for the new rate.
	b := play(t, rigLines+gunLays("2.2")+`{"fact":"loaded","into":"a","volume_gal":200,"mix":"W","for":"gun"}`+"\n"+hoseOf("a")+alder)
	v, err := Before(b, Intent{Lawn: "Alder", With: "gun", At: clock})
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range v.Findings {
		if f.Rule == "dose" {
			t.Errorf("loaded for the new rate: %+v", f)
		}
	}
}

func TestATestFarOffIsAskedAbout(t *testing.T) {
	tests := []struct {
		gal, accepted string
		doubt         bool
		source        string
	}{
		{"2.3", "yes", false, "arithmetic: 44 per cent more than 1.6"},
		{"2.5", "yes", true, "56 per cent more"},
		{"0.7", "yes", true, "56 per cent less"},
		{"2.5", "no", false, "a note rules nothing"},
	}
	for _, tt := range tests {
		b := play(t, loadedLines)
		l, err := core.DecodeLine([]byte(`{"fact":"calibrated","applicator":"gun","accepted":"` + tt.accepted + `","delivery_gal_per_1000_sqft":` + tt.gal + `}`))
		if err != nil {
			t.Fatal(err)
		}
		if words, _, doubtful := Doubt(b, clock, l.Fact); doubtful != tt.doubt {
			t.Errorf("%s, %s: %v %q (%s)", tt.gal, tt.accepted, doubtful, words, tt.source)
		}
	}
}
