package core

import (
	"math"
	"os"
	"strings"
	"testing"
)

// TestHandmadeBypass compares a day on which the bypass is reckoned with figures that were integrated outside the
// program; the equations stand at the head of the file. Volumes to 0.01 gal, amounts to four significant digits.
func TestHandmadeBypass(t *testing.T) {
	lines, err := os.ReadFile("../testdata/handmade/bypass.jsonl")
	if err != nil {
		t.Fatal(err)
	}
	all := strings.SplitAfter(strings.TrimRight(string(lines), "\n"), "\n")
	pushed := pushedAgain(t, all)
	rows := handmadeRows(t, "../testdata/handmade/bypass.csv")
	worst, least := 0.0, math.Inf(1)
	for when, upTo := range map[string]int{"pushed/": pushed, "left/": len(all), "": len(all)} {
		b := play(t, NewBook(1), strings.Join(all[:upTo], ""))
		balanced(t, b)
		off, places := comparePlaces(t, b, rows, when)
		worst, least = max(worst, off), min(least, float64(places))
		if upTo == pushed {
			oldInNew(t, b, all)
		}
	}
	if least < 4 {
		t.Errorf("only %g places were compared", least)
	}
	t.Logf("largest relative difference above traces %.1e", worst)
}

// pushedAgain is how many lines there are up to the second push-back.
func pushedAgain(t *testing.T, lines []string) int {
	t.Helper()
	for i, n := 0, 0; i < len(lines); i++ {
		if strings.Contains(lines[i], `"pushed_back"`) {
			if n++; n == 2 {
				return i + 1
			}
		}
	}
	t.Fatal("there are no two push-backs")
	return 0
}

// oldInNew holds what a change with both valves at once brings into the new compartment: the return line, and of the
// cell the share of the bypass, 0.1 + 0.2 * 5/8 = 0.225 gal (mass balance), less the part of it that was drawn again.
func oldInNew(t *testing.T, b *Book, lines []string) {
	t.Helper()
	weed, _ := b.ProductKey("weed")
	before := play(t, NewBook(1), strings.Join(lines[:pushedAgain(t, lines)-1], ""))
	a := before.Plumbing().Compartment('a')
	strength := float64(a.Liquid.Holds.Of(weed)) / float64(a.Liquid.Volume)
	old := float64(b.Plumbing().Compartment('b').Liquid.Holds.Of(weed)) / strength / 3785411784
	if want := 0.2185014588; math.Abs(old/want-1) > 1e-4 {
		t.Errorf("b holds %.6f gal of the old mix, not %.6f", old, want)
	}
	if again := 0.225 * (1 - math.Exp(-1.6/60)); old > 0.225-again || old < 0.225-again-0.3*0.225/58 {
		t.Errorf("b holds %.6f gal of the old mix; 0.225 came in and between %.6f and %.6f were drawn again", old, again, again+0.3*0.225/58)
	}
}

// TestOneJournalOneBypass holds the digest of what lies where after that day, as TestOneJournalOneState does.
func TestOneJournalOneBypass(t *testing.T) {
	lines, err := os.ReadFile("../testdata/handmade/bypass.jsonl")
	if err != nil {
		t.Fatal(err)
	}
	b := play(t, NewBook(1), string(lines))
	if got, want := b.AccountsDigest().String(), "0d491dc18c6d2b4bd75b5b26d866c402"; got != want {
		t.Errorf("the digest of the accounts is %s, and was %s", got, want)
	}
}
