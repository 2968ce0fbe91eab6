package tui

// placeOn is where one is on a page.
type placeOn struct {
	chosen string // the id of a row
	top    int    // the first row in sight
	rows   int    // how many there is room for
	text   bool   // the rows were moved without another one being chosen: they stay so
}

// moved moves the choice by so many rows that can be chosen. Where the next one is too far off to come into sight by
// that, the rows move instead: text between, before and behind can be read to its end.
func (m *Model) moved(by int) {
	at, ids := &m.on[m.spec().page], m.picks()
	if far := max(at.rows-3, 1); by > far || by < -far { // the first and the last row may say that there is more, the keys may take one
		by = far * sign(by)
	}
	if len(ids) > 0 {
		now := m.passed(at, ids, by)
		next := min(max(now+by, 0), len(ids)-1)
		for next != now && !m.reaches(at, ids[next], by) { // a page down is as far as one can see, not as many rows
			next -= sign(by)
		}
		if next != now {
			at.chosen, at.text = ids[next], false
			return
		}
	}
	at.top = max(min(at.top+by, len(m.sheet.rows)-at.rows), 0)
	at.text = true
}

// passed is the place of the choice among the ids, or of the last one that went out of sight on the way.
func (m *Model) passed(at *placeOn, ids []string, by int) int {
	now := m.chosenAt(ids)
	for by > 0 && now+1 < len(ids) && m.rowOf(ids[now+1]) <= at.top && at.top > 0 {
		now++
	}
	for by < 0 && now > 0 && m.rowOf(ids[now-1]) >= at.top+at.rows-1 {
		now--
	}
	return now
}

// chooseRow makes a row the one chosen, and brings it into sight.
func (m *Model) chooseRow(p page, id string) {
	m.on[p].chosen, m.on[p].text = id, false
}

// reaches tells whether a row can be chosen without the rows moving by more than so many, so that none goes by unseen.
func (m *Model) reaches(at *placeOn, id string, by int) bool {
	then := *at
	then.chosen, then.text = id, false
	m.inSight(&then)
	if by > 0 {
		return then.top <= at.top+by
	}
	return then.top >= at.top+by
}

func sign(n int) int {
	if n < 0 {
		return -1
	}
	return 1
}

func (m *Model) rowOf(id string) int {
	for i := range m.sheet.rows {
		if m.sheet.rows[i].id == id {
			return i
		}
	}
	return 0
}

// inSight moves the rows so that the one chosen can be seen, with one above and one below, which may say that there
// is more. At the first and the last that can be chosen, the text before and behind it comes into sight.
func (m *Model) inSight(at *placeOn) {
	ids, chosen := m.picks(), at.chosen
	if len(ids) == 0 || at.text {
		return
	}
	if !hasID(ids, chosen) {
		chosen = ids[0]
	}
	i := m.rowOf(chosen)
	at.top = max(min(at.top, i-1), i-at.rows+2)
	if chosen == ids[0] {
		at.top = min(at.top, max(i-at.rows+2, 0))
	}
	if chosen == ids[len(ids)-1] {
		at.top = max(at.top, min(i-1, len(m.sheet.rows)-at.rows))
	}
}

func hasID(ids []string, id string) bool {
	for _, i := range ids {
		if i == id {
			return true
		}
	}
	return false
}
