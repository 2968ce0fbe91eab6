package card

import (
	"strings"
	"testing"

	"example.com/tintline/core"
)

const setUp = `{"fact":"rig","name":"truck","compartments":[{"letter":"a","name":"warm","capacity_gal":300,"heel_gal":2},{"letter":"b","name":"cool","capacity_gal":100,"heel_gal":2}],"cell_gal":0.2,"return_line_gal":0.1,"hoses":[{"name":"reel","inside_diameter_in":0.375,"length_ft":300}],"applicators":[{"name":"gun","kind":"gun","hose":"reel","delivery_gal_per_1000_sqft":1.5,"flow_gpm":2.5},{"name":"spreader","kind":"spreader","hopper_lb":50}]}
{"fact":"setting","name":"spill_line","value":"555-0177"}
{"fact":"product","name":"weed","form":"liquid","kind":"herbicide","actives":[{"name":"2,4-D","lb_per_gal":3.8}],"registration":"00000-3","signal":"danger","first_aid":"in eyes: rinse, then call","emergency_phone":"555-0188","grasses":["all_turf"]}
{"fact":"product","name":"feed","form":"dry","grasses":["all_turf"]}
{"fact":"mix","name":"W","parts":[{"product":"weed","rate_fl_oz_per_1000_sqft":1.5}]}
{"fact":"loaded","into":"a","volume_gal":100,"mix":"W","for":"gun"}
{"fact":"loaded","into":"spreader","parts":[{"product":"feed","amount_lb":40}]}`

func TestWhatIsAboard(t *testing.T) {
	b := core.NewBook(1)
	at := core.Moment{Unix: 1_780_000_000}
	for _, s := range strings.Split(setUp, "\n") {
		l, err := core.DecodeLine([]byte(s))
		if err == nil {
			var es []core.Entry
			if es, err = b.Prepare("test", at, l.Fact); err == nil {
				err = b.Apply(es[0])
			}
		}
		if err != nil {
			t.Fatalf("%s: %v", s, err)
		}
	}
	c := Of(b, at)
	text := c.Printed().TextIn(400) // no phrase goes on below
	// 100 gal at 1.5 gal per 1,000 sq ft treat 66,667 sq ft, with 1.5 fl oz per 1,000: 100 fl oz, 1 in each gallon. By hand.
	for _, want := range []string{
		"911", "1-800-222-1222", "555-0177", "compartment a", "100.0", "100 fl oz", "1.00 fl oz", "hopper of spreader", "40.0 lb",
		"hose reel", "water", "2,4-D", "00000-3", "DANGER", "in eyes: rinse, then call", "555-0188", "none entered", NotEntered, Caution,
	} {
		if !strings.Contains(text, want) {
			t.Errorf("the card does not say %q:\n%s", want, text)
		}
	}
	if len(c.Places) != 5 || len(c.Labels) != 2 {
		t.Errorf("%d places, %d labels", len(c.Places), len(c.Labels))
	}
}

// TestPublicNumbers: source of each beside it in numbers.csv.
func TestPublicNumbers(t *testing.T) {
	var got []string
	for _, n := range Numbers(core.NewBook(1)) {
		got = append(got, n.Number)
		if n.Source == "" {
			t.Errorf("%s has no source", n.Name)
		}
	}
	if s := strings.Join(got, " "); s != "911 1-800-222-1222 1-800-424-9300 1-800-424-8802 1-800-858-7378" {
		t.Errorf("numbers %s", s)
	}
}
