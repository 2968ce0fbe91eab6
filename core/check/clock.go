package check

import (
	"fmt"

	"example.com/tintline/core"
)

// ClockBack tells whether the clock stands behind the last entry by more than the setting clock_back_min: it was set back,
// or its battery is dead. What is entered then is asked about once; the order of the entries is their number and the sums
// go by the date of the day that is open, so nothing is refused. An hour that is lived twice in autumn is no step back.
func ClockBack(b *core.Book, at core.Moment) (words, do string, back bool) {
	last := b.LastAt()
	if b.Seq() == 0 || -at.MinutesSince(last) <= b.Setting(core.ClockBackMin) {
		return "", "", false
	}
	do = "Set the clock; or answer y: the entries keep their order."
	if d := b.Day(); d.Open {
		do = fmt.Sprintf("Set the clock; or answer y: the entries keep their order, and what is laid counts for %s.", d.Date)
	}
	return fmt.Sprintf("The clock says %s %s; the last entry is of %s %s.", at.Date(), at.Clock(), last.Date(), last.Clock()), do, true
}
