package core

import (
	"strings"
	"testing"

	"example.com/tintline/core/measure"
)

const chart = `"marks":[{"mark":"E","volume_gal":0},{"mark":1,"volume_gal":10},{"mark":"2","volume_gal":30},{"mark":"red","volume_gal":40},{"mark":4.5,"volume_gal":130},{"mark":"F","volume_gal":160}]`

func chartBook(t *testing.T) *Book {
	return play(t, NewBook(1), strings.Replace(setUp, `"name":"cool",`, `"name":"cool",`+chart+`,`, 1))
}

func TestGaugeReadByMark(t *testing.T) {
	for _, row := range []struct {
		mark string
		want float64
		says string
	}{
		{"E", 0, ""},
		{"1", 10, ""},
		{"2", 30, ""},
		{"red", 40, ""},
		{"F", 160, ""},
		// The monotone cubic through 1, 2 and 4.5, the marks that are figures, by scipy 1.10.1 (PchipInterpolator). A straight
		// line, which stood here before, said 20, 15 and 70.
		{"1.5", 18.6038961038961, ""},
		{"1 1/4", 13.940746753246753, ""},
		{"2.00", 30, ""},
		{"3", 61.33506493506493, ""},
		{"4.50", 130, ""},
		{"0.5", 0, `The chart of b does not reach the mark "0.5".`},
		{"5", 0, `The chart of b does not reach the mark "5".`},
		{"blue", 0, `The chart of b does not reach the mark "blue".`},
		{"f", 0, `The chart of b does not reach the mark "f".`},
	} {
		b := chartBook(t)
		f := &GaugeRead{Compartment: 'b', Mark: row.mark}
		if row.says != "" {
			if p := mustRefuse(t, b, f, row.says); p.Do != "Read a mark of the chart, E to F, or give the gallons." {
				t.Error(p.Do)
			}
			continue
		}
		es, err := b.Prepare("test", Moment{Unix: 1_780_000_000}, f)
		if err != nil {
			t.Fatal(err)
		}
		got := es[0].What.(*GaugeRead)
		if want := measure.Gallons(row.want); !got.Volume.Known || max(got.Volume.V-want, want-got.Volume.V) > 1 || got.Mark != row.mark {
			t.Errorf("mark %s is booked as %+v", row.mark, got)
		}
		if err := b.Apply(es[0]); err != nil {
			t.Fatal(err)
		}
		if v := b.Plumbing().Compartment('b').Liquid.Volume; v != got.Volume.V {
			t.Errorf("mark %s: b holds %s", row.mark, v.Text())
		}
		balanced(t, b)
	}
}

// What was booked stays booked: a chart that is put right later changes no reading of before.
func TestLaterChartChangesNoReading(t *testing.T) {
	b := chartBook(t)
	mustEnter(t, b, &GaugeRead{Compartment: 'b', Mark: "3"})
	rig := *b.Rig()
	rig.Compartments = append([]RigCompartment(nil), rig.Compartments...)
	rig.Compartments[1].Marks = []GaugeMark{{"3", measure.Gallons(1)}}
	mustEnter(t, b, &rig)
	mustEnter(t, b, &Struck{Of: int64(seqOf(t, b, "weather"))})
	if v := b.Plumbing().Compartment('b').Liquid.Volume; v.Text() != "61.3" {
		t.Errorf("b holds %s", v.Text())
	}
	if p := mustRefuse(t, b, &GaugeRead{Compartment: 'b', Mark: "2"}, "does not reach"); p.Do != "Read a mark of the chart, which has only 3, or give the gallons." {
		t.Error(p.Do)
	}
}

func TestNearestMark(t *testing.T) {
	c := RigCompartment{Marks: []GaugeMark{{"1", measure.Gallons(20)}, {"2", measure.Gallons(90)}, {"F", measure.Gallons(300)}}}
	for _, row := range []struct {
		gal  float64
		want string
	}{{0, "1"}, {20, "1"}, {55, "1"}, {56, "2"}, {194, "2"}, {196, "F"}, {400, "F"}} {
		if got := c.NearestMark(measure.Gallons(row.gal)); got != row.want {
			t.Errorf("%g gal: mark %q, want %q", row.gal, got, row.want)
		}
	}
	if got := (&RigCompartment{}).NearestMark(0); got != "" {
		t.Errorf("without a chart the mark is %q", got)
	}
}
