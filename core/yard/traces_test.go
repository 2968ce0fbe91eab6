package yard

import (
	"strings"
	"testing"

	"example.com/tintline/core/measure"
)

// traced has a trace of the warm mix in the cool one, as a push back leaves it.
const traced = loaded + `{"fact":"loaded","into":"b","volume_gal":0.1,"parts":[{"product":"W1","amount_fl_oz":0.05}]}`

func TestATraceIsNeverStrengthened(t *testing.T) {
	a := ask(t, Dilute, play(t, traced), Ask{Into: 'b', Mix: "C", For: "ride-on"})
	if a.Plan == nil || !a.Possible {
		t.Fatalf("not possible: %+v", a)
	}
	for _, p := range a.Plan.Parts {
		if p.Product == "W1" {
			t.Errorf("a load of a trace is planned: %+v", p)
		}
	}
	if says := strings.Join(a.Says, "; "); !strings.Contains(says, "W1 0.0500 fl oz stays in it, which is no part of the mix") {
		t.Error(says)
	}
}

func TestATraceBoundsNoStretch(t *testing.T) {
	with, without := ask(t, Stretch, play(t, traced), Ask{Into: 'b'}), ask(t, Stretch, play(t, loaded), Ask{Into: 'b'})
	if with.Possible != without.Possible || with.Why != without.Why {
		t.Errorf("with a trace: %v %q; without: %v %q", with.Possible, with.Why, without.Possible, without.Why)
	}
}

func TestATraceIsUsedUpAsTheGateJudgesIt(t *testing.T) {
	with, without := ask(t, UseUp, play(t, traced), Ask{Into: 'b', Volume: measure.Known(3 * measure.USGallon)}), ask(t, UseUp, play(t, loaded), Ask{Into: 'b', Volume: measure.Known(3 * measure.USGallon)})
	if !without.Possible || !with.Possible {
		t.Errorf("with a trace %v: %v\nwithout %v", with.Possible, with.Says, without.Possible)
	}
}
