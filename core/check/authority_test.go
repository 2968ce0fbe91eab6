package check

import (
	"fmt"
	"strings"
	"testing"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
)

// lawnOf is a tank of a product that is listed for all turf, on a lawn of a grass.
func lawnOf(active, grass, zone, date string) string {
	return fmt.Sprintf(`{"fact":"rig","name":"r","compartments":[{"letter":"a","capacity_gal":300},{"letter":"b","capacity_gal":300}],"hoses":[{"name":"h","inside_diameter_in":0.375,"length_ft":100}],"applicators":[{"name":"gun","kind":"gun","hose":"h","delivery_gal_per_1000_sqft":1},{"name":"ride-on","kind":"ride_on","hose":"h","tank_gal":200,"delivery_gal_per_1000_sqft":1}]}
{"fact":"product","name":"P","form":"liquid","kind":"herbicide","registration":"00000-9","actives":[{"name":%q}],"grasses":["all_turf"],"rate_low_fl_oz_per_1000_sqft":1,"rate_high_fl_oz_per_1000_sqft":1}
{"fact":"lawn","name":"L","zones":[{"name":"z","grass":%q,"area_sqft":5000%s}]}
{"fact":"day_opened","date":%q,"operator":"R. Example","route":["L"]}
{"fact":"loaded","into":"ride-on","volume_gal":100,"parts":[{"product":"P","amount_fl_oz":100}]}
{"fact":"weather","wind_mph":6,"wind_from":"SW","temp_f":64}`, active, grass, zone, date)
}

func grassFound(t *testing.T, active, grass, zone string, more ...string) *Finding {
	t.Helper()
	b := play(t, lawnOf(active, grass, zone, "2026-05-28")+"\n"+strings.Join(more, "\n"))
	return find(before(t, b, Intent{Lawn: "L", With: "ride-on"}), "grass")
}

// Label entry, then reference: what lists a grass that the reference calls injured is asked about with both grounds.
func TestLabelAndReferenceTogether(t *testing.T) {
	const growing = `,"growth":"growing","growth_since":"2026-05-20"`
	for _, row := range []struct {
		name, active, grass, zone string
		want                      Weight
		ground                    string
		says                      []string
	}{
		{"not tolerant", "sethoxydim", "bermudagrass_common", growing, Ask, GroundExtension, []string{"the label entry lists it", "not tolerant", "UGA-BERM"}},
		{"two sources differ, the stricter decides and both are said", "mesotrione", "tall_fescue", growing, Note, GroundTrial, []string{"moderate (trial, J-DERN08", "sources differ: tolerant (extension, MISU-CRAB"}},
		{"tolerant", "sulfosulfuron", "zoysiagrass", growing, None, "", nil},
		{"nothing read", "prodiamine", "centipedegrass", growing, None, "", nil},
		{"nothing known", "inventol", "centipedegrass", growing, None, "", nil},
		{"recalled as not tolerant warns", "MSMA", "centipedegrass", growing, Ask, "", []string{"not tolerant"}},
		{"spares no turf, on what is not said to be dormant", "glyphosate", "bermudagrass_common", growing, Stop, "", []string{"dormant turf only", "not said to be dormant"}},
		{"and where nothing is said of it", "glyphosate", "bermudagrass_common", "", Stop, "", []string{"dormant turf only"}},
		{"on what is dormant", "glyphosate", "bermudagrass_common", `,"growth":"dormant","growth_since":"2026-05-20"`, None, "", nil},
		{"dormant only, of another class", "oxadiazon", "bermudagrass_common", growing, Ask, GroundExtension, []string{"dormant turf only", "Tennessee"}},
		{"one step more on stressed turf", "sethoxydim", "bermudagrass_common", `,"growth":"stressed","growth_since":"2026-05-20"`, Stop, GroundExtension, []string{"one step more because it is stressed"}},
		{"a note becomes an ask", "mesotrione", "tall_fescue", `,"growth":"stressed","growth_since":"2026-05-20"`, Ask, GroundTrial, []string{"one step more"}},
		{"a row of seedlings weighs once", "isoxaben", "zoysiagrass", `,"growth":"seeded","growth_since":"2026-05-20"`, Ask, GroundExtension, []string{"not until mown three times"}},
	} {
		f := grassFound(t, row.active, row.grass, row.zone)
		if row.want == None {
			if f != nil && f.Weight > None {
				t.Errorf("%s: %v %s", row.name, f.Weight, f.Says)
			}
			continue
		}
		if f == nil || f.Weight != row.want || row.ground != "" && f.Ground != row.ground || !strings.Contains(f.Source, "label entry of P, 00000-9; ") || f.Do == "" {
			t.Errorf("%s: %+v", row.name, f)
			continue
		}
		for _, s := range row.says {
			if !strings.Contains(f.Says, s) && !strings.Contains(f.Source, s) {
				t.Errorf("%s: %q is not in %s", row.name, s, f.Says)
			}
		}
		if f.Unlawful() != "" {
			t.Errorf("%s: %s", row.name, f.Unlawful())
		}
	}
}

func TestHeatIsOneStepMore(t *testing.T) {
	for temp, want := range map[string]Weight{"85": Note, "86": Ask} {
		if f := grassFound(t, "mesotrione", "tall_fescue", "", `{"fact":"weather","wind_mph":6,"temp_f":`+temp+`}`); f == nil || f.Weight != want {
			t.Errorf("at %s F: %+v", temp, f)
		}
	}
	if f := grassFound(t, "mesotrione", "tall_fescue", "", `{"fact":"weather","wind_mph":6,"temp_f":70,"forecast_high_f":92,"forecast_source":"airport","forecast_at":"18:10"}`); f == nil || f.Weight != Ask {
		t.Errorf("by the forecast: %+v", f)
	}
}

// The operator's own note adds to what is said, by product, active, grass, lawn or zone, and takes nothing away.
func TestOwnNotesOnlyAdd(t *testing.T) {
	for _, row := range []struct {
		note string
		want Weight
	}{
		{`"product":"P","weight":"ask"`, Ask},
		{`"active":"Sulfo-sulfuron","weight":"stop"`, Stop},
		{`"grass":"zoysiagrass","weight":"ask"`, Ask},
		{`"lawn":"L","zone":"z","weight":"note"`, Note},
		{`"lawn":"L","weight":"ask"`, Ask},
		{`"grass":"tall_fescue","weight":"stop"`, None},
		{`"active":"mesotrione","weight":"stop"`, None},
	} {
		f := grassFound(t, "sulfosulfuron", "zoysiagrass", "", `{"fact":"cautioned",`+row.note+`,"says":"it thinned here in 2024."}`)
		if row.want == None {
			if f != nil {
				t.Errorf("%s: %+v", row.note, f)
			}
			continue
		}
		if f == nil || f.Weight != row.want || f.Ground != GroundSetting || f.Source != "own note of the operator" || !strings.Contains(f.Says, "it thinned here in 2024;") || f.About != aboutNote {
			t.Errorf("%s: %+v", row.note, f)
		}
	}
	f := grassFound(t, "sethoxydim", "bermudagrass_common", "", `{"fact":"cautioned","product":"P","weight":"note","says":"slow to come back"}`)
	if f == nil || f.Weight != Ask || f.Ground != GroundExtension || len(f.Also) != 1 || !strings.Contains(f.Says, "slow to come back") {
		t.Errorf("a lighter note beside the reference: %+v", f)
	}
}

// A reason for what the reference says does not answer the own note, and the other way round.
func TestAReasonForTheReferenceLeavesTheNote(t *testing.T) {
	b := play(t, lawnOf("sethoxydim", "bermudagrass_common", "", "2026-05-28")+`
{"fact":"cautioned","product":"P","weight":"stop","says":"not again"}
{"fact":"visit_begun","lawn":"L"}`)
	in := Intent{Lawn: "L", With: "ride-on"}
	r := before(t, b, in)
	log(t, b, GoOn(*find(r, "grass"), "L", "asked for")...)
	if r := before(t, b, in); r.Verdict != Ask {
		t.Errorf("%v %+v", r.Verdict, r.Findings)
	}
}

// common practice, no source: a mix for bermudagrass and zoysiagrass is not for centipedegrass and St. Augustinegrass; one
// for warm-season grass is not for tall fescue.
func TestAMixForSomeGrassesIsNotForOthers(t *testing.T) {
	b := play(t, loadedLines+hoseOf("a"))
	for grass, want := range map[string]bool{
		"bermudagrass_common": false, "zoysiagrass": false, "centipedegrass": true, "st_augustinegrass": true, "tall_fescue": true,
	} {
		more(t, b, fmt.Sprintf(`{"fact":"lawn","name":"X","zones":[{"name":"all","grass":%q,"area_sqft":2000}]}`, grass))
		f := find(before(t, b, Intent{Lawn: "X"}), "grass")
		if stops := f != nil && f.Weight == Stop && f.Ground == GroundLabel && f.Unlawful() != ""; stops != want {
			t.Errorf("%s: %+v", grass, f)
		}
		if fits := strings.Contains(string(Fits(b, "X")), "a"); fits == want {
			t.Errorf("a fits %s: %v", grass, fits)
		}
	}
}

func TestWhatTheReferenceStopsFitsNoLawn(t *testing.T) {
	b := play(t, strings.Replace(loadedLines, `"name":"sulfosulfuron","percent_by_weight":75`, `"name":"glyphosate","lb_per_gal":4`, 1))
	if fits := Fits(b, "Alder"); strings.Contains(string(fits), "a") {
		t.Errorf("fits %q", fits)
	}
	more(t, b, `{"fact":"growth_seen","lawn":"Alder","growth":"dormant"}`)
	if fits := Fits(b, "Alder"); !strings.Contains(string(fits), "a") {
		t.Errorf("dormant: fits %q", fits)
	}
}

// University of Georgia, urban agriculture: warm-season turf is more easily hurt while it greens up. The dates of the
// settings, 1 February and 15 May, are common practice, no source.
func TestGrowthIsAskedAfterTheWinter(t *testing.T) {
	for _, row := range []struct {
		at, grass, growth, since string
		want                     bool
	}{
		{"2026-01-31", "zoysiagrass", "", "", false},
		{"2026-02-01", "zoysiagrass", "", "", true},
		{"2026-05-15", "zoysiagrass", "", "", true},
		{"2026-05-16", "zoysiagrass", "", "", false},
		{"2026-03-10", "tall_fescue", "", "", false},
		{"2026-03-10", "zoysiagrass", "growing", "2025-06-01", true},
		{"2026-03-10", "zoysiagrass", "dormant", "2026-01-31", true},
		{"2026-03-10", "zoysiagrass", "dormant", "2026-02-01", false},
		{"2026-03-10", "zoysiagrass", "greening_up", "2026-03-09", false},
		{"2026-03-10", "zoysiagrass", "sodded", "2025-10-09", false},
		{"2026-05-28", "zoysiagrass", "greening_up", "2026-05-10", true},
		{"2026-05-28", "zoysiagrass", "growing", "2025-06-01", false},
		{"2026-05-28", "zoysiagrass", "dormant", "2026-05-20", false},
		{"2026-11-20", "zoysiagrass", "dormant", "2026-11-10", false},
		{"2027-01-20", "zoysiagrass", "dormant", "2026-11-10", false},
		{"2027-01-20", "zoysiagrass", "dormant", "2026-02-10", true},
	} {
		at, err := core.ParseMoment(row.at + "T09:00:00-05:00")
		if err != nil {
			t.Fatal(err)
		}
		why, asked := growthAsked(core.NewBook(1), core.Zone{Name: "z", Grass: row.grass, Growth: row.growth, GrowthSince: row.since}, at)
		if asked != row.want || (why != "") != row.want {
			t.Errorf("%+v: %v %q", row, asked, why)
		}
	}
}

func TestGrowthUnknownIsOneAskAndSaidOtherwise(t *testing.T) {
	b := play(t, lawnOf("sulfosulfuron", "zoysiagrass", "", "2026-03-10"))
	at, _ := core.ParseMoment("2026-03-10T09:00:00-05:00")
	ask := func() (Report, *Finding) {
		r, err := Before(b, Intent{Lawn: "L", With: "ride-on", At: at})
		if err != nil {
			t.Fatal(err)
		}
		return r, find(r, "grass")
	}
	r, f := ask()
	if f == nil || f.Weight != Ask || f.About != aboutGrowth || f.Cure != ActGrowth || f.Do != "Say how it grows." || hasText(r.NotChecked, "growth state: 1 of 1 zone (never said)") {
		t.Errorf("%+v %v", f, r.NotChecked)
	}
	more(t, b, `{"fact":"growth_seen","lawn":"L","growth":"growing","since":"2026-03-10"}`)
	if _, f := ask(); f != nil {
		t.Errorf("%+v", f)
	}
	r = before(t, play(t, lawnOf("sulfosulfuron", "zoysiagrass", "", "2026-05-28")), Intent{Lawn: "L", With: "ride-on"})
	if find(r, "grass") != nil || !hasText(r.NotChecked, "growth state: 1 of 1 zone (never said)") {
		t.Errorf("in summer: %+v %v", r.Findings, r.NotChecked)
	}
	b = play(t, lawnOf("iron", "zoysiagrass", "", "2026-03-10"))
	if _, f := ask(); f != nil {
		t.Errorf("iron: %+v", f)
	}
}

func TestEveryClassHasItsSettings(t *testing.T) {
	b := core.NewBook(1)
	for _, a := range label.Actives() {
		for _, v := range []label.Rating{label.Tolerant, label.Moderate, label.NotTolerant} {
			l := judge{b, clock, label.FormSpray}.fill(residueLimit{class: a.Trace, verdict: label.Verdict{Rating: v, Rows: []label.Row{{Basis: label.BasisTrial}}}}, core.Zone{})
			if l.note <= 0 || v != label.Tolerant && l.ask <= 0 || v != label.Tolerant && a.Trace != 'F' && l.stop <= l.ask || b.SettingSource(l.noteOf) == "" {
				t.Errorf("%s, class %c, %v: %+v", a.Name, a.Trace, v, l)
			}
		}
	}
}
