package core

import "testing"

// TestABookDoesNotGrowWithTheYears: what a book holds after the third year it holds after the tenth, but for the longer
// figures of its accounts and the longer numbers of its entries.
func TestABookDoesNotGrowWithTheYears(t *testing.T) {
	size := map[string]int{}
	b := years(t, 24, 10*26, 14, func(b *Book) {
		if b.day.Date > "2028-11" {
			size[b.day.Date[:4]] = max(size[b.day.Date[:4]], len(b.Keep()))
		}
	})
	third, tenth := size["2028"], size["2035"]
	if third == 0 || tenth == 0 {
		t.Fatalf("the years are not there: %v", size)
	}
	if float64(tenth) > 1.1*float64(third) {
		t.Errorf("the book grew from %d to %d bytes: %v", third, tenth, size)
	}
	if len(b.origins) > 4 || len(b.Since()) != 0 {
		t.Errorf("there are %d origins", len(b.origins))
	}
}
