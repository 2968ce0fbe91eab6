package yard

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/batch"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

//go:embed gear.csv
var gearCSV string

//go:embed fill.csv
var fillCSV string

type gear struct{ signal, rank, wear, source string }

var (
	gearBySignal = readGear(gearCSV)
	fillDetails  = readFill(fillCSV)
)

func tableOf(name, text string) [][]string {
	rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil {
		panic("core/yard/" + name + ": " + err.Error()) // embedded: a broken table is a broken build, held by a test
	}
	return rows[1:]
}

func readGear(text string) map[string]gear {
	out := map[string]gear{}
	for _, r := range tableOf("gear.csv", text) {
		out[r[0]] = gear{r[0], r[1], r[2], r[3]}
	}
	return out
}

func readFill(text string) map[string][]Detail {
	out := map[string][]Detail{}
	for _, r := range tableOf("fill.csv", text) {
		out["do/"+r[0]] = append(out["do/"+r[0]], Detail{r[1], r[2]})
	}
	return out
}

// drafting puts the lines of a sheet one below the other.
type drafting struct {
	b      *core.Book
	s      *LoadSheet
	adding label.Adding
}

func (d *drafting) line(item, says string, details ...Detail) *SheetLine {
	d.s.Lines = append(d.s.Lines, SheetLine{Item: item, Says: says, Details: append(details, fillDetails[item]...)})
	return &d.s.Lines[len(d.s.Lines)-1]
}

func (d *drafting) draft() {
	mixed := len(d.adding.Steps) > 0
	if mixed {
		d.gear()
	}
	d.jar()
	d.place()
	d.line(core.StepAirGap, "air gap: the hose ends above the tank")
	d.meterLine(core.StepMeterBefore, "water meter before", d.s.Plan.MeterBefore)
	first := d.firstWater()
	if first > 0 {
		d.water(core.WaterItem, first)
	}
	if mixed {
		d.line(core.StepAgitator, "agitator on, now that water covers it")
	}
	for i, s := range d.adding.Steps {
		d.product(s)
		if i+1 < len(d.adding.Steps) {
			d.line(core.StepStir+s.Name, fmt.Sprintf("stir %.0f min at full, until it is all in", d.b.Setting(core.StirMin)),
				Detail{"The figure is the setting stir_min.", d.b.SettingSource(core.StirMin)})
		}
	}
	if mixed {
		d.line(core.StepRinse, "rinse the containers three times into the tank")
	}
	if rest := d.s.Water - first; rest > 0 {
		d.water(core.StepRest, rest)
	}
	d.meterLine(core.StepMeterAfter, "water meter after", d.s.Plan.MeterAfter)
	if mixed {
		d.line(core.StepLabelled, "lid on, tank marked: "+what(&d.s.Plan), d.reentry()...)
	}
}

func what(p *core.LoadPlanned) string {
	s := p.Mix
	if s == "" {
		var names []string
		for _, part := range p.Parts {
			names = append(names, part.Product)
		}
		s = strings.Join(names, " + ")
	}
	if p.For != "" {
		s += " for " + p.For
	}
	return s
}

// gear is what is worn, by the heaviest signal word of the products.
func (d *drafting) gear() {
	var top gear
	heaviest := ""
	var unknown []string
	for _, s := range d.adding.Steps {
		g, ok := gearBySignal[d.b.Product(s.Name).Label.Signal]
		if !ok {
			unknown = append(unknown, s.Name)
			continue
		}
		if top.rank == "" || g.rank > top.rank {
			top, heaviest = g, s.Name
		}
	}
	if top.rank == "" {
		top = gearBySignal["caution"]
	}
	says := "protective equipment: no signal word is entered"
	if heaviest != "" {
		says = fmt.Sprintf("protective equipment: signal word %s, of %s", top.signal, heaviest)
	}
	l := d.line(core.StepGear, says, Detail{"Wear: " + top.wear + ". The label in hand decides.", top.source})
	if len(unknown) > 0 {
		l.Details = append(l.Details, Detail{fmt.Sprintf("No signal word is entered for %s: see the label.", and(unknown)), "common practice, no source"})
	}
}

// jar is the line that asks for a jar, where a pair meets for the first time.
func (d *drafting) jar() {
	s := d.s
	if len(s.Unmet) == 0 && !d.b.StepTicked(&s.Plan, core.StepJar) {
		return
	}
	var pairs []string
	for _, p := range s.Unmet {
		pairs = append(pairs, p[0]+" with "+p[1])
	}
	says := "jar test"
	if len(pairs) > 0 {
		says += ", never together before: " + strings.Join(pairs, "; ")
	}
	l := d.line(core.StepJar, says)
	l.Asks = AsksJar
	const sheet = "Utah State University extension, jar test, 2012"
	if s.Jar == nil {
		l.Details = append(l.Details, Detail{fmt.Sprintf("A quart of what stands in %s, with its share of each product; shake after each, let it stand %d min, shake, look.", s.Plan.Into, batch.JarStand), sheet})
		return
	}
	var quart, pint []string
	for _, p := range s.Jar.Parts {
		quart = append(quart, batch.SmallText(p.InQuart)+" "+p.Name)
		if p.InPint != "" {
			pint = append(pint, p.InPint+" "+p.Name)
		}
	}
	stands := ""
	if s.Jar.StandsFor.Known {
		stands = ", which stands for " + s.Jar.StandsFor.V.Text() + " sq ft"
	}
	l.Details = append(l.Details,
		Detail{fmt.Sprintf("In a quart of the water you use%s, in this order, shaken after each: %s. Let it stand %d min, shake, look.", stands, strings.Join(quart, ", "), batch.JarStand), "arithmetic: 0.25/G of the rate per 1,000 sq ft"},
		Detail{"Failed: " + strings.Join(core.JarSigns(), ", ") + ".", sheet})
	if len(pint) == len(quart) {
		l.Details = append(l.Details, Detail{"Or by the spoon, in a pint: " + strings.Join(pint, ", ") + ".", sheet})
	}
	s.Working = append(s.Working, s.Jar.Working...)
}

func (d *drafting) place() {
	says := "place of mixing"
	if d.s.Plan.Place != "" {
		says += ": " + d.s.Plan.Place
	}
	d.line(core.StepPlace, says).Asks = AsksPlace
}

func (d *drafting) meterLine(item, says string, m core.Maybe[measure.Volume]) {
	if m.Known {
		says += ": " + m.V.Text() + " gal"
	} else if meant := d.s.MeterMeant(); item == core.StepMeterAfter && meant.Known {
		says += ": " + meant.V.Text() + " gal is meant"
	}
	d.line(item, says).Asks = AsksMeter
}

// firstWater is the water that goes in before any product; all of it where there is none.
func (d *drafting) firstWater() measure.Volume {
	if len(d.adding.Steps) == 0 {
		return d.s.Water
	}
	share := d.b.Setting(core.WaterFirstPct) / 100
	first := measure.Volume(float64(d.s.Water) * share)
	d.s.Working = append(d.s.Working,
		batch.Step{Says: fmt.Sprintf("water: %s gal less what is liquid of the products = %s gal", d.s.Plan.Volume.Text(), d.s.Water.Text())},
		batch.Step{Says: fmt.Sprintf("first %.0f %% of it: %s gal, the rest %s gal at the end", 100*share, first.Text(), (d.s.Water - first).Text())})
	return first
}

func (d *drafting) water(item string, v measure.Volume) {
	says := "water"
	switch {
	case item == core.StepRest:
		says = "rest of the water"
	case v < d.s.Water:
		says = "water first"
	}
	l := d.line(item, says)
	l.Amount = measure.LiquidAmount(v)
	if item == core.WaterItem && v < d.s.Water {
		for _, c := range d.adding.Cautions {
			if c.When == label.CautionStart {
				l.Details = append(l.Details, Detail{c.Says, c.Source})
			}
		}
		l.Details = append(l.Details, Detail{"How much of it goes in first is the setting water_first_pct.", d.b.SettingSource(core.WaterFirstPct)})
	}
	if item == core.StepRest {
		l.Details = append(l.Details, Detail{fmt.Sprintf("%s then holds %s gal.", d.s.Plan.Into, (d.s.Standing + d.s.Plan.Volume).Text()), "arithmetic"})
	}
}

// product is a line of the order of adding, measured out as a person does.
func (d *drafting) product(s label.Added) {
	e := d.b.Product(s.Name).Label
	words := s.Words
	if f, ok := label.FindFormulation(e.MixingClass); ok {
		words = f.Words
	}
	l := d.line(s.Name, s.Name+", "+words)
	for _, p := range d.s.Plan.Parts {
		if p.Product == s.Name {
			l.Amount = p.Amount
		}
	}
	if m, err := Measure(d.b, s.Name, l.Amount); err == nil {
		words := m.Words
		if m.Finer.Known {
			words = m.Finer.V.Says
		}
		l.Details = append(l.Details, Detail{"Measure out " + strings.TrimSuffix(words, ".") + "; " + batch.ErrorText(m.PutErrorPct()) + ".", "arithmetic, to the marks of the cup or the scale"})
		d.s.Working = append(d.s.Working, m.Steps...)
	}
	if s.ByLabel != "" {
		l.Details = append(l.Details, Detail{"The label: " + s.ByLabel + ".", s.Source})
	}
	for _, c := range s.Cautions {
		l.Details = append(l.Details, Detail{c.Says, c.Source})
	}
	if s.Disagree != "" && s.ByLabel == "" {
		l.Details = append(l.Details, Detail{"The sheets do not agree on its place: " + s.Disagree + ".", s.Source})
	}
}

// reentry is what the labels say on going back onto the lawn.
func (d *drafting) reentry() []Detail {
	var out []Detail
	for _, s := range d.adding.Steps {
		if e := d.b.Product(s.Name).Label; e.Reentry != "" {
			out = append(out, Detail{"Going back on the lawn, " + s.Name + ": " + e.Reentry + ".", "the label of " + s.Name})
		}
	}
	return out
}
