package main

import (
	"encoding/hex"
	"fmt"
	"math/rand/v2"

	"example.com/tintline/core"
	"example.com/tintline/core/past"
	"example.com/tintline/store"
)

// writer writes the book action by action, as the program would. The first error ends it: everything after is
// left out.
type writer struct {
	plan
	made
	r   *rand.Rand // what the operator does
	ids *rand.Rand // names of actions, and seconds: how many there are says nothing of what is done
	add func(string, []store.Item) error
	at  core.Moment
	err error

	turned int // changeovers of the day
}

func newWriter(p plan) *writer {
	w := &writer{plan: p}
	w.book, w.kinds = core.NewBook(1), map[string]int{}
	w.reseed(0)
	return w
}

// reseed makes the chance of a day, or of a visit, its own, so that the same day of a shorter book goes the same way: what
// one visit needs more of does not change the next.
func (w *writer) reseed(day uint64) {
	w.r, w.ids = rand.New(rand.NewPCG(w.seed, day)), rand.New(rand.NewPCG(w.seed+1, day))
}

// chance is true once in n.
func (w *writer) chance(n int) bool { return w.r.IntN(n) == 0 }

// between is a figure from low to high in steps.
func (w *writer) between(low, high, step float64) float64 {
	return low + step*float64(w.r.IntN(int((high-low)/step)+1))
}

// wait lets minutes pass, and some seconds.
func (w *writer) wait(minutes int) { w.at.Unix += int64(60*minutes + w.ids.IntN(50)) }

// action is an id as the program makes them, but by the seed.
func (w *writer) action() string {
	var b [16]byte
	for i := range b {
		b[i] = byte(w.ids.Uint32())
	}
	return hex.EncodeToString(b[:])
}

// log writes facts as one action.
func (w *writer) log(facts ...core.Fact) {
	if w.err != nil {
		return
	}
	w.wait(0)
	action := w.action()
	entries, err := w.book.Prepare(action, w.at, facts...)
	if err != nil {
		w.err = fmt.Errorf("%s, %s after entry %d: %w", w.at, facts[0].Name(), w.book.Seq(), err)
		return
	}
	items := make([]store.Item, len(entries))
	for i := range entries {
		e := &entries[i]
		items[i] = store.Item{Body: e.Encode(), Keys: e.Keys}
		rows, err := past.Apply(w.book, *e)
		if err != nil {
			w.err = err
			return
		}
		for _, r := range rows {
			items[i].Rows = append(items[i].Rows, store.Row{Key: r.Key, Value: r.Value})
			w.rows += int64(len(r.Key) + len(r.Value))
		}
		w.bodies += int64(len(items[i].Body))
		w.kinds[e.What.Name()]++
	}
	w.err = w.add(action, items)
}
