package check

import (
	"fmt"

	"example.com/tintline/core"
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// slack is how much a parcel may lie beyond a threshold: the cell's washing-out is cut in steps of a
// sixteenth of its volume (e^(1/16) is 1.064), and pushing back thins the compartment by which residue is
// measured by some per cent. Without it a push-back of the volume advised would ask for another.
const slack = 1.1

// situation is all that the rules look at: the intent filled in, and what would leave the nozzle.
type situation struct {
	b     *core.Book
	in    Intent
	lawn  *core.Lawn
	zones []core.Zone
	areas []measure.Area // what of each zone is meant
	with  *core.Applicator
	tank  *fluid.ApplicatorTank // nil: draws through its hose
	up    fluid.LineUp
	area  measure.Area
	want  measure.Volume
	parts []core.ZonePart  // what would be laid
	after *fluid.Plumbing  // where the rest would be
	meant *core.Mix        // the mix that is meant to go down; nil if it has no name
	wet   bool             // liquid is laid
	dry   *core.SpreadPlan // what is spread; nil: nothing
	// noWeight is why it is not known how much is spread; nil where it is.
	noWeight error
	reach    map[string][]int32 // what was found to reach a zone
	// group are the zones that are judged together; nil: all.
	group *zoneGroup
	// hoseStopped: the grass rule has already said that the hose must be pushed out.
	hoseStopped bool
	// years are the sums by zone, once they were asked for.
	years map[string]*core.Season
	had   map[zoneProduct]float64 // what went down earlier in this call (see earlier)
	keys  []int32                 // of all that would go down, once it was asked for (see all)
	rates map[string][]label.RateRow
	// stoppedOn are the products that the grass rule stops, by zone: their residue is not spoken of again.
	stoppedOn []onZone
	limits    map[onZone][]residueLimit // looked up so far
	worked    map[int32]ofProduct
	fulls     map[int32]float64
	// smearTimes stands for the margin on the smear where it is above 0.
	smearTimes float64
	// allWays: all ways of the tail are priced, not only as many as it takes to choose.
	allWays bool
	// instead is the lawn that stands for those ahead; byStrength: there is none. alone: a mix is judged by itself, in tank.
	instead           string
	byStrength, alone bool
	// change is the changeover once it was asked for; changeKnown tells whether it was.
	change      *Changeover
	changeKnown bool
}

// look fills an intent in.
func look(b *core.Book, in Intent) (*situation, error) {
	s, err := situationOf(b, in, b.Lawn(in.Lawn))
	if err != nil {
		return nil, err
	}
	if s.lawn == nil {
		return nil, &core.Problem{What: fmt.Sprintf("There is no lawn %q in the book.", in.Lawn), Do: "Write its name as it stands in the book.", Err: core.ErrRefused}
	}
	if err := s.findZones(); err != nil {
		return nil, err
	}
	if err := s.findApplicator(); err != nil {
		return nil, err
	}
	if err := s.possible(); err != nil {
		return nil, err
	}
	wet, dry := ready(b, s.with, in)
	s.wet = wet
	if dry {
		if err := s.lookDry(); err != nil {
			return nil, err
		}
	}
	s.up = b.Plumbing().LineUp
	if !wet {
		return s, nil
	}
	if in.From != 0 && s.tank == nil {
		if b.Plumbing().Compartment(in.From) == nil {
			return nil, &core.Problem{What: fmt.Sprintf("There is no compartment %q.", string(rune(in.From))), Do: "Name one that the rig has.", Err: core.ErrRefused}
		}
		s.up = fluid.LineUp{Supply: []byte{in.From}, Return: in.From}
	}
	s.want = s.with.Delivery.Volume(s.area)
	if in.Volume.Known {
		s.want = in.Volume.V
	}
	if s.want <= 0 {
		return nil, &core.Problem{What: fmt.Sprintf("%s gal would go down.", s.want.Text()), Do: "Give more than 0.", Err: core.ErrRefused}
	}
	s.foresee()
	return s, nil
}

// situationOf is one of which nothing is filled in yet.
func situationOf(b *core.Book, in Intent, lawn *core.Lawn) (*situation, error) {
	if b.Rig() == nil {
		return nil, &core.Problem{What: "The book has no rig yet.", Do: "Enter the rig first.", Err: core.ErrRefused}
	}
	return &situation{b: b, in: in, lawn: lawn, years: map[string]*core.Season{}, had: map[zoneProduct]float64{}, rates: map[string][]label.RateRow{}}, nil
}

func (s *situation) findZones() error {
	names := s.in.Zones
	if len(names) == 0 {
		names = s.lawn.ZoneNames()
	}
	var weights []int64
	seen := map[string]bool{}
	for _, n := range names {
		z, ok := s.lawn.Zone(n)
		if !ok || seen[n] {
			return &core.Problem{What: fmt.Sprintf("%s has no zone %q, or it is named twice.", s.lawn.LawnName, n), Do: "Name each zone once, as it stands in the book.", Err: core.ErrRefused}
		}
		seen[n] = true
		s.zones = append(s.zones, z)
		meant := s.b.AreaMeant(s.lawn.LawnName, z)
		weights = append(weights, int64(meant))
		s.area += meant
	}
	if s.in.Area.Known {
		s.area = s.in.Area.V
	}
	if s.area <= 0 {
		return &core.Problem{What: fmt.Sprintf("The area is %s.", sqft(s.area)), Do: "Give more than 0.", Err: core.ErrRefused}
	}
	for _, a := range measure.Apportion(weights, int64(s.area)) {
		s.areas = append(s.areas, measure.Area(a))
	}
	return nil
}

// spot tells whether only a part of the zones is meant, and not known how much.
func (s *situation) spot() bool {
	v := s.b.Day().Visiting()
	return v != nil && v.Kind == core.Spot && v.Lawn == s.lawn.LawnName && !s.in.Volume.Known && !s.in.Area.Known
}

func (s *situation) findApplicator() error {
	name := applicatorName(s.b, s.in)
	s.with = s.b.Applicator(name)
	if s.with == nil {
		return &core.Problem{What: fmt.Sprintf("There is no applicator %q.", name), Do: "Name one that the rig has.", Err: core.ErrRefused}
	}
	s.tank = s.b.Plumbing().Tank(name)
	return nil
}

// FirstApplicator is the first that draws through a hose, else the first that sprays; empty if there is none.
func FirstApplicator(b *core.Book) string {
	first := ""
	if b.Rig() == nil {
		return ""
	}
	for _, a := range b.Rig().Applicators {
		if a.Type == core.Spreader {
			continue
		}
		if a.Tank == 0 {
			return a.Name
		}
		if first == "" {
			first = a.Name
		}
	}
	return first
}

// foresee pulls the trigger on a sketch of the plumbing.
func (s *situation) foresee() {
	f := &core.Sprayed{Lawn: s.lawn.LawnName, Applicator: s.with.Name, Volume: core.Known(s.want), Area: core.Known(s.area)}
	for _, z := range s.zones {
		f.Zones = append(f.Zones, z.Name)
	}
	if s.tank == nil && len(s.up.Supply) == 0 {
		s.after = s.b.Plumbing().Sketch()
		return
	}
	up := &s.up
	if s.sameLineUp() {
		up = nil
	}
	s.parts, s.after = s.b.Foresee(f, up)
	s.meant = s.b.Mix(s.meantName())
}

func (s *situation) sameLineUp() bool {
	now := s.b.Plumbing().LineUp
	return string(now.Supply) == string(s.up.Supply) && now.Return == s.up.Return
}

// meantName names the mix of the compartment drawn from, or the one that most of the tank came from.
func (s *situation) meantName() string {
	if s.tank == nil {
		return s.b.MixIn(string(s.up.Supply[:1]))
	}
	name, most := "", int64(0)
	for _, p := range s.tank.Liquid.From {
		if p.N > most {
			name, most = s.b.Origin(p.Key).Mix, p.N
		}
	}
	return name
}

// laid is how much goes on each mm2 for each nL that leaves: the delivery as meant.
func (s *situation) delivery() float64 { return float64(s.want) / float64(s.area) }

// dose is the rate at which a parcel lays a product.
func (s *situation) dose(l fluid.Liquid, product int32) float64 {
	return float64(l.Strength(product)) * s.delivery()
}

// cover is the area that a parcel covers.
func (s *situation) cover(v measure.Volume) measure.Area {
	return measure.Area(measure.MulDiv(int64(v), int64(s.area), int64(s.want)))
}

// supply is the compartment drawn from, nil for an applicator's own tank or a closed line-up.
func (s *situation) supply() *fluid.Compartment {
	if !s.wet || s.tank != nil || len(s.up.Supply) == 0 {
		return nil
	}
	return s.b.Plumbing().Compartment(s.up.Supply[0])
}

// sliver is a parcel too small (a millilitre, a tenth of a square foot) to be judged: where a parcel is cut at
// the border of a zone, the strength of what little is left over is decided by rounding to the unit.
const sliver = measure.Millilitre

// eachParcel visits every parcel that would be laid on the zones judged now, in order, with its zone. Slivers are left
// out, unless all that is to be laid is hardly more than one.
func (s *situation) eachParcel(f func(z core.Zone, l fluid.Liquid)) {
	for _, part := range s.parts {
		if !s.judges(part.Zone.Name) {
			continue
		}
		for _, l := range part.Parcels {
			if l.Volume >= sliver || s.want < 100*sliver {
				f(part.Zone, l)
			}
		}
	}
}

// products lists the keys of all products that would leave the nozzle, in order.
func (s *situation) products() []int32 {
	seen := map[int32]bool{}
	s.eachParcel(func(_ core.Zone, l fluid.Liquid) {
		for _, p := range l.Holds {
			seen[p.Key] = true
		}
	})
	var out []int32
	for k := range s.b.Products() {
		if seen[int32(k)] {
			out = append(out, int32(k))
		}
	}
	return out
}

// full is the strength at which a product counts as undiluted: the strongest of what stands in cell and hose
// (or the applicator's tank), of the compartments that it came from, and of its usual rate at this delivery.
// Residue is measured in shares of it.
func (s *situation) full(product int32) float64 {
	if f, ok := s.fulls[product]; ok {
		return f
	}
	f := s.fullNow(product)
	if s.fulls == nil {
		s.fulls = map[int32]float64{}
	}
	s.fulls[product] = f
	return f
}

func (s *situation) fullNow(product int32) float64 {
	ref := usualRate(s.b, product) / s.delivery()
	p := s.b.Plumbing()
	letters := s.originLetters()
	for i := range p.Compartments {
		if letters[p.Compartments[i].Letter] {
			ref = max(ref, float64(p.Compartments[i].Liquid.Strength(product)))
		}
	}
	if s.tank != nil {
		return max(ref, float64(s.tank.Liquid.Strength(product)))
	}
	ref = max(ref, float64(p.Cell.Liquid.Strength(product)))
	if h := p.Hose(s.with.Hose); h != nil {
		for _, c := range h.Charge {
			ref = max(ref, float64(c.Strength(product)))
		}
	}
	return ref
}

// usualRate is the label's lowest rate of a product, else the lowest at which a mix of the book has it; 0 if neither
// is known. Without it, a trace whose source has left the rig would be measured against itself.
func usualRate(b *core.Book, product int32) float64 {
	p := b.ProductByKey(product)
	if p.Label.HasRateLow {
		return p.Label.RateLow.V
	}
	low := 0.0
	for _, m := range b.Mixes() {
		if r, ok := m.Rate(p.ProductName); ok && (low == 0 || r.V < low) {
			low = r.V
		}
	}
	return low
}

// originLetters are the compartments that the liquid in cell, hose and supply came from.
func (s *situation) originLetters() map[byte]bool {
	out := map[byte]bool{}
	for _, l := range s.up.Supply {
		out[l] = true
	}
	add := func(l fluid.Liquid) {
		for _, f := range l.From {
			out[s.b.Origin(f.Key).Letter] = true
		}
	}
	p := s.b.Plumbing()
	if s.tank != nil {
		add(s.tank.Liquid)
		return out
	}
	add(p.Cell.Liquid)
	if h := p.Hose(s.with.Hose); h != nil {
		add(h.Liquid())
	}
	return out
}
