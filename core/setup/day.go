package setup

import (
	"errors"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
	"example.com/tintline/core/sheet"
)

// The keys of the first day's fields.
const (
	keyOperator = "operator"
	keyGallons  = "gallons"
	keyInto     = "into"
	keyFor      = "for"
)

// dayForm opens the first day and says what was loaded before it.
func dayForm(b *core.Book) Form {
	f := Form{Name: Day, Title: "Open the first day", facts: dayFacts}
	fields := []Field{
		{
			Key: keyOperator, Words: "operator", need: always, check: cell(sheet.Lawns, "customer"),
			Help: "Who works today; it stands in the record.", Allowed: allowed(sheet.Lawns, "customer"),
		}, {
			Key: keyGallons, Words: "loaded, gal", check: cell(sheet.Rig, "capacity_gal"),
			Help: "How much of the mix is in the tank, water and product. Blank: nothing yet.", Allowed: allowed(sheet.Rig, "capacity_gal"),
		},
	}
	var tanks []Option
	for _, c := range b.Rig().Compartments {
		tanks = append(tanks, Option{string(rune(c.Letter)), string(rune(c.Letter)) + ", takes " + c.Capacity.Text() + " gal"})
	}
	fields = append(fields, choice(keyInto, "into compartment", "Which compartment holds it.", tanks))
	var mixes, machines []Option
	for _, x := range b.Mixes() {
		mixes = append(mixes, Option{x.MixName, x.MixName})
	}
	for _, a := range b.Rig().Applicators {
		if a.Delivery.V > 0 {
			machines = append(machines, Option{a.Name, a.Name + ", " + a.Delivery.Text()})
		}
	}
	if len(mixes) > 1 {
		fields = append(fields, choice(keyMix, "of the mix", "Which mix it is.", mixes))
	}
	if len(machines) > 1 {
		fields = append(fields, choice(keyFor, "made up for", "At whose delivery rate the mix is as strong as meant.", machines))
	}
	f.Pages = []Page{{Title: "who, and what is in the tank", Fields: fields}}
	return f
}

func choice(key, words, help string, options []Option) Field {
	f := Field{Key: key, Words: words, Help: help, Options: options, Allowed: "one of the list"}
	if len(options) > 0 {
		f.Start = options[0].Value
	}
	return f
}

func dayFacts(b *core.Book, at core.Moment, a Answers) ([]core.Fact, error) {
	open := &core.DayOpened{Date: at.Date(), Operator: a[keyOperator]}
	for _, l := range b.Lawns() {
		open.Route = append(open.Route, l.LawnName)
	}
	facts := []core.Fact{open}
	if a[keyGallons] == "" || len(b.Mixes()) == 0 {
		return facts, nil
	}
	v, err := measure.ReadVolume(a[keyGallons], "gal")
	if err != nil {
		return nil, err
	}
	load := &core.Loaded{Into: a[keyInto], Volume: v, Mix: a[keyMix], For: a[keyFor]}
	if load.Mix == "" {
		load.Mix = b.Mixes()[0].MixName
	}
	if load.For == "" {
		load.For = theFirst(b.Rig())
	}
	facts = append(facts, load)
	if _, err = b.Prepare("", at, facts...); err != nil {
		var p *core.Problem
		if errors.As(err, &p) {
			return nil, &Wrong{Field: keyGallons, What: p.What, Do: p.Do, Err: err}
		}
	}
	return facts, err
}

// theFirst is the first applicator with a delivery rate.
func theFirst(r *core.Rig) string {
	for _, a := range r.Applicators {
		if a.Delivery.V > 0 {
			return a.Name
		}
	}
	return ""
}
