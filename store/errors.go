package store

import "errors"

// The kinds of trouble. Each error of this package matches one of them, some
// two: a commit of unknown outcome is ErrUnsure and also what stopped it, a
// refusal after a failed commit is ErrLatched and also what failed.
var (
	ErrMissing  = errors.New("file is missing")
	ErrExists   = errors.New("file exists")
	ErrBusy     = errors.New("file is in use")
	ErrEmpty    = errors.New("file is empty")
	ErrShort    = errors.New("file is cut short")
	ErrForeign  = errors.New("file is of another kind")
	ErrNewer    = errors.New("file is of a newer format")
	ErrOlder    = errors.New("file is of an older format")
	ErrNoRows   = errors.New("file keeps no rows")
	ErrDamaged  = errors.New("file is damaged")
	ErrReadOnly = errors.New("file cannot be written")
	ErrFull     = errors.New("disk is full")
	ErrSync     = errors.New("disk did not confirm")
	ErrGone     = errors.New("file is gone or was replaced")
	ErrUnsure   = errors.New("outcome unknown")
	ErrLatched  = errors.New("writing has stopped")
	ErrInput    = errors.New("request cannot be stored")
	ErrClosed   = errors.New("file is closed")
	ErrIO       = errors.New("disk or system error")
)

// Trouble is an error for a person: What is wrong, one sentence with its
// figures, and what to Do about it, one sentence.
type Trouble struct {
	What  string
	Do    string
	Kind  error // one of the sentinels above
	Cause error // may be nil
}

func (t *Trouble) Error() string { return t.What }

// Unwrap gives the kind and the cause to errors.Is and errors.As.
func (t *Trouble) Unwrap() []error {
	if t.Cause == nil {
		return []error{t.Kind}
	}
	return []error{t.Kind, t.Cause}
}
