package check

import (
	"strings"
	"testing"
	"time"

	"example.com/tintline/core"
	"example.com/tintline/core/tally"
)

// at reads a moment in a zone with its rules.
func at(t *testing.T, zone *time.Location, text string) core.Moment {
	t.Helper()
	when, err := time.ParseInLocation("2006-01-02 15:04", text, zone)
	if err != nil {
		t.Fatal(err)
	}
	return core.At(when)
}

func chicago(t *testing.T) *time.Location {
	t.Helper()
	zone, err := time.LoadLocation("America/Chicago")
	if err != nil {
		t.Skip("this machine has no table of time zones: ", err)
	}
	return zone
}

// enter logs facts at a time and returns the entries.
func enter(t *testing.T, b *core.Book, when core.Moment, facts ...core.Fact) []core.Entry {
	t.Helper()
	es, err := b.Prepare("clock", when, facts...)
	if err != nil {
		t.Fatalf("%s: %v", when, err)
	}
	for _, e := range es {
		if err := b.Apply(e); err != nil {
			t.Fatal(err)
		}
	}
	return es
}

// atWork is a book with the day open at Alder and the hose full of what suits it.
func atWork(t *testing.T, when core.Moment) *core.Book {
	t.Helper()
	b := play(t, loadedLines+hoseOf("a"))
	if b.Day().Open {
		enter(t, b, b.LastAt(), &core.DayClosed{})
	}
	enter(t, b, when, &core.DayOpened{Date: when.Date(), Operator: "R. Example", Route: []string{"Alder"}}, &core.VisitBegun{Lawn: "Alder"})
	return b
}

// TestClockBack: a step back is asked about where it is more than the setting allows, once; the entries keep their order
// and count for the day that is open.
func TestClockBack(t *testing.T) {
	zone := chicago(t)
	morning := at(t, zone, "2026-07-14 09:42")
	spray := &core.Sprayed{Lawn: "Alder", Zones: []string{"front"}, Applicator: "gun", By: "area"}
	for _, one := range []struct {
		name, now string
		asks      bool
	}{
		{"a minute", "2026-07-14 09:41", false},
		{"five minutes", "2026-07-14 09:37", false},
		{"six minutes", "2026-07-14 09:36", true},
		{"a day", "2026-07-13 09:42", true},
		{"a year", "2025-07-14 09:42", true},
		{"a dead battery", "1970-01-01 00:03", true},
		{"ahead", "2026-07-14 11:00", false},
	} {
		t.Run(one.name, func(t *testing.T) {
			b := atWork(t, morning)
			seq, now := b.Seq(), at(t, zone, one.now)
			what, do, back := ClockBack(b, now)
			if back != one.asks || back && (!strings.Contains(what, now.Date()) || !strings.Contains(what, "2026-07-14 09:42") || !strings.Contains(do, "counts for 2026-07-14")) {
				t.Errorf("%v %q %q", back, what, do)
			}
			if p := Propose(b, Intent{At: now}); p.Act == ActOpenDay {
				t.Errorf("proposes %q", p.Words)
			}
			es := enter(t, b, now, spray)
			if _, _, again := ClockBack(b, now); again || es[0].Seq != seq+1 || es[0].At != now {
				t.Errorf("asked again: %v; entry %d at %s", again, es[0].Seq, es[0].At)
			}
			if d := b.Day(); d.Date != "2026-07-14" || !d.Open {
				t.Errorf("the day is %s", d.Date)
			}
			s := tally.Close(b, core.Maybe[core.Moment]{})
			if s.From != "2026-07-14" || s.To != "2026-07-14" || s.Volume == 0 {
				t.Errorf("%s to %s: %s", s.From, s.To, s.Volume.Text())
			}
			if s.Seconds < 0 {
				t.Errorf("the day lasted %d s", s.Seconds)
			}
		})
	}
}

// TestClosedAndTheClockIsBack: no day can be opened before the last one; what to do is said.
func TestClosedAndTheClockIsBack(t *testing.T) {
	zone := chicago(t)
	b := atWork(t, at(t, zone, "2026-07-14 07:00"))
	enter(t, b, at(t, zone, "2026-07-14 16:00"), &core.VisitDone{Lawn: "Alder"}, &core.DayClosed{})
	for now, says := range map[string]string{
		"1970-01-01 00:03": "The clock says 1970-01-01, before 2026-07-14",
		"2026-07-13 23:59": "The clock says 2026-07-13, before 2026-07-14",
		"2026-07-14 18:00": "2026-07-14 is closed",
	} {
		if p := Propose(b, Intent{At: at(t, zone, now)}); p.Act != ActNone || !strings.Contains(p.Why, says) {
			t.Errorf("%s: %s, %q", now, p.Act, p.Why)
		}
	}
	if p := Propose(b, Intent{At: at(t, zone, "2026-07-15 06:30")}); p.Act != ActOpenDay || p.Words != "open 2026-07-15" {
		t.Errorf("%s %q", p.Act, p.Words)
	}
}

// TestDatesTurn: midnight, a leap day, the end of a year and both changes of the clock with a day open. Enter proposes the
// next date, what was laid stays with the day that was open, the offset stands in the entry, and the seconds are those
// that passed.
func TestDatesTurn(t *testing.T) {
	zone := chicago(t)
	for _, one := range []struct {
		name, opened, last, next string
		seconds                  int64 // from opened to last
		offset                   int32 // at last
	}{
		{"midnight", "2026-06-28 18:00", "2026-06-29 00:20", "2026-06-29", 6*3600 + 20*60, -5 * 3600},
		{"leap day", "2028-02-28 20:00", "2028-02-29 00:30", "2028-02-29", 4*3600 + 1800, -6 * 3600},
		{"after the leap day", "2028-02-29 20:00", "2028-03-01 00:30", "2028-03-01", 4*3600 + 1800, -6 * 3600},
		{"no leap day", "2027-02-28 20:00", "2027-03-01 00:30", "2027-03-01", 4*3600 + 1800, -6 * 3600},
		{"year's end", "2026-12-31 20:00", "2027-01-01 00:30", "2027-01-01", 4*3600 + 1800, -6 * 3600},
		{"spring forward", "2027-03-13 23:00", "2027-03-14 03:30", "2027-03-14", 3*3600 + 1800, -5 * 3600},
		{"autumn back", "2026-10-31 23:00", "2026-11-01 03:30", "2026-11-01", 5*3600 + 1800, -6 * 3600},
	} {
		t.Run(one.name, func(t *testing.T) {
			opened, last := at(t, zone, one.opened), at(t, zone, one.last)
			b := atWork(t, opened)
			if p := Propose(b, Intent{At: last}); p.Act != ActOpenDay || !strings.Contains(p.Words, "open "+one.next+"; "+opened.Date()+" was not closed") {
				t.Errorf("proposes %s %q", p.Act, p.Words)
			}
			if what, _, back := ClockBack(b, last); back {
				t.Error(what)
			}
			es := enter(t, b, last, &core.Sprayed{Lawn: "Alder", Zones: []string{"front"}, Applicator: "gun", By: "area"})
			if es[0].At.Offset != one.offset {
				t.Errorf("the offset is %d", es[0].At.Offset)
			}
			s := tally.Close(b, core.Maybe[core.Moment]{})
			if s.From != opened.Date() || s.Volume == 0 || s.Seconds != one.seconds {
				t.Errorf("%s: %s in %d s, want %d s", s.From, s.Volume.Text(), s.Seconds, one.seconds)
			}
			p := Propose(b, Intent{At: last})
			enter(t, b, last, p.Facts...)
			if d := b.Day(); d.Date != one.next || d.LeftOpen != opened.Date() || d.Opened != last {
				t.Errorf("the day is %s, left open %q", d.Date, d.LeftOpen)
			}
			if s := tally.Close(b, core.Maybe[core.Moment]{}); s.From != one.next || s.Volume != 0 {
				t.Errorf("the new day begins with %s on %s", s.Volume.Text(), s.From)
			}
		})
	}
}

// TestTheHourThatIsLivedTwice: in autumn the clock on the wall goes back by an hour. Time does not: nothing is asked.
func TestTheHourThatIsLivedTwice(t *testing.T) {
	zone := chicago(t)
	b := atWork(t, at(t, zone, "2026-10-31 22:00"))
	before := time.Date(2026, 11, 1, 6, 50, 0, 0, time.UTC).In(zone) // 01:50 in summer time
	after := before.Add(20 * time.Minute)                            // 01:10 in winter time
	enter(t, b, core.At(before), &core.Noted{Lawn: "Alder", Text: "x"})
	if what, _, back := ClockBack(b, core.At(after)); back || core.At(after).Clock() != "01:10" || core.At(before).Clock() != "01:50" {
		t.Errorf("%v %s, %s to %s", back, what, core.At(before).Clock(), core.At(after).Clock())
	}
}
