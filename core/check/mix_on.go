package check

import (
	"fmt"

	"example.com/tintline/core"
	"example.com/tintline/core/fluid"
)

// ofTheMix are the rules about a mix on a lawn, whatever stands in tanks and hose and whatever the wind does now.
var ofTheMix = map[string]bool{"grass": true, "dose": true, "season": true, "interval": true, "nitrogen": true, "site": true, "dates": true}

// anotherMix is what to do where a mix is judged by itself.
const anotherMix = "Take another mix here, or skip the lawn."

// MixOn is the verdict of the rules about a mix on zones of a lawn, as if the applicator drew that mix alone, made up for its
// delivery rate. The rules are those of Before and so is their order; wind and heat, the line-up, what is left in the tanks
// and what stands in the hose are not asked about. The error is a Problem: the book does not have what is named.
func MixOn(b *core.Book, mix string, in Intent) (Report, error) {
	s, err := situationOf(b, in, b.Lawn(in.Lawn))
	if err != nil {
		return Report{}, err
	}
	if s.lawn == nil {
		return Report{}, &core.Problem{What: fmt.Sprintf("There is no lawn %q in the book.", in.Lawn), Do: "Write its name as it stands in the book.", Err: core.ErrRefused}
	}
	if s.meant = b.Mix(mix); s.meant == nil {
		return Report{}, &core.Problem{What: fmt.Sprintf("There is no mix %q in the book.", mix), Do: "Name one of the book.", Err: core.ErrRefused}
	}
	if err := s.findZones(); err != nil {
		return Report{}, err
	}
	if err := s.findApplicator(); err != nil {
		return Report{}, err
	}
	s.wet, s.want = true, s.with.Delivery.Volume(s.area)
	if !s.with.Sprays() || s.want <= 0 {
		return Report{}, &core.Problem{
			What: fmt.Sprintf("%s lays %s gal on %s.", s.with.Name, s.want.Text(), sqft(s.area)),
			Do:   "Name an applicator that sprays and has a delivery rate.", Err: core.ErrRefused,
		}
	}
	if err := s.drawOnly(); err != nil {
		return Report{}, err
	}
	return s.reportOf(func(rule string) bool { return ofTheMix[rule] }), nil
}

// drawOnly gives the applicator a tank that holds the mix and nothing else, and lays it.
func (s *situation) drawOnly() error {
	load, err := s.b.LoadParts(s.meant.MixName, s.with.Name, s.want)
	if err != nil {
		return err
	}
	l := fluid.Liquid{Volume: s.want}
	for _, p := range load {
		k, ok := s.b.ProductKey(p.Product)
		if !ok {
			return &core.Problem{What: fmt.Sprintf("There is no product %q in the book.", p.Product), Do: "Enter its label first.", Err: core.ErrRefused}
		}
		l.Holds = l.Holds.Plus(fluid.Parts{{Key: k, N: p.Amount.N}})
	}
	s.draw(l)
	return nil
}

// draw gives the applicator a tank that holds a liquid and nothing else, and lays it.
func (s *situation) draw(l fluid.Liquid) {
	s.alone = true
	s.tank = &fluid.ApplicatorTank{Name: s.with.Name, Tank: fluid.Tank{Capacity: s.want, Liquid: l}}
	s.after = &fluid.Plumbing{}
	rest := l
	for i, z := range s.zones {
		v := rest.Volume
		if i < len(s.zones)-1 {
			v = min(v, s.with.Delivery.Volume(s.areas[i]))
		}
		part := core.ZonePart{Zone: z, Area: s.areas[i], Volume: v}
		if v > 0 {
			part.Parcels = make([]fluid.Liquid, 1)
			part.Parcels[0], rest = rest.Split(v)
		}
		s.parts = append(s.parts, part)
	}
}
