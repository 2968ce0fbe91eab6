package check

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"example.com/tintline/core"
	"pgregory.net/rapid"
)

// said lists the findings of a rule: zones, whether it stands, and the area.
func said(r Report, rule string) string {
	var out []string
	for _, f := range r.Findings {
		if f.Rule == rule {
			s := fmt.Sprintf("%s %s %v %s", f.Weight, f.Product, f.Zones, f.Area.Text())
			if f.Reason != "" {
				s += ", " + f.Reason
			}
			out = append(out, s)
		}
	}
	return strings.Join(out, "; ")
}

func TestAReasonIsForOneZone(t *testing.T) {
	b := play(t, loadedLines+hoseOf("b")+alder)
	in := Intent{Lawn: "Alder"}
	if s := said(before(t, b, in), "grass"); s != "stop C1 [front back] 7,400" {
		t.Fatal(s)
	}
	log(t, b, &core.Overridden{Rule: "grass", Lawn: "Alder", Product: "C1", Zone: "front", Reason: "asked for", Weight: "stop"})
	r := before(t, b, in)
	if s := said(r, "grass"); s != "stop C1 [front] 4,000, asked for; stop C1 [back] 3,400" || r.Verdict != Stop {
		t.Errorf("%s: %s", r.Verdict, s)
	}
	if f := r.Findings[1]; !strings.HasSuffix(f.Says, "would go on 3,400 sq ft of back.") || f.Unlawful() != "A reason does not make it lawful." {
		t.Errorf("%s %s", f.Says, f.Unlawful())
	}
	// Only what is sprayed now is asked about.
	if s := said(before(t, b, Intent{Lawn: "Alder", Zones: []string{"front"}}), "grass"); s != "stop C1 [front] 4,000, asked for" {
		t.Error(s)
	}
	log(t, b, &core.Overridden{Rule: "grass", Lawn: "Alder", Product: "C1", Zone: "back", Reason: "asked for", Weight: "stop"})
	if s := said(before(t, b, in), "grass"); s != "stop C1 [front back] 7,400, asked for" {
		t.Error(s)
	}
	more(t, b, `{"fact":"visit_done","lawn":"Alder"}
`+alder)
	if s := said(before(t, b, in), "grass"); s != "stop C1 [front back] 7,400" {
		t.Errorf("at the next visit: %s", s)
	}
}

func TestAnAnswerToAnAskOpensNoStop(t *testing.T) {
	b := play(t, loadedLines+hoseOf("a")+alder+`{"fact":"weather","wind_mph":9,"wind_from":"W"}
{"fact":"overridden","rule":"weather","lawn":"Alder","reason":"yes","weight":"ask"}`)
	in := Intent{Lawn: "Alder"}
	if r := before(t, b, in); r.Verdict != None {
		t.Errorf("%s: %s", r.Verdict, said(r, "weather"))
	}
	more(t, b, `{"fact":"setting","name":"wind_stop_mph","value":"8.5"}`)
	if r := before(t, b, in); r.Verdict != Stop {
		t.Errorf("%s: %s", r.Verdict, said(r, "weather"))
	}
	more(t, b, `{"fact":"overridden","rule":"weather","lawn":"Alder","reason":"it only gusts","weight":"stop"}`)
	if r := before(t, b, in); r.Verdict != None || r.Findings[0].Reason != "it only gusts" {
		t.Errorf("%s: %s", r.Verdict, said(r, "weather"))
	}
}

// Whatever zones have a reason, each zone stands in one finding, and the areas together are those of the lawn.
func TestReasonsPartTheZones(t *testing.T) {
	book := play(t, loadedLines+`{"fact":"lawn","name":"Four","zones":[{"name":"n","grass":"bermudagrass_common","area_sqft":1000},{"name":"e","grass":"zoysiagrass","area_sqft":2100},{"name":"s","grass":"bermudagrass_common","area_sqft":900},{"name":"w","grass":"centipedegrass","area_sqft":1700}]}
`+hoseOf("b")+`{"fact":"visit_begun","lawn":"Four"}`)
	zones := book.Lawn("Four").ZoneNames()
	rapid.Check(t, func(t *rapid.T) {
		b := book.Clone()
		var went []string
		for _, z := range rapid.SliceOfN(rapid.SampledFrom(zones), 0, 5).Draw(t, "zones") {
			es, err := b.Prepare("x", clock, &core.Overridden{Rule: "grass", Lawn: "Four", Product: "C1", Zone: z, Reason: rapid.SampledFrom([]string{"one", "two"}).Draw(t, "reason")})
			if err == nil {
				err = b.Apply(es[0])
			}
			if err != nil {
				t.Fatal(err)
			}
			went = append(went, z)
		}
		r, err := Before(b, Intent{Lawn: "Four", At: clock})
		if err != nil {
			t.Fatal(err)
		}
		var all []string
		for _, f := range r.Findings {
			if f.Rule != "grass" {
				continue
			}
			for _, z := range f.Zones {
				all = append(all, z)
				if slices.Contains(went, z) != (f.Reason != "") {
					t.Fatalf("%s: reason %q", z, f.Reason)
				}
			}
		}
		slices.Sort(all)
		if !slices.Equal(all, []string{"e", "n", "s", "w"}) {
			t.Fatalf("findings about %v", all)
		}
		if stands := r.Verdict == Stop; stands != (len(slices.Compact(slices.Sorted(slices.Values(went)))) < len(zones)) {
			t.Fatalf("%v with reasons for %v", r.Verdict, went)
		}
	})
}
