package core

import (
	"testing"

	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
)

func TestRefusalsOfAmendments(t *testing.T) {
	refusals(t, "testdata/refusals_amended.tsv", play(t, NewBook(1), setUp), 8)
}

// TestAnAmendmentByHand: 4 gal went on 4,000 sq ft on a day that is closed; 3 were really laid on 3,000. The gallon goes back to the
// unexplained, and the sum of the year has three quarters of the product on three quarters of the area: the same dose.
func TestAnAmendmentByHand(t *testing.T) {
	b := play(t, NewBook(1), setUp)
	d := b.Day()
	if !d.Open {
		t.Skip("the set-up has no open day")
	}
	var l *Laid
	lawn := b.Lawns()[0]
	zone := lawn.Zones[0]
	if err := enter(b, `{"fact":"sprayed","lawn":"`+lawn.LawnName+`","zones":["`+zone.Name+`"],"applicator":"gun","by":"gallons","volume_gal":4,"area_sqft":4000}`); err != nil {
		t.Fatal(err)
	}
	l = &b.Day().Laid[len(b.Day().Laid)-1]
	if len(l.Holds) == 0 {
		t.Skip("water alone stood in the hose")
	}
	product := b.ProductByKey(l.Holds[0].Key)
	place := fluid.ZonePlace(lawn.LawnName, zone.Name)
	before, date, n := b.Plumbing().Outside[place], b.Day().Date, l.Holds[0].N
	nth := int64(0)
	for i := range b.Day().Laid {
		if o := &b.Day().Laid[i]; o.Lawn == l.Lawn && o.Zone == l.Zone && o.Holds.Of(l.Holds[0].Key) != 0 {
			nth++
		}
	}
	for _, s := range []string{`{"fact":"day_closed"}`, `{"fact":"day_opened","date":"2026-12-30","operator":"R. Example"}`} {
		if err := enter(b, s); err != nil {
			t.Fatal(err)
		}
	}
	f := &Amended{
		Date: date, Lawn: lawn.LawnName, Zone: zone.Name, Product: product.ProductName, Nth: nth, Who: "R. Example", Why: "paced again",
		Changes: []RecordChange{{AmendArea, "4000", "3000"}}, Volume: -l.Volume / 4,
	}
	f.More = []AmendedMore{{product.ProductName, measure.Amount{N: -n / 4, Kind: product.Label.Form}}}
	es, err := b.Prepare("amend", b.LastAt(), f)
	if err != nil {
		t.Fatal(err)
	}
	if err := b.Apply(es[0]); err != nil {
		t.Fatal(err)
	}
	after := b.Plumbing().Outside[place]
	if after.Volume != before.Volume+f.Volume || after.Holds.Of(l.Holds[0].Key) != before.Holds.Of(l.Holds[0].Key)-n/4 {
		t.Errorf("the zone has %s gal, had %s", after.Volume.Text(), before.Volume.Text())
	}
	past := b.History(lawn.LawnName, zone.Name)
	w := past[len(past)-len(l.Holds)]
	if w.Amount != n-n/4 || w.Area.SquareFeet() < 2999 || w.Area.SquareFeet() > 3001 || len(b.Amendments()) != 1 {
		t.Errorf("the history has %+v", w)
	}
	if b.ProductByKey(w.Product).ProductName != product.ProductName {
		t.Errorf("the history begins with %s", b.ProductByKey(w.Product).ProductName)
	}
}
