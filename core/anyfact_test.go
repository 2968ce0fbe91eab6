package core

import (
	"fmt"
	"math"
	"reflect"

	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
	"pgregory.net/rapid"
)

// filler fills a fact by reflection: with values drawn by chance, wild ones included, or with a fixed one for
// each field. It is how a test reaches a field that was added after it was written.
type filler struct {
	t      *rapid.T // nil: fixed
	count  int64
	liquid bool // fixed: what may be liquid or dry is liquid
}

func (g *filler) yes(what string) bool {
	if g.t == nil {
		return !g.liquid || what != "dry"
	}
	return rapid.Bool().Draw(g.t, what)
}

func (g *filler) many(what string) int {
	if g.t == nil {
		return 2
	}
	return rapid.IntRange(0, 3).Draw(g.t, what)
}

func (g *filler) integer(what string) int64 {
	if g.t == nil {
		g.count++
		return g.count * 1001
	}
	return rapid.OneOf(rapid.Int64Range(-100, 100), rapid.Int64(), rapid.SampledFrom([]int64{math.MaxInt64, math.MinInt64})).Draw(g.t, what)
}

func (g *filler) real(what string) float64 {
	if g.t == nil {
		g.count++
		return float64(g.count) + 0.1
	}
	return rapid.OneOf(rapid.Float64Range(-1e6, 1e6), rapid.Float64(), rapid.SampledFrom([]float64{0, math.MaxFloat64, math.SmallestNonzeroFloat64})).Draw(g.t, what)
}

func (g *filler) text(what string) string {
	if g.t == nil {
		g.count++
		return fmt.Sprintf("%s %d", what, g.count)
	}
	return rapid.OneOf(rapid.String(), rapid.SampledFrom([]string{"418 Alder Court", "", "\"\\<&>\u2028\x00\t", "ñandú 草坪"})).Draw(g.t, what)
}

func (g *filler) letter() byte {
	if g.t == nil {
		return 'b'
	}
	return byte(rapid.IntRange(1, 127).Draw(g.t, "letter"))
}

// fact fills all fields of an empty fact; inner fills the fact within it.
func (g *filler) fact(f Fact, inner bool) Fact {
	g.value(reflect.ValueOf(f).Elem(), "fact", inner)
	return f
}

func (g *filler) value(v reflect.Value, what string, inner bool) {
	switch p := v.Addr().Interface().(type) {
	case *[]byte:
		for range g.many(what) {
			*p = append(*p, g.letter())
		}
		return
	case *measure.Kind:
		*p = measure.Liquid
		if g.yes("dry") {
			*p = measure.Dry
		}
		return
	case *Fact:
		if inner && g.yes("instead") {
			kind := kindSprayed
			if g.t != nil {
				kind = rapid.SampledFrom(kinds()).Draw(g.t, "kind")
			}
			*p = g.fact(newFact[kind](), false)
		}
		return
	}
	switch v.Kind() {
	case reflect.String:
		v.SetString(g.text(what))
	case reflect.Int64:
		v.SetInt(g.integer(what))
	case reflect.Float64:
		v.SetFloat(g.real(what))
	case reflect.Bool:
		v.SetBool(g.yes(what))
	case reflect.Uint8:
		if g.yes(what) {
			v.SetUint(uint64(g.letter()))
		}
	case reflect.Slice:
		for range g.many(what) {
			v.Set(reflect.Append(v, reflect.Zero(v.Type().Elem())))
			g.value(v.Index(v.Len()-1), what, inner)
		}
	case reflect.Map:
		m := map[string]string{}
		for range g.many(what) {
			m[g.text(what)] = g.text(what)
		}
		if len(m) > 0 {
			v.Set(reflect.ValueOf(m))
		}
	case reflect.Struct:
		for i := range v.NumField() {
			g.value(v.Field(i), v.Type().Field(i).Name, inner)
		}
		unknown(v)
	default:
		panic("a field of a kind that no test fills: " + v.Type().String())
	}
}

// unknown makes what is not known zero, as every codec reads it: a Maybe, and the limits of a label entry.
func unknown(v reflect.Value) {
	if e, ok := v.Addr().Interface().(*label.Entry); ok {
		if !e.HasRateLow {
			e.RateLow = measure.Rate{}
		}
		if !e.HasRateHigh {
			e.RateHigh = measure.Rate{}
		}
		if !e.HasWindMax {
			e.WindMax = 0
		}
		return
	}
	if known := v.FieldByName("Known"); known.IsValid() && !known.Bool() {
		v.FieldByName("V").SetZero()
	}
}
