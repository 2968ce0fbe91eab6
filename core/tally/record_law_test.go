package tally

import (
	"strings"
	"testing"

	"example.com/tintline/core"
)

// recordDay is an invented day on which all is said that any rule that was read asks for.
const recordDay = `
{"fact":"setting","name":"licence","value":"00000-L7"}
{"fact":"setting","name":"licence_category","value":"turf"}
{"fact":"setting","name":"supervisor","value":"S. Example"}
{"fact":"setting","name":"helpers","value":"H. Example, trained 2026-02-03"}
{"fact":"setting","name":"business","value":"Example Lawn Care"}
{"fact":"setting","name":"business_address","value":"9 Sample Road"}
{"fact":"product","name":"spring feed","form":"liquid","kind":"herbicide","actives":[{"name":"2,4-D","lb_per_gal":3.8},{"name":"dicamba","lb_per_gal":0.5}],"registration":"00000-11","grasses":["tall_fescue"],"restricted":"yes","reentry":"keep off until dry","nitrogen_pct":10,"phosphate_pct":2,"potash_pct":0,"density_lb_per_gal":10,"rate_low_fl_oz_per_1000_sqft":1,"rate_high_fl_oz_per_1000_sqft":2}
{"fact":"mix","name":"S","parts":[{"product":"spring feed","rate_fl_oz_per_1000_sqft":1.5,"target":"dandelion"}]}
{"fact":"lawn","name":"5 Oak","customer":"C. Example","address":"5 Oak Way","customer_address":"1 Elsewhere Way","phone":"555-0105","zip":"00005","town":"Exampleton","county":"Sample County","zones":[{"name":"front","grass":"tall_fescue","area_sqft":4000}]}
{"fact":"day_opened","date":"2026-05-28","operator":"R. Example","route":["5 Oak"]}
{"fact":"loaded","into":"a","volume_gal":150,"mix":"S","for":"gun","place":"depot"}
{"fact":"lined_up","supply":["a"]}
{"fact":"pushed_back","to":"waste/pail","volume_gal":20}
{"fact":"weather","wind_mph":6,"wind_from":"SW","temp_f":71,"rh_pct":55}
{"fact":"visit_begun","lawn":"5 Oak"}
{"fact":"sprayed","lawn":"5 Oak","zones":["front"],"applicator":"gun","by":"area","area_sqft":4000}
{"fact":"recorded","field":"incident","value":"none"}
{"fact":"recorded","field":"disposal","value":"none"}
{"fact":"visit_done","lawn":"5 Oak"}
`

// elements say in which fields an element is to be found on that day, and as what.
var elements = map[string][][2]string{
	"application_date":          {{"date", "2026-05-28"}},
	"start_time":                {{"arrived", ":"}},
	"end_time":                  {{"completed", ":"}},
	"customer_name":             {{"customer", "C. Example"}},
	"customer_address":          {{"customer_address", "1 Elsewhere Way"}},
	"customer_phone":            {{"phone", "555-0105"}},
	"site_address":              {{"site_address", "5 Oak Way"}},
	"site_zip":                  {{"site_zip", "00005"}},
	"site_municipality_county":  {{"site_town", "Exampleton"}, {"site_county", "Sample County"}},
	"site_or_plant_treated":     {{"zone", "front"}, {"grass", "tall fescue"}},
	"target_pest":               {{"target", "dandelion"}},
	"target_pest_per_product":   {{"target", "dandelion"}},
	"product_name":              {{"product", "spring feed"}},
	"epa_reg_no":                {{"registration", "00000-11"}},
	"active_ingredient_name":    {{"actives", "2,4-D + dicamba"}},
	"product_amount_total":      {{"amount", "6.00 fl oz"}}, // 4,000 sq ft at 1.5 fl oz per 1,000
	"diluent_or_mix_volume":     {{"mix_volume", "6"}},      // at 1.5 gal per 1,000
	"concentration_or_dilution": {{"dilution", "1.00 fl oz in a gallon"}},
	"rate_per_area":             {{"rate", "1.50 fl oz per 1,000 sq ft"}},
	"area_treated":              {{"area", "4000"}},
	"equipment_or_method":       {{"applicator", "gun"}, {"method", "gun"}},
	"applicator_name":           {{"operator", "R. Example"}},
	"applicator_licence_no":     {{"licence", "00000-L7"}},
	"supervising_applicator":    {{"supervisor", "S. Example"}},
	"helper_names":              {{"helpers", "H. Example, trained 2026-02-03"}},
	"business_name_address":     {{"business", "Example Lawn Care"}, {"business_address", "9 Sample Road"}},
	"wind_direction":            {{"wind_from", "SW"}},
	"wind_speed":                {{"wind_mph", "6"}},
	"air_temperature":           {{"temp_f", "71"}},
	"other_weather":             {{"other_weather", "humidity 55 %"}},
	"reentry_or_hour_completed": {{"reentry", "keep off until dry"}},
	"mix_load_location":         {{"mixed_where", "depot"}},
	"incident_note":             {{"incident", "none"}},
	"disposal_note":             {{"disposal", "none"}},
	"load_sequence":             {{"load_order", "1"}, {"load_lawns", "5 Oak"}},
	"fertiliser_analysis":       {{"analysis", "10-2-0"}},
	// 1.5 fl oz at 10 lb/gal is 0.1171875 lb per 1,000 sq ft, a tenth of it nitrogen and a fiftieth phosphate
	"fertiliser_rate":     {{"nitrogen_lb_per_1000_sqft", "0.0117188"}, {"phosphate_lb_per_1000_sqft", "0.00234375"}},
	"fertiliser_amount":   {{"amount", "6.00 fl oz"}},
	"customer_copy_given": {{"notice", "paper"}},
}

func recordOf(t *testing.T, lines string) Record {
	t.Helper()
	k := newKeeper(t)
	for _, s := range strings.Split(strings.TrimSpace(lines), "\n") {
		if err := k.enter(s); err != nil {
			t.Fatalf("%s: %v", s, err)
		}
	}
	for _, r := range RecordsOf(k.b) {
		if r.Product == "spring feed" {
			return r
		}
	}
	t.Fatal("no record of the product")
	return Record{}
}

// TestEachRuleFindsItsElements: each element that a rule asks for is found in the record of an invented day; without it the profile
// names it. Source of each list: the citation of the profile, as read (see Profile).
func TestEachRuleFindsItsElements(t *testing.T) {
	for _, p := range Profiles() {
		t.Run(p.Jurisdiction, func(t *testing.T) {
			r := recordOf(t, recordDay)
			r.Notice = "paper at the door" // as told by an entry of its own
			if p.Applies == OfGeneral {
				r.Restricted = "no"
			}
			cells := r.Cells()
			if len(p.Asks) == 0 || p.Citation == "" || p.KeptYears < 1 || p.SourceDate == "" {
				t.Errorf("the profile is %+v", p)
			}
			for _, a := range p.Asks {
				want, known := elements[a.Element]
				if !known {
					t.Errorf("%s: no field answers %s", p.Citation, a.Element)
				}
				for _, w := range want {
					if !strings.Contains(cells[w[0]], w[1]) {
						t.Errorf("%s asks for %s: %s is %q, not %q", p.Citation, a.Element, w[0], cells[w[0]], w[1])
					}
				}
			}
			if p.Applies == Rescinded {
				if len(p.Missing(&Record{Pesticide: "yes", Restricted: "yes"})) != 0 {
					t.Error("a rule that was rescinded asks for something")
				}
				return
			}
			if got := p.Missing(&r); len(got) != 0 {
				t.Errorf("%s: missing %v", p.Citation, got)
			}
			blank := Record{Pesticide: "yes", Restricted: r.Restricted, Kind: "fertiliser"}
			missing := map[string]bool{}
			for _, f := range p.Missing(&blank) {
				missing[f.Key] = true
			}
			for _, a := range p.Asks {
				fields, any := Answers(a.Element)
				for _, f := range fields {
					if f.Key != "grass" && a.Only != "on_request" && a.Or == "" && !missing[f.Key] && !any {
						t.Errorf("%s asks for %s, and an empty record does not miss %s", p.Citation, a.Element, f.Key)
					}
				}
			}
		})
	}
}

// TestRetention holds how long records are kept against the rows of each rule as it was read.
func TestRetention(t *testing.T) {
	for _, c := range []struct {
		jurisdiction, source string
		years                int
		within               string
	}{
		{"US federal (commercial RUP)", "40 CFR 171.303 as listed by EPA", 2, ""},
		{"Alabama", "Ala. Admin. Code r. 80-10-9-.15", 1, ""},
		{"North Carolina (RUP, ground)", "02 NCAC 09L .1402", 3, "72 h"},
		{"Tennessee", "Tenn. Comp. R. & Regs. 0080-09-04-.06", 2, ""},
		{"Virginia (pesticide)", "2VAC5-680-50", 2, ""},
		{"Maryland", "COMAR 15.05.01.12", 2, ""},
		{"Pennsylvania", "7 Pa. Code 128.35", 3, "24 h"},
		{"New York", "ECL 33-1205", 3, ""},
		{"Ohio", "OAC 901:5-11-10", 3, "the same day"},
		{"Minnesota", "Minn. Stat. 18B.37", 5, "5 days"},
		{"Wisconsin", "Wis. Admin. Code ATCP 29.21", 2, "the same day"},
		{"Michigan (restricted use)", "Mich. Admin. Code R 285.636.15(1)", 3, ""},
	} {
		found := false
		for _, p := range Profiles() {
			if p.Jurisdiction == c.jurisdiction {
				found = true
				if p.KeptYears != c.years || p.Within != c.within {
					t.Errorf("%s (%s): kept %d years, within %q", c.jurisdiction, c.source, p.KeptYears, p.Within)
				}
			}
		}
		if !found {
			t.Errorf("no profile of %s", c.jurisdiction)
		}
	}
}

// TestEveryStateOfTheSettingHasAProfile: what can be set has a rule, and what has a rule can be set.
func TestEveryStateOfTheSettingHasAProfile(t *testing.T) {
	for _, s := range core.Settings() {
		if s.Name != core.State {
			continue
		}
		for _, o := range s.Options {
			if (len(ProfilesOf(o)) > 0) != (o != "none") {
				t.Errorf("%s has %d profiles", o, len(ProfilesOf(o)))
			}
		}
		for _, p := range Profiles() {
			if p.State != "" && !strings.Contains("|"+strings.Join(s.Options, "|")+"|", "|"+p.State+"|") {
				t.Errorf("%s cannot be set", p.State)
			}
		}
		return
	}
	t.Error("there is no setting of the state")
}

func TestTheNarrowerRules(t *testing.T) {
	r := recordOf(t, strings.TrimSpace(recordDay)+`
{"fact":"recorded","field":"target","value":"clover","lawn":"5 Oak"}
{"fact":"recorded","field":"target","value":"everything"}
{"fact":"recorded","field":"wind_mph","value":"3.5"}
{"fact":"recorded","field":"wind_mph","value":"4.5"}`)
	if r.Target != "clover" || r.Wind.V != 4.5 {
		t.Errorf("target %q, wind %v", r.Target, r.Wind)
	}
}
