package glance

import (
	"strings"
	"testing"

	"example.com/tintline/core"
	"example.com/tintline/testdata/demo"
)

// A way says a share of the label rate of what is not the compartment's own, and of what is its own the share of its strength.
func TestWayTextSaysOfWhatTheShareIs(t *testing.T) {
	product, share := "weed", 0.97
	a, b := "a", "b"
	c := Changeover{
		PushBack: &PushBack{Into: &a, Gal: 2.18},
		Legs:     []Leg{{Into: &a, Gal: 1.31}, {Into: &b, Gal: 0.87}},
		Ways: []Way{
			{Chosen: true, Legs: []Leg{{Into: &a, Gal: 1.31}, {Into: &b, Gal: 0.87}}, Product: &product, Own: &share, Weight: "none"},
			{Legs: []Leg{{Into: &a, Gal: 2.18}}, Product: &product, Share: &share, Weight: "ask"},
		},
	}
	got := c.Text()
	for _, want := range []string{
		"push back 2.18 gal, part by part", "so 1.31 gal into a, 0.87 gal into b", "weed at 0.97 of its own strength\n",
		"weed at 0.97 of its lowest label rate, ask\n",
	} {
		if !strings.Contains(got, want) {
			t.Errorf("no %q in\n%s", want, got)
		}
	}
	if strings.Contains(got, "none") || strings.Contains(got, "push back 2.18 gal into a") {
		t.Error(got)
	}
	c.Legs = c.Legs[:1]
	if got := c.Text(); !strings.Contains(got, "push back 2.18 gal into a") {
		t.Error(got)
	}
}

// Of several hoses each is named, with what it holds; of one alone the name says nothing.
func TestTextNamesTheHoses(t *testing.T) {
	b := demoBook(t)
	if text := Text(b, b.LastAt(), core.Maybe[core.Moment]{}); strings.Contains(text, " gal in "+b.Plumbing().Hoses[0].Name) {
		t.Error(text)
	}
	lines := strings.SplitN(demo.Journal, "\n", 2)
	two := strings.Replace(lines[0], `"hoses":[`, `"hoses":[{"name":"spare reel","inside_diameter_in":0.5,"length_ft":100},`, 1)
	if two == lines[0] {
		t.Fatal("the demo's rig has no hoses")
	}
	b = core.NewBook(1)
	l, err := core.DecodeLine([]byte(two))
	if err != nil {
		t.Fatal(err)
	}
	entries, err := b.Prepare("two", l.At.V, l.Fact)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		if err := b.Apply(e); err != nil {
			t.Fatal(err)
		}
	}
	text := Text(b, b.LastAt(), core.Maybe[core.Moment]{})
	for _, h := range b.Plumbing().Hoses {
		if strings.Count(text, " gal in "+h.Name+"\n") != 1 {
			t.Errorf("%s is not named once in\n%s", h.Name, text)
		}
	}
}
