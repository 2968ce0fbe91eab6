package core

// digestPlan says nothing of a book without a plan of a day, so that older books keep their digest.
func (s *state) digestPlan(w *binaryWriter) {
	if s.planned == nil {
		return
	}
	w.str("planned")
	w.factFields(s.planned)
}
