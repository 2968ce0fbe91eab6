package closing

import (
	"strings"
	"testing"

	"example.com/tintline/core"
)

const setUp = `{"fact":"rig","name":"truck","compartments":[{"letter":"a","name":"warm","capacity_gal":300,"heel_gal":2},{"letter":"b","name":"cool","capacity_gal":160,"heel_gal":2}],"cell_gal":0.2,"return_line_gal":0.1,"hoses":[{"name":"reel","inside_diameter_in":0.375,"length_ft":300}],"applicators":[{"name":"gun","kind":"gun","hose":"reel","delivery_gal_per_1000_sqft":1.5,"flow_gpm":2.5}]}
{"fact":"product","name":"weed","form":"liquid","kind":"herbicide","grasses":["all_turf"]}
{"fact":"mix","name":"W","parts":[{"product":"weed","rate_fl_oz_per_1000_sqft":1.2}]}
{"fact":"lawn","name":"1 Oak","zones":[{"name":"front","grass":"tall_fescue","area_sqft":4000}]}
{"fact":"lawn","name":"2 Oak","zones":[{"name":"front","grass":"tall_fescue","area_sqft":4000}]}
{"fact":"day_opened","date":"2026-05-28","operator":"R. Example","route":["1 Oak","2 Oak"]}
{"fact":"loaded","into":"a","volume_gal":100,"mix":"W","for":"gun"}
{"fact":"lined_up","supply":["a"]}
{"fact":"pushed_back","to":"waste/pail","volume_gal":10}
{"fact":"visit_begun","lawn":"1 Oak"}
{"fact":"sprayed","lawn":"1 Oak","zones":["front"],"applicator":"gun","by":"area","area_sqft":4000}
{"fact":"visit_done","lawn":"1 Oak"}`

var now = core.Moment{Unix: 1_780_000_000}

func play(t *testing.T, b *core.Book, lines string) {
	t.Helper()
	for _, s := range strings.Split(strings.TrimSpace(lines), "\n") {
		l, err := core.DecodeLine([]byte(s))
		if err != nil {
			t.Fatalf("%s: %v", s, err)
		}
		log(t, b, l.Fact)
	}
}

func log(t *testing.T, b *core.Book, facts ...core.Fact) {
	t.Helper()
	now.Unix += 60
	es, err := b.Prepare("test", now, facts...)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range es {
		if err := b.Apply(e); err != nil {
			t.Fatal(err)
		}
	}
}

func kinds(steps []Step) string {
	var out []string
	for _, s := range steps {
		if s.Then != "" {
			out = append(out, s.ID())
		}
	}
	return strings.Join(out, " ")
}

// TestADayByHand: 100 gal loaded, 10 to a pail, 4,000 sq ft at 1.5 gal per 1,000 laid: 84 left. The gauge shows 80: 4 more went on the one
// lawn, of which the true-up makes 10 gal. Each figure by hand.
func TestADayByHand(t *testing.T) {
	b := core.NewBook(1)
	play(t, b, setUp)
	if got := kinds(Steps(b)); got != "visits/planned gauge/a meters/" {
		t.Fatalf("steps %s", got)
	}
	if got := strings.Join(Open(b, now), "; "); got != "2 Oak was not reached and is not carried over; a: the gauge was not read since it was last drawn from or filled" {
		t.Fatalf("open %s", got)
	}
	log(t, b, Steps(b)[0].Log...)
	play(t, b, `{"fact":"gauge_read","compartment":"a","volume_gal":80}`)
	if got := kinds(Steps(b)); got != "true_up/a meters/" {
		t.Fatalf("steps %s", got)
	}
	if got := strings.Join(Open(b, now), "; "); got != "a: the gauge showed 4.00 gal less than was logged, give or take 3.00" {
		t.Fatalf("open %s", got)
	}
	log(t, b, Steps(b)[0].Log...)
	play(t, b, `{"fact":"metered","odometer_mi":1000,"engine_h":10}`)
	if got := kinds(Steps(b)); got != "" || len(Open(b, now)) != 0 {
		t.Fatalf("steps %s, open %v", got, Open(b, now))
	}
	if laid := b.Day().Laid[0].Volume.Text(); laid != "10.0" {
		t.Errorf("the lawn got %s gal", laid)
	}
	close := Close(b, now, "", "")
	if !strings.HasPrefix(close.Overnight, "a: 80.0 gal of W; hose reel: 1.72 gal with ") {
		t.Errorf("overnight %q", close.Overnight)
	}
	log(t, b, close)
	if b.Day().Open || Steps(b) != nil {
		t.Error("the day is not closed")
	}
}

func TestWhatDoesNotAddUp(t *testing.T) {
	b := core.NewBook(1)
	play(t, b, setUp+`
{"fact":"visit_begun","lawn":"2 Oak"}
{"fact":"visit_done","lawn":"2 Oak"}
{"fact":"sprayed","lawn":"1 Oak","zones":["front"],"applicator":"gun","by":"area","area_sqft":3000}
{"fact":"metered","engine_h":10}
{"fact":"metered","engine_h":20}
{"fact":"setting","name":"state","value":"NY"}
{"fact":"visit_begun","lawn":"1 Oak"}`)
	want := []string{
		"2 Oak was left and nothing is logged on it",
		"1 Oak is begun and not ended",
		"a: the gauge was not read since it was last drawn from or filled",
		"1 Oak, front: 7,000 sq ft logged today, and it has 4,000",
		"the engine ran 10.0 h by its meter, and the day has 0.2",
		"2 of 2 records miss site, ZIP, registration number, target",
		"1 sign to put up",
	}
	got := Open(b, now)
	if strings.Join(got, "\n") != strings.Join(want, "\n") {
		t.Errorf("open\n%s", strings.Join(got, "\n"))
	}
}
