package core

// TripleRinse is how many rinses of a compartment make it count as rinsed out of what it held.
const TripleRinse = 3

// wetted is a product that was loaded into a compartment, and what has become of what it leaves where the account does
// not reach: strainers, valves, ends of pipes. It has names and times only, so that no table moves what an old journal says.
type wetted struct {
	product string
	letter  byte
	rinsed  int    // since it was last loaded there, up to TripleRinse
	through bool   // it was drawn since the strainers were last opened
	since   Moment // when it was first drawn; zero: it was not
}

// gone tells whether nothing is left to clean.
func (w *wetted) gone() bool { return w.rinsed >= TripleRinse && !w.through }

// Dried is a product that went through pump and strainers and of which something may have dried on there: what dries on
// is in no account.
type Dried struct {
	Product string
	Since   Moment // when it first went through
	Last    Moment // when something was last drawn from a compartment that held it
	Opened  bool   // the strainers were opened since it last went through
	// Rinses are those of each compartment that it was loaded into, since it last was.
	Rinses []Rinses
}

// Rinses is how often a compartment was rinsed, up to TripleRinse.
type Rinses struct {
	Letter byte
	Done   int
}

// Rinsed tells whether each compartment was rinsed three times.
func (d *Dried) Rinsed() bool {
	for _, r := range d.Rinses {
		if r.Done < TripleRinse {
			return false
		}
	}
	return true
}

// Dried lists the products of which something may have dried on, in the order in which they were loaded. One stays on the
// list until the strainers were opened and every compartment that it was loaded into was rinsed three times. What was put
// into an applicator's own tank is not followed: a rinse of such a tank is no entry.
func (s *state) Dried() []Dried {
	var out []Dried
	at := map[string]int{}
	for i := range s.wetted {
		w := &s.wetted[i]
		if w.since.Zero() {
			continue
		}
		j, ok := at[w.product]
		if !ok {
			j = len(out)
			at[w.product] = j
			out = append(out, Dried{Product: w.product, Since: w.since, Opened: true})
		}
		d := &out[j]
		if w.since.Unix < d.Since.Unix {
			d.Since = w.since
		}
		if last := s.moved.of(w.letter).drawn; last.Unix > d.Last.Unix {
			d.Last = last
		}
		d.Opened = d.Opened && !w.through
		d.Rinses = append(d.Rinses, Rinses{w.letter, w.rinsed})
	}
	return out
}

func (s *state) admitCleaned(f *Cleaned) error {
	if f.What != Strainers {
		return refuse("Write strainers.", "What was cleaned is %q.", f.What)
	}
	return s.needRig()
}

// wet changes the list of what was wetted. The list is made anew: earlier copies of the state keep theirs.
func (s *state) wet(change func(w *wetted)) {
	var list []wetted
	for _, w := range s.wetted {
		if change(&w); !w.gone() {
			list = append(list, w)
		}
	}
	s.wetted = list
}

func (s *state) applyCleaned(*Cleaned) {
	s.wet(func(w *wetted) { w.through = false })
}

// wetLoaded: a load holds these products.
func (s *state) wetLoaded(letter byte, f *Loaded) {
	for _, p := range f.Parts {
		kept := wetted{product: p.Product, letter: letter}
		s.wet(func(w *wetted) {
			if w.product == p.Product && w.letter == letter {
				kept = *w
				w.rinsed, w.through = TripleRinse, false
			}
		})
		kept.rinsed = 0
		s.wetted = append(s.wetted, kept)
	}
}

// wetDrawn: the pump drew from this compartment. What three rinses have left of a load does not count.
func (s *state) wetDrawn(letter byte, at Moment) {
	for _, w := range s.wetted {
		if w.letter != letter || w.rinsed >= TripleRinse || w.through {
			continue
		}
		s.wet(func(w *wetted) {
			if w.letter == letter && w.rinsed < TripleRinse {
				w.through = true
				if w.since.Zero() {
					w.since = at
				}
			}
		})
		return
	}
}

func (s *state) wetRinsed(letter byte) {
	s.wet(func(w *wetted) {
		if w.letter == letter {
			w.rinsed = min(w.rinsed+1, TripleRinse)
		}
	})
}

// wetRig: what a compartment held that is no more has nothing left to rinse, but has been through the strainers.
func (s *state) wetRig() {
	s.wet(func(w *wetted) {
		if s.plumbing.Compartment(w.letter) == nil {
			w.rinsed = TripleRinse
		}
	})
}
