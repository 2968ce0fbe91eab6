package measure

import "fmt"

// Trouble is why a figure cannot be worked out: what is wrong, with the figures, and what to do. Each is a sentence that a
// screen shows as it is.
type Trouble struct{ what, do string }

// Troublef makes a Trouble.
func Troublef(do, format string, args ...any) *Trouble {
	return &Trouble{what: fmt.Sprintf(format, args...), do: do}
}

// Error is what is wrong.
func (t *Trouble) Error() string { return t.what }

// Do is what to do about it.
func (t *Trouble) Do() string { return t.do }
