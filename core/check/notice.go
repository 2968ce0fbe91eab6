package check

import (
	"fmt"
	"strings"

	"example.com/tintline/core"
)

const ruleNotice = "notice"

// Where it comes from that a neighbour is to be told.
const (
	registerSource = "the state's register as entered with the neighbour; local rules decide"
	requestSource  = "the neighbour's own request"
)

// Telling is how far it has come with telling a neighbour of a treatment.
type Telling struct {
	Done   *core.Contact // the contact that counts; nil: none does
	Calls  int           // calls that failed
	Tries  int           // all contacts and attempts
	Late   *core.Contact // the last that was made with less time to go than is asked for
	Early  *core.Contact // the last that was made longer before than is asked for
	Noted  *core.Contact // the last note on the door that came before enough calls had failed
	Before float64       // hours from Late or Early to the treatment
}

// Told says whether a neighbour was told of the treatment on a date that begins at a moment: by a contact within the hours that
// are asked for, and by a note on the door only after as many failed calls as are asked for.
func Told(b *core.Book, n *core.Neighbour, date string, begins core.Moment) Telling {
	var t Telling
	contacts := b.ContactsOf(n.Lawn, date, core.ToldNeighbour)
	for i := range contacts {
		c := &contacts[i]
		if c.Person != n.NeighbourName {
			continue
		}
		t.Tries++
		hours := begins.MinutesSince(c.At) / 60
		switch {
		case !c.Reached():
			if c.How == core.ByPhone {
				t.Calls++
			}
		case c.How == core.ByDoorNote && int64(t.Calls) < n.Calls:
			t.Noted = c
		case n.HoursLeast.Known && hours < n.HoursLeast.V:
			t.Late, t.Before = c, hours
		case n.HoursMost.Known && hours > n.HoursMost.V:
			t.Early, t.Before = c, hours
		default:
			t.Done = c
		}
	}
	return t
}

// somebodyToTell tells whether the lawn has anybody who is to be told: else there is nothing to ask.
func (s *situation) somebodyToTell() bool {
	return len(s.b.NeighboursOf(s.lawn.LawnName, s.today())) > 0
}

// noticeRule stops the treatment of a lawn for which somebody is to be told ahead and was not.
func noticeRule(s *situation) []Finding {
	due := s.b.NeighboursOf(s.lawn.LawnName, s.today())
	begins := s.in.At
	if v := s.b.Day().Visiting(); v != nil && v.Lawn == s.lawn.LawnName {
		begins = v.Begun
	}
	var out []Finding
	for i := range due {
		n := &due[i]
		t := Told(s.b, n, s.today(), begins)
		if t.Done != nil {
			continue
		}
		f := Finding{
			Weight: Stop, About: n.NeighbourName, Part: PartDay, Ground: GroundSetting, Source: requestSource,
			Says: t.Says(n), Do: t.do(n),
		}
		if n.Register == core.StateRegister {
			f.Source = registerSource
		}
		out = append(out, f)
	}
	return out
}

// Says is what stands against it, in one or two sentences; that somebody was told, where one contact counts.
func (t Telling) Says(n *core.Neighbour) string {
	if t.Done != nil {
		return fmt.Sprintf("%s was told at %s on %s, %s.", n.NeighbourName, t.Done.At.Clock(), t.Done.At.Date(), core.ContactWords(t.Done.How))
	}
	s := n.NeighbourName + " is to be told before this lawn is treated"
	if w := n.Ahead(); w != "" {
		s += ", " + w
	}
	var was []string
	if t.Calls > 0 {
		was = append(was, fmt.Sprintf("%d %s failed", t.Calls, plural(t.Calls, "call")))
	}
	if t.Noted != nil {
		was = append(was, fmt.Sprintf("a note on the door counts after %d failed %s", n.Calls, plural(int(n.Calls), "call")))
	}
	if c := t.Late; c != nil {
		was = append(was, fmt.Sprintf("was told only %s h ahead", hoursText(t.Before)))
	} else if c := t.Early; c != nil {
		was = append(was, fmt.Sprintf("was told %s h ahead, which is too long before", hoursText(t.Before)))
	}
	if len(was) == 0 {
		was = append(was, "was not told")
	}
	return s + "; " + strings.Join(was, ", ") + "."
}

func hoursText(h float64) string {
	return strings.TrimSuffix(fmt.Sprintf("%.1f", h), ".0")
}

// do is what to do: to tell them, or, where there is no time left for that, to come another day.
func (t Telling) do(n *core.Neighbour) string {
	if n.HoursLeast.Known && n.HoursLeast.V > 0 {
		return fmt.Sprintf("Skip the lawn today: tell %s at least %g h before another date, and log it.", n.NeighbourName, n.HoursLeast.V)
	}
	if n.Phone != "" {
		return fmt.Sprintf("Tell %s (%s) and log it under notices.", n.NeighbourName, n.Phone)
	}
	return fmt.Sprintf("Tell %s and log it under notices.", n.NeighbourName)
}
