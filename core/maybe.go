package core

import "example.com/tintline/core/measure"

// Maybe is a value that may be unknown. Unknown is not zero.
type Maybe[T any] = measure.Maybe[T]

// Known wraps a value that is known.
func Known[T any](v T) Maybe[T] { return measure.Known(v) }
