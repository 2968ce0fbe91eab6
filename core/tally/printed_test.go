package tally

import (
	"encoding/csv"
	"strings"
	"testing"

	"example.com/tintline/core"

	"pgregory.net/rapid"
)

// checkFigures adds up the CSV of a tally as a spreadsheet would: of each table the column comes to the line at the top, to the last digit.
func checkFigures(t *rapid.T, y *Tally) {
	text, err := y.Figures().CSV()
	if err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	sums := map[string]float64{}
	for _, r := range rows[1:] {
		for i, head := range rows[0] {
			if (strings.Contains(head, "(gal)") || strings.Contains(head, "(sq ft)") || strings.Contains(head, "(lb)")) && r[i] != "" {
				sums[r[0]+" "+head] += number(t, r[i])
			}
		}
	}
	p := y.printing()
	for column, want := range map[string]float64{
		"by compartment to lawns (gal)": p.all, "by mix volume (gal)": p.all, "by applicator volume (gal)": p.all, "by hour volume (gal)": p.all, "by lawn volume (gal)": p.all,
		"by applicator area (sq ft)": p.allSqF, "by hour area (sq ft)": p.allSqF, "by lawn area (sq ft)": p.allSqF,
	} {
		if got, there := sums[column]; there && !same(got, want) {
			t.Fatalf("%s comes to %g, the tally to %g\n%s", column, got, want, text)
		}
	}
	if y.Volume > 0 && len(y.Lawns) > 0 {
		if _, there := sums["by lawn volume (gal)"]; !there {
			t.Fatalf("no lawn in\n%s", text)
		}
	}
}

// TestATallyIsHandedOut: the page has the zones under their lawns and the sum apart, the figures have neither separators nor sums.
func TestATallyIsHandedOut(t *testing.T) {
	k := newKeeper(t)
	for _, s := range strings.Split(strings.TrimSpace(recordDay), "\n") {
		if err := k.enter(s); err != nil {
			t.Fatal(err)
		}
	}
	y := Close(k.b, core.Maybe[core.Moment]{})
	page, err := y.Printed().HTML()
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"<title>Tally, 2026-05-28</title>", "1 lawn, 4,000 sq ft, 6.00 gal", "<bdi>5 Oak: front, tall fescue</bdi>", "<th class=\"left whole\"><bdi>all</bdi></th>"} {
		if !strings.Contains(page, want) {
			t.Errorf("no %s in\n%s", want, page)
		}
	}
	text, err := y.Figures().CSV()
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"by lawn,5 Oak,", "4000,", ",tall fescue", "by product,spring feed,", ",6,fl oz,1.5,\"fl oz per 1,000 sq ft\"", "left (gal)"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %s in\n%s", want, text)
		}
	}
	if strings.Contains(text, ",all,") || strings.Contains(text, "4,000") {
		t.Errorf("a sum or a separator in\n%s", text)
	}
}
