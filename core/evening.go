package core

import "example.com/tintline/core/measure"

// evening is what the book keeps for the close of the day and the record.
type evening struct {
	meters     Meters
	through    measure.Volume // the pump, in all
	loads      []LoadMark     // those of which something stands in a tank; made anew when it changes, as the next one is
	loadsIn    []loadIn
	tasks      []Upkeep // made anew when it changes, as the papers are
	papers     []Paper
	amendments []Amendment // likewise
}

// evening keeps it.
func (k *keptCodec) evening(e *evening) {
	k.metered(&e.meters)
	whole(k, &e.through)
	kept(k, &e.loads, k.loadMark)
	kept(k, &e.loadsIn, func(l *loadIn) {
		text(k, &l.Tank)
		whole(k, &l.Load)
	})
	k.upkeep(e)
	k.amended(e)
}

// digestEvening adds what of it the book says; a book without any has the digest that it always had.
func (s *state) digestEvening(w *binaryWriter) {
	s.digestMeters(w)
	s.digestUpkeep(w)
	s.digestAmended(w)
}
