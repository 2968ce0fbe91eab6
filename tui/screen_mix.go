package tui

import (
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/core"
	"example.com/tintline/core/grid"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
	"example.com/tintline/tui/theme"
)

// mixesPage lists the mixes.
func mixesPage() *pageSpec {
	return &pageSpec{
		page: pageMixes, key: "x", title: "Mixes", words: "recipes, their rates against the labels, where they may go",
		show: (*Model).showMixes,
		pick: func(m *Model, id string) tea.Cmd { return m.openMix(id) },
		keys: []binding{pageKey(pageMixes, "n", "new", "enter a mix, product by product", func(m *Model) tea.Cmd { return m.formMix("") }, nil)},
	}
}

// mixPage shows one mix.
func mixPage() *pageSpec {
	const p = pageMix
	return &pageSpec{
		page: p, title: "One mix", show: (*Model).showMix, pick: (*Model).leadOn,
		keys: []binding{
			opening(pageKey(p, "n", "new from this", "a new mix from the one shown: another product with it, or another rate", (*Model).openNewMix, func(m *Model) bool {
				return m.book.Mix(m.subject.mix) != nil
			})),
			opening(pageKey(p, "i", "rates, pests", "change its rates, or say which pests its products are for", (*Model).formRecipe, func(m *Model) bool {
				return !m.busy() && m.book.Mix(m.subject.mix) != nil
			})),
		},
	}
}

// openMix opens the page of a mix.
func (m *Model) openMix(name string) tea.Cmd {
	if m.book.Mix(name) == nil {
		return nil
	}
	cmd := m.goTo(pageMix)
	m.subject.mix, m.made, m.on[pageMix] = name, "", placeOn{text: true}
	return cmd
}

func (m *Model) showMixes() sheet {
	list := m.book.Mixes()
	if len(list) == 0 {
		return sheet{rows: m.wrapped(theme.Base, "The book has no mix yet. A mix is made of products that the book has.")}
	}
	name := max(m.w/3, shortName)
	var rows []row
	for i := range list {
		l := line{left: []span{m.cell(theme.Strong, list[i].MixName, name)}}
		if in := m.standsIn(list[i].MixName); in != "" {
			l.left = append(l.left, span{theme.Key, "in " + in + "  "})
		}
		l.left = append(l.left, span{theme.Base, m.g.clean(m.mixParts(&list[i]))})
		rows = append(rows, row{id: list[i].MixName, now: true, line: l})
	}
	out := sheet{rows: rows}
	if id := m.chosenAmong(rows); id != "" {
		out.offer = "open " + id
	}
	return out
}

// standsIn names the tanks that hold a mix.
func (m *Model) standsIn(mix string) string {
	var out []string
	p := m.book.Plumbing()
	for i := range p.Compartments {
		if l := string(p.Compartments[i].Letter); p.Compartments[i].Drawable() > 0 && m.book.MixIn(l) == mix {
			out = append(out, l)
		}
	}
	for i := range p.Tanks {
		if n := p.Tanks[i].Name; p.Tanks[i].Liquid.Volume > 0 && m.book.MixIn(n) == mix {
			out = append(out, n)
		}
	}
	for i := range p.Hoppers {
		if n := p.Hoppers[i].Name; p.Hoppers[i].Mass() > 0 && m.book.MixInHopper(n) == mix {
			out = append(out, n)
		}
	}
	return strings.Join(out, ", ")
}

// mixParts are the products of a mix in short.
func (m *Model) mixParts(mix *core.Mix) string {
	var out []string
	for _, p := range mix.Parts {
		out = append(out, p.Product)
	}
	return joined(out)
}

func (m *Model) showMix() sheet {
	if m.made != "" && m.book.Mix(m.made) != nil {
		m.subject.mix, m.made = m.made, ""
	}
	mix := m.book.Mix(m.subject.mix)
	if mix == nil {
		return sheet{rows: m.wrapped(theme.Base, "No mix is chosen.")}
	}
	out := sheet{about: []line{text(theme.Strong, " "+m.g.clean(mix.MixName))}, small: "n makes a new mix from this one"}
	if in := m.standsIn(mix.MixName); in != "" {
		out.about[0].left = append(out.about[0].left, span{theme.Base, "  stands in " + m.g.clean(in)})
	}
	grasses := grassList(m.mixGrasses(mix)) + " (by each of its products)"
	if len(m.mixGrasses(mix)) == 0 {
		grasses = "no grass by each of its products"
	}
	for _, p := range mix.Parts {
		out.rows = append(out.rows, m.mixPart(p)...)
	}
	out.rows = append(out.rows, m.labelled("listed for", grasses)...)
	out.rows = append(out.rows, m.baseRows(mix)...)
	switch id := m.chosenAmong(out.rows); {
	case strings.HasPrefix(id, toProduct):
		out.offer = "open " + strings.TrimPrefix(id, toProduct)
	case strings.HasPrefix(id, toMix):
		out.offer = "open the mix " + strings.TrimPrefix(id, toMix)
	}
	return out
}

func (m *Model) mixGrasses(mix *core.Mix) []string {
	var entries []label.Entry
	for _, p := range mix.Parts {
		if product := m.book.Product(p.Product); product != nil {
			entries = append(entries, product.Label)
		}
	}
	return label.ListedByAll(entries)
}

// mixPart is a product with its rate, and below it the label's.
func (m *Model) mixPart(p core.MixPart) []row {
	const narrow = 60
	out := []row{{id: toProduct + p.Product, now: true, line: text(theme.Strong, m.g.clean(p.Product))}}
	if m.w < narrow {
		out = append(out, row{line: text(theme.Base, "  "+grid.RateWords(p.Rate))})
	} else {
		out[0].left = []span{m.cell(theme.Strong, p.Product, max(m.w/3, shortName)), {theme.Base, grid.RateWords(p.Rate)}}
	}
	product := m.book.Product(p.Product)
	if product == nil {
		return out
	}
	t, words := theme.Dim, "label "+rateRange(product.Label)
	switch product.Label.Hold(p.Rate) {
	case label.TooHigh:
		t, words = theme.Stop, "OVER THE LABEL: "+rateRange(product.Label)
	case label.TooLow:
		t, words = theme.Ask, "UNDER THE LABEL: "+rateRange(product.Label)
	}
	for _, l := range m.g.wrap(words, m.w-tableMarks-2) {
		out = append(out, row{line: text(t, "  "+l)})
	}
	return out
}

// baseRows say what a mix was made from, and what is otherwise in it.
func (m *Model) baseRows(mix *core.Mix) []row {
	base := m.book.Mix(mix.Base)
	if base == nil {
		return nil
	}
	out := []row{{id: toMix + base.MixName, now: true, line: line{left: []span{
		{theme.Dim, m.padded("made from", labelWidth)}, {theme.Strong, m.g.clean(base.MixName)},
	}}}}
	all := core.Difference(mix, base)
	if len(all) == 0 {
		return append(out, m.labelled("otherwise", "nothing: they hold the same")...)
	}
	for i, d := range all {
		name := ""
		if i == 0 {
			name = "otherwise"
		}
		words := d.Product
		switch {
		case !d.Base.Known:
			words += " " + d.Have.V.Text() + " is added"
		case !d.Have.Known:
			words += " is left out (" + d.Base.V.Text() + " there)"
		default:
			words += " " + d.Have.V.Text() + ", there " + d.Base.V.Text()
		}
		out = append(out, m.labelled(name, words)...)
	}
	return out
}

// openNewMix makes a new mix from the one shown: a product, its rate if that was not typed with it, then the name. Each
// step has its usual answer as a choice.
func (m *Model) openNewMix() tea.Cmd {
	base := m.subject.mix
	l := textLine{
		prompt: "add to " + base, hint: "or type a product and its rate per 1,000 sq ft",
		then: func(m *Model, said string) (*textLine, error) {
			product, rest, err := m.readProduct(said)
			if err != nil {
				return nil, err
			}
			if blank(rest) {
				return m.mixRateLine(base, product), nil
			}
			r, err := m.readMixRate(product, rest)
			return m.mixNameLine(base, core.MixPart{Product: product, Rate: r}), err
		},
	}
	for _, h := range m.book.Products() {
		if _, in := m.book.Mix(base).Rate(h.Name); !in {
			l.choices = append(l.choices, h.Name)
		}
	}
	m.openLine(l)
	return nil
}

// mixRateLine asks for the rate; the label's lowest and highest are choices.
func (m *Model) mixRateLine(base, product string) *textLine {
	l := &textLine{
		prompt: product + " per 1,000 sq ft", hint: "or type another rate",
		then: func(m *Model, said string) (*textLine, error) {
			r, err := m.readMixRate(product, said)
			return m.mixNameLine(base, core.MixPart{Product: product, Rate: r}), err
		},
	}
	e := m.book.Product(product).Label
	for _, r := range []struct {
		known bool
		rate  measure.Rate
	}{{e.HasRateLow, e.RateLow}, {e.HasRateHigh, e.RateHigh}} {
		if r.known {
			l.choices = append(l.choices, r.rate.Text())
		}
	}
	return l
}

func (m *Model) mixNameLine(base string, p core.MixPart) *textLine {
	usual := base + " + " + p.Product
	if _, in := m.book.Mix(base).Rate(p.Product); in {
		usual = base + ", other rate"
	}
	return &textLine{
		prompt: "name of the new mix", hint: "or type a name", choices: []string{usual},
		read: func(m *Model, said string) ([]core.Fact, error) {
			name := strings.TrimSpace(said)
			if m.book.Mix(name) != nil {
				return nil, slip("There is a mix "+name+" already.", "Type another name.")
			}
			m.made = name
			return []core.Fact{&core.Mix{MixName: name, Base: base, Parts: []core.MixPart{p}}}, nil
		},
	}
}

func (m *Model) readMixRate(product, said string) (measure.Rate, error) {
	form, unit := m.book.Product(product).Label.Form, "fl_oz_per_1000_sqft"
	if form == measure.Dry {
		unit = "oz_per_1000_sqft"
	}
	return measure.ReadRate(said, unit, form)
}

// readProduct takes the name of a product from the front, the longest that fits.
func (m *Model) readProduct(said string) (product, rest string, err error) {
	said = strings.TrimSpace(said)
	var names []string
	for _, h := range m.book.Products() {
		names = append(names, h.Name)
		if after, ok := cutWord(said, h.Name); ok && len(h.Name) > len(product) {
			product, rest = h.Name, after
		}
	}
	if product != "" {
		return product, rest, nil
	}
	hint := "Type its name as it stands in the book."
	if near := label.Nearest(strings.TrimRight(said, " 0123456789./"), names); near != "" {
		hint = "The nearest name is " + near + "."
	}
	return "", "", slip("\""+said+"\" does not begin with a product of the book.", hint)
}
