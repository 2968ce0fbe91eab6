package check

// traceRule: what reaches a grass only as residue of another mix, by its share of the lowest label rate.
func traceRule(s *situation) []Finding { return nil }
