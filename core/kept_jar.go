package core

// mixing keeps what jars came to, what is marked as not to be mixed, and which products met in a load; and where the last was made.
func (k *keptCodec) mixing(s *state) {
	jars := func(list *[]Jar) {
		kept(k, list, func(j *Jar) {
			kept(k, &j.Products, func(p *string) { text(k, p) })
			text(k, &j.Result)
			kept(k, &j.Signs, func(p *string) { text(k, p) })
			text(k, &j.Note)
			text(k, &j.Date)
		})
	}
	text(k, &s.filledAt.Place)
	k.yes(&s.filledAt.Meter.Known)
	whole(k, &s.filledAt.Meter.V)
	jars(&s.jars)
	jars(&s.unmixed)
	kept(k, &s.met, func(m *pairMet) {
		whole(k, &m.A)
		whole(k, &m.B)
	})
}
