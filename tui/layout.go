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
	bandHead band = iota
	bandVerdict
	bandAct
	bandStatus
	bandGap1
	bandVisit
	bandTanks
	bandGap2
	bandPipe
	bandChange
	bandGap3
	bandWeather
	bandLast
	bandNext
	bandGap4
	bandUnchecked
	bandRest
	bandFoot
	bands
)

// need is what the rig and the keys ask of the layout. It does not change from act to act, so that nothing on
// the screen jumps.
type need struct {
	tanks int // compartments and applicators with a tank of their own
	foot  int // lines of keys at this width
	next  int // visits that could be listed
}

// least is the height of each band below which the screen is of no use.
func (n need) least() [bands]int {
	return [bands]int{
		bandHead: 1, bandVerdict: 3, bandAct: 1, bandStatus: 2, bandVisit: 1, bandTanks: n.tanks,
		bandPipe: 1, bandChange: 1, bandWeather: 1, bandNext: 1, bandUnchecked: 1, bandFoot: n.foot,
	}
}

// leastWidth is the narrowest screen on which every line says what it must.
const leastWidth = 60

// leastSize is the smallest screen for a rig.
func (n need) leastSize() (w, h int) {
	for _, rows := range n.least() {
		h += rows
	}
	return leastWidth, h
}

// wishes are the rows given out beyond the least, in order, as long as there are any.
func (n need) wishes() []band {
	out := []band{
		bandLast, bandAct, bandAct, bandUnchecked, bandVerdict, bandNext, bandGap1, bandNext,
		bandGap2, bandNext, bandGap3, bandNext, bandNext, bandNext, bandVerdict, bandVerdict, bandGap4,
	}
	for i := 0; i < n.next; i++ {
		out = append(out, bandNext)
	}
	return out
}

// layout shares out a screen; false if it is too small.
func layout(w, h int, n need) ([bands]rect, bool) {
	var out [bands]rect
	lw, lh := n.leastSize()
	if w < lw || h < lh {
		return out, false
	}
	rows := n.least()
	spare := h - lh
	for _, b := range n.wishes() {
		if spare == 0 {
			break
		}
		if b == bandNext && rows[bandNext] >= max(n.next, 1) {
			continue
		}
		rows[b]++
		spare--
	}
	rows[bandRest] = spare
	y := 0
	for b := range out {
		out[b] = rect{0, y, w, rows[b]}
		y += rows[b]
	}
	return out, true
}
