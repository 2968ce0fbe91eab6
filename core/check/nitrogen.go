package check

// nitrogenRule: pounds of nitrogen in this visit and in the year, against the reference.
func nitrogenRule(s *situation) []Finding { return nil }
