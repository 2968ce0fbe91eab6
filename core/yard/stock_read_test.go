package yard

import (
	"errors"
	"strings"
	"testing"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
	"example.com/tintline/core/say"
)

// What is typed of a stock, what is logged of it, and what it would come to. W1 has 40 fl oz by a count, and a package of 64 fl oz.
func TestReadStocked(t *testing.T) {
	b := play(t, setUp+`{"fact":"stocked","product":"W1","what":"counted","amount_fl_oz":40}`)
	for _, row := range []struct{ product, typed, says, words string }{
		{"W1", "bought 2 x 2.5 gal 62.00", "bought 2 jugs of 2.5 gal of W1 for $62.00", "5.00 gal in all, $31.00 each"},
		{"W1", "bought 2x2.5 gal $31 each", "bought 2 jugs of 2.5 gal of W1 for $62.00", "5.00 gal in all, $31.00 each"},
		{"W1", "bought 2 × 2.5", "bought 2 jugs of 2.5 gal of W1", "5.00 gal in all"},
		{"W1", "Bought 3 jugs for 1,020.60 from Example Supply lot A 7", `bought 3 jugs of 64 fl oz of W1 for $1,020.60 from Example Supply, lot "A 7"`, "1.50 gal in all, $340.20 each"},
		{"W1", "bought 5 gal 62", "bought 5.00 gal of W1 for $62.00", ""},
		{"W1", "bought 5 gal", "bought 5.00 gal of W1", ""},
		{"iron", "bought 2 x 50 lb 40", "bought 2 bags of 50 lb of iron for $40.00", "100 lb in all, $20.00 each"},
		{"W1", "counted 3.75 gal", "counted 3.75 gal of W1", "3.44 gal more than the book says"},
		{"W1", "counted 32 fl oz", "counted 32.0 fl oz of W1", "8.00 fl oz less than the book says"},
		{"W1", "counted 1 x 2.5 gal + 1 qt", "counted 2.75 gal of W1", "2.44 gal more than the book says"},
		{"W1", "counted 40 fl oz", "counted 40.0 fl oz of W1", "as the book says"},
		{"iron", "counted 12", "counted 12.0 lb of iron", "the first count"},
		{"W1", "reorder at 1 gal", "buy W1 when it is below 1.00 gal", ""},
		{"W1", "reorder off", "no line any more below which W1 is to be bought", ""},
	} {
		f, err := ReadStocked(b, row.product, row.typed)
		if err != nil {
			t.Errorf("%s: %v", row.typed, err)
			continue
		}
		es, err := b.Prepare("", clock, f)
		if err != nil {
			t.Errorf("%s: %v", row.typed, err)
			continue
		}
		full := es[0].What.(*core.Stocked)
		if got := say.Fact(full); got != row.says || StockedWords(b, full) != row.words {
			t.Errorf("%s says %q, %q; want %q, %q", row.typed, got, StockedWords(b, full), row.says, row.words)
		}
	}
}

func TestReadStockedRefuses(t *testing.T) {
	b := play(t, setUp)
	for _, row := range []struct{ product, typed, what string }{
		{"W1", "", "begins neither with bought"},
		{"W1", "stolen 2 gal", "begins neither with bought"},
		{"W1", "counted 4 lb", "It is liquid and is measured by volume, but 4.00 lb is a weight."},
		{"iron", "counted 2 gal", "It is dry and is weighed, but 2.00 gal is a volume."},
		{"iron", "bought 2 x 2.5 gal 62", "It is dry and is weighed"},
		{"W1", "counted", ""},
		{"W1", "counted many", ""},
		{"W1", "bought 5 gal 31 each", "It is not said how many were bought for $31.00 each."},
		{"W1", "reorder", ""},
		{"nothing like it", "counted 3 gal", "There is no product"},
	} {
		f, err := ReadStocked(b, row.product, row.typed)
		var trouble *measure.Trouble
		var text *measure.TextError
		if err == nil || !strings.Contains(err.Error(), row.what) || !errors.As(err, &trouble) && !errors.As(err, &text) {
			t.Errorf("%q: %+v, %v", row.typed, f, err)
		}
	}
	// What reads and could not be is refused by the book.
	for _, typed := range []string{"counted -1 gal", "bought 0 x 2.5 gal", "bought 0 gal", "bought 2 x 2.5 gal -3"} {
		f, err := ReadStocked(b, "W1", typed)
		if err == nil {
			_, err = b.Prepare("", clock, f)
		}
		if err == nil {
			t.Errorf("%q is not refused", typed)
		}
	}
}
