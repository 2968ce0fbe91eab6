package setup

import (
	"strings"
	"testing"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

func withZones(t *testing.T) *core.Book {
	b := withRig(t)
	acre := measure.Area(4_046_856_422)
	enter(t, b, []core.Fact{
		&core.Product{ProductName: "cool weed", Label: label.Entry{Kind: "herbicide", Form: measure.Liquid, Registration: "00000-1", Actives: []label.Active{{Name: "mesotrione"}}}},
		&core.Lawn{LawnName: "4 Elm", Zones: []core.Zone{
			{Name: "front", Grass: "tall_fescue", Area: acre, Growth: label.Growing, GrowthSince: "2026-04-01"},
			{Name: "back", Grass: "zoysiagrass", Area: acre},
		}},
	}, nil)
	return b
}

func TestWhatIsKnownOfAZone(t *testing.T) {
	b := withZones(t)
	zone := func(name string) core.Zone { z, _ := b.Lawn("4 Elm").Zone(name); return z }
	if facts, err := answer(t, ZoneMore, PlaceOf("4 Elm", "front"), b, nil); err != nil || len(facts) != 0 {
		t.Errorf("nothing was said: %v, %v", facts, err)
	}
	facts, err := answer(t, ZoneMore, PlaceOf("4 Elm", "front"), b, Answers{keyGrowth: label.Dormant, keyCultivar: "Sampleton", keySites: "water 20 ft; edible; seeding 2026-09-10"})
	enter(t, b, facts, err)
	z := zone("front")
	if z.Growth != label.Dormant || z.GrowthSince != at.Date() || z.Cultivar != "Sampleton" || len(z.Sites) != 3 || z.Sites[0].Feet.V != 20 || z.Sites[2].Date != "2026-09-10" {
		t.Errorf("%+v", z)
	}
	if s := SitesText(z.Sites); s != "water 20 ft; edible; seeding 2026-09-10" {
		t.Error(s)
	}
	facts, err = answer(t, ZoneMore, PlaceOf("4 Elm", "back"), b, Answers{keyGrowth: label.Seeded, keySince: "2026-05-01"})
	enter(t, b, facts, err)
	if z := zone("back"); z.Growth != label.Seeded || z.GrowthSince != "2026-05-01" || len(facts) != 1 {
		t.Errorf("%+v by %d facts", z, len(facts))
	}
	for _, wrong := range []struct {
		said Answers
		what string
	}{
		{Answers{keySites: "lava 3 ft"}, "lava"},
		{Answers{keySince: "May"}, "May"},
		{Answers{keyGrowth: ""}, "not chosen"},
	} {
		if _, err := answer(t, ZoneMore, PlaceOf("4 Elm", "front"), b, wrong.said); err == nil || !strings.Contains(err.Error(), wrong.what) {
			t.Errorf("%v: %v", wrong.said, err)
		}
	}
	if _, ok := For(ZoneMore, "4 Elm/side", b); ok {
		t.Error("a form for a zone that is not there")
	}
}

func TestOwnNotesAreEnteredChangedAndTakenBack(t *testing.T) {
	b := withZones(t)
	said := Answers{keyOf: "Mesotrione", keyGrass: "tall_fescue", keyWhy: "burned in 2024"}
	facts, err := answer(t, Caution, PlaceOf("4 Elm", "front"), b, said)
	enter(t, b, facts, err)
	want := core.Cautioned{Active: "mesotrione", Grass: "tall_fescue", Lawn: "4 Elm", Zone: "front", Weight: "stop", Says: "burned in 2024"}
	if all := b.Cautions(); len(all) != 1 || all[0] != want {
		t.Fatalf("%+v", all)
	}
	if s := CautionScope(b.Cautions()[0]); s != "mesotrione on tall fescue, front of 4 Elm" {
		t.Error(s)
	}
	for where, want := range map[string][2]string{thisLawn: {"4 Elm", ""}, everyLawn: {"", ""}} {
		facts, err := answer(t, Caution, PlaceOf("4 Elm", "front"), b, Answers{keyOf: "cool weed", keyWhere: where, keyWhy: "slow"})
		if err != nil {
			t.Fatal(err)
		}
		if c := facts[0].(*core.Cautioned); c.Lawn != want[0] || c.Zone != want[1] || c.Product != "cool weed" || c.Active != "" {
			t.Errorf("%s: %+v", where, c)
		}
	}
	facts, err = answer(t, Caution, CautionAt(0), b, Answers{keyWeight: "ask"})
	enter(t, b, facts, err)
	if all := b.Cautions(); len(all) != 1 || all[0].Weight != "ask" {
		t.Fatalf("%+v", all)
	}
	facts, err = answer(t, Caution, CautionAt(0), b, Answers{keyWeight: core.NoCaution})
	enter(t, b, facts, err)
	if all := b.Cautions(); len(all) != 0 {
		t.Errorf("taken back: %+v", all)
	}
	for of, near := range map[string]string{"cool wede": "cool weed", "mesotrine": "mesotrione"} {
		_, err := answer(t, Caution, "", b, Answers{keyOf: of, keyWhy: "x"})
		w, ok := err.(*Wrong)
		if !ok || !strings.Contains(w.Do, near) {
			t.Errorf("%s: %v", of, err)
		}
	}
	if _, err := answer(t, Caution, "", b, Answers{keyWhy: "of nothing, anywhere"}); err == nil {
		t.Error("a note about nothing is admitted")
	}
	if _, err := answer(t, Caution, "4 Elm", b, nil); err == nil {
		t.Error("a note without words is admitted")
	}
}

// TestWhatRecordsAskOfALawn: where a lawn lies and whose it is are asked with its zones, for the record that rules ask for (ECL 33-1205:
// ZIP; N.J.A.C. 7:30-7.3: town and county; 2VAC5-680-65: phone).
func TestWhatRecordsAskOfALawn(t *testing.T) {
	b := withZones(t)
	said := Answers{keyCustomer: "C. Example", keyPhone: "555-0105", "zip": "00005", "town": "Exampleton", "county": "Sample County", "customer_address": "1 Elsewhere Way", "soil_test": "2025-10-02"}
	facts, err := answer(t, ZoneMore, PlaceOf("4 Elm", "back"), b, said)
	enter(t, b, facts, err)
	l := b.Lawn("4 Elm")
	back, _ := l.Zone("back")
	if l.Customer != "C. Example" || l.Phone != "555-0105" || l.ZIP != "00005" || l.Town != "Exampleton" || l.County != "Sample County" || l.CustomerAddress != "1 Elsewhere Way" || back.SoilTest != "2025-10-02" {
		t.Errorf("%+v", l)
	}
	if front, _ := l.Zone("front"); len(facts) != 1 || front.SoilTest != "" || front.Growth != label.Growing {
		t.Errorf("%d facts; the other zone is %+v", len(facts), front)
	}
	if _, err := answer(t, ZoneMore, PlaceOf("4 Elm", "back"), b, Answers{"soil_test": "last fall"}); err == nil || !strings.Contains(err.Error(), "last fall") {
		t.Errorf("a date that is none: %v", err)
	}
}
