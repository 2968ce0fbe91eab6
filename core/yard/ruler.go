package yard

import (
	"example.com/tintline/core"
	"example.com/tintline/core/batch"
	"example.com/tintline/core/measure"
)

// Ruler is what the operator measures out with, by the settings.
func Ruler(b *core.Book) batch.Ruler {
	units, _ := b.SettingText(core.MeasureUnits)
	r := batch.UsualRuler(units == "metric")
	r.CupMark, r.ScaleMark, r.GramMark = b.Setting(core.CupMarkFlOz), b.Setting(core.ScaleMarkOz), b.Setting(core.ScaleMarkG)
	if r.Metric {
		r.CupMark, r.ScaleMark = b.Setting(core.CupMarkML), r.GramMark
	}
	r.MostError = b.Setting(core.MeasureErrorPct)
	return r
}

// Measure is how an amount of a product is measured out, whole packages of the size that was bought last first.
func Measure(b *core.Book, product string, a measure.Amount) (batch.Measured, error) {
	return Ruler(b).Measure(product, a, b.Stock(product).Package)
}

// BooksMeasured tells whether the operator set that a planned load is booked with what was measured out.
func BooksMeasured(b *core.Book) bool {
	set, _ := b.SettingText(core.BookMeasured)
	return set == "yes"
}

// Booked is the load that a plan becomes when all of it is in: as it was planned, or with what was measured out where the operator set that.
// The volume stays: water makes up for what is more or less.
func Booked(b *core.Book, p *core.LoadPlanned) *core.Loaded {
	f := core.LoadedFrom(p)
	if !BooksMeasured(b) {
		return f
	}
	for i := range f.Parts {
		if m, err := Measure(b, f.Parts[i].Product, f.Parts[i].Amount); err == nil {
			f.Parts[i].Amount = m.Put()
		}
	}
	return f
}
