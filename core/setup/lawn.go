package setup

import (
	"fmt"

	"example.com/tintline/core"
	"example.com/tintline/core/sheet"
)

// The keys of the lawn's fields.
const (
	keyLawn     = "lawn"
	keyCustomer = "customer"
	keyAddress  = "address"
	keyPhone    = "phone"
	keyGate     = "gate"
	keyDog      = "dog"
	keyZone     = "zone"
	keyArea     = "area"
	keyPrice    = "price"
	keyGrass    = "grass"

	keyLatitude  = "latitude"
	keyLongitude = "longitude"
	keyFrom      = "window_from"
	keyTo        = "window_to"
)

// lawnForm asks for a lawn with one zone. For the first one it asks for no more than a spraying needs.
func lawnForm(b *core.Book) Form {
	f := Form{Name: Lawn, Title: "Enter a lawn", facts: func(b *core.Book, _ core.Moment, a Answers) ([]core.Fact, error) {
		fact, err := sheet.Row(sheet.Lawns, map[string]string{
			"lawn": a[keyLawn], "customer": a[keyCustomer], "address": a[keyAddress],
			"zone": a[keyZone], "grass": a[keyGrass], "area_sqft": a[keyArea], "price_usd": a[keyPrice],
			"latitude": a[keyLatitude], "longitude": a[keyLongitude], "window_from": a[keyFrom], "window_to": a[keyTo],
		}, b)
		if err != nil {
			return nil, err
		}
		l := fact.(*core.Lawn)
		l.Phone, l.Gate, l.Dog = a[keyPhone], a[keyGate], a[keyDog]
		return []core.Fact{l}, nil
	}}
	fields := []Field{{
		Key: keyLawn, Words: "lawn", need: always, Help: "What you call it; the house's number and street will do.", Allowed: allowed(sheet.Lawns, "lawn"),
		check: func(_ Answers, said string) error { return newName(sheet.Lawns, "lawn", said, b.Lawn(said) != nil) },
	}}
	fields = append(fields, zoneFields("all")...)
	if len(b.Lawns()) > 0 {
		fields = append(fields, moreFields()...)
	} else {
		f.Title = "Enter the first lawn"
	}
	f.Pages = []Page{{Title: "name and area", Fields: fields}, {Title: "grass", Fields: []Field{grassField()}}}
	return f
}

func zoneFields(start string) []Field {
	return []Field{
		{
			Key: keyArea, Words: "area, sq ft", need: always, check: cell(sheet.Lawns, "area_sqft"),
			Help: "The measured area of the zone.", Allowed: allowed(sheet.Lawns, "area_sqft"),
		}, {
			Key: keyZone, Words: "zone", Start: start, need: always, check: cell(sheet.Lawns, "zone"),
			Help: "A part with one grass. More zones are added on the lawn's page.", Allowed: allowed(sheet.Lawns, "zone"),
		},
	}
}

func moreFields() []Field {
	text := allowed(sheet.Lawns, "customer")
	line := cell(sheet.Lawns, "customer")
	return []Field{
		{Key: keyCustomer, Words: "customer", check: line, Help: "Whose lawn it is.", Allowed: text},
		{Key: keyAddress, Words: "address", check: line, Help: "Where it is.", Allowed: text},
		{Key: keyPhone, Words: "phone", check: line, Help: "Whom to call.", Allowed: text},
		{Key: keyGate, Words: "gate", check: line, Help: "Where the gate is, and which latch.", Allowed: text},
		{Key: keyDog, Words: "dog", check: line, Help: "What is known of it. Blank: none known.", Allowed: text},
		{Key: keyPrice, Words: "price, dollars", check: cell(sheet.Lawns, "price_usd"), Help: "What one treatment of the zone earns.", Allowed: allowed(sheet.Lawns, "price_usd")},
		{Key: keyLatitude, Words: "latitude", need: filled(keyLongitude), check: cell(sheet.Lawns, "latitude"), Help: "Degrees north, for the miles of a day's plan. Blank: not known.", Allowed: allowed(sheet.Lawns, "latitude")},
		{Key: keyLongitude, Words: "longitude", need: filled(keyLatitude), check: cell(sheet.Lawns, "longitude"), Help: "Degrees, west below 0. Blank: not known.", Allowed: allowed(sheet.Lawns, "longitude")},
		{Key: keyFrom, Words: "not before", check: cell(sheet.Lawns, "window_from"), Help: "The time of day before which no visit begins. Blank: any.", Allowed: allowed(sheet.Lawns, "window_from")},
		{Key: keyTo, Words: "not after", check: cell(sheet.Lawns, "window_to"), Help: "The time of day after which no visit begins. Blank: any.", Allowed: allowed(sheet.Lawns, "window_to")},
	}
}

func grassField() Field {
	return Field{
		Key: keyGrass, Words: "grass", Long: true, need: always, Options: grassOptions(),
		Help: "What grows there.", Allowed: "one of the list",
	}
}

// zoneForm adds a zone to a lawn.
func zoneForm(b *core.Book, lawn string) Form {
	f := Form{Name: Zone, Title: "Add a zone to " + lawn, facts: func(b *core.Book, _ core.Moment, a Answers) ([]core.Fact, error) {
		old := b.Lawn(lawn)
		fact, err := sheet.Row(sheet.Lawns, map[string]string{
			"lawn": lawn, "zone": a[keyZone], "grass": a[keyGrass], "area_sqft": a[keyArea], "price_usd": a[keyPrice],
		}, nil)
		if err != nil || old == nil {
			return nil, err
		}
		l := *old
		l.Zones = append(l.Zones[:len(l.Zones):len(l.Zones)], fact.(*core.Lawn).Zones...)
		return []core.Fact{&l}, nil
	}}
	fields := zoneFields("")
	fields[1].check = func(_ Answers, said string) error {
		if err := sheet.Check(sheet.Lawns, "zone", said); err != nil {
			return err
		}
		if l := b.Lawn(lawn); l != nil {
			if _, there := l.Zone(said); there {
				return &Wrong{What: fmt.Sprintf("%s has a zone %q already.", lawn, said), Do: "Type another name."}
			}
		}
		return nil
	}
	fields[0], fields[1] = fields[1], fields[0]
	f.Pages = []Page{{Title: "name and area", Fields: append(fields, moreFields()[5])}, {Title: "grass", Fields: []Field{grassField()}}}
	return f
}
