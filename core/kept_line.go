package core

// What the book knows of the line from the tanks to the nozzle, beside what stands in it.

func (k *keptCodec) turned(t *turned) {
	k.liquid(&t.cell)
	kept(k, &t.hoses, k.hose)
	kept(k, &t.timed, func(hose *string) { text(k, hose) })
}

// learning has as many means as there are unknowns, and their covariances.
func (k *keptCodec) learning(l *learning) {
	kept(k, &l.hoses, func(h *learnedHose) {
		text(k, &h.name)
		whole(k, &h.n)
		whole(k, &h.odd)
		figure(k, &h.flow)
	})
	k.yes(&l.cell)
	k.yes(&l.shown)
	kept(k, &l.mean, func(f *float64) { figure(k, f) })
	kept(k, &l.cov, func(row *[]float64) {
		kept(k, row, func(f *float64) { figure(k, f) })
		if k.w == nil && len(*row) != len(l.mean) {
			k.r.fail("what was learned is not square")
		}
	})
	if k.w == nil && (len(l.mean) != hoseAt(len(l.hoses)) || len(l.cov) != len(l.mean)) {
		k.r.fail("what was learned is not of its hoses")
	}
}

func (k *keptCodec) moved(m *moved) {
	for i := range m.tanks {
		k.moment(&m.tanks[i].loaded)
		k.moment(&m.tanks[i].drawn)
		k.moment(&m.tanks[i].returned)
	}
	k.moment(&m.cell)
	kept(k, &m.hoses, func(h *movedHose) {
		text(k, &h.name)
		k.moment(&h.at)
		kept(k, &h.came, func(in *inflow) {
			whole(k, &in.volume)
			k.moment(&in.at)
		})
	})
}

func (k *keptCodec) wetted(w *wetted) {
	text(k, &w.product)
	whole(k, &w.letter)
	whole(k, &w.rinsed)
	k.yes(&w.through)
	k.moment(&w.since)
}
