package check

import (
	"testing"

	"example.com/tintline/core"
)

func TestGoOnIsForOneZoneOfAStop(t *testing.T) {
	for _, tc := range []struct {
		name  string
		f     Finding
		zones []string
	}{
		{"a stop about two zones", Finding{Rule: "grass", Weight: Stop, Zones: []string{"front", "back"}}, []string{"front"}},
		{"an ask about two zones", Finding{Rule: "dose", Weight: Ask, Zones: []string{"front", "back"}}, []string{"front", "back"}},
		{"a stop about the rig", Finding{Rule: "line_up", Weight: Stop}, []string{""}},
	} {
		got := GoOn(tc.f, "418 Alder", "spot only")
		if len(got) != len(tc.zones) {
			t.Errorf("%s: %d entries", tc.name, len(got))
			continue
		}
		for i, f := range got {
			o := f.(*core.Overridden)
			if o.Zone != tc.zones[i] || o.Lawn != "418 Alder" || o.Rule != tc.f.Rule || o.Reason != "spot only" || o.Weight != tc.f.Weight.String() {
				t.Errorf("%s: %+v", tc.name, o)
			}
		}
	}
}

// TestAReasonForTheWeatherIsForThatWeather: gone on with at 12 mph, 25 mph stops again.
func TestAReasonForTheWeatherIsForThatWeather(t *testing.T) {
	b := play(t, loadedLines+hoseOf("a")+`{"fact":"visit_begun","lawn":"Alder"}
{"fact":"weather","wind_mph":12,"wind_from":"SW","temp_f":64}`)
	in := Intent{Lawn: "Alder", At: clock}
	stop := find(before(t, b, in), "weather")
	if stop == nil || stop.Weight != Stop {
		t.Fatalf("12 mph: %+v", stop)
	}
	log(t, b, GoOn(*stop, "Alder", "sheltered yard")...)
	if f := find(before(t, b, in), "weather"); f.Reason == "" {
		t.Errorf("the reason does not hold: %+v", f)
	}
	more(t, b, `{"fact":"weather","wind_mph":25,"wind_from":"SW","temp_f":64}`)
	if f := find(before(t, b, in), "weather"); f == nil || f.Reason != "" {
		t.Errorf("25 mph goes by the reason for 12: %+v", f)
	}
}

// A reason that names what it is about opens nothing else of the same rule: wind and heat are two stops.
func TestAReasonIsAboutOneThing(t *testing.T) {
	b := play(t, loadedLines+`{"fact":"visit_begun","lawn":"Alder"}`)
	log(t, b, GoOn(Finding{Rule: "weather", About: "wind", Weight: Stop, Says: "Wind 14 mph."}, "Alder", "sheltered yard")...)
	for about, want := range map[string]string{"wind": "sheltered yard", "heat": "", "": ""} {
		if went, _ := b.OverriddenAbout("weather", "Alder", "", "", about); went.Reason != want {
			t.Errorf("about %q: %q", about, went.Reason)
		}
	}
	log(t, b, &core.Overridden{Rule: "weather", Lawn: "Alder", Reason: "all of it"}) // as older books have it
	if went, _ := b.OverriddenAbout("weather", "Alder", "", "", "heat"); went.Reason != "all of it" {
		t.Errorf("%+v", went)
	}
}
