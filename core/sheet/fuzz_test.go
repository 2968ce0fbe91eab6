package sheet

import (
	"errors"
	"strings"
	"testing"

	"example.com/tintline/core"
)

// FuzzRead: whatever is read is admitted by the book it was read for; what is not is refused in sentences, and
// the book stays as it is.
func FuzzRead(f *testing.F) {
	for i, kind := range Kinds {
		f.Add(uint8(i), []byte(Template(kind)))
	}
	f.Add(uint8(0), []byte(rigHead+rigTwo))
	f.Add(uint8(3), []byte(lawnHead+"x,,,\"fro\nnt\",tall fescue,5,,\r\n\"\"\"\",,\xff"))
	f.Add(uint8(1), []byte("name,form,rates,actives,temp_max_f,temp_min_f,package,days_between\np,dry,\"zoysiagrass: 1 to 2 to 3 oz/acre;:\",own: x most most 1 lb/acre a year,-,none,1 lb 2 oz,none on the label\n"))
	f.Add(uint8(3), []byte("lawn,zone,grass,area_sqft,growth,growth_since,sites\nx,y,tall fescue,5,seeded,2026-05-01,well 1e3 ft 2026-01-01;water 1,000 ft\n"))
	f.Add(uint8(1), []byte(prodHead+"p,dry,,2;4-D 0%;,,;;,1/3 oz/ha,1 1/2 lb per k sqft,1e-400\n"))
	b := filledBook(f)
	before := b.StateDigest()
	f.Fuzz(func(t *testing.T, kind uint8, src []byte) {
		facts, err := Read(Kinds[int(kind)%len(Kinds)], "f", src, b)
		if err != nil {
			var all Troubles
			if !errors.As(err, &all) || len(all) == 0 || facts != nil {
				t.Fatalf("%q: %v is no list of troubles", src, err)
			}
			for _, one := range all {
				if what, do := one.Sentences(); one.What == "" || one.Allowed == "" || !strings.HasSuffix(what, ".") || !strings.HasSuffix(do, ".") {
					t.Fatalf("%q: %q %q", src, what, do)
				}
			}
			return
		}
		if len(facts) == 0 {
			t.Fatalf("%q: nothing was read and nothing refused", src)
		}
		if _, err := b.Prepare("x", core.Moment{Unix: 1_790_000_000}, facts...); err != nil {
			t.Fatalf("%q was read and is refused: %v", src, err)
		}
		if b.StateDigest() != before {
			t.Fatalf("%q changed the book", src)
		}
	})
}
