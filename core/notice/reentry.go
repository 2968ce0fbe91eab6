package notice

import (
	"fmt"
	"regexp"
	"strconv"

	"example.com/tintline/core"
)

// Clock is when a lawn may be entered again by the words of the label entries of what was laid on it in a day. It is no word on whether
// anybody should: the label in hand decides.
type Clock struct {
	Lawn string
	Laid core.Moment // the end of the last piece
	// Until is the end of the longest time that a label entry gives in hours; zero: none gives any.
	Until core.Moment
	By    string // the product that it is of
	// Words are what label entries say without an hour, each with its product; Blank are products whose entry says nothing.
	Words []string
	Blank []string
}

// hoursIn finds a number of hours in the words of a label: "4 hours", "12-hour", "24 hrs", "two" is not read.
var hoursIn = regexp.MustCompile(`(?i)(\d+(?:\.\d+)?)[\s-]*(?:hours?|hrs?|h)\b`)

// Hours are the hours that the words of a label name, the most of them; unknown where they name none.
func Hours(words string) core.Maybe[float64] {
	var out core.Maybe[float64]
	for _, m := range hoursIn.FindAllStringSubmatch(words, -1) {
		if h, err := strconv.ParseFloat(m[1], 64); err == nil && (!out.Known || h > out.V) {
			out = core.Known(h)
		}
	}
	return out
}

// Clocks are the re-entry clocks of the lawns treated in the book's day, in the order of the last piece.
func Clocks(b *core.Book) []Clock {
	var out []Clock
	for i := range b.Day().Laid {
		l := &b.Day().Laid[i]
		at := -1
		for j := range out {
			if out[j].Lawn == l.Lawn {
				at = j
			}
		}
		if at < 0 {
			out, at = append(out, Clock{Lawn: l.Lawn}), len(out)
		}
		out[at].Laid = l.At
	}
	for i := range out {
		for j := range b.Day().Laid {
			if l := &b.Day().Laid[j]; l.Lawn == out[i].Lawn {
				out[i].take(b, l)
			}
		}
	}
	return out
}

// take adds what the label entries of a piece say. Every clock runs from the last piece, because nobody goes onto a part of a lawn.
func (c *Clock) take(b *core.Book, l *core.Laid) {
	for j, h := range l.Holds {
		p := b.ProductVersions(h.Key)
		e := p.Now()
		if j < len(l.Versions) && int(l.Versions[j]) < len(p.Versions) {
			e = &p.Versions[l.Versions[j]]
		}
		words := e.Label.Reentry
		switch hours := Hours(words); {
		case words == "" && e.Label.Pesticide():
			c.Blank = withText(c.Blank, e.ProductName)
		case words == "":
		case hours.Known:
			until := core.Moment{Unix: c.Laid.Unix + int64(hours.V*3600), Offset: c.Laid.Offset}
			if until.Unix > c.Until.Unix || c.Until.Zero() {
				c.Until, c.By = until, e.ProductName
			}
			fallthrough
		default:
			c.Words = withText(c.Words, e.ProductName+": "+words)
		}
	}
}

func withText(list []string, s string) []string {
	for _, t := range list {
		if t == s {
			return list
		}
	}
	return append(list, s)
}

// Left is how long it still is, "3 h 20 min"; that it has run out, or that no label entry gives hours.
func (c *Clock) Left(now core.Moment) string {
	switch left := int64(0); {
	case c.Until.Zero() && len(c.Words) == 0:
		return "not entered; see the label"
	case c.Until.Zero():
		return "no hour on the label entry"
	default:
		left = (c.Until.Unix - now.Unix + 59) / 60
		if left <= 0 {
			return "the hours ended at " + c.Until.Clock()
		}
		return fmt.Sprintf("%d h %02d min", left/60, left%60)
	}
}
