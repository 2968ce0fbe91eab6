package core

// digestGrass says nothing of a book without notes and history, so that older books keep their digest. Of the history it
// says all but the numbers of entries.
func (s *state) digestGrass(w *binaryWriter) {
	for i := range s.cautions {
		w.str("caution")
		w.factFields(&s.cautions[i])
	}
	if s.rounds == 0 {
		return
	}
	w.count(int(s.rounds))
	for i, zones := range s.history {
		for _, z := range zones {
			if z.last == nil {
				continue
			}
			w.str(s.lawns[i].LawnName)
			w.str(z.zone)
			for l := z.last; l != nil; l = l.before {
				w.count(len(l.laid))
				for _, h := range l.laid {
					w.str(h.Date)
					w.count(int(h.Product))
					w.count(int(h.Version))
					w.str(h.Grass)
					for _, n := range []int64{h.Amount, int64(h.Area), h.Peak, int64(h.Round)} {
						w.int(n)
					}
				}
			}
			w.count(0)
		}
	}
}
