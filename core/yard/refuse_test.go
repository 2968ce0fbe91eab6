package yard

import (
	"strings"
	"testing"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

func TestQuestionsRefuse(t *testing.T) {
	empty, unloaded, b := core.NewBook(1), play(t, setUp), play(t, loaded)
	for _, row := range []struct {
		f        func(*core.Book, Ask) (Answer, error)
		b        *core.Book
		q        Ask
		says, do string
	}{
		{TopUp, empty, Ask{}, "no rig", "Enter the rig"},
		{TopUp, play(t, named), Ask{Into: 'a'}, "No mix of the book stands in a", "W, C"},
		{TopUp, b, Ask{Into: 'f'}, `no compartment "f"`, "a b c"},
		{TopUp, b, Ask{Into: 'a', Mix: "X"}, `no mix "X"`, "W, C"},
		{TopUp, b, Ask{Into: 'a', For: "X"}, `no applicator "X"`, "the rig has"},
		{TopUp, b, Ask{Into: 'a', Volume: core.Known(measure.Gallons(5))}, "200.0 gal are in it already", "at least 200.0 gal"},
		{Load, b, Ask{Into: 'a', Volume: core.Known(measure.Gallons(101))}, "there is room for 100.0 gal", "which treats 62,500 sq ft"},
		{Load, b, Ask{Into: 'a', Volume: core.Known(measure.Gallons(-1))}, "-1.00 gal", "more than 0"},
		{Dilute, unloaded, Ask{Into: 'a', Mix: "W"}, "What is left is 0.00 gal", "more than 0"},
		{Stretch, unloaded, Ask{Into: 'a'}, "What is left is 0.00 gal", "more than 0"},
		{Blend, unloaded, Ask{From: 'a'}, "no second compartment", "two compartments"},
		{Blend, b, Ask{From: 'a', Into: 'a'}, "no second compartment", "two"},
		{Blend, b, Ask{From: 'c', Into: 'a', Volume: core.Known(measure.Gallons(4))}, "cannot be drawn: 3.50 gal can", "at most 3.50 gal"},
		{UseUp, unloaded, Ask{Into: 'a'}, "0.00 gal are to be used up", "more than 0 gal"},
		{Tint, b, Ask{Into: 'a'}, "How much of blue goes into a gallon of a is not known", "Type the dose"},
		{Tint, b, Ask{Into: 'a', Name: "X"}, `no product "X"`, "kind tint"},
		{Rinse, unloaded, Ask{Into: 'a'}, "Nothing is known to stay", "heel"},
		{Rinse, b, Ask{Into: 'c', Volume: core.Known(measure.Gallons(90))}, "A rinse of 30.0 gal does not fit", "more rinses"},
		{Jug, b, Ask{Name: "C1"}, "The package of C1 holds nothing", "Enter with the product"},
		{Jug, empty, Ask{}, `no product ""`, "Name a product"},
	} {
		_, err := row.f(row.b, row.q)
		with, ok := err.(interface{ Do() string })
		if err == nil || !ok || !strings.Contains(err.Error(), row.says) || !strings.Contains(with.Do(), row.do) {
			t.Errorf("%+v: %v", row.q, err)
		}
	}
}

func TestQuestionsAreFound(t *testing.T) {
	seen := map[string]bool{}
	for _, q := range Questions() {
		if seen[q.Kind] || Find(q.Kind) == nil || q.Words == "" {
			t.Errorf("%s", q.Kind)
		}
		seen[q.Kind] = true
	}
	if Find("guess") != nil {
		t.Error("a question of no kind")
	}
}
