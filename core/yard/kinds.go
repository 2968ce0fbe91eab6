package yard

import "example.com/tintline/core"

// Question is a question of the yard, by the word that asks it.
type Question struct {
	Kind, Words string
	Ask         func(*core.Book, Ask) (Answer, error)
}

// Questions lists all of them.
func Questions() []Question {
	return []Question{
		{"load", "what goes into a compartment for so many gallons, or for an area", Load},
		{"topup", "what fills a compartment at the strength meant, from what it holds", TopUp},
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
