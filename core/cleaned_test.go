package core

import (
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// clockAt is so many minutes after the entries of setUp, which are all of one moment.
func clockAt(minutes int64) Moment { return Moment{Unix: 1_780_000_000 + minutes*60} }

func applyAt(t *testing.T, b *Book, minutes int64, lines string) {
	t.Helper()
	for _, s := range strings.Split(strings.TrimSpace(lines), "\n") {
		l, err := DecodeLine([]byte(s))
		if err != nil {
			t.Fatal(err)
		}
		applyNow(t, b, clockAt(minutes), l.Fact)
	}
}

// driedWords is the list in short: "warm weed 0/2a": not opened, two rinses of a.
func driedWords(b *Book) string {
	var out []string
	for _, d := range b.Dried() {
		opened := 0
		if d.Opened {
			opened = 1
		}
		s := fmt.Sprintf("%s %d/", d.Product, opened)
		for _, r := range d.Rinses {
			s += fmt.Sprintf("%d%c", r.Done, r.Letter)
		}
		out = append(out, s)
	}
	return strings.Join(out, "; ")
}

const rinseA = `{"fact":"rinsed","compartment":"a","water_gal":30,"to":"waste/field"}`

// What dries on stays on the list until the strainers were opened and each compartment was rinsed three times, in whatever
// order; a load or a drawing in between begins anew.
func TestWhatDriesOnStaysUntilBothAreDone(t *testing.T) {
	b := play(t, NewBook(1), setUp)
	for i, row := range []struct{ lines, want string }{
		{`{"fact":"weather","wind_mph":5,"wind_from":"S"}`, "warm weed 0/0a; iron 0/0a; cool weed 0/0b"},
		{rinseA + "\n" + rinseA, "warm weed 0/2a; iron 0/2a; cool weed 0/0b"},
		{`{"fact":"cleaned","what":"strainers"}`, "warm weed 1/2a; iron 1/2a; cool weed 1/0b"},
		{rinseA, "cool weed 1/0b"},
		{`{"fact":"lined_up","supply":["b"],"return":"b"}
{"fact":"ran","seconds":20,"pump":"on"}`, "cool weed 0/0b"},
		{`{"fact":"rinsed","compartment":"b","water_gal":20,"to":"waste/field"}
{"fact":"rinsed","compartment":"b","water_gal":20,"to":"waste/field"}
{"fact":"loaded","into":"b","volume_gal":10,"parts":[{"product":"cool weed","amount_fl_oz":2}]}`, "cool weed 0/0b"},
		{`{"fact":"loaded","into":"a","volume_gal":10,"parts":[{"product":"cool weed","amount_fl_oz":2}]}`, "cool weed 0/0b"},
		{`{"fact":"lined_up","supply":["a"],"return":"a"}
{"fact":"pushed_back","into":"a","volume_gal":1}`, "cool weed 0/0b0a"},
		{`{"fact":"rinsed","compartment":"b","water_gal":20,"to":"waste/field"}
{"fact":"rinsed","compartment":"b","water_gal":20,"to":"waste/field"}
{"fact":"rinsed","compartment":"b","water_gal":20,"to":"waste/field"}
` + rinseA + "\n" + rinseA + "\n" + rinseA, "cool weed 0/3b3a"},
		{`{"fact":"cleaned","what":"strainers"}`, ""},
		{`{"fact":"pushed_back","into":"a","volume_gal":1}`, ""},
	} {
		applyAt(t, b, int64(i+1), row.lines)
		if got := driedWords(b); got != row.want {
			t.Errorf("after %s\n %s\nnot %s", row.lines, got, row.want)
		}
	}
}

func TestDriedSinceAndCopies(t *testing.T) {
	b := play(t, NewBook(1), setUp)
	applyAt(t, b, 30, `{"fact":"pushed_back","into":"a","volume_gal":1}`)
	d := b.Dried()[0]
	if d.Product != "warm weed" || d.Since != clockAt(0) || d.Last != clockAt(30) || d.Rinsed() {
		t.Errorf("%+v", d)
	}
	before := driedWords(b)
	c := b.Clone()
	applyAt(t, c, 40, `{"fact":"cleaned","what":"strainers"}`+"\n"+rinseA+`
{"fact":"lined_up","supply":["b"],"return":"b"}
{"fact":"pushed_back","into":"b","volume_gal":1}`)
	if got := driedWords(b); got != before {
		t.Errorf("a copy changed it to %s from %s", got, before)
	}
	if at, _ := b.HoseMovedAt(""); at != clockAt(30) {
		t.Errorf("a copy moved the hose at %v", at)
	}
	if at, _ := c.HoseMovedAt("reel"); at != clockAt(40) {
		t.Errorf("the hose moved at %v", at)
	}
	if at, ok := c.CellMovedAt(); at != clockAt(40) || !ok {
		t.Errorf("the cell moved at %v", at)
	}
}

// A strike takes back what was opened and rinsed.
func TestDriedAfterAStrike(t *testing.T) {
	b := play(t, NewBook(1), setUp)
	before := driedWords(b)
	applyAt(t, b, 1, `{"fact":"cleaned","what":"strainers"}`)
	if driedWords(b) == before {
		t.Fatal("opening the strainers changed nothing")
	}
	applyNow(t, b, clockAt(2), &Struck{Of: int64(b.Seq()), Reason: "slip"})
	if got := driedWords(b); got != before {
		t.Errorf("%s, before it was %s", got, before)
	}
}

// How a compartment is agitated decides what moves it: a paddle turns with the engine while the day is open, a jet works
// where the return goes while the pump runs, without either only a load mixes (common practice, from how rigs are plumbed).
func TestWhenACompartmentWasAgitated(t *testing.T) {
	lines := setUp
	for letter, how := range map[string]string{"a": Jet, "b": Paddle, "c": NotAgitated} {
		lines = strings.Replace(lines, `{"letter":"`+letter+`",`, `{"letter":"`+letter+`","agitation":"`+how+`",`, 1)
	}
	b := play(t, NewBook(1), lines)
	at := func(letter byte, now int64) int64 {
		m, ok := b.AgitatedAt(letter, clockAt(now))
		if !ok {
			return -1
		}
		return (m.Unix - clockAt(0).Unix) / 60
	}
	want := func(a, p, none int64) {
		t.Helper()
		if x, y, z := at('a', 500), at('b', 500), at('c', 500); x != a || y != p || z != none {
			t.Errorf("agitated at %d %d %d, not %d %d %d", x, y, z, a, p, none)
		}
	}
	want(0, 500, -1)
	applyAt(t, b, 10, `{"fact":"loaded","into":"c","volume_gal":10}`)
	applyAt(t, b, 20, `{"fact":"pushed_back","into":"a","volume_gal":1}`)
	want(20, 500, 10)
	applyAt(t, b, 30, `{"fact":"lined_up","supply":["c"],"return":"c"}
{"fact":"ran","seconds":20,"pump":"on"}`)
	want(20, 500, 10)
	applyAt(t, b, 40, `{"fact":"lined_up","supply":["c"],"return":"a"}
{"fact":"ran","seconds":20,"pump":"off"}`)
	want(20, 500, 10)
	applyAt(t, b, 50, `{"fact":"ran","seconds":20,"pump":"on"}`)
	want(50, 500, 10)
	applyAt(t, b, 60, `{"fact":"day_closed"}`)
	want(50, 60, 10)
	if m, ok := play(t, NewBook(1), setUp).AgitatedAt('a', clockAt(1)); ok {
		t.Errorf("agitated at %v on a rig that does not say how", m)
	}
}

// What goes through one hose leaves the other as it stood, and an applicator's own tank moves none.
func TestWhichHoseMoved(t *testing.T) {
	b := play(t, NewBook(1), strings.Replace(setUp, `"length_ft":300}]`, `"length_ft":300},{"name":"side","inside_diameter_in":0.375,"length_ft":100}]`, 1))
	if m, ok := b.HoseMovedAt("side"); ok {
		t.Errorf("the second hose moved at %v", m)
	}
	applyAt(t, b, 10, `{"fact":"pushed_back","into":"a","volume_gal":1,"hose":"side"}`)
	applyAt(t, b, 20, `{"fact":"sprayed","lawn":"77 Fir","applicator":"ride-on","by":"gallons","volume_gal":1}`)
	side, _ := b.HoseMovedAt("side")
	reel, _ := b.HoseMovedAt("")
	cell, _ := b.CellMovedAt()
	if side != clockAt(10) || reel != clockAt(0) || cell != clockAt(10) {
		t.Errorf("side %v, reel %v, cell %v", side, reel, cell)
	}
	applyAt(t, b, 30, `{"fact":"filled","applicator":"ride-on","volume_gal":1}`)
	if reel, _ = b.HoseMovedAt("reel"); reel != clockAt(30) {
		t.Errorf("filling through the reel left it at %v", reel)
	}
	if m, ok := b.HoseMovedAt("none"); ok {
		t.Errorf("a hose that is not there moved at %v", m)
	}
}

// movesOf is what the digest does not hold: when something moved, and what may have dried on.
func movesOf(s *state) string { return fmt.Sprint(s.moved, s.wetted, s.day.Spans, s.day.Shown) }

func sameMoves(t rapid.TB, a, b *Book) {
	t.Helper()
	if x, y := movesOf(&a.state), movesOf(&b.state); x != y {
		t.Fatalf("when something moved is\n%s\nhere and\n%s\nthere", x, y)
	}
}

// driedSound checks that what is on the list has gone through and is not cleaned away, each pair once.
func driedSound(t rapid.TB, b *Book) {
	t.Helper()
	seen := map[string]bool{}
	for _, d := range b.Dried() {
		if b.Product(d.Product) == nil || d.Opened && d.Rinsed() || d.Since.Zero() || d.Last.Unix < d.Since.Unix || seen[d.Product] {
			t.Fatalf("%+v", d)
		}
		seen[d.Product] = true
		for _, r := range d.Rinses {
			if pair := fmt.Sprintf("%s %c", d.Product, r.Letter); seen[pair] || r.Done < 0 || r.Done > TripleRinse {
				t.Fatalf("%+v", d)
			} else {
				seen[pair] = true
			}
		}
	}
}
