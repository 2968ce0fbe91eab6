package core

import (
	"strings"
	"testing"
)

const nextDoor = `{"fact":"neighbour","lawn":"77 Fir","name":"Next Door","phone":"555-0117","hours_least":12,"hours_most":72,"calls":2,"register":"state_register"}
`

func TestRefusalsOfNotices(t *testing.T) {
	refusals(t, "testdata/refusals_notice.tsv", play(t, NewBook(1), setUp+nextDoor), 24)
}

// TestContactsOfTheDayAndLater: what is about days before the one opened stands in the journal alone; what is about days to come stays, over
// a close and in a snapshot.
func TestContactsOfTheDayAndLater(t *testing.T) {
	b := play(t, NewBook(1), setUp+nextDoor+`{"fact":"told","lawn":"77 Fir","whom":"customer","how":"paper_at_door"}
{"fact":"told","lawn":"77 Fir","whom":"neighbour","name":"Next Door","how":"phone","for":"2026-05-30","earliest_start":"08:00","latest_finish":"17:00"}
{"fact":"signed","lawn":"77 Fir","what":"up","count":1,"hours":24}
{"fact":"signed","lawn":"77 Fir","what":"down"}
`)
	if c := b.ContactsOf("77 Fir", "2026-05-28", ToldCustomer); len(c) != 1 || !c[0].Reached() || c[0].Given[0] != GaveNotice || c[0].Seq != b.Seq()-3 {
		t.Errorf("the customer: %+v", c)
	}
	if c := b.ContactsOf("77 Fir", "2026-05-30", ToldNeighbour); len(c) != 1 || c[0].Given[0] != GaveAdvance {
		t.Errorf("the neighbour: %+v", c)
	}
	if g := b.SignsOf("77 Fir", "2026-05-28"); len(g) != 1 || g[0].Down.Zero() || g[0].Due.Unix-g[0].Up.Unix != 86_400 {
		t.Errorf("the signs of the day: %+v", g)
	}
	play(t, b, `{"fact":"day_closed"}
{"fact":"day_opened","date":"2026-05-29","operator":"R. Example"}`)
	if n := len(b.AllContacts()); n != 1 || len(b.AllSigns()) != 0 || len(b.AllNeighbours()) != 1 {
		t.Errorf("on the next day: %d contacts, signs %v", n, b.AllSigns())
	}
	kept, err := Resume(b.Keep())
	if err != nil || len(kept.AllNeighbours()) != 1 {
		t.Errorf("the snapshot: %v", err)
	}
}

// TestNeighbourTakesThePlaceOfTheOneBefore: a later entry of the same name changes, gone takes away, and a strike brings back.
func TestNeighbourTakesThePlaceOfTheOneBefore(t *testing.T) {
	b := play(t, NewBook(1), setUp+nextDoor)
	digest := b.StateDigest()
	play(t, b, `{"fact":"neighbour","lawn":"77 Fir","name":"Next Door","phone":"555-0199","until":"2026-06-01","register":"own_request"}`)
	if n := b.NeighboursOf("77 Fir", "2026-06-01"); len(n) != 1 || n[0].Phone != "555-0199" || len(b.NeighboursOf("77 Fir", "2026-06-02")) != 0 {
		t.Errorf("%+v", b.AllNeighbours())
	}
	changed := b.Seq()
	play(t, b, `{"fact":"neighbour","lawn":"77 Fir","name":"Next Door","gone":"yes"}`)
	if len(b.AllNeighbours()) != 0 {
		t.Error("gone, and still there")
	}
	mustEnter(t, b, &Struck{Of: int64(b.Seq()), Reason: "slip"})
	mustEnter(t, b, &Struck{Of: int64(changed), Reason: "slip"})
	if b.StateDigest() != digest {
		t.Error("the strikes do not bring back what stood before")
	}
}

// TestWithoutNoticesTheDigestIsAsBefore: signs that are struck leave no trace in the sum.
func TestWithoutNoticesTheDigestIsAsBefore(t *testing.T) {
	b := play(t, NewBook(1), setUp)
	digest := b.StateDigest()
	seq := mustEnter(t, b, &Signed{Lawn: "77 Fir", What: SignsUp, Count: 2})
	if b.StateDigest() == digest {
		t.Error("signs are not in the digest")
	}
	mustEnter(t, b, &Struck{Of: int64(seq), Reason: "slip"})
	if b.StateDigest() != digest {
		t.Error("a strike leaves something")
	}
	var words []string
	for _, w := range ContactWays() {
		words = append(words, ContactWords(w))
	}
	for _, g := range Givens() {
		words = append(words, GivenWords([]string{g}))
	}
	if strings.Contains(strings.Join(words, " "), "_") {
		t.Errorf("a way or a thing given has no words: %q", words)
	}
}
