package core

import (
	"strings"
	"testing"

	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
)

// play enters lines as if typed and fails on the first that is refused.
func play(t testing.TB, b *Book, lines string) *Book {
	t.Helper()
	for _, s := range strings.Split(strings.TrimSpace(lines), "\n") {
		if err := enter(b, s); err != nil {
			t.Fatalf("%s\n%v", s, err)
		}
	}
	return b
}

func enter(b *Book, s string) error {
	l, err := DecodeLine([]byte(s))
	if err != nil {
		return err
	}
	es, err := b.Prepare("test", l.At.Or(Moment{Unix: 1_780_000_000}), l.Fact)
	if err != nil {
		return err
	}
	for _, e := range es {
		if err := b.Apply(e); err != nil {
			return err
		}
	}
	return nil
}

const setUp = `
{"fact":"rig","name":"truck","compartments":[{"letter":"a","name":"warm","capacity_gal":300,"heel_gal":2},{"letter":"b","name":"cool","capacity_gal":160,"heel_gal":2},{"letter":"c","name":"iron","capacity_gal":90,"heel_gal":1}],"cell_gal":0.2,"return_line_gal":0.1,"hoses":[{"name":"reel","inside_diameter_in":0.375,"length_ft":300}],"applicators":[{"name":"gun","kind":"gun","hose":"reel","delivery_gal_per_1000_sqft":1.5,"flow_gpm":2.5},{"name":"ride-on","kind":"ride_on","hose":"reel","delivery_gal_per_1000_sqft":0.3,"tank_gal":14}],"line_ups":[{"name":"a","valves":{"1":"open"},"supply":["a"],"return":"a"}]}
{"fact":"product","name":"warm weed","form":"liquid","kind":"herbicide","actives":[{"name":"metsulfuron-methyl","percent_by_weight":60}],"registration":"00000-1","grasses":["bermudagrass_common","zoysiagrass"],"rate_low_fl_oz_per_1000_sqft":1,"rate_high_fl_oz_per_1000_sqft":1.5,"wind_max_mph":10}
{"fact":"product","name":"cool weed","form":"liquid","kind":"herbicide","actives":[{"name":"mesotrione","lb_per_gal":4}],"registration":"00000-2","grasses":["tall_fescue"],"rate_low_fl_oz_per_1000_sqft":0.1,"rate_high_fl_oz_per_1000_sqft":0.2}
{"fact":"product","name":"iron","form":"dry","kind":"iron","grasses":["all_turf"],"rate_low_oz_per_1000_sqft":1,"rate_high_oz_per_1000_sqft":4}
{"fact":"mix","name":"W","parts":[{"product":"warm weed","rate_fl_oz_per_1000_sqft":1.2},{"product":"iron","rate_oz_per_1000_sqft":2}]}
{"fact":"mix","name":"C","parts":[{"product":"cool weed","rate_fl_oz_per_1000_sqft":0.15}]}
{"fact":"lawn","name":"418 Alder","customer":"A. Example","address":"418 Alder Court","zones":[{"name":"front","grass":"bermudagrass_common","area_sqft":4000},{"name":"back","grass":"bermudagrass_common","area_sqft":3400}]}
{"fact":"lawn","name":"77 Fir","zones":[{"name":"all","grass":"tall_fescue","area_sqft":5200,"price_usd":48.50}]}
{"fact":"day_opened","date":"2026-05-28","operator":"R. Example","route":["418 Alder","77 Fir"]}
{"fact":"loaded","into":"a","volume_gal":200,"mix":"W","for":"gun"}
{"fact":"loaded","into":"b","volume_gal":100,"mix":"C","for":"gun"}
{"fact":"lined_up","supply":["b"],"return":"b"}
{"fact":"weather","wind_mph":6,"wind_from":"SW","temp_f":64}
{"fact":"visit_begun","lawn":"77 Fir"}
{"fact":"sprayed","lawn":"77 Fir","zones":["all"],"applicator":"gun","by":"area"}
{"fact":"visit_done","lawn":"77 Fir"}
{"fact":"lined_up","supply":["a"],"return":"a"}
{"fact":"pushed_back","into":"b","volume_gal":2.7}
{"fact":"visit_begun","lawn":"418 Alder"}
{"fact":"sprayed","lawn":"418 Alder","zones":["front","back"],"applicator":"gun","by":"gallons","volume_gal":11.1}
{"fact":"filled","applicator":"ride-on","volume_gal":5}
{"fact":"gauge_read","compartment":"a","volume_gal":180}
{"fact":"visit_done","lawn":"418 Alder"}
`

func TestDayByLines(t *testing.T) {
	b := play(t, NewBook(1), setUp)
	sum := b.Plumbing().Sum()
	if sum.Volume != 0 || len(sum.Holds) != 0 {
		t.Errorf("sum over all places is %v, must be nothing", sum)
	}
	for _, a := range b.Plumbing().Accounts() {
		t.Log(a.Place, a.Volume.Text(), a.Products)
	}
	h := b.Plumbing().Hose("reel")
	t.Log(h.Size.Text(), len(h.Charge))
	for i := range b.Plumbing().Compartments {
		c := &b.Plumbing().Compartments[i]
		if c.Flows.Left() != c.Liquid.Volume {
			t.Errorf("%c: flows %v left %v", c.Letter, c.Flows, c.Liquid.Volume)
		}
	}
	_ = fluid.Place("")
	_ = measure.Gallons(1)
}
