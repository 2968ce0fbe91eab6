package past

import (
	"encoding/json"
	"fmt"
	"math"
	"strings"
	"time"

	"pgregory.net/rapid"

	"example.com/tintline/core"
	"example.com/tintline/core/tally"
)

const setUp = `
{"fact":"rig","name":"truck","compartments":[{"letter":"a","name":"warm","capacity_gal":300,"heel_gal":2},{"letter":"b","name":"cool","capacity_gal":160,"heel_gal":2}],"cell_gal":0.2,"return_line_gal":0.1,"hoses":[{"name":"reel","inside_diameter_in":0.375,"length_ft":300}],"applicators":[{"name":"gun","kind":"gun","hose":"reel","delivery_gal_per_1000_sqft":1.5,"flow_gpm":2.5},{"name":"ride-on","kind":"ride_on","hose":"reel","delivery_gal_per_1000_sqft":0.3,"tank_gal":14,"hopper_lb":120},{"name":"spreader","kind":"spreader","hopper_lb":50}]}
{"fact":"product","name":"warm weed","form":"liquid","price_usd":61.37,"package_gal":2.5,"kind":"herbicide","grasses":["bermudagrass_common"]}
{"fact":"product","name":"cool weed","form":"liquid","kind":"herbicide","grasses":["tall_fescue"]}
{"fact":"product","name":"food","form":"dry","grasses":["all_turf"],"rate_low_lb_per_1000_sqft":3,"rate_high_lb_per_1000_sqft":3}
{"fact":"mix","name":"W","parts":[{"product":"warm weed","rate_fl_oz_per_1000_sqft":1.2}]}
{"fact":"mix","name":"C","parts":[{"product":"cool weed","rate_fl_oz_per_1000_sqft":0.15},{"product":"warm weed","rate_fl_oz_per_1000_sqft":0.1}]}
{"fact":"mix","name":"F","parts":[{"product":"food","rate_lb_per_1000_sqft":3}]}
{"fact":"lawn","name":"418 Alder","visit_price_usd":55.5,"zones":[{"name":"front","grass":"bermudagrass_common","area_sqft":4000},{"name":"back","grass":"bermudagrass_common","area_sqft":3401}]}
{"fact":"lawn","name":"77 Fir","zones":[{"name":"all","grass":"tall_fescue","area_sqft":5203,"price_usd":48.25}]}
{"fact":"lawn","name":"12 Elm","zones":[{"name":"strip","grass":"tall_fescue","area_sqft":33},{"name":"back","grass":"tall_fescue","area_sqft":2500}]}
{"fact":"loaded","into":"a","volume_gal":150,"mix":"W","for":"gun"}
{"fact":"loaded","into":"b","volume_gal":100,"mix":"C","for":"gun"}
{"fact":"lined_up","supply":["a"],"return":"a"}
`

var (
	lawnNames    = []string{"418 Alder", "77 Fir", "12 Elm"}
	productNames = []string{"warm weed", "cool weed", "food"}
)

// season is a book whose rows are kept as the store would, and its journal.
type season struct {
	b     *core.Book
	kept  Folded
	clock int64
	log   []core.Entry
	date  time.Time
}

func newSeason(t rapid.TB) *season {
	k := &season{b: core.NewBook(1), clock: 1_780_000_000, date: time.Date(2026, 5, 1, 0, 0, 0, 0, time.UTC)}
	for _, s := range strings.Split(strings.TrimSpace(setUp), "\n") {
		k.must(t, s)
	}
	return k
}

func (k *season) must(t rapid.TB, line string) {
	t.Helper()
	if err := k.enter(line); err != nil {
		t.Fatalf("%s: %v", line, err)
	}
}

func (k *season) enter(line string) error {
	l, err := core.DecodeLine([]byte(line))
	if err != nil {
		panic(err) // a slip of this file: such a line would never be admitted
	}
	k.clock += 97
	es, err := k.b.Prepare("test", core.Moment{Unix: k.clock}, l.Fact)
	if err != nil {
		return err
	}
	for _, e := range es {
		if err := k.kept.Apply(k.b, e); err != nil {
			return err
		}
		k.log = append(k.log, e)
	}
	return nil
}

func (k *season) open() error {
	return k.enter(fmt.Sprintf(`{"fact":"day_opened","date":%q,"operator":"R. Example","route":["77 Fir"]}`, k.date.Format(time.DateOnly)))
}

// one draws a line of the day's work; what could not have happened is refused.
func (k *season) one(t *rapid.T) {
	gal := func(most float64) float64 { return math.Round(rapid.Float64Range(0.01, most).Draw(t, "gal")*1e4) / 1e4 }
	lawn := rapid.SampledFrom(lawnNames).Draw(t, "lawn")
	switch rapid.IntRange(0, 17).Draw(t, "fact") {
	case 0:
		_ = k.enter(fmt.Sprintf(`{"fact":"loaded","into":%q,"volume_gal":%v,"mix":%q,"for":"gun"}`, rapid.SampledFrom([]string{"a", "b"}).Draw(t, "into"), gal(60), rapid.SampledFrom([]string{"W", "C"}).Draw(t, "mix")))
	case 1:
		to := rapid.SampledFrom([]string{"a", "b"}).Draw(t, "supply")
		_ = k.enter(fmt.Sprintf(`{"fact":"lined_up","supply":[%q],"return":%q}`, to, to))
	case 2:
		_ = k.enter(fmt.Sprintf(`{"fact":"filled","applicator":"ride-on","volume_gal":%v}`, gal(6)))
	case 3:
		_ = k.enter(fmt.Sprintf(`{"fact":"gauge_read","compartment":"a","volume_gal":%v}`, gal(150)))
	case 4:
		_ = k.enter(fmt.Sprintf(`{"fact":"loaded","into":"spreader","parts":[{"product":"food","amount_lb":%v}]}`, gal(40)))
	case 5, 6:
		_ = k.enter(fmt.Sprintf(`{"fact":"spread","lawn":%q,"applicator":"spreader","product":"food","amount_lb":%v}`, lawn, gal(9)))
	case 7:
		_ = k.enter(`{"fact":"product","name":"warm weed","form":"liquid","price_usd":61.37,"package_gal":2.5,"kind":"herbicide","grasses":["bermudagrass_common"]}`)
	case 8:
		_ = k.enter(fmt.Sprintf(`{"fact":"visit_begun","lawn":%q}`, lawn))
	case 9:
		if v := k.b.Day().Visiting(); v != nil {
			_ = k.enter(fmt.Sprintf(`{"fact":"visit_done","lawn":%q}`, v.Lawn))
		}
	case 10:
		k.strike(t, k.b.Seq()-uint64(rapid.IntRange(0, 3).Draw(t, "back")))
	case 11:
		_ = k.enter(fmt.Sprintf(`{"fact":"weather","wind_mph":%d,"wind_from":"SW","temp_f":71}`, rapid.IntRange(0, 20).Draw(t, "mph")))
	case 12:
		_ = k.enter(fmt.Sprintf(`{"fact":"recorded","field":"target","value":"grub %d","lawn":%q}`, rapid.IntRange(0, 9).Draw(t, "pest"), lawn))
	default:
		_ = k.enter(fmt.Sprintf(`{"fact":"sprayed","lawn":%q,"applicator":%q,"by":"gallons","volume_gal":%v}`, lawn, rapid.SampledFrom([]string{"gun", "gun", "ride-on"}).Draw(t, "with"), gal(12)))
	}
}

func (k *season) strike(t *rapid.T, of uint64) {
	instead := ""
	if rapid.IntRange(0, 3).Draw(t, "instead") == 0 {
		instead = fmt.Sprintf(`,"instead":{"fact":"day_opened","date":%q,"operator":"S. Example"}`, k.date.AddDate(0, 0, 1).Format(time.DateOnly))
	}
	_ = k.enter(fmt.Sprintf(`{"fact":"struck","of":%d%s}`, of, instead))
}

// day goes on until another is opened: left open or closed, with work after the close, its opening struck or not, the clock
// set back now and then.
func (k *season) day(t *rapid.T) {
	if rapid.IntRange(0, 5).Draw(t, "clock") == 0 {
		k.clock -= 200_000
	}
	k.date = k.date.AddDate(0, 0, rapid.SampledFrom([]int{0, 1, 1, 1, 2, 25, 200}).Draw(t, "days later"))
	_ = k.open()
	opened := k.b.Day().Seq
	for range rapid.IntRange(0, 8).Draw(t, "entries") {
		k.one(t)
	}
	if rapid.IntRange(0, 4).Draw(t, "strike the opening") == 0 {
		k.strike(t, opened)
	}
	if rapid.IntRange(0, 3).Draw(t, "close") > 0 {
		_ = k.enter(`{"fact":"day_closed"}`)
		for range rapid.IntRange(0, 2).Draw(t, "after the close") {
			k.one(t)
		}
	}
}

func anySeason(t *rapid.T) *season {
	k := newSeason(t)
	for range rapid.IntRange(0, 9).Draw(t, "days") {
		k.day(t)
	}
	return k
}

func (k *season) dates(t *rapid.T) (from, to string) {
	draw := func(what string) string {
		if rapid.IntRange(0, 3).Draw(t, what) == 0 {
			return ""
		}
		return k.date.AddDate(0, 0, -rapid.IntRange(-3, 400).Draw(t, what)).Format(time.DateOnly)
	}
	if from, to = draw("from"), draw("to"); to != "" && from > to {
		from, to = to, from
	}
	return from, to
}

// folded is what tally.Span gives by reading the whole journal.
func folded(t rapid.TB, log []core.Entry, from, to string, now core.Maybe[core.Moment]) (tally.Tally, bool) {
	b, s := core.NewBook(1), tally.Span{From: from, To: to, Now: now}
	for _, e := range log {
		s.Before(b, e)
		if err := b.Apply(e); err != nil {
			t.Fatal(err)
		}
		s.After(b, e)
	}
	return s.Sum(b)
}

// scanned lists all that was laid by reading the whole journal, with rules of its own: the days as they stood last.
func scanned(t rapid.TB, log []core.Entry, q Query) []Laid {
	b := core.NewBook(1)
	var out, held []Laid
	var heldDay uint64
	for _, e := range log {
		if _, opens := e.What.(*core.DayOpened); opens {
			out = append(out, held...)
			held, heldDay = ofDay(b), b.Day().Seq
		}
		if err := b.Apply(e); err != nil {
			t.Fatal(err)
		}
		if b.Day().Seq == heldDay {
			held = nil
		}
	}
	out = append(append(out, held...), ofDay(b)...)
	var some []Laid
	for _, l := range out {
		has := q.Product == ""
		for _, u := range l.Products {
			has = has || u.Product == q.Product
		}
		if has && (q.Lawn == "" || l.Lawn == q.Lawn) && (q.From == "" || l.Date >= q.From) && (q.To == "" || l.Date <= q.To) {
			some = append(some, l)
		}
	}
	return some
}

func text(v any) string {
	b, err := json.Marshal(v)
	if err != nil {
		panic(err)
	}
	return string(b)
}
