package core

import (
	"testing"

	"example.com/tintline/core/measure"
	"pgregory.net/rapid"
)

// plan draws a plan of a day, some of which cannot be.
func (g *anyFact) plan() *DayPlanned {
	f := &DayPlanned{
		Date: g.b.Day().Date, Order: g.pick("order", OrderGiven, OrderBest), Minutes: Known(rapid.Float64Range(0, 900).Draw(g.t, "minutes")),
		Visits: []PlannedZone{{Lawn: "L1", Zone: "front", Area: measure.ThousandSquareFeet, Mix: g.pick("mix", "W", "C", ""), From: g.pick("from", "a", "b", "x"), With: "gun"}},
	}
	if rapid.Bool().Draw(g.t, "load") {
		f.Loads = []PlannedLoad{{Into: g.pick("into", "a", "b"), Mix: "W", For: "gun", Volume: g.volume(20), Before: g.pick("before", "", "L1", "nowhere")}}
	}
	return f
}

// A plan stays until another day is opened, strikes or not, and a book taken up again has it.
func TestAPlanOfADay(t *testing.T) {
	b := play(t, NewBook(1), setUp)
	plan := &DayPlanned{
		Date: b.Day().Date, Order: OrderBest, Changeovers: Known(1.0), Minutes: Known(140.5), Saved: Known(22.0),
		Visits: []PlannedZone{{Lawn: "418 Alder", Zone: "front", Area: measure.SquareFeet(1000)}},
	}
	mustEnter(t, b, plan)
	if got := b.Planned(); got == nil || got.Minutes.V != 140.5 || got.Lawns()[0] != "418 Alder" {
		t.Fatalf("%+v", got)
	}
	digest := b.StateDigest()
	other := *plan
	other.Order = OrderGiven
	mustEnter(t, b, &other)
	if b.StateDigest() == digest || b.Planned().Order != OrderGiven {
		t.Error("another plan did not take its place")
	}
	mustEnter(t, b, &DayClosed{Overnight: "left in"})
	if b.Planned() == nil {
		t.Error("the closing cannot compare")
	}
	mustEnter(t, b, &DayOpened{Date: "2026-05-29", Operator: "R. Example"})
	if b.Planned() != nil {
		t.Error("yesterday's plan is left")
	}
}

func TestRefusalsOfPlans(t *testing.T) {
	refusals(t, "testdata/refusals_plan.tsv", play(t, NewBook(1), setUp), 17)
}
