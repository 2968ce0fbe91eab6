package measure

import (
	"math/big"
	"strings"
)

// ReadFigure reads a bare number as it stands on a scale, exactly: "7", "7.5", "1/4", "7 1/2". A text that is more
// than a number, or less, is none.
func ReadFigure(text string) (*big.Rat, bool) {
	rest := strings.TrimSpace(text)
	if rest == "" || len(rest) > maxDigits {
		return nil, false
	}
	n, after, err := typedNumber(rest, text)
	if err != nil || strings.TrimSpace(after) != "" {
		return nil, false
	}
	return n, true
}

// Between is the volume at a figure that lies on a straight line from one mark and its volume to the next, rounded
// half to even; ok is false where the figure is not between the marks. The marks must rise.
func Between(at, low, high *big.Rat, from, to Volume) (v Volume, ok bool) {
	if low.Cmp(high) >= 0 || at.Cmp(low) < 0 || at.Cmp(high) > 0 {
		return 0, false
	}
	share := new(big.Rat).Sub(at, low)
	share.Quo(share, new(big.Rat).Sub(high, low))
	share.Mul(share, new(big.Rat).SetInt64(int64(to-from)))
	n, ok := ratInt(share)
	return from + Volume(n), ok
}
