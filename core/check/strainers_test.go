package check

import (
	"strings"
	"testing"

	"example.com/tintline/core"
)

func strainersOf(r Report) *Finding {
	for i := range r.Findings {
		for _, one := range r.Findings[i].All() {
			if one.About == aboutStrainers {
				return &one
			}
		}
	}
	return nil
}

// logAt enters lines so many minutes after the others.
func logAt(t *testing.T, b *core.Book, minutes int64, lines string) {
	t.Helper()
	for _, s := range strings.Split(strings.TrimSpace(lines), "\n") {
		l, err := core.DecodeLine([]byte(s))
		if err != nil {
			t.Fatalf("%s\n%v", s, err)
		}
		es, err := b.Prepare("test", core.Moment{Unix: clock.Unix + 60*minutes}, l.Fact)
		if err != nil {
			t.Fatalf("%s\n%v", s, err)
		}
		if err := b.Apply(es[0]); err != nil {
			t.Fatal(err)
		}
	}
}

func strainersAt(t *testing.T, b *core.Book, lawn string, minutes int64) *Finding {
	t.Helper()
	r, err := Before(b, Intent{Lawn: lawn, At: core.Moment{Unix: clock.Unix + 60*minutes}})
	if err != nil {
		t.Fatal(err)
	}
	return strainersOf(r)
}

const (
	// moreLines adds a hormone that bermudagrass bears, a herbicide of another class and lawns with and without edibles.
	moreLines = `
{"fact":"product","name":"H1","form":"liquid","kind":"herbicide","actives":[{"name":"2,4-D","lb_per_gal":4}],"registration":"00000-3","grasses":["bermudagrass_common","tall_fescue"],"rate_low_fl_oz_per_1000_sqft":1,"rate_high_fl_oz_per_1000_sqft":2}
{"fact":"product","name":"P1","form":"dry","kind":"herbicide","actives":[{"name":"prodiamine","percent_by_weight":65}],"registration":"00000-4","grasses":["bermudagrass_common"],"rate_low_oz_per_1000_sqft":0.2,"rate_high_oz_per_1000_sqft":0.8}
{"fact":"lawn","name":"Oak","zones":[{"name":"plot","grass":"bermudagrass_common","area_sqft":3000,"sites":[{"kind":"edible"}]}]}
`
	rinsedB = `{"fact":"rinsed","compartment":"b","water_gal":16,"to":"waste/field"}` + "\n"
)

// After herbicides of which little injures, and hormones, what dries on is in no account (low-dose figures for HRAC 2 and 27:
// see the settings trace_a; 2,4-D and dicamba: University of Nebraska extension).
func TestWhatLiesDriedIsNoted(t *testing.T) {
	for _, row := range []struct {
		name, lines, lawn string
		says, do          string // empty: nothing is said
	}{
		{
			"mesotrione went through, on bermudagrass", hoseOf("b") + hoseOf("a"), "Alder",
			"What lies dried of mesotrione in strainers and dead ends is not in the account: the strainers were not opened since 20:26, b has had 0 of 3 rinses.", "open the strainers and rinse b three times",
		},
		{"on the grass that it is for", hoseOf("a") + hoseOf("b"), "Fir", "sulfosulfuron", "rinse a three times"},
		{"loaded and never drawn", hoseOf("a"), "Alder", "", ""},
		{"what is drawn itself", hoseOf("b"), "Alder", "", ""},
		{"strainers opened, not rinsed", hoseOf("b") + hoseOf("a") + `{"fact":"cleaned","what":"strainers"}` + "\n" + rinsedB, "Alder", "account: b has had 1 of 3 rinses.", "clean-out rinse b three times; enter it"},
		{"rinsed, strainers not opened", hoseOf("b") + hoseOf("a") + rinsedB + rinsedB + rinsedB, "Alder", "account: the strainers were not opened since 20:26.", "clean-out open the strainers; enter it"},
		{"both", hoseOf("b") + hoseOf("a") + rinsedB + rinsedB + rinsedB + `{"fact":"cleaned","what":"strainers"}`, "Alder", "", ""},
		{"two of them in one note", hoseOf("a") + hoseOf("b") + hoseOf("c"), "Gum", "dried of sulfosulfuron and mesotrione in", "rinse a and b three times"},
		{"a herbicide that is neither", `{"fact":"loaded","into":"c","volume_gal":10,"parts":[{"product":"P1","amount_oz":2}]}` + "\n" + hoseOf("c") + hoseOf("a"), "Gum", "", ""},
		{"a hormone on grass that bears it", `{"fact":"loaded","into":"c","volume_gal":10,"parts":[{"product":"H1","amount_fl_oz":10}]}` + "\n" + hoseOf("c") + hoseOf("a"), "Alder", "", ""},
		{"a hormone beside food plants", `{"fact":"loaded","into":"c","volume_gal":10,"parts":[{"product":"H1","amount_fl_oz":10}]}` + "\n" + hoseOf("c") + hoseOf("a"), "Oak", "dried of 2,4-D in", "rinse c"},
	} {
		t.Run(row.name, func(t *testing.T) {
			f := strainersAt(t, play(t, loadedLines+moreLines+row.lines), row.lawn, 0)
			if row.says == "" {
				if f != nil {
					t.Fatalf("says %s", f.Says)
				}
				return
			}
			if f == nil || f.Weight != Note || !strings.Contains(f.Says, row.says) || !strings.Contains(f.Do, row.do) || f.Part != PartRig || f.Ground != GroundExtension || f.Source == "" || len(f.Zones) == 0 {
				t.Fatalf("%+v", f)
			}
		})
	}
}

// It is said at the first lawn for which it matters, and not at the next; on pages it stands until it is done.
func TestWhatLiesDriedIsSaidOnceADay(t *testing.T) {
	b := play(t, loadedLines+moreLines+hoseOf("b")+hoseOf("a"))
	visit := func(lawn string, from int64) {
		logAt(t, b, from, `{"fact":"visit_begun","lawn":"`+lawn+`"}
{"fact":"sprayed","lawn":"`+lawn+`","applicator":"gun"}
{"fact":"visit_done","lawn":"`+lawn+`"}`)
	}
	if strainersAt(t, b, "Alder", 10) == nil {
		t.Fatal("not said at the first lawn")
	}
	visit("Fir", 20)
	if strainersAt(t, b, "Alder", 30) == nil {
		t.Error("mesotrione does not matter on Fir, so it was not said there")
	}
	visit("Alder", 40)
	if f := strainersAt(t, b, "Oak", 50); f != nil {
		t.Errorf("said twice: %s", f.Says)
	}
	if list := StillDried(b, clock); len(list) != 2 || list[0].Product != "W1" || list[0].Class != 'A' || list[1].Missing == "" {
		t.Errorf("on the page stands %+v", list)
	}
	logAt(t, b, 24*60, `{"fact":"day_opened","date":"2026-05-29","operator":"R. Example","route":["Oak"]}
{"fact":"weather","wind_mph":6,"wind_from":"SW","temp_f":64}`)
	if f := strainersAt(t, b, "Oak", 24*60); f == nil || !strings.Contains(f.Says, "since 2026-05-28 20:26") {
		t.Errorf("the next day: %+v", f)
	}
}
