package tally

import (
	"math"
	"strconv"
	"strings"

	"pgregory.net/rapid"
)

// checkPrint adds the page up as it is printed.
func checkPrint(t *rapid.T, page string) {
	blocks := strings.Split(page, "\n\n")
	head := strings.Fields(strings.ReplaceAll(blocks[0], ",", ""))
	at := func(word string) float64 {
		for i, w := range head {
			if w == word {
				return number(t, head[i-1])
			}
		}
		t.Fatalf("no %s in %q", word, blocks[0])
		return 0
	}
	gal, sqft := at("gal"), at("sq")
	for _, block := range blocks[1:] {
		lines := strings.Split(strings.TrimRight(block, "\n"), "\n")
		switch name := strings.Fields(lines[0])[0]; name {
		case "gallons":
			checkFlows(t, lines[1:], gal)
		case "mix":
			checkColumns(t, lines[1:], gal, -1)
		case "lawn":
			checkColumns(t, lines[1:], gal, sqft)
			checkPounds(t, lines)
		case "own", "pounds":
			checkOwn(t, name, lines[1:])
		}
	}
}

func number(t *rapid.T, s string) float64 {
	f, err := strconv.ParseFloat(strings.ReplaceAll(s, ",", ""), 64)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

func same(a, b float64) bool { return math.Abs(a-b) < 1e-6 }

func checkFlows(t *rapid.T, lines []string, gal float64) {
	sums := make([]float64, 7)
	to := 0.0
	for i, l := range lines {
		f := strings.Fields(l)
		var v []float64
		for _, c := range f[1:8] {
			v = append(v, number(t, c))
		}
		if !same(v[0]+v[1]+v[2]-v[3]-v[4]+v[5], v[6]) {
			t.Fatalf("the row does not add up: %s", l)
		}
		last := number(t, f[len(f)-1])
		if i < len(lines)-1 {
			to += last
			for j := range sums {
				sums[j] += v[j]
			}
			continue
		}
		for j := range sums {
			if !same(sums[j], v[j]) {
				t.Fatalf("column %d does not add up:\n%s", j, strings.Join(lines, "\n"))
			}
		}
		if !same(to, last) || !same(last, gal) {
			t.Fatalf("to lawns does not add up to %g:\n%s", gal, strings.Join(lines, "\n"))
		}
	}
}

func checkColumns(t *rapid.T, lines []string, gal, sqft float64) {
	var g, a, zg, za float64
	var last [2]float64
	zones := false
	endLawn := func() {
		if zones && (!same(zg, last[0]) || !same(za, last[1])) {
			t.Fatalf("zones do not add up:\n%s", strings.Join(lines, "\n"))
		}
		zones, zg, za = false, 0, 0
	}
	for i, l := range lines {
		f := strings.Fields(l)
		v := [2]float64{number(t, f[len(f)-2]), number(t, f[len(f)-1])}
		if strings.Count(strings.Join(f, " "), ".") > 1 { // pounds stand between
			v[0] = number(t, f[len(f)-3])
		}
		switch {
		case strings.HasPrefix(l, "  "):
			zones, zg, za = true, zg+v[0], za+v[1]
			continue
		case i == len(lines)-1:
			endLawn()
			if !same(g, v[0]) || !same(a, v[1]) || !same(g, gal) || (sqft >= 0 && !same(a, sqft)) {
				t.Fatalf("columns do not add up to %g and %g:\n%s", gal, sqft, strings.Join(lines, "\n"))
			}
		default:
			endLawn()
			g, a, last = g+v[0], a+v[1], v
		}
	}
}
