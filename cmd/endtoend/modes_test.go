//go:build unix

package endtoend

import (
	"os/exec"
	"regexp"
	"strings"
	"testing"
)

// codes of SGR that name a colour: 30 to 49 without 39 and 49, 90 to 107.
var colourCode = regexp.MustCompile(`\x1b\[(?:\d+;)*(?:3[0-8]|4[0-8]|9[0-7]|10[0-7])[;m]`)

// TestColoursOnTheTerminal runs the program and looks at what it writes.
func TestColoursOnTheTerminal(t *testing.T) {
	for _, one := range []struct {
		name string
		env  []string
		args []string
		has  string
		none bool
	}{
		{"full under CI", []string{"CI=true", "TERM=xterm"}, []string{"--colour", "full"}, "38;2;", false},
		{"256 by the terminal's name, under CI", []string{"CI=true"}, nil, "38;5;", false},
		{"16", nil, []string{"--colour", "16"}, "\x1b[1;97;41m", false},
		{"NO_COLOR", []string{"NO_COLOR=1"}, nil, "\x1b[1;7m", true},
		{"NO_COLOR and forced", []string{"NO_COLOR=1", "CLICOLOR_FORCE=1", "COLORTERM=truecolor"}, nil, "\x1b[1;7m", true},
		{"none", nil, []string{"--colour", "none"}, "\x1b[1;7m", true},
		{"a sun theme that NO_COLOR overrules", []string{"NO_COLOR=1", "TINTLINE_THEME=sun"}, nil, "\x1b[1;7m", true},
	} {
		t.Run(one.name, func(t *testing.T) {
			c := start(t, small, one.env, append([]string{"demo"}, one.args...)...)
			c.see("DEMO BOOK", "STOP", "q quit")
			c.press("q")
			c.ended()
			raw := c.bytes()
			if !strings.Contains(raw, one.has) {
				t.Errorf("%q is not written", one.has)
			}
			if code := colourCode.FindString(raw); one.none && code != "" {
				t.Errorf("a colour is written: %q", code)
			}
		})
	}
}

// TestNoMouse: the terminal's own selection stays where it is asked for.
func TestNoMouse(t *testing.T) {
	c := start(t, small, nil, "demo", "--no-mouse")
	c.see("DEMO BOOK", "q quit")
	c.press("q")
	c.ended()
	for _, mode := range []string{"?1000h", "?1002h", "?1003h"} {
		if strings.Contains(c.bytes(), mode) {
			t.Errorf("mouse mode %s was set", mode)
		}
	}
}

// TestModesNeverSet: touch terminals report nothing in mode 1003, and focus reports would come as keys; no question is
// asked that a terminal may not answer.
func TestModesNeverSet(t *testing.T) {
	c := start(t, small, nil, "demo")
	c.see("DEMO BOOK", "q quit")
	c.tap("?")
	c.see("Keys")
	c.press("q")
	c.ended()
	raw := c.bytes()
	if !strings.Contains(raw, "\x1b[?1002h") {
		t.Error("touch is not asked for")
	}
	for _, code := range []string{"\x1b[?1003h", "\x1b[?1004h", "\x1b]11;?", "\x1b]10;?", "\x1b[6n", "\x1b[c", "\x1b[?25h\x1b[?25l\x1b[?25h\x1b[?25l\x1b[?25h"} {
		if strings.Contains(raw, code) {
			t.Errorf("%q was written", code)
		}
	}
}

// TestDumbTerminal: nothing is drawn where it could only be read as noise; the sentence says how to ask by command, and
// the commands answer in plain lines.
func TestDumbTerminal(t *testing.T) {
	cmd := exec.Command(binary, "demo")
	cmd.Env = append(environment(t), "TERM=dumb")
	c := on(t, small, cmd)
	if code := c.ended(); code == 0 {
		t.Error("exit 0")
	}
	c.see("tintline status")
	if strings.Contains(c.bytes(), "\x1b") {
		t.Errorf("escape codes on a dumb terminal: %q", c.bytes())
	}
	c.asItWas()
	if out := must(t, "", "check", "--help"); strings.ContainsRune(out, 0x1b) {
		t.Error("escape codes in a command's answer")
	}
}

// TestNoLocaleNoSigns: under a locale that is not UTF-8 every byte of the screen is ASCII.
func TestNoLocaleNoSigns(t *testing.T) {
	c := start(t, small, []string{"LANG=C", "LC_ALL=C"}, "demo")
	c.see("DEMO BOOK", "q quit")
	c.press("q")
	c.ended()
	for _, r := range c.bytes() {
		if r > 0x7e {
			t.Fatalf("%q was written", r)
		}
	}
}
