package check

import (
	"fmt"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// LaidLook is what there is to say of a product that a liquid lays on a zone at a rate, whatever stands in the tanks.
type LaidLook struct {
	Looked
	Residue bool                // at most a tenth of its usual rate (setting residue_share): judged as residue
	Share   core.Maybe[float64] // of its usual rate: the label's lowest, else the lowest of a mix
	Times   core.Maybe[float64] // of the label's most, where it is above that
}

// LookLaid asks that: as the mix itself by Look, and whether it is more than the label's most; as residue by its limits.
func LookLaid(b *core.Book, p *core.Product, lawn string, z core.Zone, rate measure.Rate, at core.Moment) LaidLook {
	out := LaidLook{Looked: Look(b, p, lawn, z, label.FormSpray, core.Known(rate), at)}
	k, _ := b.ProductKey(p.ProductName)
	if usual := usualRate(b, k); usual > 0 {
		out.Share = core.Known(rate.V / usual)
		out.Residue = out.Share.V <= b.Setting(core.ResidueShare)
	}
	if out.Residue {
		out.residue(b, p, z, at)
		return out
	}
	if most := mostOn(p, z.Grass); most > 0 && rate.V > float64(most*overLabel) && out.Weight < Stop {
		out.Times = core.Known(rate.V / most)
		out.Weight, out.Ground, out.Source = Stop, GroundLabel, labelSource(p)
		out.Says = fmt.Sprintf("%s would go down at %s times the label's most on %s", called(p), figure(out.Times.V, 3), label.GrassWords(z.Grass))
		out.Do = "Thin it, or lay less."
	}
	return out
}

// residue judges as traceRule does: a product that the label entry lists is no matter of it.
func (l *LaidLook) residue(b *core.Book, p *core.Product, z core.Zone, at core.Moment) {
	l.Weight, l.Do = None, ""
	l.Says = fmt.Sprintf("residue of %s at %.2g of its lowest rate on %s", called(p), l.Share.V, label.GrassWords(z.Grass))
	if p.Label.Lists(z.Grass) {
		return
	}
	limit, w := heaviestOf((judge{b, at, label.FormSpray}).residueLimits(p, z), l.Share.V)
	if limit == nil || w == None {
		return
	}
	_, from, of := limit.weigh(l.Share.V)
	l.Weight, l.Ground, l.Source = w, GroundSetting, residueSource(b, limit, of, z)
	l.Says += fmt.Sprintf(", %s from %.2g", map[Weight]string{Note: "a note", Ask: "asked", Stop: "a stop"}[w], from)
	l.Do = "Keep it off that grass, or thin it further."
}
