package core

import "pgregory.net/rapid"

// notice draws signs, contacts and neighbours.
func (g *anyFact) notice(kind Kind) Fact {
	switch kind {
	case kindSigned:
		f := &Signed{Lawn: g.lawn(), What: g.pick("what", SignsUp, SignsUp, SignsDown, "gone")}
		if f.What == SignsUp {
			f.Count = rapid.Int64Range(0, 4).Draw(g.t, "count")
			if rapid.Bool().Draw(g.t, "hours") {
				f.Hours = Known(rapid.Float64Range(0, 80).Draw(g.t, "h"))
			}
			f.Until = g.pick("until", "", "", g.b.LastAt().Date(), "2026-13-01")
		}
		return f
	case kindTold:
		return &Told{
			Lawn: g.lawn(), Whom: g.pick("whom", ToldCustomer, ToldCustomer, ToldCustomer, ToldNeighbour, "dog"), Person: g.pick("person", "Next Door", "", "Over the Way"),
			How: g.pick("how", ByPhone, ByPaper, ByDoorNote, ByText, InPerson, "smoke"), Result: g.pick("result", "", "", ToldFailed, ToldReached, "perhaps"),
			For: g.pick("for", g.b.Day().Date, g.b.Day().Date, g.b.LastAt().Date(), "", "2026-02-30"), Clock: g.pick("clock", "", "", "", "00:00", "25:00"),
		}
	}
	f := &Neighbour{
		Lawn: g.lawn(), NeighbourName: g.pick("name", "Next Door", "Next Door", "Over the Way", " "), Phone: "555-0117", Register: g.pick("register", OwnRequest, StateRegister, OwnRequest, "hearsay"),
		Until: g.pick("until", "", "2026-08-01"), Gone: g.pick("gone", "", "", "", "yes"),
	}
	if rapid.Bool().Draw(g.t, "hours") {
		f.HoursLeast, f.HoursMost = Known(12.0), Known(rapid.SampledFrom([]float64{6, 72}).Draw(g.t, "most"))
	}
	return f
}
