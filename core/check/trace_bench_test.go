package check

import "testing"

// BenchmarkBeforeInAChangeover asks about a lawn while the tail of another mix stands in the hose.
func BenchmarkBeforeInAChangeover(b *testing.B) {
	book := play(b, loadedLines+hoseOf("b")+changing+`{"fact":"pushed_back","into":"b","volume_gal":1.9}`)
	b.ReportAllocs()
	for range b.N {
		if _, err := Before(book, Intent{Lawn: "Alder", At: clock}); err != nil {
			b.Fatal(err)
		}
	}
}
