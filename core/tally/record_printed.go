package tally

import (
	"fmt"
	"slices"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
	"example.com/tintline/core/printed"
)

// recordCaution stands under every record that is handed out.
const recordCaution = "This lists what was logged, and what the rule named asks for as it was read. Law changes: the product label, the rules of the place and licensed practice decide."

// RecordTable is all fields of all records as a table, a column a field. An amount and a rate stand as a figure and its unit.
func RecordTable(list []Record) printed.Table {
	var t printed.Table
	fields := core.RecordFields()
	for _, f := range fields {
		c := printed.Column{Title: f.Title, Unit: f.Unit, Left: f.Kind == core.RecordText || f.Kind == core.RecordClock || f.Kind == core.RecordDate}
		if c.Unit == "sqft" {
			c.Unit = "sq ft"
		}
		t.Columns = append(t.Columns, c)
		if f.Key == "amount" || f.Key == "rate" {
			t.Columns = append(t.Columns, printed.Column{Title: f.Title + " unit", Left: true})
		}
	}
	for i := range list {
		r := &list[i]
		cells := r.Cells()
		var row []string
		for _, f := range fields {
			switch f.Key {
			case "amount":
				n, unit := smallUnit(float64(r.Amount.N), r.Amount.Kind)
				row = append(row, n, unit)
			case "rate":
				n, unit := "", ""
				if rate := r.Rate(); rate.Known {
					n, unit = smallUnit(rate.V.V*float64(measure.ThousandSquareFeet), r.Amount.Kind)
					unit += " per 1,000 sq ft"
				}
				row = append(row, n, unit)
			default:
				row = append(row, cells[f.Key])
			}
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

// smallUnit is an amount in fluid ounces, or in ounces of what is dry.
func smallUnit(base float64, k measure.Kind) (figureText, unit string) {
	if k == measure.Dry {
		return figure(base / float64(measure.Ounce)), "oz"
	}
	return figure(base / (float64(measure.USPint) / 16)), "fl oz"
}

// RecordDocument is the application record as it is handed out: each day by itself, each visit with its own lines, and what the rules of
// a state ask for and is missing. Without a state nothing is held against a rule.
func RecordDocument(list []Record, state string) printed.Document {
	d := printed.Document{Title: "Application record", Foot: []string{recordCaution}}
	rules := ProfilesOf(state)
	for _, p := range rules {
		d.About = append(d.About, p.Words())
	}
	switch {
	case state == "" || state == "none":
		d.About = append(d.About, "No state is set: all fields stand, and none is held against a rule. Set it by the setting state.")
	case len(rules) == 0:
		d.About = append(d.About, fmt.Sprintf("No rule of %s was read: all fields stand, and none is held against a rule.", state))
	}
	day := ""
	for i := 0; i < len(list); {
		j := i + 1
		for j < len(list) && sameVisit(&list[i], &list[j]) {
			j++
		}
		part := visitPart(list[i:j], rules)
		part.Apart = day != "" && list[i].Date != day // each day is a record of its own (02 NCAC 09L .1402)
		day = list[i].Date
		d.Parts = append(d.Parts, part)
		i = j
	}
	return d
}

// Words say what a rule is, how long it has records kept, and of when the text is that was read.
func (p *Profile) Words() string {
	s := fmt.Sprintf("%s: %s; kept %d years", p.Jurisdiction, p.Citation, p.KeptYears)
	if p.KeptYears == 1 {
		s = strings.TrimSuffix(s, "s")
	}
	if p.Within != "" {
		s += ", written " + p.Within
	}
	return s + "; source: " + p.SourceDate + ", " + p.Address
}

func sameVisit(a, b *Record) bool {
	return a.Date == b.Date && a.Lawn == b.Lawn && a.Arrived == b.Arrived
}

// perProduct are the fields that stand in the table of a visit; the others are the same for all of it and stand above.
var perProduct = []string{"zone", "grass", "product", "registration", "actives", "target", "amount", "rate", "area", "mix_volume", "dilution"}

// visitPart is one visit: what is the same on all of its rows as pairs, the rest as a table, and what is missing.
func visitPart(list []Record, rules []Profile) printed.Part {
	part := printed.Part{Title: list[0].Date + "  " + list[0].Lawn}
	cells := make([]map[string]string, len(list))
	for i := range list {
		cells[i] = list[i].Cells()
	}
	for _, f := range core.RecordFields() {
		if f.Key == "date" || f.Key == "lawn" || f.Key == "pesticide" || slices.Contains(perProduct, f.Key) {
			continue
		}
		if says := together(cells, list, f.Key); says != "" {
			if f.Unit != "" && f.Kind == core.RecordNumber {
				says += " " + f.Unit
			}
			part.Pairs = append(part.Pairs, printed.Pair{Name: f.Title, Says: says})
		}
	}
	for _, key := range perProduct {
		f, _ := core.RecordFieldOf(key)
		c := printed.Column{Title: f.Title, Unit: strings.Replace(f.Unit, "sqft", "sq ft", 1), Left: f.Kind == core.RecordText}
		part.Table.Columns = append(part.Table.Columns, c)
	}
	for i := range list {
		var row []string
		for _, key := range perProduct {
			row = append(row, cells[i][key])
		}
		part.Table.Rows = append(part.Table.Rows, row)
	}
	for i := range list {
		for _, a := range list[i].Amended {
			part.Pairs = append(part.Pairs, printed.Pair{Name: "amended", Says: list[i].Product + ", " + list[i].Zone + ": " + a.Says()})
		}
	}
	if missing := missingWords(list, rules); missing != "" {
		part.Pairs = append(part.Pairs, printed.Pair{Name: "MISSING", Says: missing})
	}
	return part
}

// together is what a field says on all rows of a visit; where they differ, each with its product.
func together(cells []map[string]string, list []Record, key string) string {
	same := true
	for _, c := range cells {
		same = same && c[key] == cells[0][key]
	}
	if same {
		return cells[0][key]
	}
	var out []string
	for i, c := range cells {
		if said := list[i].Product + ": " + c[key]; c[key] != "" && !slices.Contains(out, said) {
			out = append(out, said)
		}
	}
	return strings.Join(out, "; ")
}

func missingWords(list []Record, rules []Profile) string {
	var out []string
	for i := range list {
		for _, p := range rules {
			for _, f := range p.Missing(&list[i]) {
				if !slices.Contains(out, f.Title) {
					out = append(out, f.Title)
				}
			}
		}
	}
	return strings.Join(out, ", ")
}

// recordJSON gathers the fields by keys that end in their unit; what is not known is null.
type recordJSON map[string]any

func (m recordJSON) Text(key string, v *string) {
	if m[key] = any(nil); *v != "" {
		m[key] = *v
	}
}
func (m recordJSON) Number(key string, v *core.Maybe[float64]) { m[key] = v.Pointer() }
func (m recordJSON) Area(key string, v *measure.Area)          { m[key+"_sqft"] = v.SquareFeet() }
func (m recordJSON) Volume(key string, v *measure.Volume)      { m[key+"_gal"] = v.Gallons() }
func (m recordJSON) Amount(key string, v *measure.Amount) {
	m[key], m[key+"_unit"] = v.N, UnitOf(v.Kind)
}

// Document is the record for JSON, with what the rules of a state ask for and it does not hold.
func (r *Record) Document(state string) map[string]any {
	m := recordJSON{"pieces": r.Pieces, "seq": r.Seq}
	r.Walk(m)
	m["grass"] = r.Grass
	m["rate_fl_oz_per_1000_sqft"], m["rate_oz_per_1000_sqft"] = nil, nil
	if v := r.Rate(); v.Known {
		n := v.V.V * float64(measure.ThousandSquareFeet)
		if r.Amount.Kind == measure.Dry {
			m["rate_oz_per_1000_sqft"] = n / float64(measure.Ounce)
		} else {
			m["rate_fl_oz_per_1000_sqft"] = n / (float64(measure.USPint) / 16)
		}
	}
	missing := []string{}
	for _, p := range ProfilesOf(state) {
		for _, f := range p.Missing(r) {
			if !slices.Contains(missing, f.Key) {
				missing = append(missing, f.Key)
			}
		}
	}
	m["missing"] = missing
	amended := []map[string]any{}
	for _, a := range r.Amended {
		amended = append(amended, map[string]any{"field": a.Title, "was": a.Was, "is": a.Is, "who": a.Who, "why": a.Why, "at": a.At.String()})
	}
	m["amended"] = amended
	return m
}
