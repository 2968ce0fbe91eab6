package core

import (
	"fmt"
	"testing"
	"time"

	"example.com/tintline/core/measure"
)

// twoYears is a book of two years: a round of so many lawns, with all that an operator writes of each.
func twoYears(t testing.TB, lawns, visits int) *Book {
	return years(t, lawns, visits, 1, func(*Book) {})
}

// years works a day, then so many days later the next; look sees the book after each close.
func years(t testing.TB, lawns, visits, apart int, look func(*Book)) *Book {
	t.Helper()
	b := NewBook(1)
	at := Moment{Unix: 1_767_260_000}
	log := func(f Fact) {
		at.Unix += 60
		es, err := b.Prepare("a", at, f)
		if err == nil {
			err = b.Apply(es[0])
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	gunTruck(log)
	for i := range lawns {
		log(&Lawn{
			LawnName: fmt.Sprintf("%d Alder Court", 100+i), Customer: fmt.Sprintf("Customer %d", i), Address: fmt.Sprintf("%d Alder Court, Example", 100+i), Gate: "left side, lift the latch",
			Phone: "555-0142", Zones: []Zone{
				{Name: "front", Grass: "tall_fescue", Area: 4 * measure.ThousandSquareFeet, Hazards: []string{"pond behind the fence"}},
				{Name: "back", Grass: "zoysiagrass", Area: 5 * measure.ThousandSquareFeet, Price: Known(measure.Money(4500))},
			},
		})
		if i%3 == 0 {
			log(&Noted{Lawn: fmt.Sprintf("%d Alder Court", 100+i), Text: "the dog is in the yard on Mondays"})
		}
	}
	const aDay = 24
	for v, day := 0, 0; v < lawns*visits; day++ {
		log(&DayOpened{Date: time.Date(2026, 1, 1+apart*day, 0, 0, 0, 0, time.UTC).Format(time.DateOnly), Operator: "R. Example"})
		if day == 0 {
			log(&LinedUp{Supply: []byte("a"), Return: 'a'})
		}
		log(&Loaded{Into: "a", Volume: measure.Gallons(1.6 * 9.2 * aDay), Mix: "M", For: "gun"})
		for range aDay {
			lawn := fmt.Sprintf("%d Alder Court", 100+v%lawns)
			log(&VisitBegun{Lawn: lawn})
			log(&Sprayed{Lawn: lawn, Applicator: "gun"})
			log(&VisitDone{Lawn: lawn})
			v++
		}
		log(&Dumped{From: "compartment/a", To: "waste/pad"})
		log(&DayClosed{Overnight: "left in"})
		look(b)
	}
	return b
}

// BenchmarkResume takes up a book of 600 lawns and two years, each of 18 visits.
func BenchmarkResume(b *testing.B) {
	kept := twoYears(b, 600, 18).Keep()
	b.SetBytes(int64(len(kept)))
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Resume(kept); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkKeep makes the snapshot of the same book.
func BenchmarkKeep(b *testing.B) {
	book := twoYears(b, 600, 18)
	b.ReportAllocs()
	for b.Loop() {
		b.SetBytes(int64(len(book.Keep())))
	}
}

// BenchmarkHistory reads what went on one zone in two years, of a book that was taken up.
func BenchmarkHistory(b *testing.B) {
	book, err := Resume(twoYears(b, 600, 18).Keep())
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		if n := len(book.History("100 Alder Court", "front")); n != 2*18 {
			b.Fatal(n)
		}
	}
}
