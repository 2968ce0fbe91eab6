package core

import (
	"fmt"
	"strings"
	"testing"

	"example.com/tintline/core/measure"
)

func parts(b *Book, mix string) string {
	var out []string
	for _, p := range b.Mix(mix).Parts {
		out = append(out, p.Product+" "+p.Rate.Text())
	}
	return strings.Join(out, ", ")
}

func TestMixFromAnotherMix(t *testing.T) {
	b := play(t, NewBook(1), setUp+`{"fact":"mix","name":"W+","base":"W","parts":[{"product":"cool weed","rate_fl_oz_per_1000_sqft":0.1},{"product":"iron","rate_oz_per_1000_sqft":1}]}`)
	want := "cool weed 0.100 fl oz per 1,000 sq ft, iron 1.00 oz per 1,000 sq ft, warm weed 1.20 fl oz per 1,000 sq ft"
	if got := parts(b, "W+"); got != want {
		t.Errorf("W+ is %s", got)
	}
	var diff []string
	for _, d := range Difference(b.Mix("W+"), b.Mix("W")) {
		diff = append(diff, fmt.Sprintf("%s: %s, not %s", d.Product, d.Have.V.Text(), d.Base.V.Text()))
	}
	if got := strings.Join(diff, "; "); got != "cool weed: 0.100 fl oz per 1,000 sq ft, not 0 fl oz per 1,000 sq ft; iron: 1.00 oz per 1,000 sq ft, not 2.00 oz per 1,000 sq ft" {
		t.Errorf("the difference is %s", got)
	}
	// Afterwards the base is another, and the mix is as it was.
	before := parts(b, "W+")
	play(t, b, `{"fact":"mix","name":"W","parts":[{"product":"cool weed","rate_fl_oz_per_1000_sqft":0.2}]}`)
	if got := parts(b, "W+"); got != before {
		t.Errorf("with another base W+ became %s", got)
	}
	if p := refused(t, b, `{"fact":"mix","name":"W","base":"W+","parts":[{"product":"iron","rate_oz_per_1000_sqft":1}]}`); p.What != "The mix W+ is itself made from W." {
		t.Error(p.What)
	}
	// Entered again as the journal has it, it is the same, whatever the base has become.
	for _, e := range b.Since() {
		if f, ok := e.What.(*Mix); ok && f.MixName == "W+" {
			again, err := DecodeLine(EncodeLine(e, 0))
			if err != nil {
				t.Fatal(err)
			}
			mustEnter(t, b, again.Fact)
		}
	}
	if got := parts(b, "W+"); got != before {
		t.Errorf("entered again W+ became %s", got)
	}
}

func TestCompleteMixLeavesOutWhatItsBaseHas(t *testing.T) {
	b := play(t, NewBook(1), setUp+`{"fact":"mix","name":"W-","base":"W","complete":"yes","parts":[{"product":"warm weed","rate_fl_oz_per_1000_sqft":1.2}]}
{"fact":"mix","name":"same","base":"W"}`)
	d := Difference(b.Mix("W-"), b.Mix("W"))
	if len(d) != 1 || d[0].Product != "iron" || d[0].Have.Known || !d[0].Base.Known {
		t.Errorf("%+v", d)
	}
	if d := Difference(b.Mix("same"), b.Mix("W")); len(d) != 0 {
		t.Errorf("%+v", d)
	}
	if d := Difference(&Mix{Parts: []MixPart{{Product: "iron", Rate: measure.Rate{V: 1}}}}, nil); len(d) != 1 || d[0].Base.Known {
		t.Errorf("%+v", d)
	}
}
