//go:build unix

package endtoend

import (
	"os"
	"regexp"
	"strings"
	"testing"
)

// The picture in the README is the demo's first screen, to the letter.
func TestReadmePicture(t *testing.T) {
	readme, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	found := regexp.MustCompile("(?s)```text\n(.*?)```").FindStringSubmatch(string(readme))
	if found == nil {
		t.Fatal("the README has no picture of the screen")
	}
	c := start(t, small, nil, "demo")
	c.see("DEMO BOOK", "quit")
	var lines []string
	for _, l := range strings.Split(c.screen(), "\n") {
		lines = append(lines, strings.TrimRight(l, " "))
	}
	now := strings.TrimRight(strings.Join(lines, "\n"), "\n") + "\n"
	switch {
	case found[1] == now:
	case os.Getenv("TINTLINE_PICTURE") != "": // writes it anew: look at it
		if err := os.WriteFile("../../README.md", []byte(strings.Replace(string(readme), found[1], now, 1)), 0o644); err != nil {
			t.Fatal(err)
		}
	default:
		t.Errorf("the README shows:\n%s\nthe screen is:\n%s", found[1], now)
	}
	c.press("q")
	c.ended()
}
