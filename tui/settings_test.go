package tui

import (
	"strings"
	"testing"

	"github.com/muesli/termenv"

	"example.com/tintline/tui/theme"
)

func TestSettingsAreSetAndTakenBack(t *testing.T) {
	c := climbIn(t, morning).press("g", "h").sees("weather ask", "30", "1 to 240")
	c.press("enter").type_("500").sees("1 to 240 is possible", "500")
	c.press("esc", "enter").type_("45 min").sees("set weather_ask_min to 45", "set by you")
	if v := c.book().Setting("weather_ask_min"); v != 45 {
		t.Errorf("it is %g", v)
	}
	c.press("o").seesNot("set by you")
	if _, set := c.book().SettingText("weather_ask_min"); set {
		t.Error("it is still set")
	}
}

// TestTheThemeChangesAtOnce, stays in the book, and gives way to who asked for no colours.
func TestTheThemeChangesAtOnce(t *testing.T) {
	full := func(o *Options) { o.Theme, o.Renderer = theme.Night, colours(termenv.TrueColor) }
	c := climbIn(t, morning, full)
	night := c.screen()
	c.press("g", "z")
	if c.model().themeName != theme.Sun || c.screen() == night {
		t.Error("the screen is not dressed for the sun")
	}
	c.press("esc")
	if again := climbIn(t, morning, full, func(o *Options) { o.Book = c.book() }); again.model().themeName != theme.Sun {
		t.Error("the next start forgets it")
	}
	plain := climbIn(t, morning, func(o *Options) { o.Book, o.Theme, o.Fixed = c.book(), theme.Plain, true })
	if plain.model().themeName != theme.Plain {
		t.Error("colours in spite of none asked for")
	}
	if plain.press("g").seesNot("sun/night"); strings.Contains(plain.press("esc", "g", "h").screen(), "sun/night") {
		t.Error("a key that does nothing is shown")
	}
	c.press("g", "h", "z")
	if c.model().themeName != theme.Night {
		t.Error("not back at night")
	}
}

// A setting that is a text is typed as a line, refused with what is allowed, shown whole, and taken back.
func TestATextIsSet(t *testing.T) {
	c := climbIn(t, morning).press("g", "h").down("restricted dates").sees("local rules decide", "Nothing is set")
	c.press("enter").type_("in summer").sees(`"in summer" is no span of dates`, "Write spans as 06-01 to 09-30 nitrogen").press("esc")
	c.press("enter").type_("06-01 to 09-30 nitrogen; 12-01 to 03-01 any").sees("(set by the operator; local rules", "06-01 to 09-30 nitrogen; 12-01 to 03-01 any")
	if got := c.book().Restricted(); len(got) != 2 {
		t.Errorf("%v", got)
	}
	c.press("o").sees("Nothing is set")
	if got := c.book().Restricted(); got != nil {
		t.Errorf("taken back it is %v", got)
	}
	c.down("phosphorus rule").press("enter").sees("1 none", "2 soil_test", "3 never").press("2", "enter").down("phosphorus rule").sees("set by you")
}
