package core

import "example.com/tintline/core/fluid"

func (k *keptCodec) plumbing(p *fluid.Plumbing) {
	kept(k, &p.Compartments, func(c *fluid.Compartment) {
		whole(k, &c.Letter)
		k.tank(&c.Tank)
	})
	whole(k, &p.Cell.Size)
	k.liquid(&p.Cell.Liquid)
	whole(k, &p.Return.Size)
	k.liquid(&p.Return.Liquid)
	kept(k, &p.Return.Charge, k.liquid)
	k.yes(&p.Return.Swept)
	kept(k, &p.Hoses, k.hose)
	kept(k, &p.Tanks, func(t *fluid.ApplicatorTank) {
		text(k, &t.Name)
		k.tank(&t.Tank)
	})
	kept(k, &p.Hoppers, func(h *fluid.Hopper) {
		text(k, &h.Name)
		whole(k, &h.Capacity)
		k.holds(&h.Holds)
		whole(k, &h.Flows.Start)
		whole(k, &h.Flows.Loaded)
		whole(k, &h.Flows.Spread)
		whole(k, &h.Flows.Other)
	})
	kept(k, &p.LineUp.Supply, func(letter *byte) { whole(k, letter) })
	whole(k, &p.LineUp.Return)
	named(k, (*map[fluid.Place]fluid.Liquid)(&p.Outside), func(_ fluid.Place, l *fluid.Liquid) { k.liquid(l) })
}

func (k *keptCodec) tank(t *fluid.Tank) {
	whole(k, &t.Capacity)
	whole(k, &t.Heel)
	k.liquid(&t.Liquid)
	whole(k, &t.Flows.Start)
	whole(k, &t.Flows.Loaded)
	whole(k, &t.Flows.PushedIn)
	whole(k, &t.Flows.Drawn)
	whole(k, &t.Flows.Other)
	whole(k, &t.Flows.Unexplained)
	whole(k, &t.Moved)
	whole(k, &t.ReadBand)
	k.origin(&t.Origin)
	k.from(&t.Strange)
	k.from(&t.StrangeIn)
}

func (k *keptCodec) hose(h *fluid.Hose) {
	text(k, &h.Name)
	whole(k, &h.Size)
	kept(k, &h.Charge, func(p *fluid.Parcel) {
		k.liquid(&p.Liquid)
		whole(k, &p.Air)
	})
}
