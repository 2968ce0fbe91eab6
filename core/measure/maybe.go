package measure

// Maybe is a value that may be unknown. Unknown is not zero.
type Maybe[T any] struct {
	V     T
	Known bool
}

// Known wraps a value that is known.
func Known[T any](v T) Maybe[T] { return Maybe[T]{v, true} }

// Or is the value, or other where it is unknown.
func (m Maybe[T]) Or(other T) T {
	if m.Known {
		return m.V
	}
	return other
}

// Pointer points to a copy of the value: nil where it is unknown, as a document has it.
func (m Maybe[T]) Pointer() *T {
	if !m.Known {
		return nil
	}
	return &m.V
}
