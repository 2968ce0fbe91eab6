package core

import "testing"

func TestLoadOfKeepsWhatWasGivenByItself(t *testing.T) {
	b := play(t, NewBook(1), setUp)
	for _, e := range b.Since() {
		f, ok := e.What.(*Loaded)
		if !ok {
			continue
		}
		twice := b.LoadOf(f, 2*f.Volume)
		if twice.Volume != 2*f.Volume || (f.Mix != "" && f.For != "") != (twice.Parts == nil) {
			t.Errorf("%+v became %+v", f, twice)
		}
		own := *f
		own.Parts = append([]LoadPart(nil), f.Parts...)
		own.Parts[0].Amount.N++
		if twice := b.LoadOf(&own, 2*f.Volume); len(twice.Parts) != len(own.Parts) || twice.Volume != 2*f.Volume {
			t.Errorf("amounts of its own: %+v became %+v", own, twice)
		}
	}
}
