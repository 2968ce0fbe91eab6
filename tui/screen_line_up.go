package tui

import (
	"fmt"
	"sort"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/core"
	"example.com/tintline/core/check"
	"example.com/tintline/core/fluid"
	"example.com/tintline/tui/theme"
)

// lineUpPage lists the line-ups, each with the valves that stand otherwise by the book.
func lineUpPage() *pageSpec {
	const p = pageLineUp
	spec := &pageSpec{
		page: p, key: "u", title: "Line-ups", words: "how the valves stand, and which to set for another line-up",
		show: (*Model).showLineUps, pick: (*Model).pickLineUp,
		keys: letterKeys(p, func(m *Model, l byte) bool { return m.isCompartment(l) }),
	}
	spec.keys = append(
		spec.keys,
		pageKey(p, "w", "what if", "dry run: what if you turned there now; nothing is logged", func(m *Model) tea.Cmd {
			l := m.chosen()[0]
			cmd := m.goTo(pageChange)
			if m.turn.phase == phaseLook {
				m.turn = turning{to: l}
			}
			return cmd
		}, func(m *Model) bool { return len(m.chosen()) == 1 }),
		opening(pageKey(p, "l", "type it", "type how the valves were turned: a, a+b return c, none", (*Model).openLineUp, func(m *Model) bool { return m.book.Rig() != nil })),
	)
	return spec
}

// lining is a line-up that can be chosen: a named one of the rig, or a compartment that has none.
type lining struct {
	id   string // the letter where supply and return are on one compartment
	name string
	up   fluid.LineUp
}

func (m *Model) linings() []lining {
	var out []lining
	named := map[string]bool{}
	for _, l := range m.book.Rig().LineUps {
		v := lining{id: "line/" + l.Name, name: l.Name, up: fluid.LineUp{Supply: l.Supply, Return: l.Return}}
		if id := string(l.Supply); id == string(l.Return) && !named[id] {
			v.id = id
		}
		named[v.id] = true
		out = append(out, v)
	}
	for _, c := range m.book.Rig().Compartments {
		if id := string(c.Letter); !named[id] {
			out = append(out, lining{id: id, up: fluid.LineUp{Supply: []byte{c.Letter}, Return: c.Letter}})
		}
	}
	return out
}

// stands tells whether a line-up is the one that stands.
func (m *Model) stands(up fluid.LineUp) bool {
	now := m.book.Plumbing().LineUp
	a, b := m.book.LineUpOf(up.Supply, up.Return), m.book.LineUpOf(now.Supply, now.Return)
	if a != nil || b != nil {
		return a == b
	}
	return string(now.Supply) == string(up.Supply) && now.Return == up.Return
}

func (m *Model) showLineUps() sheet {
	if m.book.Rig() == nil {
		return sheet{rows: m.wrapped(theme.Base, "The book has no rig yet.")}
	}
	now := m.book.Plumbing().LineUp
	words := lineUpWords(now)
	if n := m.book.LineUpName(); n != "" {
		words = n + ": " + words
	}
	out := sheet{about: m.told(theme.Strong, "stands now  "+words)}
	if f, found := check.LineUpNow(m.book); found {
		out.about = append(out.about, m.findingLines(f)...)
	}
	all := m.linings()
	for _, l := range all {
		out.rows = append(out.rows, m.liningRows(l)...)
	}
	id := m.chosenAmong(out.rows)
	for _, l := range all {
		switch {
		case l.id != id:
		case m.stands(l.up):
			out.small = "It stands so by the book."
		default:
			out.offer, out.small = "turn the valves: "+lineUpWords(l.up), "the pump stands still until they are set"
		}
	}
	return out
}

// findingLines are a finding below the title of a page.
func (m *Model) findingLines(f check.Finding) []line {
	said := m.finding(f)
	out := m.told(said.t, said.word+"  "+join(said.do, said.says))
	return out
}

// lineUpWords is "a to the pump, return to a".
func lineUpWords(up fluid.LineUp) string {
	words := "no supply open"
	if len(up.Supply) > 0 {
		words = strings.Join(strings.Split(string(up.Supply), ""), " and ") + " to the pump"
	}
	if up.Return == 0 {
		return words + ", return to none"
	}
	return words + fmt.Sprintf(", return to %c", up.Return)
}

// liningRows are a line-up, below it the valves to set for it, and what would be wrong with it.
func (m *Model) liningRows(l lining) []row {
	name := l.name
	if name == "" {
		name = "from " + l.id
	}
	state := ""
	if m.stands(l.up) {
		state = "stands"
	}
	const narrow = 60
	first := line{left: []span{m.cell(theme.Strong, name, max(m.w/4, shortName)), m.cell(theme.Key, state, 6)}}
	out := []row{{id: l.id, line: first}}
	if words := (span{theme.Base, lineUpWords(l.up)}); m.w < narrow {
		out = append(out, row{line: line{left: []span{{theme.Base, "  "}, words}}})
	} else {
		out[0].left = append(out[0].left, words)
	}
	for _, s := range m.g.wrap(m.g.clean(m.valvesOf(l)), m.w-tableMarks-2) {
		out = append(out, row{line: text(theme.Base, "  "+s)})
	}
	if f, found := check.LineUpIf(m.book, l.up); found {
		said := m.finding(f)
		for _, s := range m.g.wrap(said.word+"  "+said.says, m.w-tableMarks-2) {
			out = append(out, row{line: text(said.t, "  "+s)})
		}
	}
	return out
}

// valvesOf says which valves are to be set, from what to what, and how many stay.
func (m *Model) valvesOf(l lining) string {
	if l.name == "" {
		return "its valves are not named in the rig"
	}
	named := m.book.LineUpOf(l.up.Supply, l.up.Return)
	set, stay := m.book.ValveChanges(*named)
	var words []string
	for _, v := range set {
		s := "valve " + v.Valve + ": "
		if v.From.Known {
			s += v.From.V + " -> "
		}
		words = append(words, s+v.To)
	}
	if len(stay) > 0 {
		n := fmt.Sprintf("%d stay as they are", len(stay))
		if len(set) == 0 {
			n = valveWords(named.Valves)
		}
		words = append(words, n)
	}
	if unsaid := m.book.Rig().Unsaid(*named); len(unsaid) > 0 {
		words = append(words, "not said: valve "+strings.Join(unsaid, ", "))
	}
	return strings.Join(words, ", ")
}

// pickLineUp logs that the valves are turned so. What would be a stop is asked first.
func (m *Model) pickLineUp(id string) tea.Cmd {
	for _, l := range m.linings() {
		if l.id == id && !m.stands(l.up) {
			return m.turnTo(l.up)
		}
	}
	return nil
}

func (m *Model) turnTo(up fluid.LineUp) tea.Cmd {
	f := &core.LinedUp{Supply: up.Supply, Return: up.Return}
	if found, bad := check.LineUpIf(m.book, up); bad && found.Weight >= check.Stop {
		m.put(question{facts: []core.Fact{f}, words: "turn the valves all the same: " + lineUpWords(up)})
		return nil
	}
	return m.enter(f)
}

// openLineUp takes a line-up that no name stands for.
func (m *Model) openLineUp() tea.Cmd {
	m.openLine(textLine{
		prompt: "valves turned to", hint: "a; or a+b return c; none; the return follows the supply if it is not said",
		read: func(m *Model, said string) ([]core.Fact, error) {
			up, err := m.readLineUp(said)
			if err != nil {
				return nil, err
			}
			return []core.Fact{&core.LinedUp{Supply: up.Supply, Return: up.Return}}, nil
		},
	})
	return nil
}

// readLineUp reads letters that feed the pump, then where the return leads.
func (m *Model) readLineUp(said string) (fluid.LineUp, error) {
	var up fluid.LineUp
	supply, back, told := strings.Cut(strings.ToLower(strings.TrimSpace(said)), "return")
	if supply = strings.TrimSpace(supply); supply == "" {
		return up, slip("Nothing is typed that feeds the pump.", "Type a letter, several with a plus, or none.")
	}
	const none = "none"
	if supply != none {
		for _, s := range strings.FieldsFunc(supply, func(r rune) bool { return r == '+' || r == ',' || r == ' ' }) {
			l, err := m.readLetter(s)
			if err != nil {
				return up, err
			}
			up.Supply = append(up.Supply, l)
		}
	}
	switch back = strings.TrimSpace(strings.TrimPrefix(strings.TrimSpace(back), "to ")); {
	case !told && len(up.Supply) == 1:
		up.Return = up.Supply[0]
	case !told || back == none:
	default:
		l, err := m.readLetter(back)
		if err != nil {
			return up, err
		}
		up.Return = l
	}
	return up, nil
}

func (m *Model) readLetter(s string) (byte, error) {
	if len(s) == 1 && m.isCompartment(s[0]) {
		return s[0], nil
	}
	var letters []string
	for _, c := range m.book.Rig().Compartments {
		letters = append(letters, string(c.Letter))
	}
	return 0, slip(fmt.Sprintf("%q is no compartment.", s), "The rig has "+strings.Join(letters, ", ")+".")
}

func valveWords(valves map[string]string) string {
	names := make([]string, 0, len(valves))
	for n := range valves {
		names = append(names, n)
	}
	sort.Strings(names)
	words := ""
	for i, n := range names {
		if i > 0 {
			words += ", "
		}
		words += n + " " + valves[n]
	}
	return words
}
