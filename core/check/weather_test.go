package check

import (
	"strings"
	"testing"

	"example.com/tintline/core"
)

// airLines are a truck with two compartments of herbicide, one of a fertiliser without limits, and their lawns. The
// label entries are made up.
const airLines = `
{"fact":"rig","name":"truck","compartments":[{"letter":"a","capacity_gal":200},{"letter":"b","capacity_gal":200}],"cell_gal":0.2,"hoses":[{"name":"reel","inside_diameter_in":0.375,"length_ft":300}],"applicators":[{"name":"gun","kind":"gun","hose":"reel","delivery_gal_per_1000_sqft":1.6,"flow_gpm":2.5},{"name":"spreader","kind":"spreader","hopper_lb":50}]}
{"fact":"product","name":"X","form":"liquid","kind":"herbicide","actives":[{"name":"mesotrione","lb_per_gal":4}],"registration":"00000-1","grasses":["tall_fescue"],"wind_max_mph":9,"temp_max_f":86,"temp_min_f":45,"rain_free_h":6,"no_inversion":"yes"}
{"fact":"product","name":"Y","form":"liquid","kind":"herbicide","grasses":["tall_fescue"],"temp_max_f":84,"rain_free_h":4,"no_inversion":"no"}
{"fact":"product","name":"H","form":"liquid","kind":"herbicide","grasses":["tall_fescue"]}
{"fact":"product","name":"N","form":"liquid","kind":"fertiliser","grasses":["all_turf"]}
{"fact":"product","name":"G","form":"dry","kind":"herbicide","grasses":["tall_fescue"],"rate_low_lb_per_1000_sqft":2,"rate_high_lb_per_1000_sqft":4,"temp_max_f":86}
{"fact":"mix","name":"both","parts":[{"product":"X","rate_fl_oz_per_1000_sqft":1},{"product":"Y","rate_fl_oz_per_1000_sqft":1}]}
{"fact":"mix","name":"one","parts":[{"product":"X","rate_fl_oz_per_1000_sqft":1}]}
{"fact":"mix","name":"herb","parts":[{"product":"H","rate_fl_oz_per_1000_sqft":1}]}
{"fact":"mix","name":"feed","parts":[{"product":"N","rate_fl_oz_per_1000_sqft":6}]}
{"fact":"lawn","name":"Fir","zones":[{"name":"all","grass":"tall_fescue","area_sqft":5000}]}
{"fact":"day_opened","date":"2026-05-28","operator":"R. Example","route":["Fir"]}
`

// inHose loads a mix into a and fills the hose with it.
func inHose(mix string) string {
	return `{"fact":"loaded","into":"a","volume_gal":100,"mix":"` + mix + `","for":"gun"}
{"fact":"lined_up","supply":["a"],"return":"a"}
{"fact":"pushed_back","into":"a","volume_gal":8}
`
}

// about is the finding of a rule that is about something.
func about(r Report, rule, what string) *Finding {
	for i := range r.Findings {
		if f := &r.Findings[i]; f.Rule == rule && f.About == what {
			return f
		}
	}
	return nil
}

// all is an observation in which nothing is missing and nothing is wrong; a row changes it.
const all = `"wind_mph":6,"temp_f":70,"rh_pct":50,"rain_free_h":24,"forecast_high_f":80,"forecast_source":"county airport","forecast_at":"16:10"`

// Each row is one observation and what is said of one thing in it; weight None: nothing is said of it. The clock stands at
// 20:26 UTC. Where no source stands, the row holds the entry or the setting named to its letter.
var airRows = []struct {
	name, mix, seen string
	about           string
	weight          Weight
	says            string
	ground, source  string
}{
	{"nothing wrong", "both", all, aboutTemperature, None, "", "", ""},
	{"at the label's most", "one", all + `,"temp_f":86`, aboutTemperature, Ask, "86 F, over 85: a herbicide injures turf more easily.", GroundSetting, "Purdue turf extension"},
	{"over the label's most", "one", all + `,"temp_f":86.5`, aboutTemperature, Stop, "86.5 F; the label entry of X allows at most 86.", GroundLabel, "label entry of X, 00000-1"},
	{"over the most of two labels", "both", all + `,"temp_f":87`, aboutTemperature, Stop, "87 F; the label entry of Y allows at most 84, that of X 86.", GroundLabel, "label entry of Y"},
	{"over the most of the stricter label", "both", all + `,"temp_f":85`, aboutTemperature, Stop, "85 F; the label entry of Y allows at most 84.", GroundLabel, "label entry of Y"},
	{"at the label's least", "one", all + `,"temp_f":45`, aboutTemperature, None, "", "", ""},
	{"under the label's least", "one", all + `,"temp_f":44.5`, aboutTemperature, Stop, "44.5 F; the label entry of X asks for at least 45.", GroundLabel, "label entry of X"},
	{"forecast over the label's most", "one", all + `,"forecast_high_f":88,"forecast_at":"16:00"`, aboutTemperature, Ask, "The forecast high is 88 F (county airport, 16:00); the label entry of X allows at most 86.", GroundLabel, "label entry of X"},
	{"forecast without its source", "one", `"wind_mph":6,"temp_f":70,"rain_free_h":24,"forecast_high_f":88`, aboutTemperature, Ask, "The forecast high is 88 F (source not said);", GroundLabel, "label entry of X"},
	{"forecast without its hour", "one", `"wind_mph":6,"temp_f":70,"rain_free_h":24,"forecast_high_f":88,"forecast_source":"county airport"`, aboutTemperature, Ask, "(county airport, hour not said);", GroundLabel, "label entry of X"},
	{"herbicide at 85 F", "herb", all + `,"temp_f":85`, aboutTemperature, None, "", "", ""},
	{"herbicide over 85 F", "herb", all + `,"temp_f":85.5`, aboutTemperature, Ask, "85.5 F, over 85: a herbicide injures turf more easily.", GroundSetting, "Nebraska extension"},
	{"herbicide, forecast over 85 F", "herb", all + `,"forecast_high_f":86`, aboutTemperature, Ask, "The forecast high is 86 F", GroundSetting, "Purdue turf extension"},
	{"herbicide under 90 F", "herb", all + `,"temp_f":89.5`, aboutTemperature, Ask, "injures turf more easily.", GroundSetting, "Purdue"},
	{"herbicide from 90 F on", "herb", all + `,"temp_f":90`, aboutTemperature, Ask, "The usual label sentence advises against it at 90 F.", GroundSetting, "Georgia extension"},
	{"fertiliser in the heat", "feed", all + `,"temp_f":95`, aboutTemperature, None, "", "", ""},
	{"signs of an inversion, forbidden", "both", all + `,"inversion":"yes"`, aboutInversion, Stop, "the label entry of X forbids spraying under one", GroundLabel, "label entry of X"},
	{"signs of an inversion, label blank", "herb", all + `,"inversion":"yes"`, aboutInversion, Ask, "Signs of an inversion were seen", GroundExtension, "extension teaching on inversions"},
	{"no signs of an inversion", "both", all + `,"inversion":"no"`, aboutInversion, None, "", "", ""},
	{"hardly any wind, not looked for", "herb", all + `,"wind_mph":2`, aboutWind, Note, "the air may be inverted", GroundSetting, "3 to 8 mph"},
	{"hardly any wind, looked for", "herb", all + `,"wind_mph":2,"inversion":"no"`, aboutWind, Note, "Wind 2 mph, under 3: its direction wanders.", GroundSetting, "3 to 8 mph"},
	{"hardly any wind, not looked for, forbidden", "one", all + `,"wind_mph":2`, aboutLook, Ask, "Not looked at: signs of an inversion; the label entry of X has a ban under an inversion.", GroundLabel, "label entry of X"},
	{"some wind, not looked for, forbidden", "one", all + `,"wind_mph":3`, aboutLook, None, "", "", ""},
	{"rain as the label asks", "both", all + `,"rain_free_h":6`, aboutRain, None, "", "", ""},
	{"rain sooner than one label", "both", all + `,"rain_free_h":5.5`, aboutRain, Stop, "Rain in 5.5 h; the label entry of X asks for 6 h without.", GroundLabel, "label entry of X"},
	{"rain sooner than two labels", "both", all + `,"rain_free_h":1`, aboutRain, Stop, "asks for 6 h without, that of Y 4.", GroundLabel, "label entry of X"},
	{"rain as the setting asks", "herb", all + `,"rain_free_h":2`, aboutRain, None, "", "", ""},
	{"rain sooner than the setting", "herb", all + `,"rain_free_h":1.5`, aboutRain, Ask, "Rain in 1.5 h, sooner than 2 h.", GroundSetting, "labels differ"},
	{"good drying", "herb", all, aboutDrying, None, "", "", ""},
	// 68 F, 50 %: 6.30 C; 59 F, 80 %: 2.27; 77 F, 90 %: 1.30; 86 F, 50 %: 7.70; 86 F, 30 %: 11.63 (Stull 2011, worked out)
	{"hardly any drying", "herb", all + `,"temp_f":77,"rh_pct":90`, aboutDrying, Note, "Wet-bulb depression 1.3 C, below 2: drops live long", GroundSetting, "module 10.3"},
	{"just enough drying", "herb", all + `,"temp_f":59,"rh_pct":80`, aboutDrying, None, "", "", ""},
	{"still good drying", "herb", all + `,"temp_f":86,"rh_pct":50`, aboutDrying, None, "", "", ""},
	{"fast drying", "herb", all + `,"temp_f":80,"rh_pct":38`, aboutDrying, Note, "from 8 on drops dry fast", GroundSetting, "module 10.3"},
	{"too fast drying", "herb", all + `,"temp_f":86,"rh_pct":30`, aboutDrying, Note, "Wet-bulb depression 11.6 C, above 10", GroundSetting, "module 10.3"},
	{"humidity outside of the formula", "herb", all + `,"rh_pct":100`, aboutDrying, None, "", "", ""},
	{
		"nothing but the wind", "both", `"wind_mph":6`, aboutLook, Ask,
		"Not looked at: the temperature, the forecast high and the hours to rain; the label entry of Y has a limit of 84 F; the label entry of X has 6 h without rain.", GroundLabel, "label entry of Y",
	},
	{"all but the forecast", "one", `"wind_mph":6,"temp_f":70,"rain_free_h":24`, aboutLook, Ask, "Not looked at: the forecast high; the label entry of X has a limit of 86 F.", GroundLabel, "label entry of X"},
	{"an old forecast", "one", all + `,"forecast_at":"08:20"`, aboutLook, Ask, "the last forecast is 12 h old", GroundLabel, "label entry of X"},
	{"a forecast of 12 h", "one", all + `,"forecast_at":"08:30"`, aboutLook, None, "", "", ""},
	{"an old forecast says nothing of the heat", "one", all + `,"forecast_high_f":99,"forecast_at":"08:20"`, aboutTemperature, None, "", "", ""},
	{"no limit needs it", "feed", `"wind_mph":6`, aboutLook, None, "", "", ""},
	{"without the wind", "one", `"temp_f":70`, aboutLook, Ask, "Not looked at: the wind, the forecast high and the hours to rain", GroundPractice, "record of wind"},
}

func TestWeatherLimits(t *testing.T) {
	for _, row := range airRows {
		t.Run(row.name, func(t *testing.T) {
			b := play(t, airLines+inHose(row.mix)+`{"fact":"weather",`+lastOf(row.seen)+`}`)
			f := about(before(t, b, Intent{Lawn: "Fir"}), "weather", row.about)
			if row.weight == None {
				if f != nil {
					t.Fatalf("it says %s", f.Says)
				}
				return
			}
			if f == nil {
				t.Fatalf("nothing is said: %+v", before(t, b, Intent{Lawn: "Fir"}).Findings)
			}
			if f.Weight != row.weight || !strings.Contains(f.Says, row.says) || f.Ground != row.ground || !strings.Contains(f.Source, row.source) || f.Do == "" || f.Part != PartDay {
				t.Errorf("%v %q\n[%s] %s\nwant %v %q\n[%s] %s", f.Weight, f.Says, f.Ground, f.Source, row.weight, row.says, row.ground, row.source)
			}
		})
	}
}

// lastOf keeps the last of each key: a line names each once.
func lastOf(pairs string) string {
	var keys []string
	value := map[string]string{}
	for _, p := range strings.Split(pairs, ",") {
		key, v, _ := strings.Cut(p, ":")
		if _, had := value[key]; !had {
			keys = append(keys, key)
		}
		value[key] = v
	}
	for i, k := range keys {
		keys[i] = k + ":" + value[k]
	}
	return strings.Join(keys, ",")
}

// Granules: the label's heat holds for them, drops' matters do not.
func TestWeatherOfWhatIsSpread(t *testing.T) {
	b := play(t, airLines+`{"fact":"loaded","into":"spreader","parts":[{"product":"G","amount_lb":40}]}
{"fact":"weather",`+lastOf(all+`,"temp_f":87,"rain_free_h":0.5,"rh_pct":20,"inversion":"yes"`)+`}`)
	r := before(t, b, Intent{Lawn: "Fir", With: "spreader"})
	if f := about(r, "weather", aboutTemperature); f == nil || f.Weight != Stop || f.Product != "G" {
		t.Errorf("%+v", r.Findings)
	}
	for _, what := range []string{aboutInversion, aboutRain, aboutDrying} {
		if f := about(r, "weather", what); f != nil {
			t.Errorf("%+v", f)
		}
	}
}

// Two stops of the weather need two reasons, and what was not looked at is logged by Enter, not answered.
func TestWeatherStopsAreOpenedOneByOne(t *testing.T) {
	b := play(t, airLines+inHose("one")+`{"fact":"visit_begun","lawn":"Fir"}
{"fact":"weather",`+lastOf(all+`,"temp_f":90,"wind_mph":9.5`)+`}`)
	stops := func() (n int) {
		for _, f := range before(t, b, Intent{Lawn: "Fir"}).Findings {
			if f.Weight == Stop && f.Reason == "" {
				n++
			}
		}
		return n
	}
	for want := 2; want >= 0; want-- {
		if stops() != want {
			t.Fatalf("%d stops, want %d: %+v", stops(), want, before(t, b, Intent{Lawn: "Fir"}).Findings)
		}
		for _, f := range before(t, b, Intent{Lawn: "Fir"}).Findings {
			if f.Weight == Stop && f.Reason == "" {
				log(t, b, GoOn(f, "Fir", "the supervisor decided")...)
				break
			}
		}
	}
	more(t, b, `{"fact":"weather","wind_mph":6,"temp_f":70}`)
	if p := Propose(b, Intent{At: clock}); p.Act != ActWeather || !strings.Contains(p.Why, "forecast high") {
		t.Errorf("%+v", p)
	}
	log(t, b, GoOn(*about(before(t, b, Intent{Lawn: "Fir"}), "weather", aboutLook), "Fir", "asked, and answered yes")...)
	if p := Propose(b, Intent{At: clock}); p.Act == ActWeather {
		t.Errorf("asked again: %+v", p)
	}
}

func TestBlankWeatherLimitsAreNamed(t *testing.T) {
	for mix, want := range map[string]string{
		"both": "wind limit: 1 of 2 products (label entry is blank)",
		"herb": "wind limit, temperature limit, rain-free hours, inversion: 1 of 1 product (label entry is blank)",
		"one":  "",
	} {
		b := play(t, airLines+inHose(mix)+`{"fact":"weather",`+all+`}`)
		got := strings.Join(before(t, b, Intent{Lawn: "Fir"}).NotChecked, "; ")
		if !strings.Contains(got, want) || (want == "") == strings.Contains(got, "wind") {
			t.Errorf("%s: %s", mix, got)
		}
	}
}

// The hour of a forecast later than that of the observation is one of the evening before.
func TestForecastAge(t *testing.T) {
	for at, want := range map[string]float64{"20:26": 0, "08:26": 12, "20:27": 24 - 1.0/60, "00:00": 20 + 26.0/60} {
		w := core.WeatherAt{Weather: core.Weather{ForecastAt: at}, At: clock}
		later := clock
		later.Unix += 3600
		for _, now := range []struct {
			at   core.Moment
			want float64
		}{{clock, want}, {later, want + 1}} {
			if got := ForecastAge(&w, now.at); !got.Known || got.V < now.want-0.001 || got.V > now.want+0.001 {
				t.Errorf("made at %s: %+v h old, want %g", at, got, now.want)
			}
		}
	}
	if got := ForecastAge(&core.WeatherAt{At: clock}, clock); got.Known {
		t.Errorf("%+v", got)
	}
}

// The page of the weather lists each limit of what is lined up with its ground, what is blank and what the label has none of.
func TestWeatherLimitsAreListed(t *testing.T) {
	var got []string
	for _, l := range WeatherLimits(play(t, airLines+inHose("both"))) {
		if l.Source == "" || l.Ground == "" {
			t.Errorf("%+v", l)
		}
		got = append(got, l.Of+": "+l.Says)
	}
	text := strings.Join(got, "\n")
	for _, want := range []string{
		"X: wind at most 9 mph", "X: at most 86 F; a forecast high over it is asked about", "X: at least 45 F", "X: 6 h without rain", "X: not under an inversion",
		"Y: at most 84 F", "Y: blank, not checked: wind", ": ask: a herbicide over 85 F", ": note: wet-bulb depression over 10 C", ": not known: a forecast of more than 12 h ago",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in\n%s", want, text)
		}
	}
	b := play(t, airLines+`{"fact":"product","name":"H","form":"liquid","kind":"herbicide","grasses":["tall_fescue"],"none":["wind_max","rain_free"]}`+"\n"+inHose("herb"))
	if text := WeatherLimits(b)[0].Says + "; " + WeatherLimits(b)[1].Says; text != "none on the label: wind, rain; blank, not checked: temperature, inversion" {
		t.Error(text)
	}
}
