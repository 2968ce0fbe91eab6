package closing

import (
	"fmt"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
	"example.com/tintline/core/notice"
)

// openMeters are hour meters that ran longer than the day, or less than it takes to lay what was laid, and an odometer that stood still
// between two lawns. Meters that were not read since the last was laid say nothing.
func openMeters(b *core.Book, at core.Moment) []string {
	m, d := b.Meters(), b.Day()
	hours, laid := float64(at.Unix-d.Opened.Unix)/3600, layingHours(b)
	var out []string
	for _, x := range namedMeters(&m) {
		ran := x.Run - x.DayRun
		switch {
		case !x.Last.Known || x.At.Unix < lastWork(d).Unix || x.Run == 0: // of the first reading there is nothing to tell
		case x.unit == "mi":
			if n := len(lawnsOf(d)); ran == 0 && n > 1 {
				out = append(out, fmt.Sprintf("the odometer went 0 mi, and %d lawns were treated", n))
			}
		case ran > hours+1:
			out = append(out, fmt.Sprintf("the %s ran %.1f h by its meter, and the day has %.1f", x.name, ran, hours))
		case ran < laid-meterStep:
			out = append(out, fmt.Sprintf("the %s ran %.1f h by its meter, and what was laid takes %.1f", x.name, ran, laid))
		}
	}
	return out
}

// meterStep is what two readings of an hour meter that shows tenths can hide.
//
// Common practice, no source.
const meterStep = 0.2

// layingHours is how long the nozzle was open at least: what the pump laid, over the flow of the applicator.
func layingHours(b *core.Book) float64 {
	seconds := 0.0
	for i := range b.Day().Laid {
		l := &b.Day().Laid[i]
		if a := b.Applicator(l.Applicator); a != nil && a.Tank == 0 && a.Flow.Known && a.Flow.V > 0 && !l.Dry {
			seconds += a.Flow.V.Seconds(l.Volume)
		}
	}
	return seconds / 3600
}

func lawnsOf(d *core.Day) map[string]bool {
	out := map[string]bool{}
	for i := range d.Laid {
		out[d.Laid[i].Lawn] = true
	}
	return out
}

// openStock are products of which more was put in than was there.
func openStock(b *core.Book) []string {
	var out []string
	for _, st := range b.Stocks() {
		if st.Have.Known && st.Have.V.N < 0 {
			short := measure.Amount{N: -st.Have.V.N, Kind: st.Form}
			out = append(out, fmt.Sprintf("%s: %s more was put in than the stock had", st.Product, short.Text()))
		}
	}
	return out
}

// openNotices are signs and notices that the day's treatments ask for.
func openNotices(b *core.Book, at core.Moment) []string {
	var of []notice.Owed
	for _, o := range notice.List(b, at) {
		if o.Date == b.Day().Date && (o.Kind == notice.KindNotice || o.Kind == notice.KindSignUp) {
			of = append(of, o)
		}
	}
	if len(of) == 0 {
		return nil
	}
	return []string{notice.Short(of)}
}
