package check

import (
	"fmt"

	"example.com/tintline/core"
	"example.com/tintline/core/fluid"
)

// LiquidOn is MixOn of a liquid that need be no mix of the book, such as what two compartments make together. called is what it is called in
// the findings; there is no mix that it is held against. Residue is not asked about: see LookLaid.
func LiquidOn(b *core.Book, l fluid.Liquid, called string, in Intent) (Report, error) {
	s, err := situationOf(b, in, b.Lawn(in.Lawn))
	if err != nil {
		return Report{}, err
	}
	if s.lawn == nil {
		return Report{}, &core.Problem{What: fmt.Sprintf("There is no lawn %q in the book.", in.Lawn), Do: "Write its name as it stands in the book.", Err: core.ErrRefused}
	}
	if err := s.findZones(); err != nil {
		return Report{}, err
	}
	if err := s.findApplicator(); err != nil {
		return Report{}, err
	}
	s.meant = &core.Mix{MixName: called}
	s.wet, s.want = true, s.with.Delivery.Volume(s.area)
	if !s.with.Sprays() || s.want <= 0 || l.Volume <= 0 {
		return Report{}, &core.Problem{
			What: fmt.Sprintf("%s lays %s gal on %s.", s.with.Name, s.want.Text(), sqft(s.area)),
			Do:   "Name an applicator that sprays and has a delivery rate.", Err: core.ErrRefused,
		}
	}
	s.draw(l.As(s.want))
	return s.reportOf(func(rule string) bool { return ofTheMix[rule] }), nil
}
