package store

import (
	"errors"
	"fmt"
	"runtime/debug"
)

// guard runs f, which may enter bbolt, and turns a panic or a fault of its map
// into damage. The setting belongs to the goroutine, so f must stay on it.
func guard(path string, f func() error) (err error) {
	old := debug.SetPanicOnFault(true)
	defer debug.SetPanicOnFault(old)
	defer func() {
		if r := recover(); r != nil {
			t := damaged(path, "reading it went wrong (%v)", r)
			t.Cause = &panicked{r}
			err = t
		}
	}()
	return f()
}

// panicked marks an error that was a panic: what bbolt holds is not to be
// trusted after it, not even its locks.
type panicked struct{ value any }

func (p *panicked) Error() string { return fmt.Sprint(p.value) }

// guard is the same for an open store, and marks it as broken after a panic.
func (s *Store) guard(f func() error) error {
	err := guard(s.path, f)
	var p *panicked
	if errors.As(err, &p) {
		s.hold.Lock()
		s.dead = true
		s.hold.Unlock()
	}
	return err
}
