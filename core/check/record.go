package check

// recordUnchecked names what keeps the record of what goes down from being complete.
func recordUnchecked(s *situation) []string {
	var out []string
	for _, k := range append(s.products(), s.dryKeys()...) {
		p := s.b.ProductByKey(k)
		if why := p.Label.OffRecord(); why != "" {
			out = append(out, p.ProductName+": "+why)
		}
	}
	return out
}
