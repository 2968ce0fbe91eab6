package check

import (
	"fmt"
	"testing"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

// BenchmarkBefore asks about a lawn that was sprayed on twenty days of the year.
func BenchmarkBefore(b *testing.B) {
	book := play(b, loadedLines+hoseOf("a"))
	more(b, book, `{"fact":"day_closed","overnight":"left in"}`)
	for i := range 20 {
		log(b, book, &core.DayOpened{Date: fmt.Sprintf("2026-06-%02d", i+1), Operator: "R. Example"})
		log(b, book, &core.Sprayed{Lawn: "Alder", Applicator: "gun", Volume: core.Known(measure.Gallons(5))})
	}
	b.ReportAllocs()
	b.ResetTimer()
	for range b.N {
		if _, err := Before(book, Intent{Lawn: "Alder", At: clock}); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkBeforeWithPump is BenchmarkBefore on a rig whose bypass is reckoned.
func BenchmarkBeforeWithPump(b *testing.B) {
	book := play(b, withPump+hoseOf("a"))
	b.ReportAllocs()
	b.ResetTimer()
	for range b.N {
		if _, err := Before(book, Intent{Lawn: "Alder", At: clock}); err != nil {
			b.Fatal(err)
		}
	}
}
