package notice

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
)

// ReadNeighbour makes a neighbour of a lawn of a line of text: the name, then, in any order and each behind a comma, a phone, a distance
// ("40 ft"), hours ahead ("12 to 72 h" or "24 h"), "until 2026-12-31", "register" for one on the state's register, "calls 2"; what
// is none of these is the note. Hours and calls that a register's rule of the state has are filled in. The error is a Problem.
func ReadNeighbour(b *core.Book, lawn, line string) (*core.Neighbour, error) {
	parts := strings.Split(line, ",")
	f := &core.Neighbour{Lawn: lawn, NeighbourName: strings.TrimSpace(parts[0]), Register: core.OwnRequest}
	calls := false
	for _, p := range parts[1:] {
		p = strings.TrimSpace(p)
		word, rest, _ := strings.Cut(p, " ")
		switch lower := strings.ToLower(word); {
		case p == "":
		case lower == "register":
			f.Register = core.StateRegister
		case lower == "gone":
			f.Gone = label.Yes
		case lower == "until":
			if _, err := time.Parse(time.DateOnly, rest); err != nil {
				return nil, problem("Write it as in until 2026-12-31.", "%q is not a date.", rest)
			}
			f.Until = rest
		case lower == "calls":
			n, err := strconv.ParseInt(rest, 10, 64)
			if err != nil {
				return nil, problem("Write it as in calls 2.", "%q is no number of calls.", rest)
			}
			f.Calls, calls = n, true
		case strings.HasSuffix(p, " ft"):
			v, err := strconv.ParseFloat(strings.TrimSpace(strings.TrimSuffix(p, "ft")), 64)
			if err != nil {
				return nil, problem("Write it as in 40 ft.", "%q is no distance.", p)
			}
			f.Feet = core.Known(v)
		case strings.HasSuffix(p, " h"):
			if err := readAhead(f, strings.TrimSpace(strings.TrimSuffix(p, "h"))); err != nil {
				return nil, err
			}
		case f.Phone == "" && isPhone(p):
			f.Phone = p
		case f.Note == "":
			f.Note = p
		default:
			f.Note += ", " + p
		}
	}
	if rule := RuleOf(stateOf(b), core.ToldNeighbour); rule != nil && f.Register == core.StateRegister && f.Gone == "" {
		if !f.HoursLeast.Known && !f.HoursMost.Known {
			f.HoursLeast, f.HoursMost = rule.HoursLeast, rule.HoursMost
		}
		if !calls {
			f.Calls = rule.Calls
		}
	}
	return f, nil
}

func problem(do, format string, args ...any) error {
	return &core.Problem{What: fmt.Sprintf(format, args...), Do: do, Err: core.ErrRefused}
}

func readAhead(f *core.Neighbour, s string) error {
	least, most, both := strings.Cut(strings.ReplaceAll(s, "-", " to "), " to ")
	for _, h := range []struct {
		text string
		to   *core.Maybe[float64]
	}{{least, &f.HoursLeast}, {most, &f.HoursMost}} {
		if !both && h.to == &f.HoursMost {
			break
		}
		v, err := strconv.ParseFloat(strings.TrimSpace(h.text), 64)
		if err != nil {
			return problem("Write it as in 12 to 72 h.", "%q is no number of hours.", strings.TrimSpace(h.text))
		}
		*h.to = core.Known(v)
	}
	return nil
}

// isPhone tells whether a text is digits with what stands between them, seven or more.
func isPhone(s string) bool {
	n := 0
	for _, r := range s {
		switch {
		case r >= '0' && r <= '9':
			n++
		case !strings.ContainsRune(" +-().", r):
			return false
		}
	}
	return n >= 7
}

// ContactHint is what may be typed of a contact.
const ContactHint = "paper, phone, text, mail, email, person or note; then failed, and a note: phone failed"

var ways = []struct{ word, how string }{
	{"paper", core.ByPaper},
	{"phone", core.ByPhone},
	{"call", core.ByPhone},
	{"text", core.ByText},
	{"mail", core.ByMail},
	{"email", core.ByEmail},
	{"e-mail", core.ByEmail},
	{"person", core.InPerson},
	{"note", core.ByDoorNote},
}

// ReadContact makes a contact of a line of text: how, whether it failed, and a note. What it is about is taken from f. The error is a
// Problem.
func ReadContact(f core.Told, line string) (*core.Told, error) {
	f.How, f.Result, f.Given = "", core.ToldReached, nil
	for _, w := range strings.Fields(line) {
		lower := strings.ToLower(w)
		switch {
		case f.How == "":
			for _, way := range ways {
				if way.word == lower {
					f.How = way.how
				}
			}
			if f.How == "" {
				return nil, problem("Begin with paper, phone, text, mail, email, person or note.", "%q is no way of a contact.", w)
			}
		case lower == "failed" && f.Note == "":
			f.Result = core.ToldFailed
		case f.Note == "":
			f.Note = w
		default:
			f.Note += " " + w
		}
	}
	if f.How == "" {
		return nil, problem("Begin with paper, phone, text, mail, email, person or note.", "How the contact was made is not said.")
	}
	return &f, nil
}
