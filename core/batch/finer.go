package batch

import (
	"math"

	"example.com/tintline/core/measure"
)

// finer is a way to measure an amount for which the marks are too coarse: what is dry is weighed in grams; else so many marks of it are
// thinned in a cup, of which a part goes into the tank. Unknown where even that is too coarse.
func (r Ruler) finer(a measure.Amount) measure.Maybe[Finer] {
	if a.Kind == measure.Dry && !r.Metric {
		if f, ok := r.inGrams(a); ok {
			return measure.Known(f)
		}
	}
	f, ok := r.premix(a)
	return measure.Maybe[Finer]{V: f, Known: ok}
}

func (r Ruler) inGrams(a measure.Amount) (Finer, bool) {
	s, ok := r.grams()
	if !ok {
		return Finer{}, false
	}
	parts, n := s.portions(a.N)
	f := Finer{Grams: parts, Amount: measure.Amount{N: n, Kind: a.Kind}, ErrorPct: errorPct(a.N, n)}
	if n == 0 || math.Abs(f.ErrorPct) > r.MostError {
		return Finer{}, false
	}
	f.Says = "weigh " + portionsText(parts) + " on a scale in grams, " + ErrorText(f.ErrorPct)
	return f, true
}

// premix takes the next mark above the amount, thins it to a cup, and takes the share of the cup that holds the amount.
func (r Ruler) premix(a measure.Amount) (Finer, bool) {
	s, ok := r.scale(a.Kind)
	cup, okCup := r.cup()
	if a.Kind == measure.Dry && !r.Metric {
		if g, okG := r.grams(); okG && a.N < g.at(g.hundredths) {
			s = g // the finer scale keeps little of what is thinned over
		}
	}
	if !ok || !okCup || !(r.Premix >= 0.01 && r.Premix <= 1e6) {
		return Finer{}, false
	}
	marks := (a.N + s.at(s.hundredths) - 1) / s.at(s.hundredths) * s.hundredths
	of := int64(math.Round(100 * r.Premix))
	whole := s.at(marks)
	take := cup.nearest(measure.MulDivRound(cup.at(of), a.N, whole))
	if take == 0 || take > of || (a.Kind == measure.Liquid && whole >= cup.at(of)) {
		return Finer{}, false
	}
	n := measure.MulDivRound(whole, take, of)
	f := Finer{
		Product: Portion{marks, s.small}, Of: Portion{of, cup.small}, Take: Portion{take, cup.small},
		Amount: measure.Amount{N: n, Kind: a.Kind}, ErrorPct: errorPct(a.N, n),
	}
	if math.Abs(f.ErrorPct) > r.MostError {
		return Finer{}, false
	}
	f.Says = "make a pre-mix: " + f.Product.Text() + " of it and water to " + f.Of.Text() + ", stir, put in " + f.Take.Text() + ", " + ErrorText(f.ErrorPct)
	return f, true
}
