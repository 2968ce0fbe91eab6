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
		for j := range zones {
			z := &zones[j]
			if z.last == nil && z.older.empty() {
				continue
			}
			w.str(s.lawns[i].LawnName)
			w.str(z.zone)
			for laid := range z.newest() {
				w.count(len(laid))
				for _, h := range laid {
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
