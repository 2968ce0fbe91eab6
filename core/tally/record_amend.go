package tally

import (
	"fmt"
	"slices"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

// AmendedField is what an amendment changed on a record: the first value stays beside the other.
type AmendedField struct {
	Title, Was, Is string
	Who, Why       string
	At             core.Moment
}

// Says is the change in a line.
func (a AmendedField) Says() string {
	was := a.Was
	if was == "" {
		was = "nothing"
	}
	return fmt.Sprintf("%s: %s, first %s; by %s on %s: %s", a.Title, a.Is, was, a.Who, a.At.Date(), a.Why)
}

// Amend puts amendments into the records that they are about, oldest first, and keeps what stood there before beside it.
func Amend(list []Record, amendments []core.Amendment) {
	for i := range amendments {
		a := &amendments[i]
		f := &a.What
		for j := range list {
			r := &list[j]
			if r.Date != f.Date || r.Lawn != f.Lawn || r.Zone != f.Zone {
				continue
			}
			if r.Product == f.Product {
				r.amendFields(a)
			}
			r.amendAmount(a)
		}
	}
}

func (r *Record) mark(a *core.Amendment, title, was, is string) {
	r.Amended = append(slices.Clip(r.Amended), AmendedField{title, was, is, a.What.Who, a.What.Why, a.At})
}

func (r *Record) amendFields(a *core.Amendment) {
	for _, c := range a.What.Changes {
		if c.Field == core.AmendArea {
			if area, err := measure.ReadArea(c.Is, "sqft"); err == nil {
				r.mark(a, "area", r.Area.Text()+" sq ft", area.Text()+" sq ft")
				r.Area = area
			}
			continue
		}
		was := r.Cells()[c.Field]
		if field, known := core.RecordFieldOf(c.Field); known && r.Fill(c.Field, c.Is) {
			r.mark(a, field.Title, was, c.Is)
		}
	}
}

// amendAmount changes the amount of a product, and the mix put down, of all products that were in the piece.
func (r *Record) amendAmount(a *core.Amendment) {
	for _, m := range a.What.More {
		if m.Product != r.Product {
			continue
		}
		was := r.Amount
		r.Amount.N = max(r.Amount.N+m.Amount.N, 0)
		if was != r.Amount {
			r.mark(a, "amount", was.Text(), r.Amount.Text())
		}
		if v := a.What.Volume; v != 0 && r.Volume > 0 {
			before := r.Volume
			r.Volume = max(r.Volume+v, 0)
			r.mark(a, "mix put down", before.Text()+" gal", r.Volume.Text()+" gal")
		}
	}
}

// Amending makes the amendment of a record by what is written for it: fields with their values, area_sqft, amount ("6.5 fl oz") or gallons of
// the mix, which all products of the piece share. List holds all records of that day on that lawn.
func Amending(list []Record, r *Record, who, why string, changes [][2]string) (*core.Amended, error) {
	f := &core.Amended{Date: r.Date, Lawn: r.Lawn, Zone: r.Zone, Product: r.Product, Nth: nthOf(list, r), Who: strings.TrimSpace(who), Why: strings.TrimSpace(why)}
	for _, c := range changes {
		key, value := strings.ToLower(strings.TrimSpace(c[0])), strings.TrimSpace(c[1])
		switch key {
		case "gallons", "gal", "mix_volume":
			if err := amendGallons(f, list, r, value); err != nil {
				return nil, err
			}
		case "amount":
			if err := amendOne(f, r, value); err != nil {
				return nil, err
			}
		case "area", core.AmendArea:
			f.Changes = append(f.Changes, core.RecordChange{Field: core.AmendArea, Was: figure(r.Area.SquareFeet()), Is: value})
		default:
			field, known := core.RecordFieldOf(c[0])
			if !known {
				return nil, measure.Troublef("Name a field such as target, wind_mph, completed, area_sqft, amount, gallons.", "The record has no field %q.", c[0])
			}
			f.Changes = append(f.Changes, core.RecordChange{Field: field.Key, Was: r.Cells()[field.Key], Is: value})
		}
	}
	return f, nil
}

// nthOf counts which of what held the product on that zone on that day the record begins with.
func nthOf(list []Record, r *Record) int64 {
	n := int64(1)
	for i := range list {
		o := &list[i]
		if o.Date == r.Date && o.Lawn == r.Lawn && o.Zone == r.Zone && o.Product == r.Product && o.Seq < r.Seq {
			n += int64(len(o.Pieces))
		}
	}
	return n
}

func amendOne(f *core.Amended, r *Record, value string) error {
	unit := "fl_oz"
	if r.Amount.Kind == measure.Dry {
		unit = "oz"
	}
	is, err := measure.ReadAmount(value, unit, r.Amount.Kind)
	if err != nil {
		return err
	}
	f.More = append(f.More, core.AmendedMore{Product: r.Product, Amount: measure.Amount{N: is.N - r.Amount.N, Kind: is.Kind}})
	return nil
}

func amendGallons(f *core.Amended, list []Record, r *Record, value string) error {
	is, err := measure.ReadVolume(value, "gal")
	if err != nil {
		return err
	}
	if r.Volume <= 0 || is < 0 {
		return measure.Troublef("Give the amount instead: amount 12 lb.", "%s was not sprayed, so no gallons of it can be amended.", r.Product)
	}
	f.Volume = is - r.Volume
	for i := range list {
		o := &list[i]
		if o.Date != r.Date || o.Lawn != r.Lawn || o.Zone != r.Zone || o.Arrived != r.Arrived || o.Volume != r.Volume {
			continue
		}
		n := measure.MulDivRound(o.Amount.N, int64(is), int64(r.Volume)) - o.Amount.N
		f.More = append(f.More, core.AmendedMore{Product: o.Product, Amount: measure.Amount{N: n, Kind: o.Amount.Kind}})
	}
	return nil
}
