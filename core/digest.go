package core

import (
	"crypto/sha256"
	"sort"

	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
)

// StateDigest is a digest of what the book says, without numbers, times and journal: equal states give
// equal digests.
func (s *state) StateDigest() Digest {
	w := &binaryWriter{}
	facts := func(f Fact) {
		w.count(int(f.Kind()))
		w.factFields(f)
	}
	w.yes(s.entered != nil)
	if s.entered != nil {
		facts(s.entered)
	}
	w.count(len(s.products))
	for i := range s.products {
		w.count(len(s.products[i].Versions))
		for j := range s.products[i].Versions {
			facts(&s.products[i].Versions[j])
		}
	}
	w.count(len(s.mixes))
	for i := range s.mixes {
		facts(&s.mixes[i])
	}
	w.count(len(s.lawns))
	for _, l := range s.lawns {
		facts(l)
	}
	w.count(len(s.overrides))
	for i := range s.overrides {
		facts(&s.overrides[i])
	}
	w.yes(s.weather != nil)
	if s.weather != nil {
		facts(&s.weather.Weather)
	}
	if w.yes(s.tint != nil); s.tint != nil {
		facts(s.tint)
	}
	w.words(1, "", &s.settings)
	w.words(2, "", &s.batches)
	w.words(3, "", &s.fitted)
	s.digestPlumbing(w)
	s.digestDay(w)
	s.digestLoads(w)
	s.digestPlan(w)
	if len(s.missed) > 0 {
		w.str("missed")
		w.count(len(s.missed))
		for i := range s.missed {
			w.factFields(&s.missed[i])
		}
	}
	s.digestRoute(w)
	s.digestGrass(w)
	s.digestGauges(w)
	s.digestLearned(w)
	s.digestCalibrated(w)
	s.digestHung(w)
	s.digestEvening(w)
	s.digestNotices(w)
	return cut(w.b)
}

func cut(b []byte) Digest {
	sum := sha256.Sum256(b)
	var d Digest
	copy(d[:], sum[:])
	return d
}

func (w *binaryWriter) yes(b bool) {
	if b {
		w.count(1)
	} else {
		w.count(0)
	}
}

func (w *binaryWriter) parts(p fluid.Parts) {
	w.count(len(p))
	for _, q := range p {
		w.count(int(q.Key))
		w.int(q.N)
	}
}

func (w *binaryWriter) liquid(l fluid.Liquid) {
	w.int(int64(l.Volume))
	w.parts(l.From)
	w.parts(l.Holds)
}

func (s *state) digestPlumbing(w *binaryWriter) {
	p := s.plumbing
	tank := func(t *fluid.Tank) {
		w.liquid(t.Liquid)
		w.int(int64(t.Moved))
		w.int(int64(t.Origin))
		for _, v := range []int64{int64(t.Flows.Start), int64(t.Flows.Loaded), int64(t.Flows.PushedIn), int64(t.Flows.Drawn), int64(t.Flows.Other), int64(t.Flows.Unexplained)} {
			w.int(v)
		}
	}
	for i := range p.Compartments {
		tank(&p.Compartments[i].Tank)
	}
	for i := range p.Tanks {
		tank(&p.Tanks[i].Tank)
	}
	w.liquid(p.Cell.Liquid)
	w.liquid(p.Return.Liquid)
	for i := range p.Hoses {
		w.count(len(p.Hoses[i].Charge))
		for _, c := range p.Hoses[i].Charge {
			w.int(int64(c.Air))
			w.liquid(c.Liquid)
		}
	}
	w.str(string(p.LineUp.Supply))
	w.count(int(p.LineUp.Return))
	w.yes(p.Return.Swept)
	for _, pl := range p.Outside.Places() {
		if l := p.Outside[pl]; !l.Empty() { // an account that came back to nothing says nothing
			w.str(string(pl))
			w.liquid(l)
		}
	}
	s.digestHoppers(w)
	if len(p.Return.Charge) > 0 { // only a bypass that was reckoned parts it
		w.str("return line")
		w.count(len(p.Return.Charge))
		for _, l := range p.Return.Charge {
			w.liquid(l)
		}
	}
	w.count(len(s.origins))
	for _, o := range s.origins {
		w.count(int(o.Letter))
		w.str(o.Mix)
	}
}

// digestHoppers says nothing of a rig without any, so that older books keep their digest.
func (s *state) digestHoppers(w *binaryWriter) {
	for i := range s.plumbing.Hoppers {
		h := &s.plumbing.Hoppers[i]
		w.str(h.Name)
		w.parts(h.Holds)
		for _, m := range []measure.Mass{h.Flows.Start, h.Flows.Loaded, h.Flows.Spread, h.Flows.Other} {
			w.int(int64(m))
		}
	}
}

func (s *state) digestDay(w *binaryWriter) {
	d := &s.day
	w.str(d.Date)
	w.str(d.Operator)
	w.str(d.Overnight)
	w.yes(d.Open)
	w.str(d.LeftOpen)
	w.int(d.FlowModel)
	w.count(len(d.Visits))
	for _, v := range d.Visits {
		w.str(v.Lawn)
		w.str(v.State)
		w.str(v.Reason)
	}
	w.count(len(d.Laid))
	for _, l := range d.Laid {
		for _, t := range []string{l.Lawn, l.Zone, l.Grass, l.Applicator} {
			w.str(t)
		}
		w.int(int64(l.Area))
		w.liquid(fluid.Liquid{Volume: l.Volume, From: l.From, Holds: l.Holds})
	}
	w.count(len(d.Readings))
	for _, r := range d.Readings {
		w.count(int(r.Letter))
		w.int(int64(r.Read))
		w.int(int64(r.Booked))
	}
	for _, t := range d.Shown {
		if t.Trued.Known {
			w.str("trued up")
			w.count(int(t.Letter))
			w.int(int64(t.Trued.V))
		}
	}
	for _, v := range d.Visits {
		if v.Price.Known {
			w.str("charged " + v.Lawn)
			w.int(int64(v.Price.V))
		}
	}
	for i := range d.Recorded {
		w.str("recorded")
		w.factFields(&d.Recorded[i])
	}
}

// AccountsDigest is a digest of all accounts, place by place.
func (s *state) AccountsDigest() Digest {
	w := &binaryWriter{}
	all := s.plumbing.Accounts()
	sort.SliceStable(all, func(i, j int) bool { return all[i].Place < all[j].Place })
	for _, a := range all {
		if a.Volume == 0 && len(a.Products) == 0 {
			continue
		}
		w.str(string(a.Place))
		w.int(int64(a.Volume))
		w.parts(a.Products)
	}
	return cut(w.b)
}
