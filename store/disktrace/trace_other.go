//go:build !linux || !(amd64 || arm64)

package disktrace

// Trace runs a program to its end.
func (r Run) Trace() (*Log, error) { return nil, ErrNoTrace }
