package yard

import (
	"slices"

	"example.com/tintline/core"
)

// Question is a question of the yard, by the word that asks it.
type Question struct {
	Kind, Words string
	Ask         func(*core.Book, Ask) (Answer, error)
}

// Questions lists all of them.
func Questions() []Question {
	return []Question{
		{"load", "what goes in, for so many gallons or for an area", Load},
		{"topup", "what fills a compartment at the strength meant", TopUp},
		{"dilute", "what makes a rest right for another applicator", Dilute},
		{"stretch", "how far a rest goes at the lowest label rates", Stretch},
		{"blend", "what two compartments make, and where that may go", Blend},
		{"jug", "a package split into loads", Jug},
		{"use-up", "where a left-over may go, and how thin", UseUp},
		{"tint", "how much tint brings a compartment to its dose", Tint},
		{"rinse", "what rinses leave", Rinse},
	}
}

// Find gives a question by its word; nil for an unknown one.
func Find(kind string) *Question {
	for _, q := range Questions() {
		if q.Kind == kind {
			return &q
		}
	}
	return nil
}

// Planned tells whether just this load is planned in the book.
func Planned(b *core.Book, p *core.LoadPlanned) bool {
	have := b.LoadPlan(p.Into)
	return have != nil && have.Volume == p.Volume && have.Mix == p.Mix && have.For == p.For && (len(p.Parts) == 0 || slices.Equal(have.Parts, p.Parts))
}

// NextFor is the question for the next applicator that sprays, after the one that an answer is for.
func NextFor(b *core.Book, q Ask, a Answer) Ask {
	var all []string
	if b.Rig() != nil {
		for _, with := range b.Rig().Applicators {
			if with.Type != core.Spreader && with.Delivery.V > 0 {
				all = append(all, with.Name)
			}
		}
	}
	if len(all) == 0 {
		return q
	}
	now, _ := a.Facts["for"].(string)
	if to, ok := a.Facts["to"].(string); ok {
		now = to
	}
	q.For = all[(slices.Index(all, now)+1)%len(all)]
	return q
}

// ForOne tells whether an answer is for an applicator.
func (a Answer) ForOne() bool { return a.Facts["for"] != nil || a.Facts["to"] != nil }
