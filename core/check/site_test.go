package check

import (
	"strings"
	"testing"

	"example.com/tintline/core/label"
)

// siteLines are one mix for each product that is judged beside something. The label entries are made up.
const siteLines = `
{"fact":"rig","name":"truck","compartments":[{"letter":"a","capacity_gal":200},{"letter":"b","capacity_gal":200}],"cell_gal":0.2,"hoses":[{"name":"reel","inside_diameter_in":0.375,"length_ft":300}],"applicators":[{"name":"gun","kind":"gun","hose":"reel","delivery_gal_per_1000_sqft":1.6,"flow_gpm":2.5},{"name":"spreader","kind":"spreader","hopper_lb":50}]}
{"fact":"product","name":"D","form":"liquid","kind":"herbicide","actives":[{"name":"dicamba","lb_per_gal":4}],"grasses":["tall_fescue"],"water_ft":25,"no_bloom":"yes","new_turf_days":60,"reseed_days":90}
{"fact":"product","name":"T","form":"liquid","kind":"herbicide","actives":[{"name":"triclopyr","lb_per_gal":4}],"grasses":["tall_fescue"]}
{"fact":"product","name":"M","form":"liquid","kind":"herbicide","actives":[{"name":"mesotrione","lb_per_gal":4}],"grasses":["tall_fescue"],"none":["water","new_turf_days","reseed_days"],"no_bloom":"no"}
{"fact":"product","name":"P","form":"liquid","kind":"herbicide","actives":[{"name":"pendimethalin","lb_per_gal":3.3}],"grasses":["tall_fescue"]}
{"fact":"product","name":"H","form":"liquid","kind":"herbicide","actives":[{"name":"isoxaben","lb_per_gal":4}],"grasses":["tall_fescue"]}
{"fact":"product","name":"B","form":"liquid","kind":"insecticide","actives":[{"name":"bifenthrin","lb_per_gal":0.67}],"grasses":["all_turf"],"no_bloom":"no"}
{"fact":"product","name":"N","form":"liquid","kind":"fertiliser","grasses":["all_turf"],"nitrogen_pct":28}
{"fact":"product","name":"K","form":"liquid","kind":"fertiliser","grasses":["all_turf"],"nitrogen_pct":0,"phosphate_pct":0}
{"fact":"product","name":"S","form":"dry","kind":"fertiliser","grasses":["all_turf"],"nitrogen_pct":24,"rate_low_lb_per_1000_sqft":2,"rate_high_lb_per_1000_sqft":4}
{"fact":"day_opened","date":"2026-05-28","operator":"R. Example","route":[]}
{"fact":"weather",` + all + `}
`

// beside is a lawn of which one zone has what is to be judged.
func beside(product, zone string) string {
	return siteLines + `{"fact":"mix","name":"m","parts":[{"product":"` + product + `","rate_fl_oz_per_1000_sqft":1}]}
{"fact":"lawn","name":"Fir","zones":[{"name":"front","grass":"tall_fescue","area_sqft":4000` + zone + `},{"name":"back","grass":"tall_fescue","area_sqft":2000}]}
` + inHose("m")
}

var siteRows = []struct {
	name, product, zone string
	about               string
	weight              Weight
	says, do            string
	ground, source      string
}{
	{"water as far as the label's strip", "D", `,"sites":[{"kind":"water","feet":25}]`, label.SiteWater, None, "", "", "", ""},
	{"water nearer", "D", `,"sites":[{"kind":"water","feet":10}]`, label.SiteWater, Stop, "front: the water is 10 ft off; the label entry of D asks for a strip of 25 ft.", "Leave 15 ft of front along the water", GroundLabel, "label entry of D"},
	{"a well nearer", "D", `,"sites":[{"kind":"well","feet":24.5}]`, label.SiteWell, Stop, "the well is 24.5 ft off", "Leave 0.5 ft of front", GroundLabel, "label entry of D"},
	{"water, how far is not entered", "D", `,"sites":[{"kind":"water"}]`, label.SiteWater, Ask, "front: the water has no distance entered; the label entry of D asks for a strip of 25 ft.", "Look how far off the water is", GroundLabel, "label entry of D"},
	{"a pond in free words", "D", `,"hazards":["gate","pond"]`, label.SiteWater, Ask, "the water has no distance entered", "Look how far", GroundLabel, "label entry of D"},
	{"a pond in free words, entered with its feet", "D", `,"hazards":["pond"],"sites":[{"kind":"water","feet":40}]`, label.SiteWater, None, "", "", "", ""},
	{"water, no strip on the label", "M", `,"sites":[{"kind":"water","feet":1}]`, label.SiteWater, None, "", "", "", ""},
	{"fertiliser within the strip", "N", `,"sites":[{"kind":"water","feet":14}]`, label.SiteWater, Ask, "N feeds plants, and 15 ft are left along water; local rules decide.", "Leave 1 ft of front along the water, or what local rules ask.", GroundSetting, "Agric. 8-803.5"},
	{"fertiliser at the strip", "N", `,"sites":[{"kind":"water","feet":15}]`, label.SiteWater, None, "", "", "", ""},
	{"fertiliser, how far is not entered", "N", `,"sites":[{"kind":"water"}]`, label.SiteWater, Ask, "the water has no distance entered", "Look how far", GroundSetting, "local rules decide"},
	{"potash alone", "K", `,"sites":[{"kind":"water","feet":1}]`, label.SiteWater, None, "", "", "", ""},
	{"growth regulator in the bed", "T", `,"sites":[{"kind":"edible","feet":0}]`, label.SiteEdible, Stop, "front: food plants grow 0 ft off, nearer than 25 ft; triclopyr: vegetables and vines are injured by traces", "Leave T out there", GroundTrial, "Warmund et al. 2022"},
	{"growth regulator within reach", "D", `,"sites":[{"kind":"edible","feet":24}]`, label.SiteEdible, Stop, "food plants grow 24 ft off, nearer than 25 ft; dicamba: tomatoes", "Leave D out", GroundTrial, "Warmund et al. 2022"},
	{"growth regulator farther off", "T", `,"sites":[{"kind":"edible","feet":25}]`, label.SiteEdible, Ask, "food plants grow 25 ft off", "which way the wind goes", GroundTrial, "Warmund"},
	{"growth regulator, how far is not entered", "T", `,"hazards":["vegetable bed"]`, label.SiteEdible, Ask, "how far off is not entered", "Look how far off", GroundTrial, "Warmund"},
	{"another herbicide beside the bed", "M", `,"sites":[{"kind":"edible","feet":0}]`, label.SiteEdible, None, "", "", "", ""},
	{"dicamba over roots", "D", `,"sites":[{"kind":"roots"}]`, label.SiteRoots, Ask, "front: roots lie under it; dicamba: keep it out of the dripline, better as far off as the tree is high", "Keep D out of the dripline", GroundExtension, "Delaware extension"},
	{"another regulator over roots", "T", `,"sites":[{"kind":"roots"}]`, label.SiteRoots, None, "", "", "", ""},
	{"bloom, the label forbids it", "D", `,"sites":[{"kind":"bloom"}]`, label.SiteBloom, Stop, "the label entry of D forbids it on what is in bloom", "Mow the bloom off", GroundLabel, "label entry of D"},
	{"bloom, an insecticide that harms bees", "B", `,"sites":[{"kind":"bloom"}]`, label.SiteBloom, Ask, "bifenthrin: pyrethroids are known for the harm that they do to bees", "Mow the bloom off", GroundRecalled, "recalled"},
	{"bloom, a herbicide whose label allows it", "M", `,"sites":[{"kind":"bloom"}]`, label.SiteBloom, None, "", "", "", ""},
	// 60 days from 30 March are 29 May; from 29 March 28 May (calendar)
	{"seeded, a day before the label's days", "D", `,"growth":"seeded","growth_since":"2026-03-30"`, aboutNewTurf, Stop, "front is newly seeded since 2026-03-30; the label entry of D asks for 60 days.", "Leave front out until 2026-05-29.", GroundLabel, "label entry of D"},
	{"seeded, the label's days over", "D", `,"growth":"seeded","growth_since":"2026-03-29"`, aboutNewTurf, None, "", "", "", ""},
	{"sodded, since when is not entered", "D", `,"growth":"sodded"`, aboutNewTurf, Ask, "front is newly sodded, since when is not entered", "Enter the date", GroundLabel, "label entry of D"},
	{"seeded, a herbicide that is blank", "T", `,"growth":"seeded","growth_since":"2026-05-01"`, aboutNewTurf, Ask, "broadleaf herbicides are taught to wait for two mowings", "Read the label", GroundExtension, "Purdue"},
	{"seeded, a fertiliser that is blank", "N", `,"growth":"seeded","growth_since":"2026-05-01"`, aboutNewTurf, None, "", "", "", ""},
	{"seeded, none on the label", "M", `,"growth":"seeded","growth_since":"2026-05-01"`, aboutNewTurf, None, "", "", "", ""},
	{"growing", "D", `,"growth":"growing","growth_since":"2026-05-01"`, aboutNewTurf, None, "", "", "", ""},
	// 90 days from 28 May are 26 August (calendar)
	{"seeding a day too soon", "D", `,"sites":[{"kind":"seeding","date":"2026-08-25"}]`, label.SiteSeeding, Stop, "front: seed is to be sown on 2026-08-25, in 89 days; the label entry of D asks for 90.", "have it sown from 2026-08-26 on", GroundLabel, "label entry of D"},
	{"seeding late enough", "D", `,"sites":[{"kind":"seeding","date":"2026-08-26"}]`, label.SiteSeeding, None, "", "", "", ""},
	{"seeding that is over", "D", `,"sites":[{"kind":"seeding","date":"2026-05-27"}]`, label.SiteSeeding, None, "", "", "", ""},
	{"seeding, when is not entered", "D", `,"sites":[{"kind":"seeding"}]`, label.SiteSeeding, Ask, "when is not entered", "Ask when", GroundLabel, "label entry of D"},
	{"seeding, a pre-emergence herbicide that is blank, recalled", "P", `,"sites":[{"kind":"seeding","date":"2026-09-10"}]`, label.SiteSeeding, Ask, "in 105 days; the label entry of P says nothing of it; the reference has 13 weeks for pendimethalin.", "Read the label", GroundRecalled, "recalled"},
	{"seeding, a pre-emergence herbicide that is blank, read", "H", `,"sites":[{"kind":"seeding","date":"2026-06-10"}]`, label.SiteSeeding, Ask, "the reference has 8.6 weeks for isoxaben.", "Read the label", GroundExtension, ""},
	{"seeding, a post-emergence herbicide that is blank", "T", `,"sites":[{"kind":"seeding","date":"2026-06-10"}]`, label.SiteSeeding, None, "", "", "", ""},
	{"seeding, none on the label", "M", `,"sites":[{"kind":"seeding","date":"2026-06-10"}]`, label.SiteSeeding, None, "", "", "", ""},
	{"a dog", "D", `,"hazards":["dog"]`, label.SiteWater, None, "", "", "", ""},
}

func TestSites(t *testing.T) {
	for _, row := range siteRows {
		t.Run(row.name, func(t *testing.T) {
			b := play(t, beside(row.product, row.zone))
			f := about(before(t, b, Intent{Lawn: "Fir"}), "site", row.about)
			if row.weight == None {
				if f != nil {
					t.Fatalf("it says %s", f.Says)
				}
				return
			}
			if f == nil {
				t.Fatal("nothing is said")
			}
			if f.Weight != row.weight || !strings.Contains(f.Says, row.says) || !strings.Contains(f.Do, row.do) || f.Ground != row.ground || !strings.Contains(f.Source, row.source) || f.Source == "" {
				t.Errorf("%v %q\ndo %q\n[%s] %s\nwant %v %q\ndo %q\n[%s] %s", f.Weight, f.Says, f.Do, f.Ground, f.Source, row.weight, row.says, row.do, row.ground, row.source)
			}
			if f.Part != PartZone || len(f.Zones) != 1 || f.Zones[0] != "front" || f.Product != row.product || f.Area.Text() != "4,000" {
				t.Errorf("it is about %s %v %s %s", f.Part, f.Zones, f.Product, f.Area.Text())
			}
			if f := about(before(t, b, Intent{Lawn: "Fir", Zones: []string{"back"}}), "site", row.about); f != nil {
				t.Errorf("of the other zone it says %s", f.Says)
			}
		})
	}
}

// What is only left in the hose is no matter of the site rule, and what is spread is.
func TestSitesAreOfWhatReachesThem(t *testing.T) {
	zone := `,"sites":[{"kind":"water","feet":10}]`
	b := play(t, strings.Replace(beside("D", zone), inHose("m"), "", 1)+`{"fact":"loaded","into":"spreader","parts":[{"product":"S","amount_lb":40}]}`)
	if f := about(before(t, b, Intent{Lawn: "Fir", With: "spreader"}), "site", label.SiteWater); f == nil || f.Product != "S" || f.Weight != Ask {
		t.Errorf("%+v", f)
	}
	b = play(t, beside("M", zone)+`{"fact":"loaded","into":"a","volume_gal":1,"parts":[{"product":"D","amount_fl_oz":0.3}]}
{"fact":"pushed_back","into":"a","volume_gal":8}
{"fact":"mix","name":"d","parts":[{"product":"D","rate_fl_oz_per_1000_sqft":1}]}`)
	if f := about(before(t, b, Intent{Lawn: "Fir"}), "site", label.SiteWater); f != nil {
		t.Errorf("of a trace it says %s", f.Says)
	}
}

func TestBlankSiteLimitsAreNamed(t *testing.T) {
	zone := `,"growth":"seeded","sites":[{"kind":"water","feet":100},{"kind":"bloom"},{"kind":"seeding","date":"2027-01-01"}]`
	for product, want := range map[string]string{
		"T": "strip along water, bloom, wait before seeding, wait on new turf: 1 of 1 product (label entry is blank)",
		"M": "", "D": "",
	} {
		got := strings.Join(before(t, play(t, beside(product, zone)), Intent{Lawn: "Fir"}).NotChecked, "; ")
		if !strings.Contains(got, want) || (want == "") == strings.Contains(got, "strip along water") {
			t.Errorf("%s: %s", product, got)
		}
	}
	if got := strings.Join(before(t, play(t, beside("T", "")), Intent{Lawn: "Fir"}).NotChecked, "; "); strings.Contains(got, "water") || strings.Contains(got, "bloom") {
		t.Errorf("where there is no water: %s", got)
	}
}
