package core

import (
	"slices"
	"strings"
	"time"

	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
)

// Amended changes the record of a day that is closed: it says who, when (the entry's time) and why. The first record stays as it is and is
// read beside it. What went down otherwise than was logged goes against the unexplained of the day on which this is entered, as figures in
// the entry.
type Amended struct {
	Date       string // of the day whose record it is
	Lawn, Zone string
	Product    string
	Nth        int64 // which of what held the product on that zone on that day, from 1
	Who, Why   string
	Changes    []RecordChange
	// More is what went down beyond what was logged, less being negative: of each product, and of the mix in all.
	More   []AmendedMore
	Volume measure.Volume
}

// RecordChange is a field of the record as it was and as it is; "area_sqft" is the area.
type RecordChange struct{ Field, Was, Is string }

// AmendedMore is how much more of a product went down; less is negative.
type AmendedMore struct {
	Product string
	Amount  measure.Amount
}

// AmendArea is the field of the area, in square feet.
const AmendArea = "area_sqft"

// Kind of the fact.
func (*Amended) Kind() Kind { return kindAmended }

// Name of the fact.
func (*Amended) Name() string { return "amended" }

func (f *Amended) fields(w walker) {
	w.text(1, "date", &f.Date)
	w.text(2, "lawn", &f.Lawn)
	w.text(3, "zone", &f.Zone)
	w.text(4, "product", &f.Product)
	w.integer(5, "nth", &f.Nth)
	w.text(6, "who", &f.Who)
	w.text(7, "why", &f.Why)
	list(w, 8, "changes", &f.Changes, func(w walker, c *RecordChange) {
		w.text(1, "field", &c.Field)
		w.text(2, "was", &c.Was)
		w.text(3, "is", &c.Is)
	})
	list(w, 9, "more", &f.More, func(w walker, m *AmendedMore) {
		w.text(1, "product", &m.Product)
		w.amount(2, "amount", &m.Amount)
	})
	w.volume(10, "mix_volume", &f.Volume)
}

// Amendment is an amendment with the moment at which it was entered.
type Amendment struct {
	Seq  uint64
	At   Moment
	Day  string // the day on which it was made
	What Amended
}

// Amendments lists all of them, oldest first.
func (s *state) Amendments() []Amendment { return s.amendments }

// mostAmended bounds how many fields one amendment changes.
const mostAmended = 60

func (s *state) admitAmended(f *Amended) error {
	if err := s.needDay("amend a record"); err != nil {
		return err
	}
	if _, err := time.Parse(time.DateOnly, f.Date); err != nil {
		return refuse("Write it as in 2026-05-28.", "%q is no date.", f.Date)
	}
	if f.Date >= s.day.Date {
		return refuse("Strike the entry, put it right, or fill the record.", "%s is not closed yet, so its record is not amended.", f.Date)
	}
	for _, said := range [][2]string{{"who amends it", f.Who}, {"why", f.Why}} {
		if strings.TrimSpace(said[1]) == "" {
			return refuse("Say who amends it, and why.", "It is not said %s.", said[0])
		}
	}
	if s.Product(f.Product) == nil {
		return s.noProduct(f.Product)
	}
	if f.Lawn == "" || f.Zone == "" {
		return refuse("Name the lawn and its zone.", "It is not said which record is amended.")
	}
	if f.Nth < 1 || f.Nth > 1000 {
		return refuse("Count from 1.", "There is no %dth spraying.", f.Nth)
	}
	if len(f.Changes) == 0 && len(f.More) == 0 && f.Volume == 0 {
		return refuse("Name a field and what it is, or an amount.", "The amendment changes nothing.")
	}
	if len(f.Changes) > mostAmended {
		return refuse("Enter them in several.", "One amendment changes up to %d fields; this has %d.", mostAmended, len(f.Changes))
	}
	for i := range f.Changes {
		if err := admitChange(&f.Changes[i]); err != nil {
			return err
		}
	}
	return s.admitMore(f)
}

func admitChange(c *RecordChange) error {
	if c.Field == AmendArea {
		if a, err := measure.ReadArea(c.Is, "sqft"); err != nil || a < 0 || a > LargestArea {
			return refuse("Write it in square feet, as in 6200.", "%q is no area.", c.Is)
		}
		return nil
	}
	field, known := RecordFieldOf(c.Field)
	if !known || field.Key != c.Field || !field.Fill {
		return refuse("Use one of "+fillable()+", "+AmendArea+".", "The record has no field %q that can be amended.", c.Field)
	}
	_, err := field.Read(c.Is)
	return err
}

func (s *state) admitMore(f *Amended) error {
	if v := max(f.Volume, -f.Volume); v > LargestVolume {
		return bounded("The amended volume", v)
	}
	place := s.plumbing.Outside[fluid.ZonePlace(f.Lawn, f.Zone)]
	piece, known := s.amendedPiece(f)
	if _, area := f.area(); !known && (area || len(f.More) > 0 || f.Volume != 0) {
		return refuse("Amend its other fields; amounts and areas can be amended of this year and the last.", "The book remembers no %s on %s, %s on %s.", f.Product, f.Lawn, f.Zone, f.Date)
	}
	if place.Volume+f.Volume < 0 {
		return refuse("Take back no more than was laid there.", "%s gal less would be more than went on %s, %s: %s gal.", (-f.Volume).Text(), f.Lawn, f.Zone, place.Volume.Text())
	}
	for _, m := range f.More {
		k, ok := s.productAt[m.Product]
		if !ok {
			return s.noProduct(m.Product)
		}
		if form := s.products[k].Now().Label.Form; m.Amount.Kind != form {
			return refuse("Give it as the product is measured.", "%s is not measured out so.", m.Product)
		}
		at := slices.IndexFunc(piece, func(w Went) bool { return w.Product == int32(k) })
		if at < 0 {
			return refuse("Name a product that was in it.", "No %s was laid then on %s, %s.", m.Product, f.Lawn, f.Zone)
		}
		if have := min(piece[at].Amount, place.Holds.Of(int32(k))); have+m.Amount.N < 0 {
			return refuse("Take back no more than was laid there.", "%s less would be more than went on %s, %s: %s.", measure.Amount{N: -m.Amount.N, Kind: m.Amount.Kind}.Text(), f.Lawn, f.Zone, measure.Amount{N: have, Kind: m.Amount.Kind}.Text())
		}
	}
	return nil
}

// amendedPiece is what the zone's history remembers of the piece that is amended.
func (s *state) amendedPiece(f *Amended) ([]Went, bool) {
	product, known := s.productAt[f.Product]
	if !known {
		return nil, false
	}
	var newest [][]Went
	for laid := range s.zoneOf(f.Lawn, f.Zone).newest() {
		newest = append(newest, laid)
	}
	at := pieceAt(newest, f, int32(product))
	if at < 0 {
		return nil, false
	}
	return newest[at], true
}

// pieceAt is the place of the piece among what went on a zone, newest first; below 0: it is not there.
func pieceAt(newest [][]Went, f *Amended, product int32) int {
	nth := int64(0)
	for at := len(newest) - 1; at >= 0; at-- {
		laid := newest[at]
		if laid[0].Date != f.Date || !slices.ContainsFunc(laid, func(w Went) bool { return w.Product == product }) {
			continue
		}
		if nth++; nth == f.Nth {
			return at
		}
	}
	return -1
}

// applyAmended moves what it says between the unexplained and the zone, never more than is there, and changes what the zone's history
// remembers of that day.
func (s *state) applyAmended(e Entry, f *Amended) {
	s.amendments = append(slices.Clone(s.amendments), Amendment{e.Seq, e.At, s.day.Date, *f})
	place := fluid.ZonePlace(f.Lawn, f.Zone)
	have := s.plumbing.Outside[place]
	give, take := fluid.Liquid{}, fluid.Liquid{}
	if f.Volume > 0 {
		give.Volume = f.Volume
		give.From = fluid.Parts{{Key: s.origin(0, ""), N: int64(f.Volume)}}
	}
	if f.Volume < 0 {
		part, _ := have.Split(min(-f.Volume, have.Volume))
		take.Volume, take.From = part.Volume, part.From
	}
	for _, m := range f.More {
		k, ok := s.productAt[m.Product]
		if !ok || m.Amount.N == 0 {
			continue
		}
		key := int32(k)
		if m.Amount.N > 0 {
			give.Holds = give.Holds.Plus(fluid.Parts{{Key: key, N: m.Amount.N}})
		} else if n := min(-m.Amount.N, have.Holds.Of(key)); n > 0 {
			take.Holds = take.Holds.Plus(fluid.Parts{{Key: key, N: n}})
		}
	}
	s.plumbing.Outside.Take(fluid.Unexplained, give)
	s.plumbing.Outside.Give(place, give)
	s.plumbing.Outside.Take(place, take)
	s.plumbing.Outside.Give(fluid.Unexplained, take)
	s.amendHistory(f)
}

// amendHistory changes what went on the zone in the sums of its year.
func (s *state) amendHistory(f *Amended) {
	i, ok := s.lawnAt[f.Lawn]
	z := s.zoneOf(f.Lawn, f.Zone)
	if !ok || z == nil {
		return
	}
	var newest [][]Went
	for laid := range z.newest() {
		newest = append(newest, slices.Clone(laid))
	}
	more := map[int32]int64{}
	for _, m := range f.More {
		if k, known := s.productAt[m.Product]; known {
			more[int32(k)] += m.Amount.N
		}
	}
	product, known := s.productAt[f.Product]
	at := pieceAt(newest, f, int32(product))
	if !known || at < 0 {
		return
	}
	for j := range newest[at] {
		w := &newest[at][j]
		if area, said := f.area(); said {
			w.Area = area
		}
		w.Amount = max(w.Amount+more[w.Product], 0)
		if w.Area > 0 {
			w.Peak = measure.MulDivRound(w.Amount, int64(peakArea), int64(w.Area))
		}
	}
	s.changeZone(i, f.Zone, func(z *zoneHistory) {
		z.last, z.older = nil, packed{}
		for at := len(newest) - 1; at >= 0; at-- {
			z.last = &link{laid: newest[at], before: z.last}
		}
	})
}

// area is the area as it is, where it was amended.
func (f *Amended) area() (measure.Area, bool) {
	for _, c := range f.Changes {
		if c.Field == AmendArea {
			a, err := measure.ReadArea(c.Is, "sqft")
			return a, err == nil && a > 0
		}
	}
	return 0, false
}

func (k *keptCodec) amended(e *evening) {
	kept(k, &e.amendments, func(a *Amendment) {
		whole(k, &a.Seq)
		k.moment(&a.At)
		text(k, &a.Day)
		k.fact(&a.What)
	})
}

func (s *state) digestAmended(w *binaryWriter) {
	for i := range s.amendments {
		w.str("amended")
		w.factFields(&s.amendments[i].What)
	}
}
