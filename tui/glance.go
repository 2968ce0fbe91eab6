package tui

import (
	"example.com/tintline/core"
	"example.com/tintline/core/check"
)

// answers are what core and check say about the book now. They are asked when book, minute or choice change,
// never while drawing.
type answers struct {
	key      answersKey
	lawn     string // of the visit now, else the next one planned
	visiting bool
	report   check.Report
	err      error // why there is no report
	change   *check.Changeover
	next     check.Proposal
	fits     []byte
	left     []string        // zones of the visit that had nothing yet
	rest     []core.ZoneRest // what the visit has still to do, with areas
	last     []core.Entry
}

type answersKey struct {
	known  bool
	seq    uint64
	digest core.Digest
	minute int64
	with   string
	only   string
}

// look asks anew if what was asked before no longer holds.
func (m *Model) look() {
	const minute = 60
	k := answersKey{true, m.book.Seq(), m.book.Digest(), m.at.Unix() / minute, m.with, m.only}
	if m.got.key == k {
		return
	}
	a := answers{key: k, lawn: check.Subject(m.book), visiting: m.book.Day().Visiting() != nil}
	in := check.Intent{With: m.with, Only: m.only, At: core.At(m.at)}
	a.next = check.Propose(m.book, in)
	a.last, a.rest = lastAction(m.book), check.RestOf(m.book)
	if a.lawn != "" && m.book.Rig() != nil {
		a.fits = check.Fits(m.book, a.lawn)
		in = check.Likely(m.book, in)
		a.left = in.Zones
		if !a.visiting || len(in.Zones) > 0 {
			a.report, a.change, a.err = check.BeforeAndClean(m.book, in)
		}
	}
	before, had := m.toAnswer()
	m.got = a
	if after, has := m.toAnswer(); has && (!had || !sameFinding(before, after)) {
		m.asked = m.at
	}
}

func sameFinding(a, b check.Finding) bool {
	return a.Rule == b.Rule && a.Product == b.Product && a.Weight == b.Weight && a.Part == b.Part && a.About == b.About && joined(a.Zones) == joined(b.Zones)
}

// toAnswer is the finding that key y answers: the heaviest that stands. Answers count for the visit now, so
// there is none on the road.
func (m *Model) toAnswer() (check.Finding, bool) {
	if !m.got.visiting || m.book.Day().Hold != nil {
		return check.Finding{}, false
	}
	for _, f := range m.got.report.Findings {
		if f.Weight >= check.Ask && f.Reason == "" {
			return f, true
		}
	}
	return check.Finding{}, false
}

// applicators lists those of the rig.
func (m *Model) applicators() []string {
	if m.book.Rig() == nil {
		return nil
	}
	var out []string
	for _, a := range m.book.Rig().Applicators {
		out = append(out, a.Name)
	}
	return out
}

// applicator is the one chosen, nil if the rig has none that sprays.
func (m *Model) applicator() *core.Applicator {
	name := m.with
	if name == "" {
		name = check.FirstApplicator(m.book)
	}
	return m.book.Applicator(name)
}

// lastAction lists the entries that u would strike: the last one, with those that were written together with
// it. What sets the book up is not struck from the cab.
func lastAction(b *core.Book) []core.Entry {
	const together = 8 // an import is not struck from here
	all := b.Since()
	if len(all) == 0 {
		return nil
	}
	from := len(all) - 1
	for from > 0 && all[from-1].Action == all[from].Action && all[from].Action != "" {
		from--
	}
	if len(all)-from > together {
		return nil
	}
	for _, e := range all[from:] {
		switch e.What.(type) {
		case *core.Rig, *core.Product, *core.Mix, *core.Lawn, *core.Setting:
			return nil
		}
	}
	return all[from:]
}
