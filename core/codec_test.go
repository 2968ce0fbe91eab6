package core

import (
	"encoding/binary"
	"errors"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"reflect"
	"slices"
	"strings"
	"testing"

	"example.com/tintline/core/measure"
	"pgregory.net/rapid"
)

// anyEntry is an entry with a fact of any kind, filled with anything that a stored form can hold.
func anyEntry(t *rapid.T, kind Kind) Entry {
	g := &filler{t: t}
	e := Entry{
		Seq: rapid.Uint64Range(1, 1<<40).Draw(t, "seq"), Action: "action", Truck: rapid.Uint32Range(0, 1<<31).Draw(t, "truck"),
		At:   Moment{Unix: rapid.Int64Range(-1e9, 2e11).Draw(t, "unix"), Offset: 60 * rapid.Int32Range(-1439, 1439).Draw(t, "offset")},
		What: g.fact(newFact[kind](), true),
	}
	e.Digest = chain(Digest{}, e.Seq, e.Truck, e.body())
	return e
}

func everyKind(t *testing.T, check func(t *testing.T, kind Kind)) {
	for _, k := range kinds() {
		t.Run(newFact[k]().Name(), func(t *testing.T) { check(t, k) })
	}
}

func TestStoredFormIsExact(t *testing.T) {
	everyKind(t, func(t *testing.T, kind Kind) {
		rapid.Check(t, func(t *rapid.T) {
			e := anyEntry(t, kind)
			b := e.Encode()
			back, err := Decode(e.Seq, e.Action, b)
			if err != nil {
				t.Fatalf("%+v\n%v", e.What, err)
			}
			if string(back.Encode()) != string(b) {
				t.Fatalf("%+v is stored as\n%x, and read and stored again as\n%x", e.What, b, back.Encode())
			}
			if !reflect.DeepEqual(e.What, back.What) || back.At != e.At || back.Digest != e.Digest || back.Truck != e.Truck {
				t.Fatalf("%+v\nwas read back as\n%+v", e, back)
			}
		})
	})
}

func TestLineIsExact(t *testing.T) {
	everyKind(t, func(t *testing.T, kind Kind) {
		rapid.Check(t, func(t *rapid.T) {
			e := anyEntry(t, kind)
			line := EncodeLine(e, 0)
			l, err := DecodeLine(line)
			if err != nil {
				t.Fatalf("%s\n%v", line, err)
			}
			back := Entry{Seq: l.Seq, At: l.At.V, Action: l.Action, Truck: l.Truck, What: l.Fact, Digest: l.Digest}
			if string(back.Encode()) != string(e.Encode()) || !l.HasDigest || back.Seq != e.Seq || back.Action != e.Action {
				t.Fatalf("%s\nwas read as %+v", line, l.Fact)
			}
			if again := EncodeLine(back, 0); string(again) != string(line) {
				t.Fatalf("%s\nwas written again as\n%s", line, again)
			}
		})
	})
}

func TestTruncatedEntryIsAnError(t *testing.T) {
	everyKind(t, func(t *testing.T, kind Kind) {
		e := Entry{Seq: 1, What: (&filler{}).fact(newFact[kind](), true)}
		b := e.Encode()
		for n := range len(b) {
			if _, err := Decode(1, "", b[:n]); !errors.Is(err, ErrCode) && !errors.Is(err, ErrNewer) {
				t.Errorf("%d of %d bytes gave %v", n, len(b), err)
			}
		}
		if _, err := Decode(1, "", append(b, 0)); err == nil {
			t.Error("a byte too many is no error")
		}
	})
}

// fieldNumbers is a codec that notes numbers and keys.
type fieldNumbers struct {
	t    *testing.T
	last int
	keys map[string]bool
}

func (c *fieldNumbers) note(n int, key string) {
	if n != c.last+1 {
		c.t.Errorf("field %d (%s) comes after field %d", n, key, c.last)
	}
	if c.keys[key] {
		c.t.Errorf("the key %s stands twice", key)
	}
	c.last, c.keys[key] = n, true
}

func (c *fieldNumbers) text(n int, key string, _ *string)                { c.note(n, key) }
func (c *fieldNumbers) texts(n int, key string, _ *[]string)             { c.note(n, key) }
func (c *fieldNumbers) scalar(n int, key string, _ *string)              { c.note(n, key) }
func (c *fieldNumbers) letter(n int, key string, _ *byte)                { c.note(n, key) }
func (c *fieldNumbers) letters(n int, key string, _ *[]byte)             { c.note(n, key) }
func (c *fieldNumbers) words(n int, key string, _ *map[string]string)    { c.note(n, key) }
func (c *fieldNumbers) form(n int, key string, _ *measure.Kind)          { c.note(n, key) }
func (c *fieldNumbers) integer(n int, key string, _ *int64)              { c.note(n, key) }
func (c *fieldNumbers) integers(n int, key string, _ *[]int64)           { c.note(n, key) }
func (c *fieldNumbers) real(n int, key string, _ *float64, _ *bool)      { c.note(n, key) }
func (c *fieldNumbers) quantity(n int, key, _ string, _ *int64, _ *bool) { c.note(n, key) }
func (c *fieldNumbers) flow(n int, key string, _ *float64, _ *bool)      { c.note(n, key) }
func (c *fieldNumbers) amount(n int, key string, _ *measure.Amount)      { c.note(n, key) }
func (c *fieldNumbers) rate(n int, key string, _ *measure.Rate, _ *bool) { c.note(n, key) }
func (c *fieldNumbers) fact(n int, key string, _ *Fact)                  { c.note(n, key) }
func (c *fieldNumbers) list(n int, key string, _ int, grow func(int), each func(walker, int)) {
	c.note(n, key)
	grow(1)
	each(walker{&fieldNumbers{t: c.t, keys: map[string]bool{}}}, 0)
}

func TestFieldsAreNumberedInOrder(t *testing.T) {
	everyKind(t, func(t *testing.T, kind Kind) {
		f := newFact[kind]()
		if f.Kind() != kind || NewFact(f.Name()).Kind() != kind {
			t.Errorf("kind %d makes a fact of kind %d", kind, f.Kind())
		}
		f.fields(walker{&fieldNumbers{t: t, keys: map[string]bool{}}})
	})
}

// TestEveryFieldIsStored fails when a struct has a field that its list leaves out.
func TestEveryFieldIsStored(t *testing.T) {
	everyKind(t, func(t *testing.T, kind Kind) {
		f := (&filler{}).fact(newFact[kind](), true)
		e := Entry{Seq: 1, What: f}
		back, err := Decode(1, "", e.Encode())
		if err != nil || !reflect.DeepEqual(back.What, f) {
			t.Errorf("%+v\ncame back as\n%+v (%v)", f, back.What, err)
		}
	})
}

func TestWritingChangesNothing(t *testing.T) {
	everyKind(t, func(t *testing.T, kind Kind) {
		f := (&filler{}).fact(newFact[kind](), true)
		e := Entry{Seq: 1, What: f}
		done := make(chan bool)
		go func() { // under the race detector a write into the fact is an error
			e.Encode()
			EncodeLine(e, 0)
			done <- true
		}()
		e.Encode()
		EncodeLine(e, 0)
		_ = plain(f)
		<-done
	})
}

// caseTypes lists the facts that the type switches of these functions have a case for.
func caseTypes(t *testing.T, file string, functions ...string) []string {
	t.Helper()
	tree, err := parser.ParseFile(token.NewFileSet(), file, nil, 0)
	if err != nil {
		t.Fatal(err)
	}
	var out []string
	for _, d := range tree.Decls {
		fn, ok := d.(*ast.FuncDecl)
		if !ok || !slices.Contains(functions, fn.Name.Name) {
			continue
		}
		ast.Inspect(fn, func(n ast.Node) bool {
			if c, ok := n.(*ast.CaseClause); ok {
				for _, e := range c.List {
					if star, ok := e.(*ast.StarExpr); ok {
						out = append(out, fmt.Sprint(star.X))
					}
				}
			}
			return true
		})
	}
	return out
}

func TestEveryFactIsAdmittedAndApplied(t *testing.T) {
	admitted := append(caseTypes(t, "admit.go", "admit", "admitDayFact", "admitMove"), "Struck") // a strike is admitted by the book
	applied := append(append(caseTypes(t, "apply.go", "apply", "applyDayFact", "applyMove"), caseTypes(t, "plumbing.go", "applyPlumbing")...), caseTypes(t, "prepare.go", "Apply")...)
	everyKind(t, func(t *testing.T, kind Kind) {
		name := reflect.TypeOf(newFact[kind]()).Elem().Name()
		if !slices.Contains(admitted, name) || !slices.Contains(applied, name) {
			t.Errorf("%s is not admitted or not applied", name)
		}
	})
}

func TestWhatANewerVersionWroteIsSaid(t *testing.T) {
	e := Entry{Seq: 1, What: &LinedUp{Supply: []byte("a")}}
	good := e.Encode()
	tail := good[len(good)-len(e.Digest):]
	head := good[:1]
	made := func(body ...byte) []byte { return slices.Concat(head, body, tail) }
	unknownFact := binary.AppendUvarint([]byte{0, 0, 0}, 999)
	for _, row := range []struct {
		what string
		b    []byte
		want error
	}{
		{"another form", append([]byte{2}, good[1:]...), ErrNewer},
		{"an unknown fact", made(append(unknownFact, 0)...), ErrNewer},
		{"an unknown field", made(0, 0, 0, byte(kindLinedUp), 9, 1, 'a', 0), ErrNewer},
		{"fields out of order", made(0, 0, 0, byte(kindLinedUp), 2, 1, 'a', 1, 1, 'a', 0), ErrNewer},
		{"an empty text that should be left out", made(0, 0, 0, byte(kindVisitBegun), 1, 0, 0), ErrCode},
		{"a number in more bytes than it needs", made(0x80, 0, 0, 0, byte(kindVisitBegun), 0), ErrCode},
		{"a text that is not UTF-8", made(0, 0, 0, byte(kindVisitBegun), 1, 1, 0xff, 0), ErrCode},
		{"a letter that is two", made(0, 0, 0, byte(kindPushedBack), 1, 2, 'a', 'b', 0), ErrCode},
		{"nothing", nil, ErrCode},
	} {
		if _, err := Decode(1, "", row.b); !errors.Is(err, row.want) {
			t.Errorf("%s: %v, want %v", row.what, err, row.want)
		}
	}
	if back, err := Decode(1, "", made(0, 0, 0, byte(kindLinedUp), 1, 1, 'a', 0)); err != nil || string(back.What.(*LinedUp).Supply) != "a" {
		t.Errorf("the entry made by hand is not read: %v", err)
	}
}

func TestUnitsOfEveryKind(t *testing.T) {
	get := func(line string) Fact {
		t.Helper()
		l, err := DecodeLine([]byte(line))
		if err != nil {
			t.Fatalf("%s: %v", line, err)
		}
		return l.Fact
	}
	const nist = "NIST Handbook 44, Appendix C"
	for _, row := range []struct {
		line   string
		got    func(f Fact) float64
		want   float64
		source string
	}{
		{`{"fact":"filled","volume_gal":2}`, func(f Fact) float64 { return float64(f.(*Filled).Volume) }, 7_570_823_568, nist},
		{`{"fact":"filled","volume_l":2.5}`, func(f Fact) float64 { return float64(f.(*Filled).Volume) }, 2_500_000_000, "1 L = 1e9 nL"},
		{`{"fact":"filled","volume_fl_oz":16}`, func(f Fact) float64 { return float64(f.(*Filled).Volume) }, 473_176_473, nist},
		{`{"fact":"filled","volume_qt":1}`, func(f Fact) float64 { return float64(f.(*Filled).Volume) }, 946_352_946, nist},
		{`{"fact":"filled","volume_nl":7}`, func(f Fact) float64 { return float64(f.(*Filled).Volume) }, 7, "the unit itself"},
		{`{"fact":"loaded","parts":[{"product":"p","amount_oz":2}]}`, func(f Fact) float64 { return float64(f.(*Loaded).Parts[0].Amount.N) }, 56_699_046_250, nist},
		{`{"fact":"loaded","parts":[{"product":"p","amount_lb":1}]}`, func(f Fact) float64 { return float64(f.(*Loaded).Parts[0].Amount.N) }, 453_592_370_000, nist},
		{`{"fact":"loaded","parts":[{"product":"p","amount_g":1}]}`, func(f Fact) float64 { return float64(f.(*Loaded).Parts[0].Amount.N) }, 1e9, "1 g = 1e9 ng"},
		{`{"fact":"loaded","parts":[{"product":"p","amount_ml":1}]}`, func(f Fact) float64 { return float64(f.(*Loaded).Parts[0].Amount.N) }, 1e6, "1 mL = 1e6 nL"},
		{`{"fact":"lawn","zones":[{"area_sqft":1}]}`, func(f Fact) float64 { return float64(f.(*Lawn).Zones[0].Area) }, 92_903, "1 sq ft = 92,903.04 mm2, rounded once"},
		{`{"fact":"lawn","zones":[{"area_acre":1}]}`, func(f Fact) float64 { return float64(f.(*Lawn).Zones[0].Area) }, 4_046_856_422, nist},
		{`{"fact":"lawn","zones":[{"area_m2":1}]}`, func(f Fact) float64 { return float64(f.(*Lawn).Zones[0].Area) }, 1e6, "1 m2 = 1e6 mm2"},
		{`{"fact":"lawn","zones":[{"price_usd":48.50}]}`, func(f Fact) float64 { return float64(f.(*Lawn).Zones[0].Price.V) }, 4850, "cents"},
		{`{"fact":"mix","parts":[{"rate_lb_per_acre":1}]}`, func(f Fact) float64 { return f.(*Mix).Parts[0].Rate.V }, 453_592_370_000 / 4_046_856_422.4, nist},
		{`{"fact":"mix","parts":[{"rate_fl_oz_per_1000_sqft":1}]}`, func(f Fact) float64 { return f.(*Mix).Parts[0].Rate.V }, 473_176_473.0 / 16 / 92_903_040, nist},
		{`{"fact":"rig","hoses":[{"inside_diameter_in":0.5,"length_ft":1}]}`, func(f Fact) float64 { return float64(f.(*Rig).Hoses[0].Bore.V) }, 12_700, "1 in = 25.4 mm"},
		{`{"fact":"rig","applicators":[{"flow_gpm":60}]}`, func(f Fact) float64 { return float64(f.(*Rig).Applicators[0].Flow.V) }, 3_785_411_784, nist},
		{`{"fact":"rig","applicators":[{"delivery_gal_per_1000_sqft":2}]}`, func(f Fact) float64 { return f.(*Rig).Applicators[0].Delivery.V }, 7_570_823_568 / 92_903_040.0, nist},
		{`{"fact":"weather","wind_mph":10}`, func(f Fact) float64 { return float64(f.(*Weather).Wind.V) }, 4_470_400, "1 mph = 0.44704 m/s"},
		{`{"fact":"setting","name":"x","value":3.5}`, func(f Fact) float64 { return float64(len(f.(*Setting).Value)) }, 3, "as it was written"},
	} {
		if got := row.got(get(row.line)); got < row.want*(1-1e-14) || got > row.want*(1+1e-14) {
			t.Errorf("%s is %v, not %v (%s)", row.line, got, row.want, row.source)
		}
	}
}

func TestLinesThatCannotBeRead(t *testing.T) {
	for _, row := range []struct{ line, says string }{
		{`{"fact":"filled","applicator":"x","volume_gallons":2}`, `"volume_gallons" is not a key of filled; allowed are at, fact, applicator, volume_gal, bypass_gal.`},
		{`{"fact":"loaded","parts":[{"product":"p","much":2}]}`, `"much" is not a key of loaded.parts[1]; allowed are product, amount_gal, amount_oz`},
		{`{"fact":"mix","parts":[{"product":"p","rate_cup_per_acre":2}]}`, `rate_cup_per_acre`},
		{`{"fact":"filled","volume_gal":2,"volume_l":3}`, `say the same thing twice`},
		{`{"fact":"mix","parts":[{"rate_lb_per_acre":1,"rate_oz_per_acre":1}]}`, `say the same thing twice`},
		{`{"fact":"loaded","parts":[{"amount_oz":1,"amount_fl_oz":1}]}`, `both as a volume and as a mass`},
		{`{"fact":"filled","fact":"filled"}`, `has the key "fact" twice`},
		{`{"fact":"filled","volume_gal":"2"}`, `filled.volume_gal must be a number, not "2".`},
		{`{"fact":"filled","volume_gal":1e40}`, `filled.volume_gal:`},
		{`{"fact":"sprayed","zones":"front"}`, `sprayed.zones must be a list of texts`},
		{`{"fact":"lined_up","supply":["ab"]}`, `lined_up.supply holds "ab"`},
		{`{"fact":"lined_up","return":"ab"}`, `lined_up.return is "ab": a compartment is one letter, a to f.`},
		{`{"fact":"product","form":"gas"}`, `product.form is "gas": write liquid or dry.`},
		{`{"fact":"struck","of":1.5}`, `struck.of must be a whole number, not 1.5.`},
		{`{"fact":"struck","instead":{"fact":"struck","instead":{"fact":"struck","instead":{"fact":"struck","instead":{"fact":"tint_seen"}}}}}`, `facts within facts`},
		{`{"fact":"weather","temp_f":"warm"}`, `weather.temp_f must be a number`},
		{`{"fact":"flown"}`, `"flown" is not a fact; allowed are rig, product, mix`},
		{`{}`, `"" is not a fact`},
		{`{"fact":"filled"`, `The line is cut short`},
		{`{"fact":"filled"} {}`, `The line has more than one object.`},
		{`["filled"]`, `The line is not an object in braces.`},
		{``, `The line is not an object in braces.`},
		{`{"fact":"filled","at":"noon"}`, `"noon" is not a time.`},
		{`{"fact":"filled","at":"9999-12-31T00:00:00Z"}`, `out of range`},
		{`{"fact":"filled","digest":"00"}`, `"00" is not a digest.`},
		{`{"fact":"filled","seq":-1}`, `out of range`},
	} {
		_, err := DecodeLine([]byte(row.line))
		var p *Problem
		if !errors.As(err, &p) || !strings.Contains(p.What, row.says) || p.Do == "" {
			t.Errorf("%s\nsays %v\nand should say %s", row.line, err, row.says)
		}
	}
}
