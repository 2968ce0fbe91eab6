package check

import "example.com/tintline/core"

// saidToday tells whether a note was shown at a lawn today already that is done now: it began to hold at since, and mattered
// there. Such a note is said once a day, at the first lawn for which it matters, and stands on pages and in status beside
// that: what stands on every lawn is not read any more.
func (s *situation) saidToday(since core.Moment, matters func(*core.Lawn) bool) bool {
	d := s.b.Day()
	for i := range d.Visits {
		v := &d.Visits[i]
		if v.State != core.Done || v.Begun.Unix < since.Unix || !s.drawnAt(v) {
			continue
		}
		if l := s.b.Lawn(v.Lawn); l != nil && matters(l) {
			return true
		}
	}
	return false
}

// drawnAt tells whether something was sprayed through a hose on a visit.
func (s *situation) drawnAt(v *core.Visit) bool {
	for _, l := range s.b.Day().LaidAt(v) {
		if !l.Dry && s.b.Plumbing().Tank(l.Applicator) == nil {
			return true
		}
	}
	return false
}

// saidSince tells whether a visit of today at which something was drawn ended after that: a note that held then was shown.
func (s *situation) saidSince(at core.Moment) bool {
	d := s.b.Day()
	for i := range d.Visits {
		if v := &d.Visits[i]; v.State == core.Done && v.Ended.Unix >= at.Unix && s.drawnAt(v) {
			return true
		}
	}
	return false
}

func later(m core.Moment, minutes float64) core.Moment {
	m.Unix += int64(60 * minutes)
	return m
}

// when is a moment as the operator reads it: the time of day, with the date where that is another.
func when(at, now core.Moment) string {
	if at.Date() == now.Date() {
		return at.Clock()
	}
	return at.Date() + " " + at.Clock()
}
