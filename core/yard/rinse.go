package yard

import (
	"fmt"

	"example.com/tintline/core"
	"example.com/tintline/core/batch"
	"example.com/tintline/core/check"
	"example.com/tintline/core/hydraulics"
	"example.com/tintline/core/measure"
)

const (
	usualRinses = 3
	// rinseShare is how much of the tank a rinse takes.
	rinseShare  = 0.10
	rinseSource = "three rinses of a tenth of the tank each: Purdue Extension PPP-108, as reported"
)

// Rinse works out what rinses leave of what stood in a compartment: of its heel, with a tenth of the tank three times, or so often and with
// so much water in all as is said.
func Rinse(b *core.Book, q Ask) (Answer, error) {
	c, err := compartment(b, q.Into)
	if err != nil {
		return Answer{}, err
	}
	heel := min(c.Heel, c.Liquid.Volume)
	if heel <= 0 {
		return Answer{}, measure.Troublef("Enter its heel with the rig: what the suction leaves in it.", "Nothing is known to stay in %c when it is drawn empty.", c.Letter)
	}
	n := q.Rinses
	if n == 0 {
		n = usualRinses
	}
	water := q.Volume.Or(measure.Volume(float64(c.Capacity) * rinseShare * float64(n)))
	got, err := batch.RinseAsk{Residual: hydraulics.Gallons(heel.Gallons()), Water: hydraulics.Gallons(water.Gallons()), Rinses: n}.Work()
	if err != nil {
		return Answer{}, err
	}
	if each := measure.Gallons(float64(got.Each)); each > c.Capacity-heel {
		return Answer{}, measure.Troublef("Take more rinses, or less water.", "A rinse of %s does not fit on %s in %c, which holds %s.", gallons(each), gallons(heel), c.Letter, gallons(c.Capacity))
	}
	letter := string(c.Letter)
	out := Answer{Kind: "rinse", Possible: true, Steps: got.Steps, About: fmt.Sprintf("%s, %d rinses with %s", letter, n, gallons(water))}
	out.Says = append(out.Says, fmt.Sprintf("%.3g %% of what the heel of %s holds is left", 100*got.Share, gallons(heel)), fmt.Sprintf("%d times %s, %s in all", n, figureGallons(got.Each), gallons(water)))
	out.Facts = map[string]any{"into": letter, "residual_gal": heel.Gallons(), "rinses": float64(got.Rinses), "rinse_total_gal": water.Gallons(), "fraction_old": got.Share, "products": []map[string]any{}}
	out.left(holds(b, c.Liquid), c.Liquid.Volume, got.Share)
	out.goals(got.Each, hydraulics.Gallons(heel.Gallons()))
	out.note(Finding{check.Note, "Hose, cell, valves and strainers hold some too, and a clean nozzle does not prove a clean strainer.", "Push each rinse through the hose; take out and wash the strainers.", "sprayers101, continuous rinsing"})
	return out, nil
}

func figureGallons(g hydraulics.Gallons) string {
	return measure.Gallons(float64(g)).Text() + " gal"
}

// left says how strong each product still is in the heel.
func (a *Answer) left(list []batch.Held, v measure.Volume, share float64) {
	facts := []map[string]any{}
	for _, h := range list {
		c := measure.ConcentrationOf(h.Amount, v) * measure.Concentration(share)
		a.Says = append(a.Says, h.Product+" then "+perGallon(c, h.Amount.Kind)+" in the heel")
		f := map[string]any{"product": h.Product, map[measure.Kind]string{measure.Liquid: "fl_oz_per_gal", measure.Dry: "oz_per_gal"}[h.Amount.Kind]: c.PerGallon(h.Amount.Kind)}
		facts = append(facts, f)
	}
	a.Facts["products"] = facts
}

// goals says how many such rinses reach what publications ask for.
func (a *Answer) goals(each, heel hydraulics.Gallons) {
	for _, g := range []struct {
		share float64
		of    string
	}{{0.02, "2 % (ISO 16119-3, recalled from extracts)"}, {1. / 300, "a 300th (ISO 16119-3, recalled from extracts)"}} {
		if n := batch.RinsesFor(float64(heel), float64(each), g.share); n > 0 {
			a.Says = append(a.Says, fmt.Sprintf("%d such rinses reach %s", n, g.of))
		}
	}
}
