package tui

import (
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
	"github.com/muesli/termenv"

	"example.com/tintline/core/setup"
	"example.com/tintline/tui/theme"
)

// presses counts every press of a key, letters included.
type presses struct {
	*cab
	n int
}

func (p *presses) keys(keys ...string) *presses {
	p.n += len(keys)
	p.press(keys...)
	return p
}

func (p *presses) says(text string) *presses {
	p.n += len([]rune(text))
	p.typed(text)
	return p
}

func (p *presses) sees(words ...string) *presses {
	p.t.Helper()
	p.cab.sees(words...)
	return p
}

// mostPresses is what the first run may cost, up to the first spraying logged.
const mostPresses = 60

func TestFirstRunInFewPresses(t *testing.T) {
	p := &presses{cab: climbIn(t, noBook)}
	p.keys("enter").sees("compartments, gal", "* usual, not measured on yours")
	p.says("300 160 90").keys("pgdown").sees("gun, gal/1,000 sq ft *").keys("pgdown")
	p.sees("Enter the first product").says("iron 5").keys("enter", "right", "enter").says("2").keys("pgdown")
	p.sees("[ ] all turf").keys(" ").sees("[x] all turf").keys("enter")
	p.sees("Enter the first lawn").says("12 Elm").keys("enter").says("6200").keys("pgdown")
	p.says("ta").sees("tall fescue").keys("enter")
	p.sees("Open the first day").says("Jo").keys("enter").says("90").keys("pgdown")
	p.sees("Drive to 12 Elm: 9.30 gal, from a").keys("enter")
	p.sees("turn supply and return to a").keys("enter")
	p.sees("push 2.67 gal into a").keys("enter")
	p.keys("enter").sees("weather now").says("6 SW 64").keys("enter")
	p.sees("sprayed 9.30 gal on all").keys("enter").sees("sprayed 12 Elm all: 9.30 gal by gun")
	const want = "rig product mix lawn day_opened loaded visit_begun lined_up pushed_back weather sprayed"
	if p.facts() != want {
		t.Errorf("logged: %s", p.facts())
	}
	if p.n > mostPresses {
		t.Errorf("the first run took %d presses; %d are allowed", p.n, mostPresses)
	}
	t.Logf("%d presses from the first run to the first spraying", p.n)
	actions := map[string]bool{}
	for _, e := range p.disk.entries[:6] {
		actions[e.Action] = true
	}
	if len(actions) != 4 {
		t.Errorf("four forms are %d actions", len(actions))
	}
}

func firstProduct(t *testing.T) *cab {
	return climbIn(t, noBook).press("enter").typed("300 160 90").press("pgdown", "pgdown")
}

func firstLawn(t *testing.T) *cab {
	return firstProduct(t).typed("iron").press("enter", "right", "enter").typed("2").press("pgdown", " ", "enter")
}

// opens opens a form as a page does.
func (c *cab) opens(form func(m *Model) tea.Cmd) *cab {
	m := c.model()
	c.run(form(&m))
	c.m = m
	return c.size(m.w, m.h)
}

func TestAFormKeepsWhatWasTyped(t *testing.T) {
	c := climbIn(t, noBook).press("enter").typed("300 160").press("enter", "enter").typed("0.2x")
	c.press("enter").sees(`"0.2x"`, "0 to 10,000 gal", "0.2x")
	c.press("esc").sees("This book is empty").press("enter").sees("300 160", "0.2x")
	c.typed("y").sees("0.2xy")
	c.size(60, 20).sees("300 160", "0.2x").size(120, 40).sees("0.2x").size(30, 5).size(80, 24).sees("0.2x")
	if c.facts() != "" {
		t.Errorf("logged: %s", c.facts())
	}
}

func TestAFormGoesToWhatIsWrong(t *testing.T) {
	c := firstProduct(t).typed("iron").press("pgdown").sees("Nothing is chosen for")
	if f := c.model().form; f.asked().Key != "unit" {
		t.Errorf("the keys are at %s", f.asked().Key)
	}
	c.press("right", "enter").typed("2").press("enter").typed("1").press("pgdown")
	c.sees("2 is more than the label's highest rate, 1.")
	c.press("up").sees("measured out as").press("down", "down").press("enter")
}

// TestAFormTakesNoPaste of several lines, and lets one line into a field only.
func TestAFormTakesOneLineOfPaste(t *testing.T) {
	c := climbIn(t, noBook).press("enter")
	c.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("300\n160"), Paste: true}).seesNot("300\n")
	if got := c.model().form.said["compartments"]; got != "" {
		t.Errorf("two lines went into the field: %q", got)
	}
	c.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("300 160"), Paste: true}).sees("300 160")
	c.press("pgdown", "pgdown").sees("first product")
	c.press("enter").typed("x").press("enter", "enter", "right", "enter").typed("1").press("pgdown").sees("all turf")
	c.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("x y z"), Paste: true}).seesNot("[x]")
}

// TestAFormRunsNoProgram: the clipboard is not asked, and nothing blinks: no command comes of a key.
func TestAFormRunsNoProgram(t *testing.T) {
	c := climbIn(t, noBook).press("enter").typed("300")
	for _, k := range []tea.KeyMsg{{Type: tea.KeyCtrlV}, {Type: tea.KeyRight}, {Type: tea.KeyRunes, Runes: []rune("1")}} {
		if _, cmd := c.m.Update(k); cmd != nil {
			t.Errorf("a command came of %s", k)
		}
	}
}

// TestAFormWaitsForTheDisk: keys that come meanwhile do nothing, least of all on the page below.
func TestAFormWaitsForTheDisk(t *testing.T) {
	c := climbIn(t, noBook).press("enter").typed("300 160").press("pgdown")
	c.slow = true
	c.press("pgdown").sees("wait: the disk is writing").typed("abq")
	if c.quit || len(c.held) != 1 {
		t.Errorf("quit %v, %d commands wait", c.quit, len(c.held))
	}
	c.slow = false
	c.catchUp().sees("Enter the first product")
	if got := c.model().form.said["product"]; got != "" {
		t.Errorf("the next form says %q", got)
	}
}

func TestAFormThatTheDiskRefuses(t *testing.T) {
	c := climbIn(t, noBook).press("enter").typed("300 160").press("pgdown")
	c.disk.err = errDisk
	c.press("pgdown").sees("the disk is full").seesNot("gun, gal")
}

// TestFormsByTaps: fields, options and keys are places to tap.
func TestFormsByTaps(t *testing.T) {
	c := firstProduct(t)
	tapWords := func(words string) {
		t.Helper()
		for y, l := range strings.Split(c.screen(), "\n") {
			if x := strings.Index(l, words); x >= 0 {
				c.tapAt(len([]rune(l[:x])), y)
				return
			}
		}
		t.Fatalf("no %q on the screen:\n%s", words, c.screen())
	}
	c.typed("iron")
	tapWords("measured out as")
	tapWords("measured out as")
	c.sees("< fl oz/1000 sq ft, liquid >")
	tapWords("rate in the mix")
	c.typed("2")
	tapWords("PgDn page")
	tapWords("more of the list")
	tapWords("tall fescue")
	c.sees("[x] tall fescue")
	for range 13 {
		c.press("up")
	}
	tapWords("bahiagrass")
	tapWords("bahiagrass")
	c.sees("[ ] bahiagrass")
	tapWords("Enter  log it")
	c.sees("Enter the first lawn").typed("9 Elm").press("enter").typed("10").press("pgdown")
	tapWords("more of the list")
	tapWords("zoysiagrass")
	tapWords("Enter  log it")
	c.sees("Open the first day")
	if l := c.book().Lawn("9 Elm"); l == nil || l.Zones[0].Grass != "zoysiagrass" {
		t.Errorf("%+v", l)
	}
}

// TestFormsFit: on every page of every form, in each theme and with every colour, the screen is exactly as wide
// and as high as it should be.
func TestFormsFit(t *testing.T) {
	for _, name := range []string{"night", "sun", "plain"} {
		c := climbIn(t, morning, func(o *Options) { o.Theme, o.Renderer = name, colours(termenv.TrueColor) })
		about := map[string]string{setup.Label: "Example Cool", setup.Recipe: "bermuda, zoysia"}
		for _, f := range []string{setup.Rig, setup.Product, setup.Mix, setup.Lawn, setup.Label, setup.Recipe} {
			m := c.model()
			m.openForm(f, about[f])
			c.m = m
			if m.form == nil {
				t.Fatalf("no form %s", f)
			}
			for page := range m.form.def.Pages {
				m.form.page, m.form.at = page, 0
				for _, at := range []int{0, len(m.form.asks()) - 1} {
					m.form.at, m.form.drawn = at, formLook{}
					c.size(60, 20)
					c.size(120, 40)
				}
			}
		}
	}
}

// TestFormsSayTheSameInEveryTheme: colours change no word, and codes leave no cell in the terminal's own colours.
func TestFormsSayTheSameInEveryTheme(t *testing.T) {
	for _, name := range []string{"form_rig_tank", "form_product", "form_grasses", "form_lawn_grass"} {
		words := situation(t, name).screen()
		for _, th := range theme.Names() {
			for _, p := range []termenv.Profile{termenv.Ascii, termenv.TrueColor} {
				screen := situation(t, name, inTheme(th, p)).screen()
				if got := ansi.Strip(screen); got != words {
					t.Errorf("%s, %s: the words differ:\n%s", name, th, got)
				}
				if p == termenv.Ascii || th == theme.Plain {
					continue
				}
				for _, l := range strings.Split(screen, "\n") {
					if i := strings.Index(l, "\x1b[0m "); i >= 0 || strings.HasPrefix(l, " ") {
						t.Errorf("%s, %s: a hole in %q", name, th, l)
						break
					}
				}
			}
		}
	}
}
