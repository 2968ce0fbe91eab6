package find

import (
	"fmt"
	"strings"
	"testing"

	"example.com/tintline/core"
	"pgregory.net/rapid"
)

const lines = `{"fact":"rig","name":"truck","compartments":[{"letter":"a","name":"warm","capacity_gal":300},{"letter":"b","name":"cool","capacity_gal":160}],"hoses":[{"name":"reel","volume_gal":2}],"applicators":[{"name":"hose gun","kind":"gun","hose":"reel","delivery_gal_per_1000_sqft":1.5},{"name":"walker","kind":"ride_on","hose":"reel","delivery_gal_per_1000_sqft":0.3,"tank_gal":14}]}
{"fact":"product","name":"Example Cool","form":"liquid","kind":"herbicide","actives":[{"name":"mesotrione","lb_per_gal":4}],"grasses":["tall_fescue"]}
{"fact":"product","name":"Green Iron","form":"dry","kind":"iron","grasses":["all_turf"]}
{"fact":"mix","name":"spring","parts":[{"product":"Example Cool","rate_fl_oz_per_1000_sqft":0.1},{"product":"Green Iron","rate_oz_per_1000_sqft":2}]}
{"fact":"loaded","into":"a","volume_gal":10,"mix":"spring","for":"hose gun"}
{"fact":"lawn","name":"418 Alder Court","customer":"B. Example","address":"418 Alder Court","phone":"(555) 010-0112","zones":[{"name":"front","grass":"tall_fescue","area_sqft":4000}]}
{"fact":"lawn","name":"9 Balder Way","customer":"A. Alderson","zones":[{"name":"mesa","grass":"tall_fescue","area_sqft":3000}]}
{"fact":"lawn","name":"Alder School","customer":"Town","address":"1 Grand Loop","phone":"555-0142","zones":[{"name":"oval","grass":"tall_fescue","area_sqft":9000}]}
{"fact":"lawn","name":"Ash Long Drive","zones":[{"name":"cooler side","grass":"tall_fescue","area_sqft":1000}]}`

func book(t testing.TB) *core.Book {
	t.Helper()
	b := core.NewBook(1)
	for _, s := range strings.Split(lines, "\n") {
		l, err := core.DecodeLine([]byte(s))
		if err != nil {
			t.Fatalf("%s\n%v", s, err)
		}
		es, err := b.Prepare("test", core.Moment{}, l.Fact)
		if err != nil {
			t.Fatalf("%s\n%v", s, err)
		}
		if err := b.Apply(es[0]); err != nil {
			t.Fatal(err)
		}
	}
	return b
}

func TestIn(t *testing.T) {
	b := book(t)
	for _, row := range []struct{ typed, want string }{
		{"", ""},
		{"  ", ""},
		{"xyz", ""},
		// a name that begins so, a word of a name, a word of the customer's
		{"ald", "lawn Alder School; lawn 418 Alder Court; lawn 9 Balder Way; lawn Ash Long Drive"},
		{"ALDER  c", "lawn 418 Alder Court; lawn Alder School"},
		{"grand", "lawn Alder School"},
		{"oval", "lawn Alder School"},
		{"418", "lawn 418 Alder Court"},
		{"5550142", "lawn Alder School"},
		{"555-01", "lawn 418 Alder Court; lawn Alder School"},
		{"0112", "lawn 418 Alder Court"},
		{"mes", "lawn 9 Balder Way; product Example Cool"},
		{"meso", "product Example Cool"},
		{"spring", "mix spring; compartment a"},
		// the whole name before all else; a compartment's too; a word of a product's name before one of a zone
		{"cool", "compartment b; product Example Cool; lawn Ash Long Drive"},
		{"b", "compartment b; lawn 9 Balder Way; lawn 418 Alder Court"},
		{"gun", "applicator hose gun"},
		{"ride", "applicator walker"},
		{"iron", "product Green Iron"},
		// letters in order
		{"ald ct", "lawn 418 Alder Court"},
		{"grn", "product Green Iron"},
		{"aslg", "lawn Ash Long Drive"},
	} {
		var got []string
		for _, h := range In(b, row.typed) {
			got = append(got, h.Kind+" "+h.Name)
		}
		if text := strings.Join(got, "; "); text != row.want {
			t.Errorf("%q finds %s, not %s", row.typed, text, row.want)
		}
	}
	if In(core.NewBook(1), "ald") != nil {
		t.Error("an empty book holds something")
	}
}

func TestWordsOfAHit(t *testing.T) {
	b := book(t)
	for _, row := range []struct{ typed, want string }{
		{"418", "B. Example, 4,000 sq ft"},
		{"school", "Town, 1 Grand Loop, 9,000 sq ft"},
		{"example cool", "mesotrione"},
		{"green", "iron"},
		{"spring", "Example Cool + Green Iron"},
		{"warm", "warm, spring"},
		{"walker", "ride-on"},
	} {
		if h := In(b, row.typed); len(h) == 0 || h[0].Words != row.want {
			t.Errorf("%q: %+v, not %s", row.typed, h, row.want)
		}
	}
}

// No text makes it fail, nothing is found twice, there is a bound, and more letters never find something new.
func TestMoreLettersFindNoMore(t *testing.T) {
	b := book(t)
	for i := range 40 {
		l, err := core.DecodeLine([]byte(fmt.Sprintf(`{"fact":"lawn","name":"%d Elm","zones":[{"name":"all","grass":"tall_fescue","area_sqft":1000}]}`, i)))
		if err != nil {
			t.Fatal(err)
		}
		es, err := b.Prepare("test", core.Moment{}, l.Fact)
		if err != nil {
			t.Fatal(err)
		}
		if err := b.Apply(es[0]); err != nil {
			t.Fatal(err)
		}
	}
	if n := len(In(b, "elm")); n != Most {
		t.Errorf("%d are found", n)
	}
	rapid.Check(t, func(t *rapid.T) {
		typed := rapid.OneOf(rapid.StringMatching(`[a-z0-9]{1,4}`), rapid.StringN(1, 9, -1)).Draw(t, "typed")
		seen := map[string]bool{}
		hits := In(b, typed)
		for _, h := range hits {
			if seen[h.Kind+h.Name] {
				t.Fatalf("%q finds %s twice", typed, h.Name)
			}
			seen[h.Kind+h.Name] = true
		}
		if len(hits) == Most || strings.TrimSpace(typed) == "" {
			return
		}
		for _, h := range In(b, typed+rapid.StringMatching(`[a-z]`).Draw(t, "more")) {
			if !seen[h.Kind+h.Name] {
				t.Fatalf("with one letter more than %q there is %s %s", typed, h.Kind, h.Name)
			}
		}
	})
}
