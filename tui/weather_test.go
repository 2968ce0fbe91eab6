package tui

import (
	"strings"
	"testing"
	"time"
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
