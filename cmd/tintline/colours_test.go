package main

import (
	"io"
	"testing"

	"github.com/muesli/termenv"
)

// TestColoursAskedFor: what --colour says holds; left alone, the terminal's name and NO_COLOR decide. Nothing else does:
// not CI, not CLICOLOR_FORCE, not the libraries' guess. Without colours it is the plain theme with sixteen, because a
// profile without colours would take bold and reverse away too.
func TestColoursAskedFor(t *testing.T) {
	type env = map[string]string
	for _, one := range []struct {
		colour  string
		env     env
		profile termenv.Profile
		theme   string
	}{
		{"auto", env{"TERM": "xterm-256color"}, termenv.ANSI256, "night"},
		{"auto", env{"TERM": "xterm-256color", "COLORTERM": "truecolor"}, termenv.TrueColor, "night"},
		{"auto", env{"TERM": "xterm", "COLORTERM": "24bit"}, termenv.TrueColor, "night"},
		{"auto", env{"TERM": "xterm"}, termenv.ANSI, "night"},
		{"auto", env{"TERM": "linux"}, termenv.ANSI, "night"},
		{"auto", env{"TERM": "screen"}, termenv.ANSI, "night"},
		{"auto", env{"TERM": "tmux-256color"}, termenv.ANSI256, "night"},
		{"auto", env{}, termenv.ANSI, "night"},
		{"auto", env{"TERM": "vt220"}, termenv.ANSI, "plain"},
		{"auto", env{"TERM": "xterm-mono"}, termenv.ANSI, "plain"},
		{"auto", env{"TERM": "xterm-256color", "NO_COLOR": "1"}, termenv.ANSI256, "plain"},
		{"auto", env{"TERM": "xterm-256color", "NO_COLOR": "1", "TINTLINE_THEME": "sun"}, termenv.ANSI256, "plain"},
		{"auto", env{"TERM": "xterm-256color", "NO_COLOR": ""}, termenv.ANSI256, "night"},
		{"auto", env{"TERM": "xterm-256color", "CI": "true"}, termenv.ANSI256, "night"},
		{"auto", env{"TERM": "xterm", "CLICOLOR_FORCE": "1"}, termenv.ANSI, "night"},
		{"auto", env{"TERM": "xterm", "TINTLINE_THEME": "sun"}, termenv.ANSI, "sun"},
		{"none", env{"TERM": "xterm-256color", "COLORTERM": "truecolor"}, termenv.ANSI, "plain"},
		{"none", env{"TERM": "xterm-256color", "CLICOLOR_FORCE": "1"}, termenv.ANSI, "plain"},
		{"16", env{"TERM": "xterm-256color", "COLORTERM": "truecolor"}, termenv.ANSI, "night"},
		{"16", env{"TERM": "vt100"}, termenv.ANSI, "night"},
		{"256", env{"TERM": "xterm", "CI": "1"}, termenv.ANSI256, "night"},
		{"full", env{"TERM": "xterm", "CI": "1", "NO_COLOR": "1"}, termenv.TrueColor, "night"},
	} {
		for k, v := range one.env {
			t.Setenv(k, v) // the libraries look there too
		}
		o := cabOptions{colour: one.colour, stdout: io.Discard, getenv: func(k string) string { return one.env[k] }}
		if got := themeName(o); got != one.theme {
			t.Errorf("--colour %s, %v: theme %s, not %s", one.colour, one.env, got, one.theme)
		}
		got := renderer(o).ColorProfile()
		if got != one.profile && one.theme != "plain" {
			t.Errorf("--colour %s, %v: profile %v, not %v", one.colour, one.env, got, one.profile)
		}
		if got == termenv.Ascii {
			t.Errorf("--colour %s, %v: without any attributes", one.colour, one.env)
		}
	}
}

func TestSignsOfTheLocale(t *testing.T) {
	type env = map[string]string
	for _, one := range []struct {
		env  env
		utf8 bool
	}{
		{env{}, true},
		{env{"LANG": "C"}, false},
		{env{"LANG": "POSIX"}, false},
		{env{"LANG": "en_US.ISO-8859-1"}, false},
		{env{"LANG": "en_US.UTF-8"}, true},
		{env{"LANG": "en_US.utf8"}, true},
		{env{"LANG": "en_US.UTF-8", "LC_ALL": "C"}, false},
		{env{"LANG": "C", "LC_CTYPE": "C.UTF-8"}, true},
	} {
		if got := utf8Locale(func(k string) string { return one.env[k] }); got != one.utf8 {
			t.Errorf("%v: UTF-8 %v", one.env, got)
		}
	}
}
