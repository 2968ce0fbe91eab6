package core

import (
	"fmt"
	"strings"
	"testing"

	"example.com/tintline/core/fluid"
)

const lineUps = `"line_ups":[{"name":"a to the gun","valves":{"1":"open","2":"closed","10":"left","drain":"closed"},"supply":["a"],"return":"a"},{"name":"b to the gun","valves":{"1":"closed","2":"open","10":"left"},"supply":["b"],"return":"b"},{"name":"level","valves":{"1":"open","2":"open"},"supply":["a","b"]}]`

func lineUpBook(t *testing.T) *Book {
	return play(t, NewBook(1), strings.Replace(setUp, `"line_ups":[{"name":"a","valves":{"1":"open"},"supply":["a"],"return":"a"}]`, lineUps, 1))
}

func words(set, stay []ValveChange) string {
	var out []string
	for _, c := range set {
		out = append(out, fmt.Sprintf("%s %s>%s", c.Valve, c.From.Or("?"), c.To))
	}
	out = append(out, "|")
	for _, c := range stay {
		out = append(out, c.Valve+" "+c.To)
	}
	return strings.Join(out, " ")
}

func TestValveChanges(t *testing.T) {
	for _, row := range []struct{ stands, to, want string }{
		{`{"fact":"lined_up","supply":["a"],"return":"a"}`, "b", "1 open>closed 2 closed>open | 10 left"},
		{`{"fact":"lined_up","supply":["b"],"return":"b"}`, "a", "1 closed>open 2 open>closed drain ?>closed | 10 left"},
		{`{"fact":"lined_up","supply":["a"],"return":"a"}`, "a", "| 1 open 2 closed 10 left drain closed"},
		{`{"fact":"lined_up","supply":["c"],"return":"c"}`, "a", "1 ?>open 2 ?>closed 10 ?>left drain ?>closed |"},
		{`{"fact":"lined_up","supply":["b"],"return":"a"}`, "b", "1 ?>closed 2 ?>open 10 ?>left |"},
		{`{"fact":"lined_up","supply":["b","a"]}`, "b", "1 open>closed 10 ?>left | 2 open"}, // the order of the supplies is no valve position
		{`{"fact":"lined_up","supply":["a"],"return":"a"}`, "c", "|"},
	} {
		b := lineUpBook(t)
		play(t, b, row.stands)
		if got := words(b.ValvesTo(fluid.LineUp{Supply: []byte(row.to), Return: row.to[0]})); got != row.want {
			t.Errorf("%s, then to %s: %s, not %s", row.stands, row.to, got, row.want)
		}
	}
}

func TestPositionsAreThoseOfTheNamedLineUp(t *testing.T) {
	b := lineUpBook(t)
	if p := b.Positions(); fmt.Sprint(p) != "map[1:open 10:left 2:closed drain:closed]" || b.LineUpName() != "a to the gun" {
		t.Errorf("%q: %v", b.LineUpName(), p)
	}
	b.Positions()["1"] = "torn off"
	if b.Positions()["1"] != "open" {
		t.Error("who asks can change the rig")
	}
	play(t, b, `{"fact":"lined_up","supply":["a"],"return":"c"}`)
	if p := b.Positions(); p != nil || b.LineUpName() != "" {
		t.Errorf("a line-up without a name has the positions %v", p)
	}
	if NewBook(1).Positions() != nil || NewBook(1).LineUpOf([]byte("a"), 'a') != nil {
		t.Error("a book without a rig has valves")
	}
	if got := fmt.Sprint(b.Rig().Unsaid(b.Rig().LineUps[2]), b.Rig().Unsaid(b.Rig().LineUps[0])); got != "[10 drain] []" {
		t.Error(got)
	}
}
