package core

import "sort"

// digestGrass says nothing of a book without notes and history, so that older books keep their digest.
func (s *state) digestGrass(w *binaryWriter) {
	for i := range s.cautions {
		w.str("caution")
		w.factFields(&s.cautions[i])
	}
	var zones []string
	for k := range s.history {
		zones = append(zones, k)
	}
	sort.Strings(zones)
	for _, k := range zones {
		w.str(k)
		for _, h := range s.history[k] {
			w.str(h.Date)
			w.count(int(h.Product))
			w.count(int(h.Version))
			w.str(h.Grass)
			for _, n := range []int64{h.Amount, int64(h.Area), h.Peak} {
				w.int(n)
			}
		}
	}
}
