package setup

import (
	"errors"
	"slices"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
	"example.com/tintline/core/sheet"
)

// labelPages are the columns of a label entry, page by page, with the words before each. What matters most comes first.
var labelPages = []struct {
	title   string
	short   string
	columns [][2]string
}{
	{"what the check rests on", "year", [][2]string{
		{"rate_high", "highest rate"},
		{"actives", "actives"},
		{"registration", "registration number"},
		{"most_year", "most a year"},
		{"days_between", "days between"},
		{"wind_max_mph", "wind limit, mph"},
		{"kind", "what it is for"},
	}},
	{"grasses", "grasses", [][2]string{{keyGrasses, "the label lists"}}},
	{"rates", "limits", [][2]string{
		{"rate_low", "lowest rate"},
		{"rates", "rates by grass"},
		{"most_application", "most in one go"},
		{"most_times", "times a year"},
		{"year_days", "label's year, days"},
	}},
	{"weather", "weather", [][2]string{
		{"temp_max_f", "highest temp, F"},
		{"temp_min_f", "lowest temp, F"},
		{"rain_free_h", "hours without rain"},
		{"no_inversion", "not under inversion"},
	}},
	{"where and when", "where", [][2]string{
		{"sites", "sites"},
		{"water_ft", "strip by water, ft"},
		{"no_bloom", "not on bloom"},
		{"new_turf_days", "wait on new turf, days"},
		{"reseed_days", "wait to seed, days"},
		{"reentry", "going back on it"},
		{"first_aid", "first aid"},
		{"emergency_phone", "number to call"},
	}},
	{"what it is", "is", [][2]string{
		{"signal", "signal word"},
		{"restricted", "restricted use"},
		{"mixing_class", "formulation letters"},
		{"mixing_order", "goes into the tank"},
		{"package", "package"},
		{"price_usd", "price of it, dollars"},
		{"density_lb_per_gal", "a gallon weighs, lb"},
	}},
	{"plant food", "food", [][2]string{
		{"nitrogen_pct", "nitrogen, %"},
		{"quick_nitrogen_pct", "of it quick, %"},
		{"phosphate_pct", "phosphate, %"},
		{"potash_pct", "potash, %"},
	}},
}

// labelForm asks for all of a product's label; what stands there is the entry in force. Its answers are the next version.
func labelForm(b *core.Book, product string) Form {
	old := b.Product(product)
	cells := sheet.Cells(old)
	f := Form{Name: Label, Title: "The label of " + product, facts: func(b *core.Book, _ core.Moment, a Answers) ([]core.Fact, error) {
		return labelFacts(b, product, cells, a)
	}}
	columns := map[string]sheet.Column{}
	for _, c := range sheet.Columns(sheet.Products) {
		columns[c.Name] = c
	}
	for _, p := range labelPages {
		page := Page{Title: p.title, Short: p.short}
		for _, c := range p.columns {
			page.Fields = append(page.Fields, labelField(columns[c[0]], c[1], cells[c[0]]))
		}
		f.Pages = append(f.Pages, page)
	}
	return f
}

func labelField(c sheet.Column, words, start string) Field {
	if c.Name == keyGrasses {
		d := grassesField()
		d.Start, d.filled = start, start
		d.fill = func(a Answers) Filled { // who goes through the pages to change another figure ticks no grass by it
			f, _ := marked(a[keyActives])
			f.Answer = start
			return f
		}
		return d
	}
	d := Field{Key: c.Name, Words: words, Start: start, Allowed: c.Allowed, check: func(_ Answers, said string) error {
		if said == start {
			return nil // it stands as it was entered
		}
		return sheet.Check(sheet.Products, c.Name, said)
	}}
	switch c.Name {
	case "signal":
		d.Options = optionsOf(label.Signals())
	case "restricted", "no_inversion", "no_bloom":
		d.Options = optionsOf([]string{label.Yes, label.No})
	}
	d.Help = helpOf(c, len(d.Options) == 0)
	return d
}

// helpOf says what stands in a column, and what it means to leave it blank.
func helpOf(c sheet.Column, example bool) string {
	says, empty, mayBe := strings.Cut(c.Words, "; empty: ")
	help := capital(says)
	if example {
		help += ", such as " + c.Example
	}
	help += "."
	if mayBe {
		help += " Blank: " + empty + "."
	}
	if sheet.TakesNone(c.Name) {
		help += " None: the label has none."
	}
	return help
}

func optionsOf(words []string) []Option {
	out := []Option{{"", "not entered"}}
	for _, w := range words {
		out = append(out, Option{w, w})
	}
	return out
}

func capital(s string) string { return strings.ToUpper(s[:1]) + s[1:] }

// labelFacts is the next version of a label entry: what was answered otherwise than it stood there, all else as it was.
func labelFacts(b *core.Book, product string, cells map[string]string, a Answers) ([]core.Fact, error) {
	changed := map[string]string{}
	for key, was := range cells {
		if said, asked := a[key]; asked && !same(key, said, was) {
			changed[key] = said
		}
	}
	now := b.Product(product)
	if len(changed) == 0 || now == nil {
		return nil, nil
	}
	f, err := sheet.Change(now, changed)
	var all sheet.Troubles
	if errors.As(err, &all) {
		_, do := all.Sentences()
		return nil, &Wrong{Field: all[0].Column, What: all[0].What, Do: do, Err: err}
	}
	return []core.Fact{f}, err
}

// same tells whether an answer says what stood there; ticks may come in another order.
func same(key, said, was string) bool {
	if key != keyGrasses {
		return said == was
	}
	a, b := strings.Split(said, Joint), strings.Split(was, Joint)
	slices.Sort(a)
	slices.Sort(b)
	return slices.Equal(a, b)
}
