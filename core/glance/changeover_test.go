package glance

import (
	"encoding/json"
	"strings"
	"testing"

	"example.com/tintline/core"
)

// The keys of the contract stand beside those that came later, and the text says when the tint comes, when it is clean enough
// and by what, and what is left then.
func TestChangeoverSaysThreeFigures(t *testing.T) {
	b := demoBook(t)
	d := Of(b, b.LastAt(), core.Maybe[core.Moment]{})
	raw, err := json.Marshal(d.Changeover)
	if err != nil {
		t.Fatal(err)
	}
	for _, key := range []string{
		"to", "arrives_gal", "half_gal", "clean_gal", "arrives_s", "half_s", "clean_s", "decided_by", "share", "push_back",
		"left_gal", "sigma_factor", "sigma_gal", "advised_gal", "band_gal", "ways", "legs", "overflow", "why", "new_lost_gal", "return_order",
	} {
		if !strings.Contains(string(raw), `"`+key+`":`) {
			t.Errorf("no %s in %s", key, raw)
		}
	}
	chosen := 0
	for _, w := range d.Changeover.Ways {
		if w.Chosen {
			chosen++
		}
	}
	if chosen != 1 || len(d.Changeover.Ways) < 3 || d.Changeover.Left <= 0 || d.Changeover.Advised < d.Changeover.Clean {
		t.Errorf("%+v", d.Changeover)
	}
	text := Text(b, b.LastAt(), core.Maybe[core.Moment]{})
	for _, words := range []string{"arrives 1.", " decides: ", "on the smear", "left of the old liquid when you stop there: 0.0", "  so ", "  or "} {
		if !strings.Contains(text, words) {
			t.Errorf("no %q in\n%s", words, text)
		}
	}
}
