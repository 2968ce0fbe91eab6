package check

import (
	"fmt"
	"strconv"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
)

func (s *situation) residueFinding(k int32, z core.Zone, r residue) Finding {
	prod := s.b.ProductByKey(k)
	_, limit, of := r.limit.weigh(r.share)
	f := Finding{
		Weight: r.weight, Product: prod.ProductName, Active: prod.Label.Words(), Grass: z.Grass, Zones: []string{z.Name}, Area: s.cover(r.volume),
		ShareOfLabel: core.Known(r.share), Figured: core.Known(r.share), Limit: core.Known(limit), Unit: "share", Ground: GroundSetting,
		Source: residueSource(s.b, &r.limit, of, z), Part: s.residuePart(k, r), volume: r.volume,
	}
	f.Says = fmt.Sprintf("residue of %s at %.2g of its lowest label rate on %s", called(prod), r.share, label.GrassWords(z.Grass))
	if r.sum {
		f.Says = fmt.Sprintf("residue of %s and other herbicides of HRAC 4 at %.2g of their lowest label rates on %s", called(prod), r.share, label.GrassWords(z.Grass))
	} else if usualRate(s.b, k) == 0 {
		f.Says = fmt.Sprintf("residue of %s at %.2g of its full strength on %s", called(prod), r.share, label.GrassWords(z.Grass))
	}
	f.Says += fmt.Sprintf(", %s from %.2g", map[Weight]string{Note: "a note", Ask: "asked", Stop: "a stop"}[unstepped(&r.limit, r.share)], limit)
	if r.limit.step != "" {
		f.Says += ", one step more because " + r.limit.step
	}
	if f.Weight == Ask && r.own {
		f.About = aboutResidue(s.place(), r.share)
		if lawn, yes := s.answeredAt(&f, z); yes {
			f.Weight = Note
			f.Says += ", answered today at " + lawn
		}
	}
	s.doAboutResidue(&f, &r.limit)
	return f
}

// unstepped is the weight of a share on turf of which nothing more is known.
func unstepped(l *residueLimit, share float64) Weight {
	plain := *l
	plain.step = ""
	w, _, _ := plain.weigh(share)
	return w
}

// residueSource is the ground of the limit and what is known of the grass.
func residueSource(b *core.Book, l *residueLimit, of string, z core.Zone) string {
	words := b.SettingSource(of)
	switch {
	case !l.known && l.active == "":
		words += "; the label entry names no active: judged by class " + string(l.class)
	case !l.known:
		words += "; " + l.active + " is not in the reference: judged by class " + string(l.class)
	default:
		words += fmt.Sprintf("; %s on %s: %s", l.active, label.GrassWords(z.Grass), l.verdict.Words())
		if !l.verdict.Read() {
			words += ", so judged as not tolerant"
		}
	}
	return words
}

func (s *situation) residuePart(k int32, r residue) string {
	switch {
	case s.tank != nil:
		return PartApplicator
	case r.own:
		return PartCompartment
	}
	if h := s.b.Plumbing().Hose(s.with.Hose); h != nil {
		for _, p := range h.Charge {
			if x := float64(p.Strength(k)); p.Volume >= sliver && s.counted(k, x) == x && x > s.own(k) {
				return PartHose
			}
		}
	}
	return PartCell
}

// Rule 5 of the proposal that the limits come from.
const (
	threeRinses  = " After this, rinse three times, 10 per cent of the tank each, push two hose volumes, open the screens."
	rinsesSource = "; rinses of a tenth of the tank: survey of 25 sprayers, Agronomy 10:772, 2020; two hose volumes are assumed"
	lookAgain    = " If you go on, look at the lawn again in 2 to 4 weeks."
)

func (s *situation) doAboutResidue(f *Finding, l *residueLimit) {
	switch f.Part {
	case PartApplicator:
		f.Do = fmt.Sprintf("Rinse the tank of %s first, or use another applicator.", s.with.Name)
	case PartCompartment:
		f.Do = fmt.Sprintf("Rinse %c once it is empty.", s.up.Supply[0])
		if f.Weight == Ask { // a rinse helps the lawns to come, not this one
			f.Do = fmt.Sprintf("Accept so little of it here, or skip the lawn; rinse %c once it is empty.", s.up.Supply[0])
		}
		if fits := Fits(s.b, s.lawn.LawnName); f.Weight == Stop && len(fits) > 0 && fits[0] != s.up.Supply[0] {
			f.Do = fmt.Sprintf("Turn to %c, change over, then spray.", fits[0])
		}
		f.sticks = sticks(l)
	default:
		s.doPush(f)
	}
}

// sticks tells whether an active is one of those after which more than a rinse is asked for.
func sticks(l *residueLimit) bool {
	return l.class == 'A' || l.active == "dicamba" || l.active == "2,4-D"
}

// place names what is drawn from.
func (s *situation) place() string {
	if s.tank != nil {
		return s.with.Name
	}
	return string(s.up.Supply[0])
}

const atShare = " at "

// aboutResidue says of which residue a reason is: of what is drawn from, and how much.
func aboutResidue(place string, share float64) string {
	return "residue in " + place + atShare + strconv.FormatFloat(share, 'g', 2, 64)
}

// answeredAt tells whether the same residue was asked about already today and gone on with, on the same grass: what stands
// in a compartment is the same at the next lawn. More of it, or a stop, is asked about again.
func (s *situation) answeredAt(f *Finding, z core.Zone) (lawn string, yes bool) {
	from := "residue in " + s.place() + atShare
	for _, e := range s.b.Since() {
		o, ok := e.What.(*core.Overridden)
		if !ok || o.Rule != ruleTrace || o.Product != f.Product || !strings.HasPrefix(o.About, from) {
			continue
		}
		share, err := strconv.ParseFloat(strings.TrimPrefix(o.About, from), 64)
		l := s.b.Lawn(o.Lawn)
		if err != nil || l == nil || f.ShareOfLabel.V > share*slack {
			continue
		}
		for _, at := range l.Zones {
			if at.Grass == z.Grass && (o.Zone == "" || o.Zone == at.Name) {
				return o.Lawn, true
			}
		}
	}
	return "", false
}
