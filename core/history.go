package core

import (
	"fmt"
	"strconv"
	"strings"

	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
)

// Went is what one spraying or spreading put of one product on one zone. The book keeps those of this year and the last;
// older ones are read from the journal.
type Went struct {
	Seq     uint64 // the entry
	Date    string // of the day in which it was logged
	Product int32  // key
	Version int32  // which of its label entries was in force, from 0
	Grass   string
	Amount  int64        // nL or ng, on all of Area
	Area    measure.Area // that was treated
	Peak    int64        // nL or ng per square metre, on the part that got most
	// Round is the same for sprayings that covered parts of the zone one after the other: no part got two of them.
	Round int32
}

// Dose is the rate on the part that got most.
func (w Went) Dose(form measure.Kind) measure.Rate {
	return measure.Rate{V: float64(w.Peak) / float64(measure.SquareMetre), Kind: form}
}

func historyKey(lawn, zone string) string { return lawn + "/" + zone }

// History lists what went on a zone in this year and the last, oldest first.
func (s *state) History(lawn, zone string) []Went { return s.history[historyKey(lawn, zone)] }

// remember keeps what one spraying or spreading laid on a zone; parcels are its parts, each at its own strength, none
// where all of the area got the same.
func (s *state) remember(l Laid, parcels []fluid.Liquid, continues bool) {
	key := historyKey(l.Lawn, l.Zone)
	list := s.history[key]
	list = list[:len(list):len(list)] // a clone shares what is there
	for _, p := range l.Holds {
		list = append(list, Went{
			Seq: l.Seq, Date: s.day.Date, Product: p.Key, Version: int32(len(s.products[p.Key].Versions) - 1), Grass: l.Grass,
			Amount: p.N, Area: l.Area, Peak: peak(l, p.Key, p.N, parcels), Round: s.roundOf(l, p.Key, list, continues),
		})
	}
	s.history[key] = list
}

// smallestPart is the share of a spraying from which on a part of it counts for the dose on the part that got most:
// smaller ones are drops. common practice, no source.
const smallestPart = 0.01

// peak is the dose per square metre on the part that got most.
func peak(l Laid, product int32, n int64, parcels []fluid.Liquid) int64 {
	if l.Area <= 0 {
		return 0
	}
	most := measure.MulDiv(n, int64(measure.SquareMetre), int64(l.Area))
	for _, p := range parcels {
		if p.Volume <= 0 || float64(p.Volume) < smallestPart*float64(l.Volume) {
			continue
		}
		if covers := measure.MulDiv(int64(p.Volume), int64(l.Area), int64(l.Volume)); covers > 0 {
			most = max(most, measure.MulDiv(p.Holds.Of(product), int64(measure.SquareMetre), covers))
		}
	}
	return most
}

// fullZone is how much of a zone parts of one round may cover together: rounding of what is paced off, no overlap.
// common practice, no source.
const fullZone = 1.01

// roundOf numbers the round that a spraying belongs to: that of the last one of this product if it goes on with it and
// both together cover no more than the zone; else a new one.
func (s *state) roundOf(l Laid, product int32, list []Went, continues bool) int32 {
	if continues {
		round, area := int32(0), l.Area
		for i := len(list) - 1; i >= 0; i-- {
			if list[i].Product != product {
				continue
			}
			if round == 0 {
				round = list[i].Round
			}
			if list[i].Round == round {
				area += list[i].Area
			}
		}
		if round != 0 && float64(area) <= fullZone*float64(s.zoneArea(l.Lawn, l.Zone)) {
			return round
		}
	}
	s.rounds++
	return s.rounds
}

func (s *state) zoneArea(lawn, zone string) measure.Area {
	if l := s.Lawn(lawn); l != nil {
		z, _ := l.Zone(zone)
		return z.Area
	}
	return 0
}

// goesOn tells whether what is laid on a zone now goes on with what was laid there before: in the same visit, or because
// the rest was owed. A spot is always a round of its own, because nobody knows where on the zone it was.
func (s *state) goesOn(l Laid) bool {
	if v := s.day.Visiting(); v != nil && v.Lawn == l.Lawn {
		if v.Kind == Spot {
			return false
		}
		for _, before := range s.day.LaidAt(v) {
			if before.Zone == l.Zone && before.Seq != l.Seq {
				return true
			}
		}
		return restOf(v.Due, l.Zone) > 0
	}
	o := s.OwedAt(l.Lawn)
	return o != nil && restOf(o.Zones, l.Zone) > 0
}

// forget drops what was laid before last year. Lists are made anew, because a clone shares them.
func (s *state) forget(date string) {
	year, err := strconv.Atoi(strings.SplitN(date, "-", 2)[0])
	if err != nil {
		return
	}
	from := fmt.Sprintf("%04d-01-01", year-1)
	for key, list := range s.history {
		n := 0
		for n < len(list) && list[n].Date < from {
			n++
		}
		switch {
		case n == len(list):
			delete(s.history, key)
		case n > 0:
			s.history[key] = append([]Went(nil), list[n:]...)
		}
	}
}
