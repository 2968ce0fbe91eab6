package main

import (
	"path/filepath"
	"strings"
	"testing"
)

// TestMixingRefusesWhatItWouldNotUse: a figure that is given is used or refused, never taken as left out.
func TestMixingRefusesWhatItWouldNotUse(t *testing.T) {
	book := filepath.Join(t.TempDir(), "demo.db")
	if code, _, errs := call(t, "", "demo", "--make", book); code != 0 {
		t.Fatal(errs)
	}
	for _, c := range []struct{ args, want string }{
		{"jug --loads 0", "--loads is 0; give 1 or more."},
		{"rinse --rinses 0", "--rinses is 0; give 1 or more."},
		{"rinse --rinses -2", "--rinses is -2; give 1 or more."},
		{"rinse --into b --rinses 1000000000", "It is rinsed 1000000000 times."},
		{"use-up --thin nan", "--thin is NaN; give 0 to 1,000 parts of water."},
		{"load --gal 5 --sqft 900", "--gal 5 and --sqft 900 are both given; give one of them."},
	} {
		code, out, errs := call(t, "", append([]string{"mixing", "--book", book}, strings.Fields(c.args)...)...)
		if code != exitUsage || out != "" || !strings.Contains(errs, c.want) {
			t.Errorf("mixing %s: %d %s%s", c.args, code, out, errs)
		}
	}
	if code, _, errs := call(t, "", "mixing", "--book", book, "rinse", "--into", "b", "--rinses", "1"); code != 0 {
		t.Error(errs)
	}
}
