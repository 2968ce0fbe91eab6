package check

// datesRule: the restricted dates and the phosphorus rule of the operator's place.
func datesRule(s *situation) []Finding { return nil }

func datesUnchecked(s *situation) []string { return nil }
