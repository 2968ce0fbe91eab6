package say

import (
	"strings"
	"testing"

	"example.com/tintline/core"
)

func TestEveryFactHasWords(t *testing.T) {
	for _, name := range core.FactNames() {
		if s := Fact(core.NewFact(name)); s == "" || strings.Contains(s, "has no words") {
			t.Errorf("%s says %q", name, s)
		}
	}
}

func TestFact(t *testing.T) {
	for _, tc := range []struct{ line, want string }{
		{
			`{"fact":"sprayed","lawn":"418 Alder","zones":["front","back"],"applicator":"gun","by":"area","volume_gal":11.1,"area_sqft":7400}`,
			"sprayed 418 Alder front + back: 11.1 gal by gun on 7,400 sq ft, by area",
		},
		{
			`{"fact":"sprayed","lawn":"77 Fir","zones":["all"],"applicator":"gun","by":"gauge","volume_gal":8,"area_sqft":5200,"before_gal":70,"after_gal":62}`,
			"sprayed 77 Fir all: 8.00 gal by gun on 5,200 sq ft, by gauge from 70.0 to 62.0",
		},
		{`{"fact":"lined_up","supply":["a","b"],"return":"a"}`, "valves: a and b to the pump, return to a"},
		{`{"fact":"visit_begun","lawn":"77 Fir","kind":"call_back","cause":"brown ring","arrived":"09:35"}`, "arrived at 77 Fir at 09:35, call-back: brown ring"},
		{
			`{"fact":"carried_over","lawn":"418 Alder","zones":[{"zone":"front","area_sqft":1000},{"zone":"back","area_sqft":0}],"reason":"wind","until":"2026-05-30"}`,
			"carried over: 418 Alder: front 1,000 sq ft, back not owed any more to 2026-05-30, wind",
		},
		{`{"fact":"lined_up"}`, "valves: no compartment to the pump, return nowhere"},
		{`{"fact":"loaded","into":"a","volume_gal":200,"parts":[{"product":"warm weed","amount_fl_oz":160}]}`, "loaded 200.0 gal into a: 1.25 gal warm weed"},
		{`{"fact":"loaded","into":"a","volume_gal":20}`, "loaded 20.0 gal into a: water"},
		{`{"fact":"weather","wind_mph":6,"wind_from":"SW","temp_f":64.5}`, "weather: wind 6.0 mph from SW and 64.5 F"},
		{`{"fact":"weather","wind_mph":6,"wind_from":"SW","forecast_high_f":88,"forecast_source":"county airport","forecast_at":"06:10","inversion":"no"}`, "weather: wind 6.0 mph from SW, forecast high 88 F by county airport at 06:10 and no signs of an inversion"},
		{`{"fact":"weather","wind_mph":1,"forecast_high_f":88,"inversion":"yes"}`, "weather: wind 1.0 mph, forecast high 88 F, source not said and signs of an inversion"},
		{`{"fact":"fitted","applicator":"gun","hose":"short"}`, "hung gun on hose short"},
		{`{"fact":"fitted","applicator":"gun","tip":"04","hose":"short"}`, "fitted 04 on gun and hung it on hose short"},
		{`{"fact":"tint_seen","seconds":25,"half_seconds":28,"full_seconds":35,"hose":"short"}`, "saw the tint after 25 s; half of it after 28 s; all of it after 35 s, through short"},
		{`{"fact":"tint_seen","full_volume_gal":2,"direction":"clear"}`, "saw all of it after 2.00 gal"},
		{`{"fact":"dumped","from":"hose/reel","volume_gal":2,"to":"waste/yard"}`, "ran 2.00 gal from the hose reel to yard (waste)"},
		{`{"fact":"spread","lawn":"418 Alder","zones":["front","back"],"applicator":"spreader","product":"lawn food","by":"area","amount_lb":22.2,"area_sqft":7400}`, "spread 418 Alder front + back: 22.2 lb of lawn food with spreader on 7,400 sq ft, by area"},
		{`{"fact":"spread","lawn":"77 Fir","zones":["all"],"applicator":"spreader","by":"weight","amount_lb":10,"area_sqft":5200}`, "spread 77 Fir all: 10.0 lb of what the hopper holds with spreader on 5,200 sq ft, by weight"},
		{`{"fact":"loaded","into":"spreader","parts":[{"product":"lawn food","amount_lb":22}],"mix":"F"}`, "loaded the hopper of spreader with F: 22.0 lb lawn food"},
		{`{"fact":"dumped","from":"applicator/spreader","amount_lb":12,"to":"package/lawn food"}`, "poured 12.0 lb out of the hopper of spreader into the package of lawn food"},
		{`{"fact":"struck","of":7,"also":[8,9],"reason":"slip"}`, "struck entries 7, 8 and 9 (slip)"},
		{
			`{"fact":"struck","of":7,"reason":"slip","instead":{"fact":"pushed_back","into":"b","volume_gal":2.7}}`,
			"struck entry 7 (slip); instead: pushed back 2.70 gal into b",
		},
		{`{"fact":"pushed_back","into":"b","volume_gal":2.7}`, "pushed back 2.70 gal into b"},
		{`{"fact":"pushed_back","to":"waste/pail","volume_gal":0.4,"hose":"left reel","bypass_gal":0.6}`, "pushed back 0.40 gal through the hose left reel into pail (waste), 0.60 gal through the bypass"},
		{`{"fact":"filled","applicator":"ride-on","volume_gal":6,"bypass_gal":9}`, "filled ride-on with 6.00 gal through the hose, 9.00 gal through the bypass"},
		{`{"fact":"ran","seconds":60,"pump":"on","drawn":[{"from":"a","volume_gal":5}],"levelled":[{"from":"a","to":"b","volume_gal":8.9}]}`, "the valves stood so for 60 s, pump on; the pump sent 5.00 gal of a through the return; 8.90 gal ran from a to b"},
		{`{"fact":"ran","seconds":60,"pump":"off"}`, "the valves stood so for 60 s, pump off: nothing moved"},
		{`{"fact":"gauge_read","compartment":"a","volume_gal":151}`, "gauge of a: 151.0 gal"},
		{`{"fact":"tint_seen","seconds":41}`, "saw the tint after 41 s"},
		{`{"fact":"tint_seen","volume_gal":2.4,"missed":"yes"}`, "no tint came until 2.40 gal"},
		{`{"fact":"gauge_read","compartment":"a","mark":"7 1/2","volume_gal":151}`, "gauge of a: mark 7 1/2: 151.0 gal"},
		{`{"fact":"gauge_read","compartment":"a","mark":"7 1/2","volume_gal":151,"give_or_take_gal":2.4}`, "gauge of a: mark 7 1/2: 151.0 gal, give or take 2.40"},
		{`{"fact":"load_planned","into":"a","volume_gal":40,"mix":"W","for":"gun","parts":[{"product":"warm weed","amount_fl_oz":32}]}`, "to load into a: 40.0 gal of W for gun: 32.0 fl oz warm weed"},
		{`{"fact":"load_planned","into":"a"}`, "no load is planned for a any more"},
		{`{"fact":"ticked","list":"load/a","item":"water"}`, "load/a: water is done"},
		{
			`{"fact":"mix","name":"W+","base":"W","parts":[{"product":"iron","rate_oz_per_1000_sqft":2}]}`,
			"mix W+, made from W: iron 2.00 oz per 1,000 sq ft",
		},
		{`{"fact":"day_opened","date":"2026-05-28","operator":"R. Example","route":["77 Fir"]}`, "opened the day 2026-05-28, R. Example, 1 lawn on the route"},
		{
			`{"fact":"lawn","name":"77 Fir","zones":[{"name":"all","grass":"tall_fescue","area_sqft":5200}]}`,
			"lawn 77 Fir: all 5,200 sq ft of tall fescue",
		},
	} {
		l, err := core.DecodeLine([]byte(tc.line))
		if err != nil {
			t.Fatal(err)
		}
		if got := Fact(l.Fact); got != tc.want {
			t.Errorf("%s\n got %q\nwant %q", tc.line, got, tc.want)
		}
	}
}
