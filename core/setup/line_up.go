package setup

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/sheet"
)

// LineUp is the form of a named line-up: what feeds the pump, where the return leads, how the valves stand for it.
const LineUp = "line_up"

const (
	keySupply = "supply"
	keyBack   = "return"
	keyValves = "valves"
)

func lineUpForm(r *core.Rig, about string) Form {
	l, at, title := core.NamedLineUp{}, len(r.LineUps), "Add a line-up"
	if i := slices.IndexFunc(r.LineUps, func(l core.NamedLineUp) bool { return l.Name == about }); i >= 0 && about != "" {
		l, at, title = r.LineUps[i], i, "Change the line-up "+about
	}
	back := []Option{{"", "nowhere"}}
	for _, c := range r.Compartments {
		back = append(back, Option{string(rune(c.Letter)), strings.TrimSpace(string(rune(c.Letter)) + " " + c.Name)})
	}
	returnWas := ""
	if l.Return != 0 {
		returnWas = string(rune(l.Return))
	}
	fields := []Field{
		{
			Key: keyName, Words: "name", Start: l.Name, need: always, check: cell(sheet.Rig, "name"),
			Help: "What you call it, such as from a.", Allowed: allowed(sheet.Rig, "name"),
		}, {
			Key: keySupply, Words: "feeds the pump", Start: lettersText(l.Supply), check: func(_ Answers, said string) error { return checkSupply(r, said) },
			Help: "The compartments whose suction valves stand open; blank: none.", Allowed: "letters of the rig, such as a, or a; b",
		}, {
			Key: keyBack, Words: "return leads to", Start: returnWas, Options: back, Help: "Where the bypass goes back to.", Allowed: "one of the list",
		}, {
			Key: keyValves, Words: "valves", Start: valvesText(l.Valves), check: cell(sheet.Rig, keyValves),
			Help: "Each valve and how it stands, semicolons between them.", Allowed: allowed(sheet.Rig, keyValves),
		},
	}
	return ofRig(LineUp, title, "valves", fields, func(r *core.Rig, a Answers) error {
		l := l
		l.Name, l.Return = a[keyName], 0
		if a[keyBack] != "" {
			l.Return = a[keyBack][0]
		}
		if a[keySupply] != lettersText(l.Supply) {
			l.Supply = []byte(strings.ToLower(strings.Join(letterWords(a[keySupply]), "")))
		}
		if a[keyValves] != valvesText(l.Valves) {
			l.Valves = readValves(a[keyValves])
		}
		r.LineUps = placed(r.LineUps, at, l)
		return nil
	})
}

func lettersText(letters []byte) string {
	return strings.Join(strings.Split(string(letters), ""), Joint)
}

// letterWords parts "a; b", "a+b" or "a b"; none stands for no letter.
func letterWords(said string) []string {
	if strings.EqualFold(strings.TrimSpace(said), "none") {
		return nil
	}
	return strings.FieldsFunc(said, func(r rune) bool { return strings.ContainsRune("; ,+", r) })
}

func checkSupply(r *core.Rig, said string) error {
	words := letterWords(said)
	for i, w := range words {
		if !slices.ContainsFunc(r.Compartments, func(c core.RigCompartment) bool { return strings.EqualFold(w, string(rune(c.Letter))) }) {
			return &Wrong{What: fmt.Sprintf("%q is no compartment of the rig.", w), Do: "Type letters of the rig, such as a, or a; b."}
		}
		if slices.Contains(words[:i], w) {
			return &Wrong{What: fmt.Sprintf("Compartment %s stands there twice.", w), Do: "Name it once."}
		}
	}
	return nil
}

func valvesText(valves map[string]string) string {
	var out []string
	for _, k := range slices.Sorted(maps.Keys(valves)) {
		out = append(out, k+"="+valves[k])
	}
	return strings.Join(out, Joint)
}

// readValves reads valves and positions that the field's check has let through: "1=open; 2=shut".
func readValves(said string) map[string]string {
	out := map[string]string{}
	for _, s := range strings.Split(said, ";") {
		if k, v, ok := strings.Cut(s, "="); ok {
			out[strings.TrimSpace(k)] = strings.TrimSpace(v)
		}
	}
	if len(out) == 0 {
		return nil
	}
	return out
}
