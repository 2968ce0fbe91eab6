package core

import (
	"strings"
	"testing"

	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// TestRefusedLabels: a row for each rule on what a label entry, a mix and a zone may say.
func TestRefusedLabels(t *testing.T) {
	refusals(t, "testdata/refusals_label.tsv", play(t, NewBook(1), setUp), 50)
}

// TestAMixAtTheMost: the label's own highest rate is allowed, also where it was printed in another unit, and a rate that
// the label gives for one grass alone.
func TestAMixAtTheMost(t *testing.T) {
	b := play(t, NewBook(1), setUp)
	for _, line := range []string{
		`{"fact":"mix","name":"m","parts":[{"product":"warm weed","rate_fl_oz_per_1000_sqft":1.5}]}`,
		`{"fact":"product","name":"p","form":"dry","rate_high_oz_per_1000_sqft":0.367}`,
		`{"fact":"mix","name":"n","parts":[{"product":"p","rate_oz_per_acre":16}]}`,
		`{"fact":"product","name":"q","form":"dry","grasses":["tall_fescue","zoysiagrass"],"rate_high_oz_per_acre":4,"rates":[{"grasses":["zoysiagrass"],"high_oz_per_acre":6}]}`,
		`{"fact":"mix","name":"o","parts":[{"product":"q","rate_oz_per_acre":6}]}`,
		`{"fact":"product","name":"r","form":"dry","grasses":["tall_fescue","zoysiagrass"],"rates":[{"grasses":["zoysiagrass"],"high_oz_per_acre":6}]}`,
		`{"fact":"mix","name":"u","parts":[{"product":"r","rate_oz_per_acre":60}]}`,
	} {
		if err := enter(b, line); err != nil {
			t.Errorf("%s\n%v", line, err)
		}
	}
}

// TestWhatWasWrittenOnceApplies: what an earlier version took stays, whatever admission says of it now.
func TestWhatWasWrittenOnceApplies(t *testing.T) {
	b := play(t, NewBook(1), setUp)
	rate, err := measure.ReadRate("9", "fl_oz_per_1000_sqft", measure.Liquid)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range []Fact{
		&Mix{MixName: "too much", Parts: []MixPart{{Product: "warm weed", Rate: rate}}},
		&Product{ProductName: "odd", Label: label.Entry{Signal: "poison", None: []string{"nothing"}, TempMax: Known(900.0)}},
		&Lawn{LawnName: "odd", Zones: []Zone{{Name: "all", Grass: "moss", Area: 1, Growth: "asleep", Sites: []Site{{Kind: "pond"}}}}},
	} {
		if _, err := b.Prepare("x", b.LastAt(), f); err == nil {
			t.Errorf("%s is admitted", f.Name())
		}
		e := Entry{Seq: b.seq + 1, At: b.lastAt, Action: "x", Truck: b.truck, What: f, Keys: b.Keys(f, b.lastAt)}
		e.Digest = chain(b.digest, e.Seq, e.Truck, e.body())
		if err := b.Apply(e); err != nil {
			t.Errorf("%s is not applied: %v", f.Name(), err)
		}
	}
	if m := b.Mix("too much"); m == nil || m.Parts[0].Rate != rate || b.Product("odd") == nil || b.Lawn("odd") == nil {
		t.Error("something of it is lost")
	}
}

// TestALabelOfToday: the next version of a label entry is in force from its entry on, and what went down before keeps
// the version that was in force then.
func TestALabelOfToday(t *testing.T) {
	b := play(t, NewBook(1), setUp)
	before := b.History("77 Fir", "all")
	play(t, b, `{"fact":"product","name":"cool weed","form":"liquid","kind":"herbicide","grasses":["zoysiagrass"],"rate_high_fl_oz_per_1000_sqft":0.1}`)
	h := b.Products()[1]
	if len(before) == 0 || len(h.Versions) != 2 || h.Name != "cool weed" {
		t.Fatalf("%d sprayings, %d versions", len(before), len(h.Versions))
	}
	after := b.History("77 Fir", "all")
	for i := range before {
		if before[i] != after[i] {
			t.Errorf("%+v became %+v", before[i], after[i])
		}
		if after[i].Product == 1 && (after[i].Version != 0 || !h.Versions[after[i].Version].Label.Lists("tall_fescue")) {
			t.Errorf("the older spraying points to %+v", h.Versions[after[i].Version])
		}
	}
	if b.Product("cool weed").Label.Lists("tall_fescue") {
		t.Error("the older version is still in force")
	}
	play(t, b, `{"fact":"visit_begun","lawn":"77 Fir"}
{"fact":"sprayed","lawn":"77 Fir","zones":["all"],"applicator":"gun","by":"gallons","volume_gal":2}`)
	list := b.History("77 Fir", "all")
	found := false
	for _, w := range list[len(before):] {
		found = found || w.Product == 1 && w.Version == 1
	}
	if !found {
		t.Errorf("what is laid now has the version before: %+v", list)
	}
	if mix := b.Mix("C"); !strings.Contains(mix.Parts[0].Rate.Text(), "0.150") {
		t.Errorf("the mix was changed: %+v", mix)
	}
}
