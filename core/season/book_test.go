package season

import (
	"fmt"
	"strings"

	"pgregory.net/rapid"

	"example.com/tintline/core"
	"example.com/tintline/core/past"
)

const setUp = `
{"fact":"rig","name":"truck","compartments":[{"letter":"a","name":"warm","capacity_gal":3000,"heel_gal":2},{"letter":"b","name":"cool","capacity_gal":1600,"heel_gal":2}],"cell_gal":0.2,"return_line_gal":0.1,"hoses":[{"name":"reel","inside_diameter_in":0.375,"length_ft":300}],"applicators":[{"name":"gun","kind":"gun","hose":"reel","delivery_gal_per_1000_sqft":1.5,"flow_gpm":2.5},{"name":"spreader","kind":"spreader","hopper_lb":50}]}
{"fact":"product","name":"warm weed","form":"liquid","kind":"herbicide","grasses":["bermudagrass_common","tall_fescue"],"actives":[{"name":"prodiamine","lb_per_gal":4}],"rate_low_fl_oz_per_1000_sqft":0.1,"rate_high_fl_oz_per_1000_sqft":1.5}
{"fact":"product","name":"food","form":"dry","kind":"fertiliser","grasses":["all_turf"],"rate_low_lb_per_1000_sqft":3,"rate_high_lb_per_1000_sqft":6,"nitrogen_pct":28,"phosphate_pct":3,"potash_pct":6,"quick_nitrogen_pct":50}
{"fact":"mix","name":"W","parts":[{"product":"warm weed","rate_fl_oz_per_1000_sqft":1.2}]}
{"fact":"mix","name":"F","parts":[{"product":"food","rate_lb_per_1000_sqft":3}]}
{"fact":"lawn","name":"418 Alder","zones":[{"name":"front","grass":"bermudagrass_common","area_sqft":4000},{"name":"back","grass":"bermudagrass_common","area_sqft":3401}]}
{"fact":"lawn","name":"77 Fir","zones":[{"name":"all","grass":"tall_fescue","area_sqft":6000}],"known_since":"2026-01-01","round_days":30}
{"fact":"loaded","into":"a","volume_gal":2000,"mix":"W","for":"gun"}
{"fact":"lined_up","supply":["a"],"return":"a"}
`

// book is a book whose rows are kept as the store would.
type book struct {
	*core.Book
	t     rapid.TB
	kept  past.Folded
	clock int64
}

func newBook(t rapid.TB) *book {
	b := &book{Book: core.NewBook(1), t: t, clock: 1_780_000_000}
	b.must(setUp)
	return b
}

func (b *book) must(lines string) {
	b.t.Helper()
	for _, s := range strings.Split(strings.TrimSpace(lines), "\n") {
		if err := b.enter(s); err != nil {
			b.t.Fatalf("%s: %v", s, err)
		}
	}
}

func (b *book) enter(line string) error {
	l, err := core.DecodeLine([]byte(line))
	if err != nil {
		panic(err) // a slip of this file
	}
	b.clock += 97
	es, err := b.Prepare("test", core.Moment{Unix: b.clock}, l.Fact)
	if err != nil {
		return err
	}
	for _, e := range es {
		if err := b.kept.Apply(b.Book, e); err != nil {
			return err
		}
	}
	return nil
}

func (b *book) on(date, lines string) {
	b.t.Helper()
	b.must(fmt.Sprintf(`{"fact":"day_opened","date":%q,"operator":"R. Example"}`, date))
	b.must(lines)
}

func (b *book) season(year, at string) *Season {
	b.t.Helper()
	s, err := Of(b.Book, b.kept.Read, year, at)
	if err != nil {
		b.t.Fatal(err)
	}
	return s
}

func (s *Season) lawn(name string) *Lawn {
	for i := range s.Lawns {
		if s.Lawns[i].Lawn == name {
			return &s.Lawns[i]
		}
	}
	return &Lawn{}
}
