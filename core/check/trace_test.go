package check

import (
	"fmt"
	"strings"
	"testing"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
)

// tankOf is a machine with a tank of 100 gal that lays 1 gal per 1,000 sq ft: what is in it of a product of which the lowest
// rate is 1 fl oz per 1,000 sq ft, in fl oz, is its share of that in per cent. M lists all turf; the others list buffalograss.
func tankOf(grass, zone string, parts map[string]float64, actives map[string]string) string {
	lines := `{"fact":"rig","name":"r","compartments":[{"letter":"a","capacity_gal":300},{"letter":"b","capacity_gal":300}],"hoses":[{"name":"h","inside_diameter_in":0.375,"length_ft":100}],"applicators":[{"name":"gun","kind":"gun","hose":"h","delivery_gal_per_1000_sqft":1},{"name":"ride-on","kind":"ride_on","hose":"h","tank_gal":200,"delivery_gal_per_1000_sqft":1}]}
{"fact":"product","name":"M","form":"liquid","kind":"iron","actives":[{"name":"iron","lb_per_gal":1}],"grasses":["all_turf"],"rate_low_fl_oz_per_1000_sqft":1}
` + fmt.Sprintf(`{"fact":"lawn","name":"L","zones":[{"name":"z","grass":%q,"area_sqft":5000%s}]}`, grass, zone) + "\n"
	load := `{"product":"M","amount_fl_oz":100}`
	for _, name := range []string{"P", "Q"} {
		if _, ok := parts[name]; !ok {
			continue
		}
		active := ""
		if a := actives[name]; a != "" {
			active = fmt.Sprintf(`"actives":[{"name":%q,"lb_per_gal":4}],`, a)
		}
		lines += fmt.Sprintf(`{"fact":"product","name":%q,"form":"liquid","kind":"herbicide",%s"grasses":["buffalograss"],"rate_low_fl_oz_per_1000_sqft":1}`, name, active) + "\n"
		load += fmt.Sprintf(`,{"product":%q,"amount_fl_oz":%g}`, name, parts[name])
	}
	return lines + fmt.Sprintf(`{"fact":"day_opened","date":"2026-05-28","operator":"R. Example","route":["L"]}
{"fact":"loaded","into":"ride-on","volume_gal":100,"parts":[%s]}
{"fact":"weather","wind_mph":6,"wind_from":"SW","temp_f":64}`, load)
}

func residueAt(t *testing.T, active, grass, zone string, percent float64) (Report, *Finding) {
	t.Helper()
	b := play(t, tankOf(grass, zone, map[string]float64{"P": percent}, map[string]string{"P": active}))
	r := before(t, b, Intent{Lawn: "L", With: "ride-on"})
	return r, find(r, "trace")
}

// The shares are proposed, not published: 0.001 and 0.01 for HRAC 2 and 27, 0.003 and 0.02 for what spares no turf, 0.01 and
// 0.05 for other herbicides, 0.05 and 0.10 for HRAC 4, 0.0002 and 0.002 for HRAC 4 beside food plants; a note from half.
func TestResidueFromBothSidesOfEachLimit(t *testing.T) {
	const edible = `,"sites":[{"kind":"edible","feet":10}]`
	for _, row := range []struct {
		name, active, grass, zone string
		ask, stop                 float64 // per cent
	}{
		{"HRAC 27", "mesotrione", "bermudagrass_common", "", 0.1, 1},
		{"HRAC 2", "sulfosulfuron", "tall_fescue", "", 0.1, 1},
		{"spares no turf", "glyphosate", "tall_fescue", "", 0.3, 2},
		{"dormant only", "glyphosate", "bermudagrass_common", "", 0.3, 2},
		{"HRAC 5", "atrazine", "tall_fescue", "", 1, 5},
		{"quinclorac is no HRAC 4 here", "quinclorac", "centipedegrass", "", 1, 5},
		{"tolerant by recall alone clears nothing", "prodiamine", "centipedegrass", "", 1, 5},
		{"an active that the reference does not know", "inventol", "bermudagrass_common", "", 1, 5},
		{"no active entered", "", "bermudagrass_common", "", 1, 5},
		{"HRAC 4", "triclopyr", "bermudagrass_common", "", 5, 10},
		{"HRAC 4 beside food plants", "triclopyr", "bermudagrass_common", edible, 0.02, 0.2},
		{"HRAC 4 beside food plants, on a grass that tolerates it", "triclopyr", "tall_fescue", edible, 0.02, 0.2},
	} {
		for _, step := range []struct {
			percent float64
			want    Weight
		}{{row.ask * 0.49, None}, {row.ask * 0.51, Note}, {row.ask * 0.99, Note}, {row.ask * 1.01, Ask}, {row.stop * 0.98, Ask}, {row.stop * 1.01, Stop}} {
			if step.percent > 10 { // from a tenth on it is the other mix; that limit is held below
				continue
			}
			r, f := residueAt(t, row.active, row.grass, row.zone, step.percent)
			if g := find(r, "grass"); g != nil {
				t.Errorf("%s at %g: %+v", row.name, step.percent, g)
			}
			if step.want == None {
				if f != nil {
					t.Errorf("%s at %g per cent: %v %s", row.name, step.percent, f.Weight, f.Says)
				}
				continue
			}
			if f == nil || f.Weight != step.want || f.Ground != GroundSetting || !strings.Contains(f.Source, "proposed, not published") || f.ShareOfLabel.V < step.percent/101 || f.ShareOfLabel.V > step.percent/99 {
				t.Errorf("%s at %g per cent: %+v, want %v", row.name, step.percent, f, step.want)
			}
		}
	}
}

// The columns for moderate and tolerant grasses, which a mix at its lowest rate does not reach as residue: 0.1 and 0.5, 0.25
// and 1, 0.5 and 1; HRAC 9 has no such column; what injures no plant by so little is asked about and no more.
func TestResidueOnGrassesThatBearMore(t *testing.T) {
	b := play(t, rigLines)
	for _, row := range []struct {
		active, grass   string
		note, ask, stop float64
	}{
		{"triclopyr", "bermudagrass_common", 0.025, 0.05, 0.1},
		{"mesotrione", "tall_fescue", 0.05, 0.1, 0.5},
		{"quinclorac", "bermudagrass_common", 0.125, 0.25, 1},
		{"triclopyr", "kentucky_bluegrass", 0.25, 0.5, 1},
		{"mesotrione", "centipedegrass", 0.1, 9, 9},
		{"quinclorac", "tall_fescue", 0.25, 9, 9},
		{"triclopyr", "tall_fescue", 0.5, 9, 9},
		{"bifenthrin", "inventgrass", 0.05, 0.1, 9},
	} {
		p := &core.Product{ProductName: "P", Label: label.Entry{Kind: "herbicide", Actives: []label.Active{{Name: row.active}}}}
		limits := judge{b, clock, label.FormSpray}.residueLimits(p, core.Zone{Grass: row.grass})
		for _, at := range []struct {
			share float64
			want  Weight
		}{{row.note * 0.999, None}, {row.note, Note}, {row.ask * 0.999, Note}, {row.ask, Ask}, {row.stop * 0.999, Ask}, {row.stop, Stop}} {
			if row.ask == 9 {
				at.want = min(at.want, Note)
			}
			if row.stop == 9 {
				at.want = min(at.want, Ask)
			}
			if _, w := heaviestOf(limits, at.share); w != at.want {
				t.Errorf("%s on %s at %g: %v, want %v", row.active, row.grass, at.share, w, at.want)
			}
		}
	}
}

// A tenth of its full strength is the other mix: there the label entry alone decides, and nothing is said of a trace.
func TestTheTenthPartsMixFromResidue(t *testing.T) {
	if r, f := residueAt(t, "prodiamine", "bermudagrass_common", "", 9.9); find(r, "grass") != nil || f != nil { // tolerant: noted from 25 per cent
		t.Errorf("below: %+v", r.Findings)
	}
	r, f := residueAt(t, "prodiamine", "bermudagrass_common", "", 10.1)
	if g := find(r, "grass"); g == nil || g.Weight != Stop || g.Ground != GroundLabel || f != nil {
		t.Errorf("above: %+v", r.Findings)
	}
	r, _ = residueAt(t, "prodiamine", "buffalograss", "", 9.9)
	if len(r.Findings) > 0 {
		t.Errorf("listed: %+v", r.Findings)
	}
}

// Doses of HRAC 4 add up: each of two at 4 per cent is asked about as 8, each at 6 is a stop as 12 (arithmetic).
func TestDosesOfHRAC4AddUp(t *testing.T) {
	two := map[string]string{"P": "triclopyr", "Q": "2,4-D"}
	for _, row := range []struct {
		p, q float64
		want Weight
		says string
	}{{2, 1.9, Note, "0.039"}, {4, 3.9, Ask, "at 0.079"}, {6, 5.9, Stop, "at 0.12"}} {
		b := play(t, tankOf("st_augustinegrass", "", map[string]float64{"P": row.p, "Q": row.q}, two))
		r := before(t, b, Intent{Lawn: "L", With: "ride-on"})
		f := find(r, "trace")
		if f == nil || f.Weight != row.want || f.Product != "P" || !strings.Contains(f.Says, "other herbicides of HRAC 4") || !strings.Contains(f.Says, row.says) {
			t.Errorf("%g and %g: %+v", row.p, row.q, r.Findings)
		}
	}
}

// Turf that is weak, or heat, moves the verdict one step up; what nothing is known to be injured by stops at an ask.
func TestResidueWeighsMoreOnWeakTurf(t *testing.T) {
	for _, zone := range []string{`,"growth":"stressed"`, `,"growth":"greening_up"`, `,"growth":"sodded"`} {
		_, f := residueAt(t, "triclopyr", "bermudagrass_common", zone+`,"growth_since":"2026-05-20"`, 3)
		if f == nil || f.Weight != Ask || !strings.Contains(f.Says, "one step more because it is") {
			t.Errorf("%s, a note: %+v", zone, f)
		}
		_, f = residueAt(t, "triclopyr", "bermudagrass_common", zone+`,"growth_since":"2026-05-20"`, 6)
		if f == nil || f.Weight != Stop {
			t.Errorf("%s, an ask: %+v", zone, f)
		}
	}
	for temp, want := range map[string]Weight{"85": Note, "86": Ask} {
		b := play(t, strings.Replace(tankOf("bermudagrass_common", "", map[string]float64{"P": 3}, map[string]string{"P": "triclopyr"}), `"temp_f":64`, `"temp_f":`+temp, 1))
		if f := find(before(t, b, Intent{Lawn: "L", With: "ride-on"}), "trace"); f == nil || f.Weight != want {
			t.Errorf("at %s F: %+v", temp, f)
		}
	}
	if f := stepped(Ask, "it is stressed", 'F'); f != Ask {
		t.Errorf("an insecticide is a %v", f)
	}
}

// What stands in a compartment is asked about once a day and grass; more of it, or another grass, again.
func TestResidueInACompartmentIsAskedAboutOnce(t *testing.T) {
	b := play(t, loadedLines+`{"fact":"loaded","into":"a","volume_gal":1,"parts":[{"product":"C1","amount_fl_oz":0.025}]}
{"fact":"lawn","name":"Elm","zones":[{"name":"all","grass":"bermudagrass_common","area_sqft":3000}]}
{"fact":"lawn","name":"Zoe","zones":[{"name":"all","grass":"zoysiagrass","area_sqft":3000}]}
`+hoseOf("a")+alder)
	// 0.025 fl oz in some 203 gal is 0.0020 of 0.1 fl oz per 1.6 gal (arithmetic)
	f := find(before(t, b, Intent{Lawn: "Alder"}), "trace")
	if f == nil || f.Weight != Ask || f.Part != PartCompartment || f.About != "residue in a at 0.002" {
		t.Fatalf("%+v", f)
	}
	for _, want := range []string{"rinse a", "three times", "10 per cent", "two hose volumes", "open the screens", "look at the lawn again in 2 to 4 weeks"} {
		if !strings.Contains(f.Do+" "+f.Says, want) {
			t.Errorf("%q is not in %s %s", want, f.Do, f.Says)
		}
	}
	if want := "Accept so little of it here, or skip the lawn; rinse a once it is empty."; f.Do != want {
		t.Errorf("what to do is not first: %s", f.Do)
	}
	log(t, b, GoOn(*f, "Alder", "little")...)
	more(t, b, `{"fact":"visit_done","lawn":"Alder"}`)
	if f := find(before(t, b, Intent{Lawn: "Elm"}), "trace"); f == nil || f.Weight != Note || !strings.Contains(f.Says, "answered today at Alder") || !strings.Contains(f.Says, "2 to 4 weeks") {
		t.Errorf("at the next lawn: %+v", f)
	}
	if f := find(before(t, b, Intent{Lawn: "Zoe"}), "trace"); f == nil || f.Weight != Ask {
		t.Errorf("on another grass: %+v", f)
	}
	more(t, b, `{"fact":"loaded","into":"a","volume_gal":1,"parts":[{"product":"C1","amount_fl_oz":0.01}]}
`+hoseOf("a"))
	if f := find(before(t, b, Intent{Lawn: "Elm"}), "trace"); f == nil || f.Weight != Ask {
		t.Errorf("more of it: %+v", f)
	}
}

// Whatever the rig and the mixes: after the push-back that is advised nothing asks about the hose or the cell again.
func TestAfterThePushThatIsAdvisedNothingAsksForAnother(t *testing.T) {
	looked := 0
	for _, cell := range []float64{0, 0.1, 0.4} {
		for _, back := range []float64{0, 0.3} {
			for _, actives := range [][2]string{{"metsulfuron-methyl", "triclopyr"}, {"sulfosulfuron", "mesotrione"}, {"atrazine", "quinclorac"}, {"glyphosate", "inventol"}, {"2,4-D", "dicamba"}} {
				for _, gal := range []float64{12, 200} {
					lines := strings.NewReplacer(`"cell_gal":0.2,"return_line_gal":0.1`, fmt.Sprintf(`"cell_gal":%g,"return_line_gal":%g`, cell, back), "sulfosulfuron", actives[0], "mesotrione", actives[1]).Replace(rigLines)
					b := play(t, lines+fmt.Sprintf(`{"fact":"loaded","into":"a","volume_gal":%g,"mix":"W","for":"gun"}
{"fact":"loaded","into":"b","volume_gal":100,"mix":"C","for":"gun"}
{"fact":"loaded","into":"c","volume_gal":50,"mix":"I","for":"gun"}
`, gal))
					for _, row := range []struct {
						from, lawn string
						to         byte
					}{{"b", "Alder", 'a'}, {"a", "Fir", 'b'}, {"a", "Gum", 'c'}, {"b", "Gum", 'c'}} {
						try := b.Clone()
						more(t, try, hoseOf(row.from))
						in := Intent{Lawn: row.lawn}
						name := fmt.Sprintf("cell %g, return %g, %v, %g gal, %s to %c", cell, back, actives, gal, row.from, row.to)
						steps := Steps(try, Intent{Lawn: row.lawn, At: clock}, row.to)
						pushed := false
						for _, s := range steps {
							for _, f := range s.Facts {
								if _, ok := f.(*core.PushedBack); ok {
									pushed = true
								}
								log(t, try, f)
							}
						}
						if !pushed {
							continue
						}
						looked++
						for _, f := range before(t, try, in).Findings {
							if (f.Rule == "grass" || f.Rule == "trace") && f.Weight >= Ask && (f.Part == PartHose || f.Part == PartCell) {
								t.Errorf("%s: %v %s", name, f.Weight, f.Says)
							}
						}
						if c := ToClean(try, in); c != nil {
							t.Errorf("%s: still to clean: %+v", name, *c)
						}
					}
				}
			}
		}
	}
	if looked < 200 {
		t.Errorf("only %d changeovers were looked at", looked)
	}
}
