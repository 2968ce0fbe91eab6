package label

import "strings"

// Letter is how a leave is written in a cell of a table.
func (l Leave) Letter() string { letter, _ := l.signs(); return letter }

// Word is the leave in a word or two.
func (l Leave) Word() string { _, word := l.signs(); return word }

func (l Leave) signs() (letter, word string) {
	switch l.Kind {
	case Unlisted:
		return "N", "not listed"
	case WrongState:
		return "D", "dormant only"
	case Injures:
		return "I", "injures"
	case Reduced:
		return "R", "reduced"
	}
	if !l.Backed {
		return "?", "label alone"
	}
	return "L", "listed"
}

// LeaveKey is a letter of Leave.Letter with what it means.
type LeaveKey struct{ Letter, Word, Words string }

// LeaveKeys explains the letters, the heaviest first.
func LeaveKeys() []LeaveKey {
	return []LeaveKey{
		{"N", "not listed", "the label entry does not list the grass"},
		{"D", "dormant only", "listed; the reference knows it on dormant turf only"},
		{"I", "injures", "listed; the reference calls the grass not tolerant"},
		{"R", "reduced", "listed; the reference wants a reduced rate or expects passing injury"},
		{"?", "label alone", "listed; no source that was read supports it"},
		{"L", "listed", "listed, and sources that were read support it"},
	}
}

// Words gives both grounds in one line: what the label entry says, then what the reference says.
func (l Leave) Words() string {
	if l.Kind == Unlisted {
		return "label entry does not list it"
	}
	words := "label entry lists it; reference"
	if l.Active != "" {
		words += " on " + l.Active
	}
	if l.Kind == WrongState {
		return words + ": " + l.Verdict.dormantWords()
	}
	return words + ": " + l.Verdict.Words()
}

// dormantWords says first what allows the active on dormant turf only, then what stands against it on other turf.
func (v Verdict) dormantWords() string {
	words := ""
	for i := range v.Rows {
		if v.Rows[i].Rating == OnlyDormant {
			words = v.Rows[i].says()
			break
		}
	}
	if first := &v.Rows[0]; first.Rating == NotTolerant {
		words += "; else " + first.says()
	}
	return words
}

// Words is a verdict in one line: the rating, the row that decides, and what else stands against it.
func (v Verdict) Words() string {
	if len(v.Rows) == 0 {
		return "nothing known"
	}
	words := v.Rows[0].says()
	if v.Rating == NotTolerant && v.Rows[0].Rating != NotTolerant {
		words = "not tolerant above the limit of a row: " + words
	}
	if v.Disagree {
		for i := range v.Rows[1:] {
			if r := &v.Rows[1+i]; r.read() && r.Rating != v.Rows[0].Rating {
				return words + "; sources differ: " + r.says()
			}
		}
	}
	if !v.Read() && v.Rating == RatingUnknown {
		words += "; no source was read"
	}
	return words
}

// says is a row in one line: "not tolerant (trial, J-JOHN87: severe injury)".
func (r *Row) says() string {
	ground := r.Basis + ", " + r.Source
	switch r.Basis {
	case BasisRecalled:
		ground = SourceWords(r.Source)
	case BasisNone:
		return "unknown (" + SourceWords(r.Source) + ")"
	}
	return r.Rating.String() + " (" + ground + ": " + r.Words + ")"
}

// Cite is where a row comes from, in words.
func (r *Row) Cite() string { return r.Basis + ": " + SourceWords(r.Source) }

// SourceWords is a source in words, by its id; an id that is not known as it stands.
func SourceWords(id string) string {
	s, ok := FindSource(id)
	if !ok {
		return id
	}
	return s.Words()
}

// Words is a source in words: who, and what; "recalled, not read" where nobody read one.
func (s Source) Words() string {
	words := s.Institution
	if s.URL != "" {
		words += ", " + s.Title
	}
	if s.Weak {
		words += " (weak)"
	}
	return strings.TrimPrefix(words, "journal paper, ")
}
