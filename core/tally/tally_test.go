package tally

import (
	"encoding/json"
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

const setUp = `
{"fact":"rig","name":"truck","compartments":[{"letter":"a","name":"warm","capacity_gal":300,"heel_gal":2},{"letter":"b","name":"cool","capacity_gal":160,"heel_gal":2},{"letter":"c","name":"iron","capacity_gal":90,"heel_gal":1}],"cell_gal":0.2,"return_line_gal":0.1,"hoses":[{"name":"reel","inside_diameter_in":0.375,"length_ft":300}],"applicators":[{"name":"gun","kind":"gun","hose":"reel","delivery_gal_per_1000_sqft":1.5,"flow_gpm":2.5},{"name":"ride-on","kind":"ride_on","hose":"reel","delivery_gal_per_1000_sqft":0.3,"tank_gal":14,"hopper_lb":120},{"name":"spreader","kind":"spreader","hopper_lb":50}]}
{"fact":"product","name":"warm weed","form":"liquid","kind":"herbicide","grasses":["bermudagrass_common"]}
{"fact":"product","name":"cool weed","form":"liquid","kind":"herbicide","grasses":["tall_fescue"]}
{"fact":"product","name":"iron","form":"dry","kind":"iron","grasses":["all_turf"]}
{"fact":"product","name":"food","form":"dry","grasses":["all_turf"],"rate_low_lb_per_1000_sqft":3,"rate_high_lb_per_1000_sqft":3}
{"fact":"mix","name":"W","parts":[{"product":"warm weed","rate_fl_oz_per_1000_sqft":1.2},{"product":"iron","rate_oz_per_1000_sqft":2}]}
{"fact":"mix","name":"C","parts":[{"product":"cool weed","rate_fl_oz_per_1000_sqft":0.15}]}
{"fact":"lawn","name":"418 Alder","zones":[{"name":"front","grass":"bermudagrass_common","area_sqft":4000},{"name":"back","grass":"bermudagrass_common","area_sqft":3401}]}
{"fact":"lawn","name":"77 Fir","zones":[{"name":"all","grass":"tall_fescue","area_sqft":5203}]}
{"fact":"lawn","name":"12 Elm","zones":[{"name":"strip","grass":"tall_fescue","area_sqft":33},{"name":"bank","grass":"tall_fescue","area_sqft":1017},{"name":"back","grass":"tall_fescue","area_sqft":2500}]}
`

// keeper is a book with the span that a reader of its journal would keep.
type keeper struct {
	b     *core.Book
	clock int64
	log   []core.Entry
}

func newKeeper(t rapid.TB) *keeper {
	k := &keeper{b: core.NewBook(1), clock: 1_780_000_000}
	for _, s := range strings.Split(strings.TrimSpace(setUp), "\n") {
		if err := k.enter(s); err != nil {
			t.Fatalf("%s: %v", s, err)
		}
	}
	return k
}

func (k *keeper) enter(line string) error {
	l, err := core.DecodeLine([]byte(line))
	if err != nil {
		return err
	}
	k.clock += 97
	es, err := k.b.Prepare("test", core.Moment{Unix: k.clock}, l.Fact)
	if err != nil {
		return err
	}
	for _, e := range es {
		if err := k.b.Apply(e); err != nil {
			return err
		}
		k.log = append(k.log, e)
	}
	return nil
}

// fold reads the journal as a caller would.
func (k *keeper) fold(t rapid.TB, from, to string) (Tally, bool) {
	b, s := core.NewBook(1), Span{From: from, To: to}
	for _, e := range k.log {
		s.Before(b, e)
		if err := b.Apply(e); err != nil {
			t.Fatal(err)
		}
		s.After(b, e)
	}
	return s.Sum(b)
}

func drawLine(t *rapid.T) string {
	gal := func(most float64) string {
		return strconv.FormatFloat(math.Round(rapid.Float64Range(0.001, most).Draw(t, "gal")*1e4)/1e4+0.0001, 'f', -1, 64)
	}
	letter := rapid.SampledFrom([]string{"a", "b", "c"})
	switch rapid.IntRange(0, 13).Draw(t, "fact") {
	case 0:
		return fmt.Sprintf(`{"fact":"loaded","into":%q,"volume_gal":%s,"mix":%q,"for":"gun"}`, letter.Draw(t, "into"), gal(80), rapid.SampledFrom([]string{"W", "C"}).Draw(t, "mix"))
	case 1:
		return fmt.Sprintf(`{"fact":"loaded","into":%q,"volume_gal":%s}`, rapid.SampledFrom([]string{"a", "b", "ride-on"}).Draw(t, "into"), gal(6))
	case 2:
		return fmt.Sprintf(`{"fact":"lined_up","supply":[%q],"return":%q}`, letter.Draw(t, "supply"), letter.Draw(t, "return"))
	case 3:
		return fmt.Sprintf(`{"fact":"pushed_back","into":%q,"volume_gal":%s}`, letter.Draw(t, "into"), gal(4))
	case 4:
		return fmt.Sprintf(`{"fact":"filled","applicator":"ride-on","volume_gal":%s}`, gal(6))
	case 5:
		return fmt.Sprintf(`{"fact":"gauge_read","compartment":%q,"volume_gal":%s}`, letter.Draw(t, "at"), gal(80))
	case 6:
		return fmt.Sprintf(`{"fact":"rinsed","compartment":%q,"water_gal":%s,"to":"waste/yard"}`, letter.Draw(t, "at"), gal(3))
	case 10, 11, 12, 13:
		return drawDry(t)
	}
	lawn := rapid.SampledFrom([]string{"418 Alder", "77 Fir", "12 Elm"}).Draw(t, "lawn")
	return fmt.Sprintf(`{"fact":"sprayed","lawn":%q,"applicator":%q,"by":"gallons","volume_gal":%s}`, lawn, rapid.SampledFrom([]string{"gun", "gun", "ride-on"}).Draw(t, "with"), gal(12))
}

func TestSumsHoldOnRandomDays(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k := newKeeper(t)
		days := rapid.IntRange(1, 4).Draw(t, "days")
		for d := 1; d <= days; d++ {
			if err := k.enter(fmt.Sprintf(`{"fact":"day_opened","date":"2026-06-%02d","operator":"R. Example"}`, d)); err != nil {
				t.Fatal(err)
			}
			for range rapid.IntRange(0, 14).Draw(t, "entries") {
				_ = k.enter(drawLine(t)) // what could not have happened is refused; that is not tested here
			}
			if rapid.Bool().Draw(t, "strike") {
				_ = k.enter(fmt.Sprintf(`{"fact":"struck","of":%d}`, k.b.Seq()))
			}
			if rapid.Bool().Draw(t, "close") {
				_ = k.enter(`{"fact":"day_closed"}`)
			}
		}
		check(t, k.b, Close(k.b, core.Maybe[core.Moment]{}))
		all, ok := k.fold(t, "", "")
		if !ok {
			return // the only opening was struck
		}
		check(t, k.b, all)
		for i := range k.b.Plumbing().Compartments {
			c := &k.b.Plumbing().Compartments[i]
			if row := all.compartment(string(c.Letter)); row.Flows.Left() != c.Liquid.Volume {
				t.Fatalf("%c: the rows come to %d, the compartment holds %d", c.Letter, row.Flows.Left(), c.Liquid.Volume)
			}
		}
		atEachDate(t, k, all)
	})
}

// atEachDate: the days one by one add up to the span.
func atEachDate(t *rapid.T, k *keeper, all Tally) {
	var days []Tally
	for d := 1; d <= 4; d++ {
		date := fmt.Sprintf("2026-06-%02d", d)
		if day, ok := k.fold(t, date, date); ok {
			days = append(days, day)
		}
	}
	sum := Add(days...)
	one, _ := json.Marshal(sum.Document())
	other, _ := json.Marshal(all.Document())
	if string(one) != string(other) {
		t.Fatalf("days:\n%s\nspan:\n%s", one, other)
	}
}

func check(t *rapid.T, b *core.Book, y Tally) {
	var lawns, mixes, zones measure.Volume
	var area, mixArea measure.Area
	checkDry(t, y)
	var products []Product
	for _, l := range y.Lawns {
		lawns, area = lawns+l.Volume, area+l.Area
		for _, z := range l.Zones {
			zones += z.Volume
			products = addProducts(products, z.Products)
		}
	}
	for _, m := range y.Mixes {
		mixes, mixArea = mixes+m.Volume, mixArea+m.Area
	}
	var to measure.Volume
	for _, c := range y.Compartments {
		to += c.ToLawns
	}
	if lawns != y.Volume || mixes != y.Volume || zones != y.Volume || to != y.Volume {
		t.Fatalf("all %d: lawns %d, mixes %d, zones %d, to lawns %d", y.Volume, lawns, mixes, zones, to)
	}
	if area != y.Area || mixArea != y.Sprayed {
		t.Fatalf("all %d, sprayed %d: lawns %d, mixes %d", y.Area, y.Sprayed, area, mixArea)
	}
	if fmt.Sprint(products) != fmt.Sprint(y.Products) {
		t.Fatalf("zones hold %v, the products are %v", products, y.Products)
	}
	checkPrint(t, y.Text())
	checkFigures(t, &y)
}

// TestStruckOpening: a day whose successor is struck is counted once.
func TestStruckOpening(t *testing.T) {
	k := newKeeper(t)
	for _, s := range []string{
		`{"fact":"loaded","into":"a","volume_gal":100,"mix":"W","for":"gun"}`,
		`{"fact":"lined_up","supply":["a"],"return":"a"}`,
		`{"fact":"day_opened","date":"2026-06-01","operator":"R. Example"}`,
		`{"fact":"sprayed","lawn":"77 Fir","applicator":"gun","by":"gallons","volume_gal":8}`,
		`{"fact":"day_closed"}`,
		`{"fact":"loaded","into":"a","volume_gal":10,"mix":"W","for":"gun"}`,
		`{"fact":"day_opened","date":"2026-06-02","operator":"R. Example"}`,
	} {
		if err := k.enter(s); err != nil {
			t.Fatal(err)
		}
	}
	if err := k.enter(fmt.Sprintf(`{"fact":"struck","of":%d}`, k.b.Seq())); err != nil {
		t.Fatal(err)
	}
	y, _ := k.fold(t, "", "")
	if y.Volume != measure.Gallons(8) || y.To != "2026-06-01" || y.compartment("a").Flows.Loaded != measure.Gallons(10) {
		t.Fatalf("the tally is\n%s", y.Text())
	}
}

func TestPage(t *testing.T) {
	k := newKeeper(t)
	for _, s := range []string{
		`{"fact":"loaded","into":"a","volume_gal":200,"mix":"W","for":"gun"}`,
		`{"fact":"loaded","into":"b","volume_gal":100,"mix":"C","for":"gun"}`,
		`{"fact":"day_opened","date":"2026-06-01","operator":"R. Example"}`,
		`{"fact":"lined_up","supply":["b"],"return":"b"}`,
		`{"fact":"sprayed","lawn":"77 Fir","applicator":"gun","by":"area"}`,
		`{"fact":"lined_up","supply":["a"],"return":"a"}`,
		`{"fact":"pushed_back","into":"b","volume_gal":2.7}`,
		`{"fact":"sprayed","lawn":"418 Alder","applicator":"gun","by":"area"}`,
		`{"fact":"gauge_read","compartment":"a","volume_gal":180}`,
		`{"fact":"day_closed"}`,
	} {
		if err := k.enter(s); err != nil {
			t.Fatal(err)
		}
	}
	y := Close(k.b, core.Maybe[core.Moment]{})
	t.Log("\n" + y.Text())
	want := "2026-06-01   2 lawns   12,600 sq ft   18.9 gal   0.2 h\n"
	if got := y.Text(); !strings.HasPrefix(got, want) {
		t.Errorf("the page begins\n%s\nwant\n%s", strings.SplitAfter(got, "\n")[0], want)
	}
}

func TestADayLeftOpenEndsWithItsLastEntry(t *testing.T) {
	opened := core.Moment{Unix: 1_780_000_000}
	d := &core.Day{Open: true, Date: opened.Date(), Opened: opened, Last: core.Moment{Unix: opened.Unix + 3600}}
	for _, row := range []struct {
		now  core.Maybe[core.Moment]
		want int64
	}{
		{core.Maybe[core.Moment]{}, 3600},
		{core.Known(core.Moment{Unix: opened.Unix + 7200}), 7200},
		{core.Known(core.Moment{Unix: opened.Unix + 30*86400}), 3600},
		{core.Known(core.Moment{Unix: opened.Unix - 60}), 0},
	} {
		if got := seconds(d, row.now); got != row.want {
			t.Errorf("%+v: %d s, want %d", row.now, got, row.want)
		}
	}
}
