package core

import (
	"math"

	"example.com/tintline/core/measure"
)

// ranSteps is how finely a time is cut over which levels, and with them flows, change; no step is longer than longestStep,
// in seconds, for compartments level out in minutes.
const (
	ranSteps    = 100
	longestStep = 2.0
)

// branching follows two open compartments while the pump draws from both.
type branching struct {
	s       *state
	letters [2]byte
	stands  [2]func(measure.Volume) Standing
	to      byte
	pump    measure.Flow
	// What each holds, its heel and what it can hold, in nanolitres.
	at, least, most [2]float64
	// What the pump drew from each, and what ran from each to the other.
	drawn, over [2]float64
	// What runs out of each now, in nanolitres a second, and which one stands higher.
	out  [2]float64
	high int
}

// branches follows both levels while the pump runs.
func (s *state) branches(to byte, high, low Standing, pump measure.Flow, seconds float64) ([]RanDrawn, []RanLevelled) {
	b := &branching{s: s, letters: [2]byte{high.Letter, low.Letter}, to: to, pump: pump}
	for i, l := range b.letters {
		c := s.plumbing.Compartment(l)
		b.stands[i], _ = s.standing(l) // they were found to stand apart
		b.at[i], b.least[i], b.most[i] = float64(c.Liquid.Volume), float64(c.Heel), float64(c.Capacity)
	}
	b.flow()
	step := min(seconds/ranSteps, longestStep)
	for left := seconds; left > 0; left -= step {
		step = min(step, left)
		if before := b.at; b.pass(step) || b.at == before {
			b.rest(left - step)
			break
		}
	}
	var out []RanDrawn
	var levelled []RanLevelled
	for i, l := range b.letters {
		out = append(out, RanDrawn{From: l, Volume: measure.Volume(math.RoundToEven(min(b.drawn[i], float64(LargestVolume))))})
		if v := measure.Volume(math.RoundToEven(b.over[i])); v > 0 {
			levelled = append(levelled, RanLevelled{From: l, To: b.letters[1-i], Volume: v})
		}
	}
	return someDrawn(out), levelled
}

// pass lets so many seconds go by. It tells whether the two have come to rest: where the bypass goes back to one of them,
// that one in the end gives all that the pump takes, and nothing runs to or from the other.
func (b *branching) pass(step float64) (settled bool) {
	was := *b
	other, loops := b.other()
	b.move(step)
	before := was.out[other]
	if !loops || float64(before*b.out[other]) > 0 {
		return false
	}
	// The step went beyond the rest: it is cut to where that begins.
	short, long := 0.0, 1.0
	for range 40 {
		share := (short + long) / 2
		*b = was
		b.move(step * share)
		if float64(before*b.out[other]) > 0 {
			short = share
		} else {
			long = share
		}
	}
	b.rest(step * (1 - long))
	return true
}

// rest lets the one that the return leads to give all for the seconds that are left, for nothing changes any more.
func (b *branching) rest(seconds float64) {
	for i, l := range b.letters {
		if l == b.to {
			b.drawn[i] += float64(float64(b.pump) * seconds)
		}
	}
}

// other is the one that the return does not lead to, where it leads to one of the two.
func (b *branching) other() (i int, loops bool) {
	for i, l := range b.letters {
		if l == b.to {
			return 1 - i, true
		}
	}
	return 0, false
}

// flow works out what runs out of each now, and which one stands higher.
func (b *branching) flow() {
	var now [2]Standing
	for i, stands := range b.stands {
		now[i] = stands(measure.Volume(b.at[i]))
	}
	b.high = 0
	if now[1].Level > now[0].Level {
		b.high = 1
	}
	f, g := b.s.Branches(now[b.high], now[1-b.high], b.pump).Flows()
	b.out[b.high], b.out[1-b.high] = float64(f), float64(g)
}

// move lets liquid run for so long as it does at the start of it.
func (b *branching) move(step float64) {
	out, h, l := b.out, b.high, 1-b.high
	run := min(max(float64(-out[l]*step), 0), max(b.at[h]-b.least[h], 0))
	fromHigh := float64(out[h]*step) - max(float64(-out[l]*step), 0)
	fromLow := max(float64(out[l]*step), 0)
	fromHigh = within(b.letters[h] == b.to, fromHigh, b.at[h]-b.least[h]-run)
	fromLow = within(b.letters[l] == b.to, fromLow, b.at[l]-b.least[l])
	b.drawn[h], b.drawn[l], b.over[h] = b.drawn[h]+fromHigh, b.drawn[l]+fromLow, b.over[h]+run
	b.at[h], b.at[l] = b.at[h]-run-fromHigh, min(b.at[l]+run-fromLow, b.most[l])
	for i, letter := range b.letters {
		if letter == b.to {
			b.at[i] = min(b.at[i]+fromHigh+fromLow, b.most[i])
		}
	}
	b.flow()
}

// within is what a compartment gives of a flow: all of it where it comes back, else no more than is there.
func within(comesBack bool, want, there float64) float64 {
	if comesBack {
		return max(want, 0)
	}
	return max(min(want, there), 0)
}
