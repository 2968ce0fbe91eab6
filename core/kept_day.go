package core

import "example.com/tintline/core/measure"

func (k *keptCodec) day(d *Day) {
	k.yes(&d.Open)
	text(k, &d.Date)
	whole(k, &d.Seq)
	whole(k, &d.Before)
	text(k, &d.BeforeDate)
	text(k, &d.Operator)
	whole(k, &d.FlowModel)
	text(k, &d.LeftOpen)
	k.moment(&d.Opened)
	k.moment(&d.Closed)
	k.moment(&d.Last)
	there(k, &d.Hold, func(h *Hold) {
		text(k, &h.Cause)
		k.moment(&h.Since)
	})
	kept(k, &d.Visits, k.visit)
	kept(k, &d.Laid, k.laid)
	kept(k, &d.Readings, func(r *Reading) {
		whole(k, &r.Letter)
		whole(k, &r.Read)
		whole(k, &r.Booked)
		k.moment(&r.At)
	})
	kept(k, &d.Spans, k.span)
	kept(k, &d.Shown, k.shown)
	text(k, &d.Overnight)
	kept(k, &d.Looked, func(w *WeatherAt) {
		k.fact(&w.Weather)
		k.moment(&w.At)
	})
	kept(k, &d.Recorded, func(f *Recorded) { k.fact(f) })
	kept(k, &d.Reasons, func(r *Reasoned) {
		whole(k, &r.Seq)
		k.fact(&r.What)
	})
}

func (k *keptCodec) loadMark(m *LoadMark) {
	whole(k, &m.Seq)
	k.moment(&m.At)
	text(k, &m.Place)
	whole(k, &m.Before)
	kept(k, &m.Lawns, func(lawn *string) { text(k, lawn) })
}

func (k *keptCodec) span(s *LevelSpan) {
	whole(k, &s.Letter)
	text(k, &s.By)
	k.moment(&s.Since)
	whole(k, &s.First)
	whole(k, &s.Was)
}

func (k *keptCodec) shown(s *Shown) {
	k.span(&s.LevelSpan)
	k.moment(&s.At)
	whole(k, &s.To)
	for _, v := range []*measure.Volume{&s.Off, &s.Drawn, &s.Earlier, &s.Band, &s.BandBefore, &s.Trued.V} {
		whole(k, v)
	}
	k.yes(&s.Trued.Known)
}

func (k *keptCodec) visit(v *Visit) {
	text(k, &v.Lawn)
	text(k, &v.State)
	text(k, &v.Kind)
	text(k, &v.Cause)
	text(k, &v.Reason)
	k.moment(&v.Begun)
	k.moment(&v.Ended)
	kept(k, &v.Due, k.rest)
	kept(k, &v.Carried, func(zone *string) { text(k, zone) })
	whole(k, &v.begun)
	whole(k, &v.ended)
	whole(k, &v.before)
	text(k, &v.dueSince)
	k.yes(&v.Price.Known)
	whole(k, &v.Price.V)
}

func (k *keptCodec) rest(z *ZoneRest) {
	text(k, &z.Zone)
	whole(k, &z.Area)
}

func (k *keptCodec) laid(l *Laid) {
	whole(k, &l.Seq)
	k.moment(&l.At)
	text(k, &l.Lawn)
	text(k, &l.Zone)
	text(k, &l.Grass)
	text(k, &l.Applicator)
	whole(k, &l.Volume)
	whole(k, &l.Area)
	k.from(&l.From)
	k.holds(&l.Holds)
	kept(k, &l.Versions, func(v *int32) { whole(k, v) })
	if k.w == nil && len(l.Versions) != len(l.Holds) {
		k.r.fail("a treatment holds %d products of %d versions", len(l.Holds), len(l.Versions))
	}
	k.yes(&l.Dry)
	text(k, &l.By)
	kept(k, &l.Drew, func(d *Drew) {
		whole(k, &d.Letter)
		whole(k, &d.Volume)
	})
	k.loadMark(&l.Load)
}

func (k *keptCodec) owed(o *Owed) {
	text(k, &o.Lawn)
	kept(k, &o.Zones, k.rest)
	text(k, &o.Reason)
	text(k, &o.Since)
	text(k, &o.Until)
}
