package tally

import (
	_ "embed"
	"encoding/csv"
	"slices"
	"strconv"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
)

//go:embed record_profiles.csv
var profilesText string

//go:embed record_law.csv
var lawText string

// For which products a rule asks for a record.
const (
	OfPesticides  = "pesticide"
	OfRestricted  = "restricted" // restricted-use products
	OfGeneral     = "general"    // pesticides that are not
	OfFertilisers = "fertiliser"
	OfAll         = "all"
	Rescinded     = "rescinded" // asks for nothing any more
)

// Profile is what one rule asks for in an application record. It says what was read of that rule, and never that a record is lawful: law
// changes, and the label and the rules of the place decide.
type Profile struct {
	Jurisdiction string
	State        string
	Applies      string
	Citation     string
	KeptYears    int    // how long it is to be kept
	Within       string // by when it is to be written; empty: not read
	SourceDate   string // of the text that was read
	Address      string // where it was read
	Asks         []Asked
}

// Asked is an element that a rule asks for.
type Asked struct {
	Element string // as core.RecordField.Law names it
	Only    string // "restricted": of restricted-use products; "on_request": when it is asked for
	Or      string // elements with the same word here stand for one another
	Note    string
}

var profiles = readProfiles()

func embedded(name, text string) [][]string {
	rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil {
		panic("core/tally/" + name + ": " + err.Error()) // embedded, and read by every test
	}
	return rows[1:]
}

func readProfiles() []Profile {
	var out []Profile
	for _, r := range embedded("record_profiles.csv", profilesText) {
		years, err := strconv.Atoi(r[4])
		if err != nil {
			panic("core/tally/record_profiles.csv: " + err.Error()) // as above
		}
		out = append(out, Profile{Jurisdiction: r[0], State: r[1], Applies: r[2], Citation: r[3], KeptYears: years, Within: r[5], SourceDate: r[6], Address: r[7]})
	}
	for _, r := range embedded("record_law.csv", lawText) {
		if r[2] != label.Yes {
			continue
		}
		for i := range out {
			if out[i].Jurisdiction == r[0] {
				out[i].Asks = append(out[i].Asks, Asked{r[1], r[3], r[4], r[5]})
			}
		}
	}
	return out
}

// Profiles lists all rules that were read.
func Profiles() []Profile { return slices.Clone(profiles) }

// ProfilesOf lists the rules of a state, as the setting "state" names it.
func ProfilesOf(state string) []Profile {
	var out []Profile
	for _, p := range profiles {
		if p.State != "" && p.State == state {
			out = append(out, p)
		}
	}
	return out
}

// AppliesTo tells whether the rule asks for a record of such a product.
func (p *Profile) AppliesTo(r *Record) bool {
	pesticide, restricted := r.Pesticide == label.Yes, r.Restricted == label.Yes
	switch p.Applies {
	case OfAll:
		return true
	case OfPesticides:
		return pesticide
	case OfRestricted:
		return restricted
	case OfGeneral:
		return pesticide && !restricted
	case OfFertilisers:
		return r.fertiliser()
	}
	return false
}

func (r *Record) fertiliser() bool {
	return r.Analysis != "" || strings.HasPrefix(strings.ToLower(r.Kind), "fertili") // either spelling
}

// fertiliserElement begins the elements that are asked for of plant food alone.
const fertiliserElement = "fertiliser_"

// asks tells whether the rule asks for an element of this record.
func (a *Asked) asks(r *Record) bool {
	switch {
	case a.Only == OfRestricted:
		return r.Restricted == label.Yes
	case a.Only != "":
		return false
	}
	return r.fertiliser() || !strings.HasPrefix(a.Element, fertiliserElement)
}

// Missing lists the fields that a rule asks for and that the record does not hold, in the order of core.RecordFields. Of elements that
// stand for one another all are named where none is there.
func (p *Profile) Missing(r *Record) []core.RecordField {
	if !p.AppliesTo(r) {
		return nil
	}
	cells := r.Cells()
	var out []core.RecordField
	for i := range p.Asks {
		a := &p.Asks[i]
		if a.asks(r) && !p.answered(cells, a) {
			out = append(out, lacking(cells, a.Element)...)
		}
	}
	order := core.RecordFields()
	at := func(f core.RecordField) int {
		return slices.IndexFunc(order, func(o core.RecordField) bool { return o.Key == f.Key })
	}
	slices.SortFunc(out, func(a, b core.RecordField) int { return at(a) - at(b) })
	return slices.CompactFunc(out, func(a, b core.RecordField) bool { return a.Key == b.Key })
}

func (p *Profile) answered(cells map[string]string, a *Asked) bool {
	if a.Or == "" {
		return len(lacking(cells, a.Element)) == 0
	}
	for _, b := range p.Asks {
		if b.Or == a.Or && len(lacking(cells, b.Element)) == 0 {
			return true
		}
	}
	return false
}

// Answers are the fields that answer an element; with any, one of them is enough.
func Answers(element string) (fields []core.RecordField, any bool) {
	for _, f := range core.RecordFields() {
		for _, l := range f.Law {
			if name, one := strings.CutSuffix(l, "?"); name == element {
				fields, any = append(fields, f), any || one
			}
		}
	}
	return fields, any
}

// lacking are the fields of an element that are empty; none where one of them is enough and is there.
func lacking(cells map[string]string, element string) []core.RecordField {
	fields, any := Answers(element)
	var out []core.RecordField
	for _, f := range fields {
		if cells[f.Key] == "" {
			out = append(out, f)
		}
	}
	if any && len(out) < len(fields) {
		return nil
	}
	return out
}

// MissingFor lists what the rules of the operator's state ask for and the record does not hold; of a book without a state nothing is asked.
func MissingFor(b *core.Book, r *Record) []core.RecordField {
	var out []core.RecordField
	state, _ := b.SettingText(core.State)
	for _, p := range ProfilesOf(state) {
		for _, f := range p.Missing(r) {
			if !slices.ContainsFunc(out, func(have core.RecordField) bool { return have.Key == f.Key }) {
				out = append(out, f)
			}
		}
	}
	return out
}
