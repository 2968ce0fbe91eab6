package tui

// rect is a place on the screen, in cells.
type rect struct{ x, y, w, h int }

func (r rect) holds(x, y int) bool {
	return x >= r.x && x < r.x+r.w && y >= r.y && y < r.y+r.h
}

// band is one of the parts that lie one below the other on the cab screen.
type band int

// The bands from top to bottom. A gap is a blank line or a rule.
const (
	bandHead    band = iota
	bandVerdict      // and, in its last rows, what became of the last key
	bandAct
	bandGap1
	bandVisit
	bandTanks
	bandGap2
	bandPipe
	bandChange
	bandGap3
	bandWeather
	bandNext
	bandMixes
	bandGap4
	bandUnchecked
	bandRest
	bandFoot
	bands
)

// need is what the rig, the day and the keys ask of the layout. It does not change from act to act, so that nothing
// on the screen jumps.
type need struct {
	tanks   int // compartments and applicators with a tank of their own
	foot    int // lines of keys at this width, if all are to stand there
	next    int // visits of the day
	mixes   int // compartments
	mixRows int // lines that it takes to say what is in them
}

// The smallest screen on which every line says what it must, whatever the rig.
const (
	leastWidth  = 40
	leastHeight = 16
	leastTanks  = 5 // with more tanks than rows the last row counts the others
	leastFoot   = 2 // with more keys than room the page of keys has the others
)

// least is the height of each band below which the screen is of no use.
func (n need) least() [bands]int {
	return [bands]int{
		bandHead: 1, bandVerdict: 3, bandAct: 1, bandVisit: 1, bandTanks: min(n.tanks, leastTanks),
		bandPipe: 1, bandChange: 1, bandFoot: min(n.foot, leastFoot),
	}
}

// wishes are the rows given out beyond the least, in order, as long as there are any. On a narrow screen, on which
// sentences take more lines, two lines of keys do for longer.
func (n need) wishes(w int) []band {
	out := []band{bandVerdict}
	next := max(n.next-1, 1) // one is always the visit that the screen is about
	some := func(b band, rows int) {
		if b == bandNext {
			rows = min(rows, next)
			next -= max(rows, 0)
		}
		for ; rows > 0; rows-- {
			out = append(out, b)
		}
	}
	some(bandTanks, n.tanks-leastTanks)
	some(bandWeather, 1)
	some(bandNext, 1)
	some(bandUnchecked, 1)
	some(bandAct, 1)
	third := min(n.foot-leastFoot, 1)
	if w >= leastLabelled {
		some(bandFoot, third)
		third = 0
	}
	some(bandVerdict, 1)
	some(bandNext, 1)
	some(bandAct, 1)
	some(bandNext, 1)
	some(bandUnchecked, 1)
	some(bandNext, 1)
	some(bandGap1, 1)
	some(bandNext, 2) // six now, before all else has what it wishes
	some(bandMixes, n.mixes)
	some(bandVerdict, 1)
	some(bandFoot, third)
	some(bandFoot, n.foot-leastFoot-1)
	for _, gap := range []band{bandGap2, bandGap3, bandGap4} {
		some(gap, 1)
	}
	some(bandMixes, n.mixRows-n.mixes)
	some(bandVerdict, 2)
	some(bandNext, n.next)
	return out
}

// layout shares out a screen; false if it is too small.
func layout(w, h int, n need) ([bands]rect, bool) {
	var out [bands]rect
	if w < leastWidth || h < leastHeight {
		return out, false
	}
	rows := n.least()
	spare := h
	for _, r := range rows {
		spare -= r
	}
	for _, b := range n.wishes(w) {
		if spare == 0 {
			break
		}
		if b == bandMixes && rows[b] == 0 && spare < n.mixes {
			continue // all of them or none
		}
		rows[b]++
		spare--
	}
	// what is left makes the keys taller, for a thumb
	for line, tall := rows[bandFoot], 1; line > 0 && tall < tallest && spare >= line; tall++ {
		rows[bandFoot] += line
		spare -= line
	}
	rows[bandRest] = spare
	y := 0
	for b := range out {
		out[b] = rect{0, y, w, rows[b]}
		y += rows[b]
	}
	return out, true
}

// tallest is how many rows high a key is at most.
const tallest = 3
