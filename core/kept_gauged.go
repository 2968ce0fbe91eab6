package core

// gauged keeps what readings of gauges have shown.
func (k *keptCodec) gauged(g *gauged) {
	whole(k, &g.days)
	kept(k, &g.tanks, func(t *gaugedTank) {
		whole(k, &t.letter)
		k.yes(&t.begun)
		whole(k, &t.loads)
		kept(k, &t.draws, func(d *gaugedDraw) {
			text(k, &d.applicator)
			figure(k, &d.delivery)
			whole(k, &d.volume)
			figure(k, &d.squares)
		})
	})
	kept(k, &g.factors, func(f *gaugedFactor) {
		text(k, &f.applicator)
		figure(k, &f.delivery)
		whole(k, &f.n)
		whole(k, &f.odd)
		whole(k, &f.day)
	})
	kept(k, &g.mean, func(f *float64) { figure(k, f) })
	kept(k, &g.cov, func(row *[]float64) {
		kept(k, row, func(f *float64) { figure(k, f) })
		if k.w == nil && len(*row) != len(g.mean) {
			k.r.fail("what gauges have shown is not square")
		}
	})
	if k.w == nil && (len(g.mean) != len(g.tanks)+len(g.factors) || len(g.cov) != len(g.mean)) {
		k.r.fail("what gauges have shown is not of its tanks and applicators")
	}
}
