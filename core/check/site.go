package check

// siteRule: what lies in or beside the zone: water, food plants, roots, bloom, seed.
func siteRule(s *situation) []Finding { return nil }

func siteUnchecked(s *situation) []string { return nil }
