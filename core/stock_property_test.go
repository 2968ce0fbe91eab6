package core

import (
	"testing"

	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
	"pgregory.net/rapid"
)

func (g *anyFact) stocked() *Stocked {
	f := &Stocked{Product: g.pick("product", "weed", "iron", "green", "food"), What: g.pick("what", Bought, Bought, Counted, Reorder)}
	kind := measure.Liquid
	if (f.Product == "iron" || f.Product == "food") != (rapid.IntRange(0, 20).Draw(g.t, "other kind") == 0) {
		kind = measure.Dry
	}
	some := func(what string) measure.Amount {
		return measure.Amount{N: rapid.Int64Range(-1e9, 5e12).Draw(g.t, what), Kind: kind}
	}
	if f.What == Bought && rapid.Bool().Draw(g.t, "packages") {
		f.Packages, f.Package = Known(float64(rapid.IntRange(0, 4).Draw(g.t, "n"))), some("package")
		f.Supplier, f.Lot = g.pick("supplier", "", "Example Supply"), g.pick("lot", "", "L-7")
	} else {
		f.Amount = some("amount")
	}
	if f.What == Bought && rapid.Bool().Draw(g.t, "price known") {
		f.Paid = Known(measure.Money(rapid.Int64Range(-1, 90000).Draw(g.t, "cents")))
	}
	return f
}

// elsewhere is how much of a product stands anywhere but in its packages: what has come out of them.
func elsewhere(s *state, key int32) int64 {
	var n int64
	for _, a := range s.plumbing.Accounts() {
		if a.Place != fluid.PackagePlace(s.products[key].Name) {
			n += a.Products.Of(key)
		}
	}
	return n
}

// shelf is what a test counts by itself of one product.
type shelf struct {
	known                         bool
	bought, counted, used, before int64
	off                           int64
}

func (c *shelf) have() int64 { return c.counted + c.bought - c.used }

// TestStockIsCountedPlusBoughtLessUsed counts the stock of a random journal from what stands of it after all strikes, with the use taken
// from all places but the packages, and holds it against the book, the book of the entries folded anew, and the one taken up from a snapshot.
func TestStockIsCountedPlusBoughtLessUsed(t *testing.T) {
	seen := map[string]int{}
	rapid.Check(t, func(t *rapid.T) {
		r := anyJournal(t, facts()/2)
		if rapid.Bool().Draw(t, "runs out") {
			runsOut(t, r)
		}
		s := newState()
		shelves := map[string]*shelf{}
		for _, e := range r.entries {
			what := r.stands[e.Seq]
			if _, strike := e.What.(*Struck); strike {
				seen["strike"]++
			}
			if what == nil {
				continue
			}
			if _, strike := what.(*Struck); strike {
				continue
			}
			e.What = what
			s.apply(e)
			count(&s, shelves, what)
		}
		again := NewBook(3)
		f := NewFold(again)
		for _, e := range r.entries {
			if err := f.Add(e); err != nil {
				t.Fatal(err)
			}
		}
		f.End()
		for name, c := range shelves {
			seen["product"]++
			for _, b := range []*Book{r.book, again} {
				if st := b.Stock(name); st.Have.Known != c.known || c.known && st.Have.V.N != c.have() || st.Unexplained.N != c.off {
					t.Fatalf("of %s the book has %+v, and it was counted %+v", name, st, c)
				}
			}
			if c.known && c.have() < 0 {
				seen["below 0"]++
			}
			if c.off != 0 {
				seen["unexplained"]++
			}
		}
		kept, err := Resume(r.book.Keep())
		if err != nil {
			if r.book.LastClose().Seq() > 0 {
				t.Fatal(err)
			}
			return
		}
		closed := r.book.LastClose()
		for _, st := range closed.Stocks() {
			if back := kept.Stock(st.Product); back != st {
				t.Fatalf("a snapshot gives %+v, and it was %+v", back, st)
			}
		}
	})
	for _, what := range []string{"strike", "product", "below 0", "unexplained"} {
		if seen[what] == 0 {
			t.Errorf("no journal had: %s", what)
		}
	}
}

// runsOut counts a product at next to nothing, loads more of it than stands, and counts it again: the book goes below 0, and what is then
// found nothing explains. Chance alone seldom has all three in this order within one journal. The last of the three is left out at times,
// for the account to end below 0.
func runsOut(t *rapid.T, r *rest) {
	stock := func(n int64) *Stocked {
		return &Stocked{Product: "weed", What: Counted, Amount: measure.Amount{N: n, Kind: measure.Liquid}}
	}
	few := rapid.Int64Range(0, 1e6).Draw(t, "few")
	load := &Loaded{Into: rapid.SampledFrom([]string{"a", "b"}).Draw(t, "into"), Volume: measure.Gallons(1), Parts: []LoadPart{{Product: "weed", Amount: measure.Amount{N: few + rapid.Int64Range(1, 1e9).Draw(t, "more"), Kind: measure.Liquid}}}}
	steps := []Fact{stock(few), load, stock(rapid.Int64Range(0, 1e9).Draw(t, "found"))}
	for _, f := range steps[:rapid.IntRange(2, 3).Draw(t, "steps")] {
		r.enter(t, f, Moment{Unix: r.entries[len(r.entries)-1].At.Unix + 60, Offset: -21600})
	}
}

// count follows one fact.
func count(s *state, shelves map[string]*shelf, what Fact) {
	for key := range s.products {
		name := s.products[key].Name
		c := shelves[name]
		if c == nil {
			c = &shelf{}
			shelves[name] = c
		}
		now := elsewhere(s, int32(key))
		if c.known {
			c.used += now - c.before
		}
		c.before = now
		f, ok := what.(*Stocked)
		if !ok || f.Product != name {
			continue
		}
		switch f.What {
		case Bought:
			c.known = true
			c.bought += f.Amount.N
		case Counted:
			if c.known {
				c.off += f.Amount.N - c.have()
			}
			*c = shelf{known: true, counted: f.Amount.N, before: now, off: c.off}
		}
	}
}
