package core

import "example.com/tintline/core/measure"

// calibrated keeps the rates that tests put in force, and the last tests.
func (k *keptCodec) calibrated(s *state) {
	kept(k, &s.rates, func(r *RateInForce) {
		text(k, &r.Applicator)
		text(k, &r.Tip)
		text(k, &r.Product)
		k.rate(&r.Delivery)
		k.rate(&r.Meant)
		k.yes(&r.Flow.Known)
		figure(k, &r.Flow.V)
		k.moment(&r.At)
	})
	kept(k, &s.tests, func(t *TestTaken) {
		k.fact(&t.Test)
		k.moment(&t.At)
	})
}

func (k *keptCodec) rate(r *measure.Rate) {
	figure(k, &r.V)
	whole(k, &r.Kind)
}
