package yard

import (
	"testing"

	"example.com/tintline/core"
	"example.com/tintline/core/batch"
	"example.com/tintline/core/measure"
)

// The marks stand in two tables, one for who has no book: they are the same.
func TestRulerIsTheUsualOne(t *testing.T) {
	b := play(t, setUp)
	if Ruler(b) != batch.UsualRuler(false) {
		t.Errorf("%+v, and the usual one is %+v", Ruler(b), batch.UsualRuler(false))
	}
	for _, name := range []string{batch.CupMarkFlOz, batch.CupMarkML, batch.ScaleMarkOz, batch.ScaleMarkG, batch.MeasureErrorPct} {
		if b.Setting(name) != batch.Mark(name).Value || b.SettingSource(name) != batch.Mark(name).Source {
			t.Errorf("%s: %v (%s), and without a book %+v", name, b.Setting(name), b.SettingSource(name), batch.Mark(name))
		}
	}
	enter(t, b, &core.Setting{SettingName: core.MeasureUnits, Value: "metric"})
	if Ruler(b) != batch.UsualRuler(true) {
		t.Errorf("%+v, and the usual one is %+v", Ruler(b), batch.UsualRuler(true))
	}
	enter(t, b, &core.Setting{SettingName: core.CupMarkML, Value: "10"})
	if Ruler(b).CupMark != 10 {
		t.Errorf("%+v", Ruler(b))
	}
}

// 30 gal of W for the gun are 18,750 sq ft: 22.5 fl oz. 31 gal are 23.25, which a cup with half ounces takes as 23 or, with the even half, 23.
func TestBookedAsMeasured(t *testing.T) {
	b := play(t, setUp+`{"fact":"load_planned","into":"a","volume_gal":31,"mix":"W","for":"gun"}`)
	exact := measure.FluidOunces(23.25)
	if got := Booked(b, b.LoadPlan("a")).Parts[0].Amount; got.N-int64(exact) > 100 || int64(exact)-got.N > 100 {
		t.Errorf("as planned: %s", got.Text())
	}
	enter(t, b, &core.Setting{SettingName: core.BookMeasured, Value: "yes"})
	f := Booked(b, b.LoadPlan("a"))
	if got := measure.Volume(f.Parts[0].Amount.N); f.Volume != measure.Gallons(31) || got != measure.FluidOunces(23) && got != measure.FluidOunces(23.5) {
		t.Errorf("as measured: %+v", f)
	}
	enter(t, b, f)
	if b.LoadPlan("a") != nil {
		t.Error("the load did not fulfil the plan")
	}
}
