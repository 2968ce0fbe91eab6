package check

import (
	"fmt"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

// doubtRan asks about a time in which a compartment would have run over. It can have happened; what ran over is then booked
// as waste.
func doubtRan(b *core.Book, f *core.Ran) (words, do string, doubtful bool) {
	into, over, after := b.RanOver(f)
	if over <= 0 {
		return "", "", false
	}
	return fmt.Sprintf("%c would run over by %s after %s s: that is booked to overflow, as waste.", into, gal(over), measure.SecondsText(after)),
		fmt.Sprintf("Look whether it did; if it did not, read the gauge of %c and log it first.", into), true
}
