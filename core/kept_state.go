package core

import "example.com/tintline/core/fluid"

// state keeps all that a book says. What follows from the rest (the rig in force, where a lawn or a product stands in
// its list) is made again.
func (k *keptCodec) state(s *state) {
	k.setUp(s)
	k.plumbing(s.plumbing)
	k.day(&s.day)
	there(k, &s.weather, func(w *WeatherAt) {
		k.fact(&w.Weather)
		k.moment(&w.At)
	})
	kept(k, &s.overrides, func(f *Overridden) { k.fact(f) })
	there(k, &s.tint, func(f *TintSeen) { k.fact(f) })
	kept(k, &s.missed, func(f *TintSeen) { k.fact(f) })
	there(k, &s.turned, k.turned)
	there(k, &s.learned, k.learning)
	there(k, &s.gauged, k.gauged)
	named(k, &s.plans, func(_ string, p **LoadPlanned) {
		if k.w == nil {
			*p = &LoadPlanned{}
		}
		k.fact(*p)
	})
	named(k, &s.ticks, func(_ string, items *[]string) { kept(k, items, func(i *string) { text(k, i) }) })
	kept(k, &s.owed, k.owed)
	named(k, &s.notes, func(_ string, notes *[]LawnNote) {
		kept(k, notes, func(n *LawnNote) {
			text(k, &n.Date)
			text(k, &n.Text)
		})
	})
	kept(k, &s.cautions, func(f *Cautioned) { k.fact(f) })
	text(k, &s.charted)
	k.moved(&s.moved)
	kept(k, &s.wetted, k.wetted)
	kept(k, &s.stock, k.stockLine)
	kept(k, &s.paid, func(f *Paid) { k.fact(f) })
	kept(k, &s.invested, func(f *Invested) { k.fact(f) })
	whole(k, &s.rounds)
	k.mixing(s)
	k.zones(s)
	k.evening(&s.evening)
	there(k, &s.planned, func(f *DayPlanned) { k.fact(f) })
	k.notices(s)
}

// setUp keeps rig, products, mixes, lawns and settings.
func (k *keptCodec) setUp(s *state) {
	there(k, &s.entered, func(f *Rig) { k.fact(f) })
	k.texts(&s.fitted)
	k.texts(&s.hung)
	k.calibrated(s)
	kept(k, &s.products, k.product)
	kept(k, &s.origins, func(o *Origin) {
		whole(k, &o.Letter)
		text(k, &o.Mix)
	})
	k.products, k.origins = len(s.products), len(s.origins)
	kept(k, &s.mixes, func(f *Mix) { k.fact(f) })
	kept(k, &s.lawns, func(f **Lawn) {
		if k.w == nil {
			*f = &Lawn{}
		}
		k.fact(*f)
	})
	kept(k, &s.lawnFrom, func(date *string) { text(k, date) })
	k.texts(&s.settings)
	k.texts(&s.batches)
	if k.w == nil {
		k.follows(s)
	}
}

func (k *keptCodec) texts(p *map[string]string) {
	named(k, p, func(_ string, v *string) { text(k, v) })
}

func (k *keptCodec) product(h *ProductHistory) {
	text(k, &h.Name)
	kept(k, &h.Versions, func(f *Product) { k.fact(f) })
	kept(k, &h.Entered, k.moment)
	if k.w == nil && (len(h.Versions) == 0 || len(h.Versions) != len(h.Entered)) {
		k.r.fail("a product has %d versions and %d times", len(h.Versions), len(h.Entered))
	}
}

// follows makes again what follows from what was read.
func (k *keptCodec) follows(s *state) {
	s.productAt, s.lawnAt = make(map[string]int, len(s.products)), make(map[string]int, len(s.lawns))
	for i := range s.products {
		s.productAt[s.products[i].Name] = i
	}
	for i, l := range s.lawns {
		s.lawnAt[l.LawnName] = i
	}
	if len(s.productAt) != len(s.products) || len(s.lawnAt) != len(s.lawns) || len(s.lawnFrom) != len(s.lawns) || len(s.origins) == 0 {
		k.r.fail("lawns, products or origins do not agree")
	}
	s.fit()
	s.plumbing = &fluid.Plumbing{Outside: fluid.Accounts{}}
}

// zones keeps the history of all zones. The texts come before it, so it is packed by itself first.
func (k *keptCodec) zones(s *state) {
	if k.w == nil {
		k.readZones(s)
		return
	}
	out := k.w
	k.w = &binaryWriter{}
	kept(k, &s.history, func(zones *[]zoneHistory) {
		kept(k, zones, func(z *zoneHistory) {
			text(k, &z.zone)
			text(k, &z.from)
			in := &binaryWriter{}
			k.history.pack(in, z)
			k.w.str(string(in.b))
		})
	})
	in := k.w.b
	k.w = out
	kept(k, &k.history.texts, func(t *string) { text(k, t) })
	k.w.b = append(k.w.b, in...)
}

// readZones leaves what was packed as it is.
func (k *keptCodec) readZones(s *state) {
	of := &packedNames{versions: make([]int32, len(s.products))}
	kept(k, &of.texts, func(t *string) { text(k, t) })
	for i := range s.products {
		of.versions[i] = int32(len(s.products[i].Versions))
	}
	kept(k, &s.history, func(zones *[]zoneHistory) {
		kept(k, zones, func(z *zoneHistory) {
			text(k, &z.zone)
			text(k, &z.from)
			n := k.r.count()
			z.older = packed{k.r.b[:n:n], of}
			k.r.b = k.r.b[n:]
		})
	})
	if len(s.history) > len(s.lawns) {
		k.r.fail("there is a history of %d lawns, and there are %d", len(s.history), len(s.lawns))
	}
}
