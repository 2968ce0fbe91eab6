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
	if found[1] != now {
		t.Errorf("the README shows:\n%s\nthe screen is:\n%s", found[1], now)
	}
	c.press("q")
	c.ended()
}
