package check

import (
	"fmt"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

// The kinds of row of a page of pressure.
const (
	RowLoss   = "loss"
	RowNeeds  = "needs"
	RowMust   = "must"
	RowPump   = "pump"
	RowRise   = "rise"
	RowPush   = "push_back"
	RowWeight = "weight"
	RowBore   = "bore"
	RowLength = "length"
	RowBlank  = "blank"
)

// PressureRow is one line of a page of pressure: what it is, in words, and how sure it is.
type PressureRow struct {
	Kind   string
	Label  string // "loss in the hose"
	Text   string // "46.7 psi at 2.50 gpm"
	Source string // what it rests on; empty: it is plain arithmetic
	Bad    bool   // the pump gives too little
}

// PressureRows puts that into rows, in the order in which they are read; none where there is nothing to say.
func PressureRows(b *core.Book, applicator string) []PressureRow {
	p, ok := PressureOf(b, applicator)
	if !ok {
		return nil
	}
	var out []PressureRow
	add := func(kind, label, text, source string) {
		out = append(out, PressureRow{Kind: kind, Label: label, Text: text, Source: source})
	}
	if p.Loss.Known {
		text := fmt.Sprintf("%s along the hose at %s", psi(p.Loss.V), p.Flow.V.Text())
		if !p.Measured {
			text += fmt.Sprintf(", %s to %s", figurePSI(p.LossLow.V), psi(p.LossHigh.V))
		}
		add(RowLoss, "hose", text, p.factorWords())
	}
	if p.Needs.Known {
		add(RowNeeds, "nozzle", fmt.Sprintf("needs %s, by %s", psi(p.Needs.V), p.NeedsOf), "")
	}
	if p.Must.Known {
		add(RowMust, "pump must give", psi(p.Must.V)+", both together", "")
	}
	if p.Pump.Known {
		add(RowPump, "pump gives", psi(p.Pump.V)+p.shortWords(), "")
		out[len(out)-1].Bad = p.Short.Known && p.Short.V > 0
	}
	add(RowRise, "uphill", fmt.Sprintf("%.2f psi for each foot that the nozzle stands above the pump", p.PerFoot.PSI()), "")
	add(RowPush, "to push back", gal(p.Holds)+p.secondsWords(), "")
	if p.Filled.Known {
		add(RowWeight, "weight", fmt.Sprintf("%.0f lb filled, %.0f lb dry", p.Filled.V.Pounds(), p.Dry.V.Pounds()), p.DryOf)
	}
	for _, o := range p.Bores {
		out = append(out, p.otherRow(RowBore, inches(o.Bore), o))
	}
	for _, o := range p.Lengths {
		out = append(out, p.otherRow(RowLength, fmt.Sprintf("%.0f ft", o.Length.Feet()), o))
	}
	for _, u := range p.Unknown {
		add(RowBlank, "not entered", u, "")
	}
	return out
}

func (p *Pressure) otherRow(kind, label string, o OtherHose) PressureRow {
	r := PressureRow{Kind: kind, Label: label}
	if o.Same {
		r.Label += ", this one"
	}
	r.Text = psi(o.Loss) + " lost"
	if o.Must.Known {
		r.Text += ", " + psi(o.Must.V) + " from the pump"
		r.Bad = p.Pump.Known && o.Must.V > p.Pump.V
	}
	r.Text += fmt.Sprintf(", %s and %s s to push back, about %.0f lb filled", gal(o.Holds), measure.SecondsText(o.Seconds), o.Filled.Pounds())
	return r
}

func (p *Pressure) shortWords() string {
	switch {
	case !p.Short.Known:
		return ""
	case p.Short.V > 0:
		return ": short by " + psi(p.Short.V)
	}
	return ": " + psi(-p.Short.V) + " to spare"
}

func (p *Pressure) secondsWords() string {
	if !p.Seconds.Known {
		return ""
	}
	return ", " + measure.SecondsText(p.Seconds.V) + " s"
}

// factorWords says which factor a loss has, and how sure it is.
func (p *Pressure) factorWords() string {
	if p.Measured {
		return fmt.Sprintf("%.2f times a smooth pipe, by the pair of pressures that was measured", p.Factor)
	}
	return fmt.Sprintf("with %.2f on a smooth pipe, %.1f to %.1f until a pair of pressures is measured", p.Factor, p.FactorLow, p.FactorHigh)
}

func figurePSI(p measure.Pressure) string {
	if v := p.PSI(); v < 10 {
		return fmt.Sprintf("%.1f", v)
	}
	return fmt.Sprintf("%.0f", p.PSI())
}

func psi(p measure.Pressure) string { return figurePSI(p) + " psi" }

// inches writes a bore as it is sold, in eighths and sixteenths.
func inches(l measure.Length) string {
	in := l.Inches()
	for _, den := range []int{2, 4, 8, 16} {
		num := in * float64(den)
		if n := int(num + 0.5); n > 0 && n < den && float64(n)-num < 0.005 && num-float64(n) < 0.005 {
			return fmt.Sprintf("%d/%d in", n, den)
		}
	}
	return fmt.Sprintf("%.3g in", in)
}
