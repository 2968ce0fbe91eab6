package core

import (
	"fmt"
	"time"
)

// Moment is a time of day somewhere: unix seconds and the offset of the local clock.
type Moment struct {
	Unix   int64
	Offset int32 // seconds east of UTC
}

// At turns a time into a moment. RFC 3339 knows no seconds in an offset, so the offset is cut to minutes.
func At(t time.Time) Moment {
	_, off := t.Zone()
	return Moment{t.Unix(), int32(off - off%60)}
}

// sound tells whether the moment can be stored and written as a line: years 1 to 9998, whole minutes and
// less than a day of offset.
func (m Moment) sound() bool {
	const first, last, day = -62_135_510_400, 253_370_764_800, 86_400 // 0001-01-02 and 9999-01-01, UTC
	return m.Unix >= first && m.Unix < last && m.Offset > -day && m.Offset < day && m.Offset%60 == 0
}

// ParseMoment reads RFC 3339.
func ParseMoment(s string) (Moment, error) {
	t, err := time.Parse(time.RFC3339, s)
	if err != nil {
		return Moment{}, &Problem{What: fmt.Sprintf("%q is not a time.", s), Do: "Write it as in 2026-05-28T09:42:00-05:00 (RFC 3339).", Err: err}
	}
	return At(t), nil
}

// Time is the moment as a time in its own zone.
func (m Moment) Time() time.Time {
	return time.Unix(m.Unix, 0).In(time.FixedZone("", int(m.Offset)))
}

func (m Moment) String() string { return m.Time().Format(time.RFC3339) }

// Clock is the moment as the operator reads it, "9:42".
func (m Moment) Clock() string { return m.Time().Format("15:04") }

// Date is the moment's date where it was, "2026-05-28".
func (m Moment) Date() string { return m.Time().Format(time.DateOnly) }

// Hour is the hour of its clock, 0 to 23.
func (m Moment) Hour() int {
	const hour, day = 3600, 86_400
	local := (m.Unix + int64(m.Offset)) % day
	return int((local+day)%day) / hour
}

// Zero tells whether the moment was never set.
func (m Moment) Zero() bool { return m == Moment{} }

// MinutesSince is how many minutes m lies after then, negative if before.
func (m Moment) MinutesSince(then Moment) float64 { return float64(m.Unix-then.Unix) / 60 }
