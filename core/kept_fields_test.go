package core

import (
	"reflect"
	"testing"
	"unsafe"

	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
)

// bookFiller puts a value of its own into every field of a state, unexported ones too, so that one that is not kept comes
// back as another.
type bookFiller struct{ facts *filler }

func (g *bookFiller) next() int64 { return g.facts.integer("") }

func (g *bookFiller) fill(v reflect.Value, name string) {
	v = reflect.NewAt(v.Type(), unsafe.Pointer(v.UnsafeAddr())).Elem()
	switch p := v.Addr().Interface().(type) {
	case *fluid.Parts:
		*p = fluid.Parts{{Key: 0, N: g.next()}, {Key: 1, N: g.next()}}
		return
	case *zoneHistory:
		*p = g.zone()
		return
	case *learning:
		*p = learning{hoses: []learnedHose{{"one", 2, 3, 0.25}, {"other", 4, 5, 0.5}}, cell: true, shown: true}
		for i := range 5 {
			p.mean, p.cov = append(p.mean, float64(g.next())), append(p.cov, nil)
			for range 5 {
				p.cov[i] = append(p.cov[i], float64(g.next())/7)
			}
		}
		return
	case *gauged:
		*p = gauged{
			days: g.next(), tanks: []gaugedTank{{'a', true, g.next(), []gaugedDraw{{"gun", 0.5, measure.Volume(g.next()), 7.5}}}},
			factors: []gaugedFactor{{"gun", 0.5, g.next(), g.next(), g.next()}},
			mean:    []float64{0.25, 0.5}, cov: [][]float64{{1, 2}, {2, 3}},
		}
		return
	case *WeatherAt: // the fact in it makes it look like one
		g.fill(reflect.ValueOf(&p.Weather).Elem(), name)
		g.fill(reflect.ValueOf(&p.At).Elem(), name)
		return
	case *Contact: // as above
		g.fill(reflect.ValueOf(&p.Told).Elem(), name)
		g.fill(reflect.ValueOf(&p.At).Elem(), name)
		p.Seq = uint64(g.next())
		return
	case Fact:
		g.facts.fact(p, false)
		return
	}
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			g.fill(v.Field(i), v.Type().Field(i).Name)
		}
	case reflect.Pointer:
		v.Set(reflect.New(v.Type().Elem()))
		g.fill(v.Elem(), name)
	case reflect.Slice:
		v.Set(reflect.MakeSlice(v.Type(), 2, 2))
		g.fill(v.Index(0), name)
		g.fill(v.Index(1), name)
	case reflect.Array:
		for i := range v.Len() {
			g.fill(v.Index(i), name)
		}
	case reflect.Map:
		v.Set(reflect.MakeMap(v.Type()))
		for range 2 {
			key, value := reflect.New(v.Type().Key()).Elem(), reflect.New(v.Type().Elem()).Elem()
			g.fill(key, name)
			g.fill(value, name)
			v.SetMapIndex(key, value)
		}
	case reflect.String:
		v.SetString(g.facts.text(name))
	case reflect.Bool:
		v.SetBool(true)
	case reflect.Float64:
		v.SetFloat(g.facts.real(name))
	case reflect.Uint8:
		v.SetUint(uint64(g.next() % 101))
	case reflect.Int32:
		v.SetInt(1) // a key of a product or an origin too
		if name != "Origin" {
			v.SetInt(g.next())
		}
	case reflect.Int, reflect.Int64:
		v.SetInt(g.next())
	case reflect.Uint32, reflect.Uint64:
		v.SetUint(uint64(g.next()))
	default:
		panic("a field of a kind that no test fills: " + v.Type().String())
	}
}

// zone is a history in which each figure is its own; all that was laid at once has five of them in common.
func (g *bookFiller) zone() zoneHistory {
	z := zoneHistory{zone: g.facts.text("zone"), from: g.facts.text("from")}
	for range 2 {
		all := Went{Seq: uint64(g.next()), after: uint64(g.next())}
		g.fill(reflect.ValueOf(&all.Date).Elem(), "Date")
		g.fill(reflect.ValueOf(&all.Grass).Elem(), "Grass")
		g.fill(reflect.ValueOf(&all.Area).Elem(), "Area")
		l := &link{before: z.last}
		for product := range int32(2) {
			w := all
			w.Product, w.Version = product, 1-product
			g.fill(reflect.ValueOf(&w.Amount).Elem(), "Amount")
			g.fill(reflect.ValueOf(&w.Peak).Elem(), "Peak")
			g.fill(reflect.ValueOf(&w.Round).Elem(), "Round")
			l.laid = append(l.laid, w)
		}
		z.last = l
	}
	return z
}

// TestEveryFieldIsKept fills all that a book holds and takes it up again.
func TestEveryFieldIsKept(t *testing.T) {
	g := &bookFiller{&filler{}}
	c := Closed{state: &state{}}
	g.fill(reflect.ValueOf(&c.mark).Elem(), "mark")
	g.fill(reflect.ValueOf(c.state).Elem(), "state")
	c.productAt, c.lawnAt = map[string]int{}, map[string]int{}
	for i := range c.products {
		c.productAt[c.products[i].Name] = i
	}
	for i, l := range c.lawns {
		c.lawnAt[l.LawnName] = i
	}
	c.fit()
	book, err := Resume(c.Keep())
	if err != nil {
		t.Fatal(err)
	}
	for what, s := range map[string]*state{"the book": &book.state, "what strikes fold from": book.base.state} {
		if d := differs(reflect.ValueOf(c.state), reflect.ValueOf(s), what); d != "" {
			t.Error(d)
		}
	}
	if book.mark != c.mark {
		t.Errorf("the mark is %+v, not %+v", book.mark, c.mark)
	}
	if len(c.history) != 2 || c.history[1][1].last.laid[1].Round == 0 || c.plumbing.Tanks[1].StrangeIn[1].N == 0 || !c.day.Visits[1].Begun.sound() && c.day.Visits[1].dueSince == "" {
		t.Error("the filler left something out")
	}
}
