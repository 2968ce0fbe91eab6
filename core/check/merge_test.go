package check

import (
	"fmt"
	"reflect"
	"slices"
	"strings"
	"testing"

	"example.com/tintline/core"
	"pgregory.net/rapid"
)

const fourZones = loadedLines + `{"fact":"lawn","name":"Four","zones":[{"name":"n","grass":"bermudagrass_common","area_sqft":1000},{"name":"e","grass":"zoysiagrass","area_sqft":2100},{"name":"s","grass":"bermudagrass_common","area_sqft":900},{"name":"w","grass":"centipedegrass","area_sqft":1700}]}
{"fact":"visit_begun","lawn":"Four"}
`

// foundBy draws what a rule might find: of zones and products at will, of two things that it looks at.
func foundBy(rule string, zones []string) *rapid.Generator[[]Finding] {
	grounds := []string{GroundLabel, GroundExtension}
	return rapid.SliceOfN(rapid.Custom(func(t *rapid.T) Finding {
		f := Finding{
			Rule: rule, Weight: Weight(rapid.IntRange(int(Note), int(Stop)).Draw(t, "weight")), Ground: rapid.SampledFrom(grounds).Draw(t, "ground"),
			Product: rapid.SampledFrom([]string{"W1", "C1"}).Draw(t, "product"), About: rapid.SampledFrom([]string{"", "active"}).Draw(t, "about"),
			Multiple: core.Known(rapid.Float64Range(0, 9).Draw(t, "multiple")), Do: "Wait.", Area: 1,
		}
		for _, z := range zones {
			if rapid.Bool().Draw(t, z) {
				f.Zones = append(f.Zones, z)
			}
		}
		if len(zones) > 0 && len(f.Zones) == 0 {
			f.Zones = zones[:1]
		}
		f.Says = rapid.SampledFrom([]string{"Much.", "Too much.", "Too soon."}).Draw(t, "says")
		return f
	}), 0, 7)
}

// place is what of a finding a reason can name.
func places(f *Finding) []string {
	zones := f.Zones
	if len(zones) == 0 {
		zones = []string{"/" + f.About} // without a zone only the thing tells two apart
	}
	var out []string
	for _, p := range f.products() {
		for _, z := range zones {
			out = append(out, f.Rule+"/"+p+"/"+z)
		}
	}
	return out
}

func standingStops(list []Finding) []Finding {
	var out []Finding
	for _, f := range list {
		if f.Weight == Stop && f.Reason == "" {
			out = append(out, f)
		}
	}
	return out
}

func onePlaceEach(list []Finding) string {
	seen := map[string]bool{}
	for i := range list {
		for _, p := range places(&list[i]) {
			if seen[p] {
				return p
			}
			seen[p] = true
		}
	}
	return ""
}

// lost says what of the findings is not said any more, or only as something lighter; empty if nothing is lost.
func lost(found, merged []Finding) string {
	for i := range found {
		f := &found[i]
		for _, place := range places(f) {
			kept := false
			for j := range merged {
				m := &merged[j]
				kept = kept || slices.Contains(places(m), place) && strings.Contains(m.Says, f.Says) && strings.Contains(m.Do, f.Do) &&
					slices.ContainsFunc(m.All(), func(one Finding) bool { return one.Weight >= f.Weight })
			}
			if !kept {
				return fmt.Sprintf("%s %s: %s", f.Weight, place, f.Says)
			}
		}
	}
	return ""
}

// Whatever a rule finds: each product and zone has one finding, nothing is lost, and a reason opens one stop at most; reasons
// enough open all of them.
func TestMergingKeepsWhatIsSaid(t *testing.T) {
	book := play(t, fourZones)
	rapid.Check(t, func(t *rapid.T) {
		b := book.Clone()
		s, err := look(b, Intent{Lawn: "Four", At: clock})
		if err != nil {
			t.Fatal(err)
		}
		rule, zones := "season", b.Lawn("Four").ZoneNames()
		if rapid.Bool().Draw(t, "of no zone") {
			rule, zones = "weather", nil
		}
		found := foundBy(rule, zones).Draw(t, "found")
		most := 0
		for i := range found {
			most += len(places(&found[i]))
		}
		for range most + 1 {
			list := s.merged(found)
			if p := onePlaceEach(list); p != "" {
				t.Fatalf("two findings of %s", p)
			}
			if words := lost(found, list); words != "" {
				t.Fatalf("lost: %s", words)
			}
			if again := s.merged(found); !reflect.DeepEqual(again, list) {
				t.Fatal("another order")
			}
			stops := standingStops(list)
			if len(stops) == 0 {
				return
			}
			enterFacts(t, b, GoOn(rapid.SampledFrom(stops).Draw(t, "stop"), "Four", "asked for"))
			if left := standingStops(s.merged(found)); len(left) < len(stops)-1 {
				t.Fatalf("one reason opens %d stops", len(stops)-len(left))
			}
		}
		t.Fatalf("%d reasons do not open all stops", most+1)
	})
}

func enterFacts(t *rapid.T, b *core.Book, facts []core.Fact) {
	es, err := b.Prepare("x", clock, facts...)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range es {
		if err := b.Apply(e); err != nil {
			t.Fatal(err)
		}
	}
}

// Label entries with all limits that a rule asks about.
const (
	limitedC1 = `{"fact":"product","name":"C1","form":"liquid","kind":"herbicide","actives":[{"name":"mesotrione","lb_per_gal":4,"most_year_lb_per_acre":0.1}],"registration":"00000-2","grasses":["centipedegrass","zoysiagrass"],"rate_low_fl_oz_per_1000_sqft":0.1,"rate_high_fl_oz_per_1000_sqft":0.2,"wind_max_mph":7,"temp_max_f":90,"rain_free_h":4,"no_inversion":"yes","most_year_fl_oz_per_1000_sqft":0.2,"most_times":1,"days_between":30,"reseed_days":60,"new_turf_days":42,"water_ft":25,"no_bloom":"yes"}`
	limitedW1 = `{"fact":"product","name":"W1","form":"liquid","kind":"herbicide","actives":[{"name":"sulfosulfuron","percent_by_weight":75}],"registration":"00000-1","grasses":["bermudagrass_common","zoysiagrass","centipedegrass"],"rate_low_fl_oz_per_1000_sqft":0.2,"rate_high_fl_oz_per_1000_sqft":0.5,"wind_max_mph":10,"temp_max_f":85,"most_year_fl_oz_per_1000_sqft":1,"days_between":14,"water_ft":10,"reseed_days":30}`
)

// The same of the rules themselves, in days as they may come.
func TestAReasonOpensOneStop(t *testing.T) {
	const most = 150 // reasons
	book := play(t, fourZones+hoseOf("b"))
	rapid.Check(t, func(t *rapid.T) {
		b := book.Clone()
		draw := func(lines ...string) string { return rapid.SampledFrom(lines).Draw(t, "line") }
		for _, line := range []string{
			draw("", `{"fact":"product","name":"C1","form":"liquid","kind":"herbicide","actives":[{"name":"mesotrione","lb_per_gal":4}],"registration":"00000-2","grasses":["zoysiagrass"],"rate_low_fl_oz_per_1000_sqft":0.01,"rate_high_fl_oz_per_1000_sqft":0.02,"wind_max_mph":7}`),
			draw("", limitedC1, limitedW1), draw("", limitedC1, limitedW1),
			draw("", `{"fact":"lawn","name":"Four","known_since":"2026-01-01","zones":[{"name":"n","grass":"bermudagrass_common","area_sqft":1000,"growth":"dormant","growth_since":"2026-01-02","sites":[{"kind":"water","feet":4}]},{"name":"e","grass":"zoysiagrass","area_sqft":2100,"growth":"seeded","growth_since":"2026-05-20","sites":[{"kind":"bloom"},{"kind":"seeding","date":"2026-06-10"}]},{"name":"s","grass":"bermudagrass_common","area_sqft":900},{"name":"w","grass":"centipedegrass","area_sqft":1700,"sites":[{"kind":"water","feet":4},{"kind":"edible","feet":2},{"kind":"roots"}]}]}`),
			draw(`{"fact":"lined_up","supply":["a"],"return":"a"}`, `{"fact":"lined_up","supply":["b"],"return":"b"}`, `{"fact":"lined_up","supply":["a"],"return":"b"}`, `{"fact":"lined_up","supply":["a","b"],"return":"b"}`, ""),
			draw("", `{"fact":"pushed_back","into":"a","volume_gal":0.4}`, `{"fact":"pushed_back","into":"b","volume_gal":1.5}`, `{"fact":"pushed_back","into":"b","volume_gal":7}`),
			draw("", `{"fact":"lined_up","supply":["a"],"return":"a"}`),
			draw("", `{"fact":"cautioned","product":"W1","weight":"stop","says":"killed it"}`, `{"fact":"cautioned","active":"mesotrione","lawn":"Four","zone":"e","weight":"stop","says":"killed it"}`),
			draw("", `{"fact":"weather","wind_mph":12,"wind_from":"SW","temp_f":97,"rain_free_h":1,"inversion":"yes"}`, `{"fact":"weather","temp_f":64}`, `{"fact":"weather","wind_mph":1,"wind_from":"SW","temp_f":64}`),
			draw("", `{"fact":"setting","name":"wind_stop_mph","value":"8.5"}`),
			draw("", `{"fact":"sprayed","lawn":"Four","zones":["n"],"applicator":"gun","by":"gallons","volume_gal":1.6}`),
		} {
			if line == "" {
				continue
			}
			l, err := core.DecodeLine([]byte(line))
			if err != nil {
				t.Fatal(err)
			}
			enterFacts(t, b, []core.Fact{l.Fact})
		}
		in := Intent{Lawn: "Four", At: core.Moment{Unix: clock.Unix + 60*rapid.Int64Range(0, 90).Draw(t, "minutes")}}
		r := reportOf(t, b, in)
		for range most {
			// A stop about the valves is before its weight, unless they are turned anyhow.
			turned := slices.ContainsFunc(r.Findings, func(f Finding) bool { return f.Weight == Stop && f.Part == PartCompartment })
			at := func(f Finding) int {
				if !turned && f.Weight == Stop && f.Rule == "line_up" {
					return -1
				}
				return ruleAt(f.Rule)
			}
			if !slices.IsSortedFunc(r.Findings, func(a, b Finding) int {
				if a.Weight != b.Weight {
					return int(b.Weight) - int(a.Weight)
				}
				return at(a) - at(b)
			}) {
				t.Fatal("not in order of weight and rules")
			}
			if p := onePlaceEach(r.Findings); p != "" {
				t.Fatalf("two findings of %s", p)
			}
			stops := standingStops(r.Findings)
			if len(stops) == 0 {
				return
			}
			enterFacts(t, b, GoOn(rapid.SampledFrom(stops).Draw(t, "stop"), "Four", "asked for"))
			r = reportOf(t, b, in)
			if left := standingStops(r.Findings); len(left) < len(stops)-1 {
				t.Fatalf("one reason opens %d stops", len(stops)-len(left))
			}
		}
		t.Fatalf("%d reasons do not open all stops", most)
	})
}

func reportOf(t *rapid.T, b *core.Book, in Intent) Report {
	r, err := Before(b, in)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func ruleAt(name string) int {
	for i, r := range rules {
		if r.name == name {
			return i
		}
	}
	return -1
}

// The same sentence of two products, of which one has it on fewer zones: no reason is asked for where there is nothing to
// open.
func TestASentenceOfTwoProductsIsOnTheSameZones(t *testing.T) {
	s, err := look(play(t, fourZones), Intent{Lawn: "Four", At: clock})
	if err != nil {
		t.Fatal(err)
	}
	one := func(w Weight, about, product string, zones ...string) Finding {
		return Finding{Rule: "season", Weight: w, About: about, Product: product, Zones: zones, Says: "Much.", Do: "Wait.", Ground: GroundLabel}
	}
	list := s.merged([]Finding{one(Note, "", "C1", "e", "s"), one(Stop, "active", "W1", "e", "s"), one(Stop, "active", "C1", "s")})
	if len(list) != 2 {
		t.Fatalf("%+v", list)
	}
	list = s.merged([]Finding{one(Stop, "active", "W1", "e", "s"), one(Stop, "active", "C1", "e", "s")})
	if len(list) != 1 || strings.Join(list[0].Products, " ") != "W1 C1" || len(GoOn(list[0], "Four", "asked for")) != 1 {
		t.Fatalf("%+v", list)
	}
}

// What a reason does not open stands apart on the screen; what it opens stands in one.
func TestWhatIsMergedComesApart(t *testing.T) {
	s, err := look(play(t, fourZones), Intent{Lawn: "Four", At: clock})
	if err != nil {
		t.Fatal(err)
	}
	list := s.merged([]Finding{
		{Rule: "site", Weight: Ask, Product: "W1", Zones: []string{"n"}, About: "roots", Says: "Roots lie under it.", Do: "Keep out."},
		{Rule: "site", Weight: Stop, Product: "W1", Zones: []string{"n"}, About: "water", Says: "Water is 4 ft off.", Do: "Leave 6 ft."},
		{Rule: "site", Weight: Stop, Product: "W1", Zones: []string{"n", "e"}, About: "bloom", Says: "Bees fly.", Do: "Mow first."},
		{Rule: "site", Weight: Note, Product: "W1", Zones: []string{"n"}, About: "water", Says: "It drains there.", Do: ""},
	})
	if len(list) != 1 || list[0].Weight != Stop || strings.Join(list[0].Zones, " ") != "n e" || list[0].About != "water" || list[0].Do != "Leave 6 ft. Mow first." {
		t.Fatalf("%+v", list)
	}
	var got []string
	for _, f := range list[0].Apart() {
		got = append(got, fmt.Sprint(f.Rule, " ", f.Weight, " ", f.About, " ", f.Zones, ": ", f.Says))
	}
	want := "site stop water [n]: Water is 4 ft off. It drains there.\nsite ask roots [n]: Roots lie under it.\nsite stop bloom [n e]: Bees fly."
	if s := strings.Join(got, "\n"); s != want {
		t.Errorf("%s", s)
	}
}
