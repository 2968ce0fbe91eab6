package measure

import (
	"math"
	"math/big"
	"strings"
)

// clockUnits are what may stand behind a number of a duration, in seconds.
var clockUnits = []struct {
	seconds int64
	names   string
}{
	{1, "|s|sec|secs|second|seconds|\"|"},
	{60, "|m|min|mins|minute|minutes|'|"},
	{3600, "|h|hr|hrs|hour|hours|"},
}

// ReadSeconds reads a duration: "72", "72 s", "1:12", "1 min 12", "1:02:03". A bare
// number is in seconds; a bare number behind minutes is in seconds too. Refused in
// one sentence: anything else, and more than a million hours.
func ReadSeconds(text string) (float64, error) {
	rest := strings.TrimSpace(lower(text))
	if rest == "" {
		return 0, textErrorf("Nothing is typed; this field takes a time: 72, 72 s, 1:12 or 1 min 12.")
	}
	if len(rest) > maxDigits {
		return 0, textErrorf("%s is too long; at most %d characters are read.", quoted(text), maxDigits)
	}
	sum, err := readClock(rest, text)
	if err != nil {
		return 0, err
	}
	f, _ := sum.Float64()
	if f > 3.6e9 || math.IsInf(f, 0) {
		return 0, textErrorf("%s is more than a million hours.", quoted(text))
	}
	return f, nil
}

func readClock(rest, typed string) (*big.Rat, error) {
	if strings.Contains(rest, ":") {
		return readColons(rest, typed)
	}
	sum, last := new(big.Rat), int64(3601)
	for rest != "" {
		number, after, err := typedNumber(rest, typed)
		if err != nil {
			return nil, err
		}
		name, next := typedUnit(after)
		scale := int64(1)
		if name == "" && last == 3600 {
			scale = 60 // "1 h 5" is five minutes
		}
		if name != "" {
			if scale = clockUnit(name); scale == 0 {
				return nil, textErrorf("%s is no time; write 72, 72 s, 1:12 or 1 min 12.", quoted(typed))
			}
		}
		if scale >= last || (name == "" && next != "") {
			return nil, textErrorf("%s is no time; write the hours first, then minutes, then seconds.", quoted(typed))
		}
		sum.Add(sum, number.Mul(number, big.NewRat(scale, 1)))
		rest, last = next, scale
	}
	return sum, nil
}

// readColons reads "1:12" or "1:02:03"; behind a colon stand two digits below 60.
func readColons(text, typed string) (*big.Rat, error) {
	parts := strings.Split(text, ":")
	sum := new(big.Rat)
	for i, p := range parts {
		whole := p
		if i == len(parts)-1 {
			whole, _, _ = strings.Cut(p, ".")
		}
		if len(parts) > 3 || digits(whole) != len(whole) || whole == "" || (i > 0 && (len(whole) != 2 || whole[0] > '5')) {
			return nil, textErrorf("%s is no time; write minutes and seconds as 1:12.", quoted(typed))
		}
		n, err := decimal(p)
		if err != nil {
			return nil, err
		}
		sum.Add(sum.Mul(sum, big.NewRat(60, 1)), n)
	}
	return sum, nil
}

func clockUnit(name string) int64 {
	for _, u := range clockUnits {
		if strings.Contains(u.names, "|"+name+"|") {
			return u.seconds
		}
	}
	return 0
}
