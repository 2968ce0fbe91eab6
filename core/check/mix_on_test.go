package check

import (
	"slices"
	"testing"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
	"pgregory.net/rapid"
)

// ruledOf is the heaviest finding of the rules about a mix, and each of them by rule, product and weight.
func ruledOf(r Report) (heaviest Weight, all []string) {
	for i := range r.Findings {
		for _, f := range r.Findings[i].All() {
			if !ofTheMix[r.Findings[i].Rule] {
				continue
			}
			heaviest = max(heaviest, f.Weight)
			all = append(all, r.Findings[i].Rule+" "+f.Product+" "+f.Weight.String())
		}
	}
	slices.Sort(all)
	return heaviest, slices.Compact(all)
}

// Where an applicator's tank holds a mix and nothing else, the trigger's verdict and the mix's are one.
func TestAMixIsJudgedAsAtTheTrigger(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := core.NewBook(1)
		more(t, b, fourZones)
		draw := func(lines ...string) string { return rapid.SampledFrom(lines).Draw(t, "line") }
		more(t, b, draw("", limitedC1)+"\n"+draw("", limitedW1)+"\n"+
			draw("", `{"fact":"lawn","name":"Four","known_since":"2026-01-01","zones":[{"name":"n","grass":"bermudagrass_common","area_sqft":1000,"growth":"dormant","growth_since":"2026-01-02","sites":[{"kind":"water","feet":4}]},{"name":"e","grass":"zoysiagrass","area_sqft":2100,"growth":"seeded","growth_since":"2026-05-20"},{"name":"s","grass":"bermudagrass_common","area_sqft":900},{"name":"w","grass":"centipedegrass","area_sqft":1700,"sites":[{"kind":"edible","feet":2}]}]}`)+"\n"+
			draw("", `{"fact":"cautioned","active":"mesotrione","lawn":"Four","zone":"e","weight":"stop","says":"killed it"}`)+"\n"+
			draw("", `{"fact":"setting","name":"restricted_dates","value":"05-01 to 06-30 any"}`)+"\n"+
			draw("", `{"fact":"lined_up","supply":["a"],"return":"a"}
{"fact":"pushed_back","into":"a","volume_gal":8}
{"fact":"sprayed","lawn":"Four","zones":["n"],"applicator":"gun","by":"gallons","volume_gal":1.6}`))
		mix := draw("W", "C", "I")
		in := Intent{Lawn: "Four", With: "ride-on", At: clock}
		if zone := draw("", "n", "e", "s", "w"); zone != "" {
			in.Zones = []string{zone}
		}
		log(t, b, &core.Loaded{Into: "ride-on", Volume: measure.Gallons(10), Mix: mix, For: "ride-on"})
		at, err := Before(b, in)
		if err != nil {
			t.Fatal(err)
		}
		of, err := MixOn(b, mix, in)
		if err != nil {
			t.Fatal(err)
		}
		w1, all1 := ruledOf(at)
		w2, all2 := ruledOf(of)
		if w1 != w2 || !slices.Equal(all1, all2) {
			t.Fatalf("%s: at the trigger %s %v, in the morning %s %v", mix, w1, all1, w2, all2)
		}
	})
}

// What stands in tank and hose, and what the wind does, is no matter of it; the words name the mix.
func TestAMixOnItsOwn(t *testing.T) {
	b := play(t, loadedLines+hoseOf("b")+`{"fact":"weather","wind_mph":30,"wind_from":"SW","temp_f":99}`)
	r, err := MixOn(b, "W", Intent{Lawn: "Alder", With: "gun", At: clock})
	if err != nil || r.Verdict != None {
		t.Fatalf("%v %+v", err, r.Findings)
	}
	r, err = MixOn(b, "W", Intent{Lawn: "Fir", With: "gun", At: clock})
	if err != nil || r.Verdict != Stop || len(r.Findings) == 0 {
		t.Fatalf("%v %+v", err, r)
	}
	if f := r.Findings[0]; f.Rule != "grass" || f.Do != anotherMix+ifListed || f.Says[:2] != "W:" {
		t.Fatalf("%+v", f)
	}
}
