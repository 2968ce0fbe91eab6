package yard

import (
	"encoding/json"
	"strings"
	"testing"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

func shelfOf(t *testing.T, b *core.Book, product string) *Stocked {
	t.Helper()
	s, err := Stock(b)
	if err != nil {
		t.Fatal(err)
	}
	text, err := json.Marshal(s.Document())
	if err != nil || strings.Contains(string(text), `"findings":null`) || strings.Contains(string(text), `"loads":null`) || strings.Contains(string(text), `"working":null`) || strings.Contains(string(text), `"unpriced":null`) {
		t.Fatalf("%s %v", text, err)
	}
	for i := range s.Products {
		if s.Products[i].Product == product {
			return &s.Products[i]
		}
	}
	t.Fatalf("%s is not listed", product)
	return nil
}

// What is to be ordered: the planned loads and the line, less what is there, in whole packages. Worked out by hand; a package is 64 fl oz.
func TestOrder(t *testing.T) {
	const planned = `{"fact":"load_planned","into":"a","volume_gal":160,"mix":"W","for":"gun"}` // 100,000 sq ft: 120 fl oz
	count := func(oz string) string {
		return `{"fact":"stocked","product":"W1","what":"counted","amount_fl_oz":` + oz + `}` + "\n"
	}
	const line = `{"fact":"stocked","product":"W1","what":"reorder","amount_fl_oz":64}` + "\n"
	for _, row := range []struct {
		name, lines string
		packages    int64 // -1: nothing is ordered
	}{
		{"never counted", planned, -1},
		{"enough", count("120.5") + planned, -1},
		{"short for what is planned", count("100") + planned, 1},
		{"two packages short", count("10") + planned, 2},
		{"above the line", count("64") + line, -1},
		{"below the line", count("63") + line, 1},
		{"below the line after what is planned", count("130") + line + planned, 1},
		{"below nothing", count("10") + `{"fact":"loaded","into":"a","volume_gal":160,"mix":"W","for":"gun"}`, 2},
		{"a line that was taken back", count("3") + line + `{"fact":"stocked","product":"W1","what":"reorder","amount_fl_oz":0}`, -1},
	} {
		got := int64(-1)
		if o := shelfOf(t, play(t, setUp+row.lines), "W1").Order; o.Known {
			got = o.V.Packages
		}
		if got != row.packages {
			t.Errorf("%s: %d packages, want %d", row.name, got, row.packages)
		}
	}
	// Without the size of a package the amount itself is ordered.
	s := shelfOf(t, play(t, setUp+`{"fact":"stocked","product":"C1","what":"counted","amount_fl_oz":1}
{"fact":"stocked","product":"C1","what":"reorder","amount_fl_oz":3}`), "C1")
	if !s.Order.Known || s.Order.V.Packages != 0 || s.Order.V.Words() != "2.00 fl oz" {
		t.Errorf("%+v", s.Order)
	}
}

// What the planned loads take, tank by tank, and what becomes of the packages.
func TestTakeAlong(t *testing.T) {
	b := play(t, setUp+`{"fact":"stocked","product":"W1","what":"counted","amount_fl_oz":150}
{"fact":"load_planned","into":"a","volume_gal":160,"mix":"W","for":"gun"}
{"fact":"load_planned","into":"c","volume_gal":10,"mix":"W","for":"gun"}`)
	s := shelfOf(t, b, "W1") // 120 fl oz and 7.5 fl oz of 150: 22 are in the open one of 64
	if len(s.Takes) != 2 || s.Takes[0].Measured.Words != "1 whole jug of 64 fl oz and 1 qt 24 fl oz" || s.Takes[1].Measured.Words != "7 1/2 fl oz" {
		t.Errorf("%+v", s.Takes)
	}
	if o := s.Truck.V; !s.Truck.Known || o.Opened != 2 || o.FromOpen.N != int64(measure.FluidOunces(22)) || o.Left.N < int64(measure.FluidOunces(22.49)) || o.Left.N > int64(measure.FluidOunces(22.51)) {
		t.Errorf("%+v", s.Truck)
	}
	// 127.5 of 64 fl oz for $40.00.
	if !s.Cost.Known || s.Cost.V != 7969 {
		t.Errorf("%+v", s.Cost)
	}
	if got := PricedOf(b, "W1", s.Planned); got.Price.V != 40*measure.Dollar || got.Package.N != int64(measure.FluidOunces(64)) {
		t.Errorf("%+v", got)
	}
	for _, w := range []string{"take along: the open one and 2 jugs of 64 fl oz; 22.5 fl oz left in it", "into c: 7 1/2 fl oz"} {
		if got := strings.Join(s.Lines(), "\n"); !strings.Contains(got, w) {
			t.Errorf("%q is not in\n%s", w, got)
		}
	}
}
