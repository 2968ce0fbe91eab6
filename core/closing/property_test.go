package closing

import (
	"fmt"
	"testing"

	"pgregory.net/rapid"

	"example.com/tintline/core"
)

// drawFact is something that may happen on a day; what could not have happened is refused.
func drawFact(t *rapid.T) string {
	n := rapid.IntRange(1, 30).Draw(t, "n")
	letter := rapid.SampledFrom([]string{"a", "b"}).Draw(t, "letter")
	lawn := rapid.SampledFrom([]string{"1 Oak", "2 Oak"}).Draw(t, "lawn")
	switch rapid.IntRange(0, 10).Draw(t, "fact") {
	case 0:
		return fmt.Sprintf(`{"fact":"loaded","into":%q,"volume_gal":%d,"mix":"W","for":"gun"}`, letter, n)
	case 1:
		return fmt.Sprintf(`{"fact":"lined_up","supply":[%q]}`, letter)
	case 2:
		return fmt.Sprintf(`{"fact":"pushed_back","into":%q,"volume_gal":%d}`, letter, n%4+1)
	case 3:
		return fmt.Sprintf(`{"fact":"gauge_read","compartment":%q,"volume_gal":%d}`, letter, 3*n)
	case 4:
		return fmt.Sprintf(`{"fact":"metered","engine_h":%d,"odometer_mi":%d}`, n, 10*n)
	case 5:
		return fmt.Sprintf(`{"fact":"dumped","from":"compartment/%s","volume_gal":%d,"to":"waste/pad"}`, letter, n)
	case 6:
		return fmt.Sprintf(`{"fact":"stocked","product":"weed","what":"counted","amount_gal":%d}`, n%3)
	case 7:
		return fmt.Sprintf(`{"fact":"visit_begun","lawn":%q}`, lawn)
	case 8:
		return fmt.Sprintf(`{"fact":"visit_done","lawn":%q}`, lawn)
	}
	return fmt.Sprintf(`{"fact":"sprayed","lawn":%q,"zones":["front"],"applicator":"gun","by":"area","area_sqft":%d}`, lawn, 300*n)
}

// enter logs facts as a caller would; false: refused.
func enter(t *rapid.T, b *core.Book, at core.Moment, facts ...core.Fact) ([]core.Entry, bool) {
	es, err := b.Prepare("test", at, facts...)
	if err != nil {
		return nil, false
	}
	for _, e := range es {
		if err := b.Apply(e); err != nil {
			t.Fatal(err)
		}
	}
	return es, true
}

// TestAnyDayComesToAClose: whatever happened, the steps only read, each that is proposed can be logged and is done by it, the day is
// closed, its entry holds the digest of the accounts and what was said open, and the same entries come to the same book again.
func TestAnyDayComesToAClose(t *testing.T) {
	set := core.NewBook(1)
	play(t, set, setUp)
	from := set.Since()
	rapid.Check(t, func(t *rapid.T) {
		b, at := core.NewBook(1), now
		var all []core.Entry
		for _, e := range from {
			if err := b.Apply(e); err != nil {
				t.Fatal(err)
			}
			all = append(all, e)
		}
		add := func(facts ...core.Fact) bool {
			at.Unix += 60
			es, ok := enter(t, b, at, facts...)
			all = append(all, es...)
			return ok
		}
		for range rapid.IntRange(0, 25).Draw(t, "entries") {
			l, err := core.DecodeLine([]byte(drawFact(t)))
			if err != nil {
				t.Fatal(err)
			}
			add(l.Fact)
		}
		before := b.StateDigest()
		DocumentOf(b, at).Text()
		if b.StateDigest() != before {
			t.Fatal("a look at the close changed the book")
		}
		closeByProposals(t, b, add)
		open := Open(b, at)
		if !add(Close(b, at, "as it is", "")) || b.Day().Open || Steps(b) != nil {
			t.Fatal("the day is not closed")
		}
		f := all[len(all)-1].What.(*core.DayClosed)
		if digest := b.AccountsDigest(); f.Accounts != digest.String() {
			t.Fatalf("closed with the accounts %s, which are %s", f.Accounts, digest)
		}
		if fmt.Sprint(f.Open) != fmt.Sprint(open) {
			t.Fatalf("said open %q, entered %q", open, f.Open)
		}
		again := core.NewBook(1)
		for _, e := range all {
			if err := again.Apply(e); err != nil {
				t.Fatal(err)
			}
		}
		if again.StateDigest() != b.StateDigest() {
			t.Fatal("the same entries come to another book")
		}
	})
}

// closeByProposals logs what each step proposes until none proposes anything that needs no figure.
func closeByProposals(t *rapid.T, b *core.Book, add func(...core.Fact) bool) {
	for range 20 {
		var log []core.Fact
		id := ""
		for _, s := range Steps(b) {
			if len(s.Log) > 0 {
				log, id = s.Log, s.ID()
				break
			}
		}
		if id == "" {
			return
		}
		if !add(log...) {
			t.Fatalf("the step %s is refused", id)
		}
		for _, s := range Steps(b) {
			if s.ID() == id {
				t.Fatalf("the step %s is still there", id)
			}
		}
	}
	t.Fatal("the steps do not end")
}

// TestRefusedAtAClose: what is typed at a close and cannot be: both sentences.
func TestRefusedAtAClose(t *testing.T) {
	b := core.NewBook(1)
	play(t, b, setUp+`
{"fact":"metered","odometer_mi":48213,"engine_h":812.4}`)
	for _, c := range []struct{ line, what, do string }{
		{`{"fact":"gauge_read","compartment":"a","volume_gal":301}`, "The gauge of a cannot say 301.0 gal.", "Give 0 to 300.0 gal."},
		{`{"fact":"metered","odometer_mi":48212}`, "The odometer is at 48212 mi, less than the 48213 mi read before.", "Read it again, or say changed yes if it is another meter."},
		{`{"fact":"metered","engine_h":812.3}`, "The hour meter of the engine is at 812.3 h, less than the 812.4 h read before.", "Read it again, or say changed yes if it is another meter."},
		{`{"fact":"metered","odometer_mi":482130}`, "The odometer went from 48213 to 482130 mi.", "Read it again, or say changed yes if it is another meter."},
		{`{"fact":"dumped","from":"compartment/a","volume_gal":200,"to":"waste/pad"}`, "compartment/a holds 84.0 gal; 200.0 gal cannot run out of it.", "Give more than 0 and no more than it holds, or leave the volume out for all of it."},
	} {
		l, err := core.DecodeLine([]byte(c.line))
		if err != nil {
			t.Fatal(err)
		}
		_, err = b.Prepare("test", now, l.Fact)
		p, ok := err.(*core.Problem)
		if !ok || p.What != c.what || p.Do != c.do {
			t.Errorf("%s: %v", c.line, err)
		}
	}
	// Another meter begins anew, and what the old one ran stays in the sum.
	play(t, b, `{"fact":"metered","odometer_mi":48250}
{"fact":"metered","odometer_mi":12,"changed":"yes"}
{"fact":"metered","odometer_mi":20}`)
	if m := b.Meters().Odometer; m.Run != 45 || m.Last.V != 20 {
		t.Errorf("the odometer is %+v", m)
	}
}
