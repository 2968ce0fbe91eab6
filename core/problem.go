package core

import (
	"errors"
	"fmt"

	"example.com/tintline/core/measure"
)

// Problem is what the operator reads when something cannot be done.
type Problem struct {
	What string // what is wrong, one sentence, with its figures
	Do   string // what to do about it, one sentence
	Err  error  // the cause, for errors.Is; may be nil
}

func (p *Problem) Error() string { return p.What }
func (p *Problem) Unwrap() error { return p.Err }

// Kinds of problem that a caller may want to tell apart.
var (
	ErrRefused = errors.New("refused: it could not have happened")
	ErrOrder   = errors.New("entry out of order")
	ErrChain   = errors.New("the chain of digests is broken")
	ErrCode    = errors.New("unreadable entry")
	ErrNewer   = errors.New("written by a newer version")
	// ErrReadGauge marks a draw beyond what the book can explain: a gauge reading is asked for.
	ErrReadGauge = errors.New("a gauge reading is needed first")
	// ErrWeight marks a spreading whose weight does not follow from the book: it has to be given.
	ErrWeight = errors.New("a weight is needed first")
)

// troubled is a trouble of a figure as a refusal; nil where there is none.
func troubled(err error) error {
	var t *measure.Trouble
	if !errors.As(err, &t) {
		return err
	}
	return &Problem{What: t.Error(), Do: t.Do(), Err: ErrRefused}
}

func refuse(do, format string, args ...any) error {
	return &Problem{What: fmt.Sprintf(format, args...), Do: do, Err: ErrRefused}
}
