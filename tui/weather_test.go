package tui

import (
	"strings"
	"testing"
	"time"

	"example.com/tintline/core"
)

// coolLimits is a whole label entry of the cool-season product, and besideFir a pond beside the first lawn.
const (
	coolLimits = `{"fact":"product","name":"Example Cool","form":"liquid","kind":"herbicide","actives":[{"name":"mesotrione","lb_per_gal":4}],"registration":"00000-2","grasses":["tall_fescue","kentucky_bluegrass"],"rate_low_fl_oz_per_1000_sqft":0.1,"rate_high_fl_oz_per_1000_sqft":0.18,"wind_max_mph":10,"temp_max_f":86,"rain_free_h":1,"no_inversion":"yes","water_ft":25,"none":["temp_min"]}
`
	besideFir = `{"fact":"lawn","name":"77 Fir Lane","address":"77 Fir Lane","zones":[{"name":"all","grass":"tall_fescue","area_sqft":5200,"hazards":["pond"],"sites":[{"kind":"water","feet":10}]}]}
`
)

func TestHoldIsOneState(t *testing.T) {
	c := climbIn(t, atAlder).press("i").type_("12 W 66").sees("w: hold the day for wind").press("w").sees("hold the day for: wind").press("enter").sees("booked on hold: wind", "ON HOLD for wind since 09:42", "An observation of wind of 10 mph or less ends it.")
	c.seesNot("Wind 12 mph, over 10")
	c.press("y") // an answer to a finding does not end a hold
	if c.model().open {
		t.Error("y asks for a reason while the day waits")
	}
	c.press("enter").sees("weather now").type_("8 W 66").sees("go on: wind 8 mph").press("enter").sees("booked went on after the hold: wind 8 mph").seesNot("ON HOLD")
	if got := c.facts(); got != "weather held weather resumed" {
		t.Errorf("logged: %s", got)
	}
}

func TestHoldForAnything(t *testing.T) {
	c := climbIn(t, morning).press("w").sees("hold the day for", "1 wind", "2 rain").press("enter").sees("has no cause").type_("a pump belt").sees("ON HOLD for a pump belt", "go on with the day")
	c.press("w").sees("booked went on after the hold").press("w").type_("2").sees("ON HOLD for rain", "w: go on with the day").press("w").sees("without a new observation")
	c.press("w").type_("rain").press("w").sees("without a new observation").press("u", "y").sees("ON HOLD for rain")
}

func TestWeatherPage(t *testing.T) {
	c := climbIn(t, atAlder).wait(30*time.Minute).press("g", "w").sees("looked 09:22, 50 min ago", "Example Warm", "wind at most 10 mph", "log what the weather is now")
	c.press("enter").type_("breezy").sees("breezy", "is no figure and no direction").press("esc").press("i").type_("7 W 66").sees("booked weather: wind 7.0 mph from W", "looked 10:12, just now")
	c.press("j").sees("booked weather: wind 7.0").down("unchanged").press("enter").sees("booked weather: wind 7.0")
	c.down("put the day on hold").press("enter").type_("1").sees("ON HOLD for wind", "go on with the day").press("w").sees("booked went on after the hold: without a new observation").press("w").type_("2").sees("ON HOLD for rain")
	c.down("09:22").press("enter").sees("One entry", "Weather: wind 6.0").press("esc").sees("show entry 23 whole")
	c.down("ask: wind over 8").sees("university").press("enter").sees("ask: wind over 8 mph: university")
	if got := strings.Count(c.facts(), "weather"); got != 3 {
		t.Errorf("logged: %s", c.facts())
	}
}

func TestWeatherPageWithoutADay(t *testing.T) {
	c := climbIn(t, atAlder+"\n"+`{"fact":"day_closed"}`).press("g", "w").sees("no day is open", "stop: wind over 10 mph").press("enter", "i", "j", "w", "o")
	if c.facts() != "" || c.model().open {
		t.Errorf("logged: %s", c.facts())
	}
}

// The line reads the forecast with who made it and when, and signs of an inversion, in any order.
func TestWeatherLineReadsForecastAndInversion(t *testing.T) {
	for said, want := range map[string]string{
		"6 SW 64 45% 6h high 88 forecast county airport 6:10 inversion no": "6.0 SW 64f 45% 6h high 88 forecast county airport 06:10 inversion no",
		"inversion YES forecast Airport High 88F 6 sw 64":                  "6.0 SW 64f high 88 forecast Airport inversion yes",
		"forecast 16:05 6 SW, high 88.5":                                   "6.0 SW high 88.5 forecast 16:05",
		"forecast county 6 SW 64":                                          "6.0 SW 64f forecast county",
		"inversion no":                                                     "inversion no",
	} {
		f, err := readWeather(said)
		if err != nil {
			t.Errorf("%q: %v", said, err)
			continue
		}
		got := weatherSaid(f.(*core.Weather))
		if got != want {
			t.Errorf("%q is read as %q, want %q", said, got, want)
		}
		again, err := readWeather(got)
		if err != nil || *again.(*core.Weather) != *f.(*core.Weather) {
			t.Errorf("%q is not read as it was said: %+v %v", got, again, err)
		}
	}
	for said, want := range map[string]string{
		"6 SW high":                    "The high of the forecast is missing. Type it in F: high 88.",
		"6 SW high warm":               `"warm" is no high of a forecast. Type it in F: high 88.`,
		"6 SW high nan":                `"nan" is no high of a forecast. Type it in F: high 88.`,
		"6 SW forecast":                "Who made the forecast is missing. Type it and when: forecast NAME 6:10.",
		"6 SW forecast high 88":        "Who made the forecast is missing. Type it and when: forecast NAME 6:10.",
		"6 SW forecast county 25:10":   `"25:10" is no time of day. Type who made the forecast and when: forecast NAME 6:10.`,
		"6 SW inversion":               "Whether signs of an inversion were seen is missing. Type inversion yes or inversion no.",
		"6 SW inversion maybe":         "Whether signs of an inversion were seen is missing. Type inversion yes or inversion no.",
		"high 88 forecast county 6:10": "A forecast alone is no look at the weather. Type the wind too: 6 SW 64 high 88.",
		"6 SW 64 88":                   `"88" is one figure too many. ` + weatherForm,
		"6 SW breezy":                  `"breezy" is no figure and no direction. ` + weatherForm,
		" , ":                          "Nothing is typed. Type the wind at least: 6 SW 64.",
	} {
		_, err := readWeather(said)
		if err == nil {
			t.Errorf("%q is read", said)
			continue
		}
		if what, do := sentences(err); what+" "+do != want {
			t.Errorf("%q: %s %s\nwant %s", said, what, do, want)
		}
	}
}

// One key of the cab logs an old observation anew, with its forecast; a new one keeps the forecast that was logged today.
func TestUnchangedKeepsTheForecast(t *testing.T) {
	c := climbIn(t, morning).press("enter", "i").type_("6 SW 64 high 80 forecast county 6:10 inversion no").sees("booked weather", "high 80 F")
	c.wait(65*time.Minute).press("h", "h").sees("Look again and log it", "Enter  look at the weather", "j if it is unchanged").press("j").sees("booked weather: wind 6.0", "forecast high 80 F by county", "no signs of an inversion")
	w := c.book().Weather()
	if w.ForecastAt != "06:10" || w.Inversion != "no" || w.At.Clock() != "10:47" {
		t.Errorf("%+v at %s", w, w.At.Clock())
	}
	c.press("i").type_("7 W 66")
	if w = c.book().Weather(); w.ForecastSource != "county" || w.ForecastHigh.V != 80 || w.Inversion != "" {
		t.Errorf("%+v", w)
	}
	c.press("g", "w").sees("forecast high 80 F by county at 06:10, 5 h old", "blank, not checked: wind, temperature, rain, inversion")
}
