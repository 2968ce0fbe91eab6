package check

import (
	"strings"
	"testing"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// nitrogenRows are held against the rows of the reference, by grass and region; pounds are for each 1,000 sq ft.
var nitrogenRows = []struct {
	name   string
	grass  string
	region string
	quick  float64 // per cent of the nitrogen; less than 0: not entered
	past   []laying
	date   string
	now    float64 // pounds of nitrogen
	want   Weight
	says   string
	ground string
	source string
}{
	{
		"at the most of one application", "tall_fescue", "IL", 50, nil, "2026-05-01", 1.0, None, "", "",
		"Univ. of Illinois: not more than 1.0 lb in one application",
	},
	{
		"over it", "tall_fescue", "IL", 50, nil, "2026-05-01", 1.1, Ask, "1.1 lb of nitrogen per 1,000 sq ft in this visit; the reference has at most 1 in one application (IL: not more than this in one application).", GroundExtension,
		"Univ. of Illinois: not more than 1.0 lb in one application",
	},
	{
		"all of it acts at once", "st_augustinegrass", "FL central", 100, nil, "2026-05-01", 0.8, Ask, "0.8 lb per 1,000 sq ft of nitrogen that acts at once; the reference has at most 0.7", GroundExtension,
		"Univ. of Florida, urban turf rule: 0.7 lb without slow-release nitrogen",
	},
	{
		"half of it acts at once", "st_augustinegrass", "FL central", 50, nil, "2026-05-01", 1.0, None, "", "",
		"Univ. of Florida, urban turf rule: 0.7 lb without slow-release nitrogen; 1.0 lb x 0.5 = 0.5 lb",
	},
	{
		"how much acts at once is not entered", "st_augustinegrass", "FL central", -1, nil, "2026-05-01", 0.8, Note, "how much of it acts at once is not entered", GroundExtension,
		"Univ. of Florida, urban turf rule",
	},
	{
		"more than recalled", "st_augustinegrass", "FL central", 50, nil, "2026-05-01", 1.2, Note, "at most 1 in one application (FL: with slow-release N)", GroundRecalled,
		"recalled: 1.0 lb with slow-release nitrogen; the same at 1.2 x 0.5 = 0.6 of 0.7 that acts at once",
	},
	{
		"in the fall", "centipedegrass", "TX", 50, nil, "2026-10-01", 0.8, Ask, "at most 0.75 in one application (TX: fall application)", GroundExtension,
		"Texas: 0.5 to 0.75 lb as a fall application",
	},
	{"the same in spring", "centipedegrass", "TX", 50, nil, "2026-05-01", 0.8, None, "", "", "Texas: 0.5 to 0.75 lb as a fall application"},
	{
		"the year", "centipedegrass", "AR", 50,
		[]laying{{"2026-04-01", "F", 1, ""}, {"2026-06-01", "F", 0.9, ""}},
		"2026-08-01", 0.4, Ask,
		"1.9 of 2 lb of nitrogen per 1,000 sq ft this year, this would make 2.3; the reference for centipedegrass has up to 2 (AR).", GroundExtension,
		"Univ. of Arkansas: 1 to 2 lb a year",
	},
	{
		"without a region the widest", "centipedegrass", "", 50,
		[]laying{{"2026-04-01", "F", 1, ""}, {"2026-06-01", "F", 0.9, ""}},
		"2026-08-01", 0.4, None, "", "",
		"Univ. of Florida and Texas: up to 3 lb a year; Arkansas up to 2",
	},
	{
		"without a region the strictest for one application", "centipedegrass", "", 50, nil, "2026-05-01", 1.1, Ask, "at most 1 in one application (IL", GroundExtension,
		"Univ. of Illinois: not more than 1.0 lb in one application",
	},
	{
		"a recalled year", "seashore_paspalum", "southeast US", 50,
		[]laying{{"2026-03-01", "F", 1, ""}, {"2026-04-15", "F", 1, ""}, {"2026-06-01", "F", 1, ""}, {"2026-07-15", "F", 0.9, ""}},
		"2026-09-01", 0.4, Note,
		"this would make 4.3; the reference for seashore paspalum has up to 4", GroundRecalled, "recalled: 2 to 4 lb a year",
	},
}

func TestNitrogen(t *testing.T) {
	for _, row := range nitrogenRows {
		t.Run(row.name, func(t *testing.T) {
			b := fertilised(t, row.grass, row.region, row.quick)
			for _, l := range row.past {
				b.lay(laying{l.date, "F", l.rate * 10, spread + lbThou})
			}
			r, err := Before(b.Book, b.ready(laying{row.date, "F", row.now * 10, spread + lbThou}))
			if err != nil {
				t.Fatal(err)
			}
			f := find(r, "nitrogen")
			switch {
			case row.want == None && f != nil:
				t.Errorf("%s %s (%s)", f.Weight, f.Says, row.source)
			case row.want != None && f == nil:
				t.Errorf("nothing is said (%s): %+v", row.source, r.Findings)
			case f != nil && (f.Weight != row.want || !strings.Contains(f.Says, row.says) || f.Ground != row.ground):
				t.Errorf("%s (%s) %s\nwant %s (%s) %s", f.Weight, f.Ground, f.Says, row.want, row.ground, row.says)
			}
		})
	}
}

// fertilised is an acre of a grass and a product of 10 per cent nitrogen.
func fertilised(t *testing.T, grass, region string, quick float64) acreBook {
	e := label.Entry{Form: measure.Dry, Kind: "fertiliser", Nitrogen: core.Known(10.0), None: none()}
	if quick >= 0 {
		e.QuickNitrogen = core.Known(quick)
	}
	b := newAcre(t, grass, []core.Product{{ProductName: "F", Label: e}})
	if region != "" {
		log(t, b.Book, &core.Setting{SettingName: core.NitrogenRegion, Value: region})
	}
	return b
}

// A region without a figure for the grass is said not to be checked.
func TestNitrogenWithoutAFigure(t *testing.T) {
	b := fertilised(t, "tall_fescue", "TX", 50)
	r, err := Before(b.Book, b.ready(laying{"2026-05-01", "F", 9, spread + lbThou}))
	if err != nil {
		t.Fatal(err)
	}
	if got := strings.Join(r.NotChecked, "; "); !strings.Contains(got, "nitrogen in a year: no figure for tall fescue in TX (reference)") {
		t.Errorf("not checked: %s", got)
	}
}

// The setting offers the regions for which the table has pounds of nitrogen, and no others.
func TestNitrogenRegionsAreThoseOfTheTable(t *testing.T) {
	want := map[string]bool{noRegion: true}
	for _, g := range label.Grasses() {
		for _, record := range []string{label.NitrogenOnce, label.NitrogenYear} {
			for _, r := range label.NitrogenOf(record, g.Name, "") {
				if r.Region != "any" {
					want[r.Region] = true
				}
			}
		}
	}
	for _, row := range core.Settings() {
		if row.Name != core.NitrogenRegion {
			continue
		}
		if row.Options[0] != noRegion || len(row.Options) != len(want) {
			t.Errorf("options %v, the table has %v", row.Options, want)
		}
		for _, o := range row.Options {
			if !want[o] {
				t.Errorf("%q is no region of the table", o)
			}
		}
	}
}

// Dissolved nitrogen may burn the leaf: recalled, 0.5 lb for each 1,000 sq ft; the same dry is no matter of it.
func TestDissolvedNitrogen(t *testing.T) {
	e := label.Entry{Form: measure.Dry, Kind: "fertiliser", Nitrogen: core.Known(46.0), QuickNitrogen: core.Known(100.0), None: none()}
	b := newAcre(t, "tall_fescue", []core.Product{{ProductName: "U", Label: e}})
	r, err := Before(b.Book, b.ready(laying{"2026-05-01", "U", 0.6 / 0.46, lbThou}))
	if err != nil {
		t.Fatal(err)
	}
	if f := find(r, "nitrogen"); f == nil || f.Weight != Note || f.Ground != GroundRecalled || !strings.Contains(f.Says, "0.6 lb") {
		t.Errorf("sprayed: %+v", f)
	}
	b = newAcre(t, "tall_fescue", []core.Product{{ProductName: "U", Label: e}})
	if r, err = Before(b.Book, b.ready(laying{"2026-05-01", "U", 0.6 / 0.46, spread + lbThou})); err != nil || find(r, "nitrogen") != nil {
		t.Errorf("spread: %v %+v", err, find(r, "nitrogen"))
	}
}
