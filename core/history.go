package core

import (
	"fmt"
	"slices"
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
	Area    measure.Area // that was treated; 0: it was poured out there, nobody knows over how much
	Peak    int64        // nL or ng per peakArea, on the part that got most
	// Round is the same for sprayings that covered parts of the zone one after the other: no part got two of them.
	Round int32

	after uint64 // the entry that ended the call before at the same lawn on that day; with the date it names the call
}

// Dose is the rate on the part that got most.
func (w Went) Dose(form measure.Kind) measure.Rate {
	return measure.Rate{V: float64(w.Peak) / float64(peakArea), Kind: form}
}

// SameCall tells whether two were laid in one call at the lawn.
func (w Went) SameCall(o Went) bool { return w.Date == o.Date && w.after == o.after }

// History lists what went on a zone in this year and the last, oldest first.
func (s *state) History(lawn, zone string) []Went {
	var out []Went
	for laid := range s.zoneOf(lawn, zone).newest() {
		for i := len(laid) - 1; i >= 0; i-- {
			out = append(out, laid[i])
		}
	}
	slices.Reverse(out)
	return out
}

// zoneOf is the history of a zone, nil if nothing is known of it.
func (s *state) zoneOf(lawn, zone string) *zoneHistory {
	i, ok := s.lawnAt[lawn]
	if !ok || i >= len(s.history) {
		return nil
	}
	for j := range s.history[i] {
		if s.history[i][j].zone == zone {
			return &s.history[i][j]
		}
	}
	return nil
}

// remember keeps what one spraying or spreading laid on a zone; parcels are its parts, each at its own strength, none
// where all of the area got the same.
func (s *state) remember(l Laid, parcels []fluid.Liquid) {
	i, ok := s.lawnAt[l.Lawn]
	if !ok || len(l.Holds) == 0 {
		return
	}
	was, here := s.zoneOf(l.Lawn, l.Zone), s.here(l.Lawn, l.Zone)
	next := &link{laid: make([]Went, len(l.Holds))}
	if was != nil {
		next.before = was.last
	}
	for j, p := range l.Holds {
		w := Went{
			Seq: l.Seq, Date: s.day.Date, Product: p.Key, Version: int32(len(s.products[p.Key].Versions) - 1), Grass: l.Grass,
			Amount: p.N, Area: l.Area, Peak: peak(l, p.Key, p.N, parcels), after: here.after,
		}
		if w.Round = here.round(p.Key, l.Area, was); w.Round == 0 {
			s.rounds++
			w.Round = s.rounds
		}
		next.laid[j] = w
	}
	s.changeZone(i, l.Zone, func(z *zoneHistory) { z.last = next })
}

// versionsOf says which label entry of each product is in force.
func (s *state) versionsOf(holds fluid.Parts) []int32 {
	if len(holds) == 0 {
		return nil
	}
	out := make([]int32, len(holds))
	for i, p := range holds {
		out[i] = int32(len(s.products[p.Key].Versions) - 1)
	}
	return out
}

// pour does what lets liquid or product out of the rig, and remembers what of it came to a zone.
func (s *state) pour(e Entry, to string, do func()) {
	kind, name := fluid.Place(to).Split()
	lawn, zone, _ := strings.Cut(name, "/")
	if kind != "zone" {
		do()
		return
	}
	had := s.plumbing.Outside[fluid.Place(to)].Holds
	do()
	l := Laid{Seq: e.Seq, Lawn: lawn, Zone: zone, Holds: s.plumbing.Outside[fluid.Place(to)].Holds.Minus(had)}
	if lw := s.Lawn(lawn); lw != nil {
		z, _ := lw.Zone(zone)
		l.Grass = z.Grass
	}
	s.remember(l, nil)
}

// changeZone changes the history of one zone. The list of the lawn's zones is made anew, because a clone shares it.
func (s *state) changeZone(lawn int, zone string, change func(*zoneHistory)) {
	for len(s.history) <= lawn {
		s.history = append(s.history, nil)
	}
	list := s.history[lawn]
	out := make([]zoneHistory, len(list), len(list)+1)
	copy(out, list)
	at := -1
	for i := range out {
		if out[i].zone == zone {
			at = i
		}
	}
	if at < 0 {
		out, at = append(out, zoneHistory{zone: zone}), len(out)
	}
	change(&out[at])
	s.history[lawn] = out
}

// ZoneKnownSince is the date from which on the book has all that was laid on a zone: that of the lawn, or the later date on
// which the zone was added to it, because what it was part of before has another name.
func (s *state) ZoneKnownSince(lawn, zone string) string {
	since := s.KnownSince(lawn)
	if z := s.zoneOf(lawn, zone); z != nil {
		return max(since, z.from)
	}
	return since
}

// peakArea is the area for which a dose is kept: large enough that the rounding to whole units is no figure of it, small
// enough for any dose.
const peakArea = 100 * measure.SquareMetre

// smallestPart is the share of a spraying's area on which a dose counts as that on the part that got most: less is drops.
// One of so many parts; common practice, no source.
const smallestPart = 100

// peak is the dose per peakArea on the part that got most: the strongest stretch, of parcels that were laid one after
// the other, that covers a hundredth of the area. By stretches, so that it is the same however finely they are cut.
func peak(l Laid, product int32, n int64, parcels []fluid.Liquid) int64 {
	most := n
	if len(parcels) > 1 && uneven(l, product, n, parcels) {
		most = max(most, strongestStretch(l, product, parcels, 1), strongestStretch(l, product, parcels, -1))
	}
	return measure.MulDivRound(most, int64(peakArea), int64(l.Area))
}

// uneven tells whether a parcel is stronger than all of them together by more than a thousandth.
func uneven(l Laid, product int32, n int64, parcels []fluid.Liquid) bool {
	for i := range parcels {
		if measure.MulDiv(parcels[i].Holds.Of(product), int64(l.Volume), int64(parcels[i].Volume)) > n+n/1000 {
			return true
		}
	}
	return false
}

// strongestStretch is the amount that would have been laid if all of it had been like the strongest stretch; stretches begin at
// a parcel and go on in one direction.
func strongestStretch(l Laid, product int32, parcels []fluid.Liquid, step int) int64 {
	part := max(int64(l.Volume)/smallestPart, 1)
	var most int64
	for i := range parcels {
		var volume, amount int64
		for j := i; j >= 0 && j < len(parcels) && volume < part; j += step {
			v, n := int64(parcels[j].Volume), parcels[j].Holds.Of(product)
			if take := part - volume; v > take {
				v, n = take, measure.MulDiv(n, take, v)
			}
			volume, amount = volume+v, amount+n
		}
		if volume == part {
			most = max(most, measure.MulDiv(amount, int64(l.Volume), part))
		}
	}
	return most
}

// place is what of the day decides whether a spraying goes on with a round.
type place struct {
	date, owed string // owed: the date since which the rest of the zone is owed; empty: it is not
	after      uint64
	spot       bool
	full       measure.Area
}

// fullZone is how much of a zone parts of one round may cover together: rounding of what is paced off, no overlap.
// common practice, no source.
const fullZone = 1.01

// here says how it stands now with a zone.
func (s *state) here(lawn, zone string) place {
	p := place{date: s.day.Date, after: s.day.lastEnd(lawn)}
	if l := s.Lawn(lawn); l != nil {
		z, _ := l.Zone(zone)
		p.full = measure.Area(fullZone * float64(z.Area))
	}
	if v := s.day.Visiting(); v != nil && v.Lawn == lawn {
		p.spot = v.Kind == Spot
		if restOf(v.Due, zone) > 0 {
			p.owed = v.dueSince
		}
	} else if o := s.OwedAt(lawn); o != nil && restOf(o.Zones, zone) > 0 {
		p.owed = o.Since
	}
	return p
}

// round is that of the last spraying of a product, if one of this area goes on with it: in the same call, or because the
// rest was owed, and no more than the zone is covered by both; else 0. A spot is always a round of its own, because nobody
// knows where on the zone it was.
func (p place) round(product int32, area measure.Area, was *zoneHistory) int32 {
	if p.spot || area <= 0 {
		return 0
	}
	var round int32
	for laid := range was.newest() {
		for i := len(laid) - 1; i >= 0; i-- {
			switch w := &laid[i]; {
			case w.Product != product:
				continue
			case round != 0 && w.Round != round:
				return round
			case round == 0 && !p.goesOn(w):
				return 0
			default:
				round = w.Round
				if area += w.Area; area > p.full {
					return 0
				}
			}
		}
	}
	return round
}

func (p place) goesOn(w *Went) bool {
	return (w.Date == p.date && w.after == p.after) || (p.owed != "" && w.Date >= p.owed)
}

// Would is what would be kept if a dose of a product were laid on an area of a zone now, on a date: so that it can be asked
// what the sums would be (see Season). A round that it would begin has the number 0.
func (s *state) Would(date, lawn, zone string, product int32, dose measure.Rate, area measure.Area) Went {
	h := s.here(lawn, zone)
	if date != h.date {
		h.date, h.after = date, 0
	}
	w := Went{
		Date: date, Product: product, Version: int32(len(s.products[product].Versions) - 1), Area: area, after: h.after,
		Peak: dose.Over(peakArea).N, Amount: dose.Over(area).N, Round: h.round(product, area, s.zoneOf(lawn, zone)),
	}
	if l := s.Lawn(lawn); l != nil {
		z, _ := l.Zone(zone)
		w.Grass = z.Grass
	}
	return w
}

// Peak is the rate of a product on the part of the zone that got most.
func (p *ZonePart) Peak(product int32, form measure.Kind) measure.Rate {
	l := Laid{Volume: p.Volume, Area: p.Area}
	var n int64
	for i := range p.Parcels {
		n += p.Parcels[i].Holds.Of(product)
	}
	return Went{Peak: peak(l, product, n, p.Parcels)}.Dose(form)
}

// keptFrom is the first date of which the book keeps what was laid, in the year of a date.
func keptFrom(date string) string {
	year, err := strconv.Atoi(strings.SplitN(date, "-", 2)[0])
	if err != nil {
		return ""
	}
	return fmt.Sprintf("%04d-01-01", year-1)
}

// forget drops what was laid before last year when a day of a new year is opened. Links are made anew, because a clone
// shares them.
func (s *state) forget(before, date string) {
	from := keptFrom(date)
	if from == keptFrom(before) {
		return
	}
	list := make([][]zoneHistory, len(s.history))
	for i, zones := range s.history {
		list[i] = make([]zoneHistory, len(zones))
		for j, z := range zones {
			list[i][j] = z.since(from)
		}
	}
	s.history = list
}
