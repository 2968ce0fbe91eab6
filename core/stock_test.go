package core

import (
	"testing"

	"example.com/tintline/core/measure"
)

func TestRefusalsOfStock(t *testing.T) {
	refusals(t, "testdata/refusals_stock.tsv", play(t, NewBook(1), setUp), 19)
}

// stocked is what the book has of a product, in ounces; the test ends where it is not known.
func stocked(t *testing.T, b *Book, product string) (ounces float64, st Stock) {
	t.Helper()
	st = b.Stock(product)
	if !st.Have.Known {
		t.Fatalf("the stock of %s is not known", product)
	}
	if st.Form == measure.Dry {
		return measure.Mass(st.Have.V.N).Ounces(), st
	}
	return measure.Volume(st.Have.V.N).FluidOunces(), st
}

func same(a, b float64) bool { return a-b < 1e-6 && b-a < 1e-6 }

// A year of a jug, worked out by hand. setUp has put 160 fl oz of warm weed into 200 gal (1.2 fl oz on each of 133.33 thousand sq ft).
func TestStockOfAProduct(t *testing.T) {
	b := play(t, NewBook(1), setUp)
	if st := b.Stock("warm weed"); st.Have.Known || !same(measure.Volume(st.UsedYear.N).FluidOunces(), 160) || st.Package.N != 0 {
		t.Fatalf("before any count: %+v", st)
	}
	play(t, b, `{"fact":"stocked","product":"warm weed","what":"bought","packages":2,"package_gal":2.5,"paid_usd":62,"supplier":"Example Supply","lot":"L 7"}`)
	oz, st := stocked(t, b, "warm weed")
	if !same(oz, 640) || st.Counted || st.Package.N != int64(measure.Gallons(2.5)) || st.Price.V != 6200 || st.PriceFor.N != int64(measure.Gallons(5)) || st.Lot != "L 7" {
		t.Errorf("bought: %g, %+v", oz, st)
	}
	play(t, b, `{"fact":"loaded","into":"c","volume_gal":30,"mix":"W","for":"gun"}`) // 20,000 sq ft: 24 fl oz
	if oz, st = stocked(t, b, "warm weed"); !same(oz, 616) || !same(measure.Volume(st.Used.N).FluidOunces(), 24) || !same(measure.Volume(st.UsedYear.N).FluidOunces(), 184) {
		t.Errorf("used: %g, %+v", oz, st)
	}
	play(t, b, `{"fact":"stocked","product":"warm weed","what":"counted","amount_fl_oz":600}
{"fact":"stocked","product":"warm weed","what":"reorder","amount_gal":1}
{"fact":"load_planned","into":"c","volume_gal":15,"mix":"W","for":"gun"}`)
	oz, st = stocked(t, b, "warm weed")
	if !same(oz, 600) || !st.Counted || st.Recounts != 1 || !same(measure.Volume(st.Unexplained.N).FluidOunces(), -16) || st.Used.N != 0 ||
		!same(measure.Volume(st.Planned.N).FluidOunces(), 12) || st.Reorder.V.N != int64(measure.USGallon) {
		t.Errorf("counted: %g, %+v", oz, st)
	}
	// What is put in is never refused: the stock goes below nothing.
	play(t, b, `{"fact":"loaded","into":"c","volume_gal":1,"parts":[{"product":"warm weed","amount_fl_oz":64}]}
{"fact":"stocked","product":"warm weed","what":"counted","amount_fl_oz":10}
{"fact":"loaded","into":"c","volume_gal":1,"parts":[{"product":"warm weed","amount_fl_oz":64}]}
{"fact":"stocked","product":"warm weed","what":"reorder","amount_gal":0}`)
	if oz, st = stocked(t, b, "warm weed"); !same(oz, -54) || st.Reorder.Known {
		t.Errorf("below nothing: %g, %+v", oz, st)
	}
}

// The next year begins with the first day in it; what is in stock goes over.
func TestStockOverTheYear(t *testing.T) {
	b := play(t, NewBook(1), setUp+`{"fact":"stocked","product":"warm weed","what":"counted","amount_fl_oz":600}
{"fact":"day_closed"}
{"fact":"day_opened","date":"2027-03-01","operator":"R. Example"}
{"fact":"loaded","into":"c","volume_gal":30,"mix":"W","for":"gun"}`)
	oz, st := stocked(t, b, "warm weed")
	if !same(oz, 576) || !same(measure.Volume(st.UsedYear.N).FluidOunces(), 24) {
		t.Errorf("%g, %+v", oz, st)
	}
	play(t, b, `{"fact":"day_closed"}`)
	back, err := Resume(b.Keep())
	if err != nil || back.Stock("warm weed") != b.Stock("warm weed") {
		t.Errorf("taken up again: %+v %v", back.Stock("warm weed"), err)
	}
}

// Dry product that is spread from the bag is out of the stock; what a hopper holds was out when it was poured in.
func TestStockOfABag(t *testing.T) {
	b := dryBook(t, `{"fact":"stocked","product":"food","what":"bought","packages":2,"package_lb":50}
{"fact":"loaded","into":"spreader","parts":[{"product":"food","amount_lb":30}]}
{"fact":"visit_begun","lawn":"77 Fir"}
{"fact":"spread","lawn":"77 Fir","applicator":"spreader","product":"food","amount_lb":40}`)
	if oz, st := stocked(t, b, "food"); !same(oz, 16*60) || st.Form != measure.Dry {
		t.Errorf("%g oz, %+v", oz, st)
	}
}
