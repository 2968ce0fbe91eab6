package check

// intervalRule: how long since the product last went there, against the label entry.
func intervalRule(s *situation) []Finding { return nil }
