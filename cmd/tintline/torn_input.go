package main

import (
	"bytes"
	"io"
	"os"
)

// pasteBegins is what a terminal sends before a paste.
var pasteBegins = []byte("\x1b[200~")

// whole is the terminal read so that what begins a paste is never torn between two reads: the library that reads keys
// knows it only whole, and takes what follows for keys else.
type whole struct {
	*os.File
	held []byte
}

// Read gives what was typed, and keeps the beginning of a paste back until all of it has come. It may give nothing.
func (w *whole) Read(p []byte) (int, error) {
	had := copy(p, w.held)
	if had == len(p) {
		w.held = w.held[had:]
		return had, nil
	}
	w.held = nil
	n, err := w.File.Read(p[had:])
	n = had + max(n, 0)
	if err != nil {
		return n, err
	}
	keep := begun(p[:n], n == len(p))
	w.held = append([]byte(nil), p[n-keep:n]...)
	return n - keep, nil
}

// begun is how many bytes at the end begin a paste that has not come whole. Escape alone is a key, unless more is waiting.
func begun(b []byte, more bool) int {
	for n := min(len(pasteBegins)-1, len(b)); n > 0; n-- {
		if (n > 1 || more) && bytes.HasSuffix(b, pasteBegins[:n]) {
			return n
		}
	}
	return 0
}

// keys is where the screen reads its keys from.
func keys(stdin io.Reader) io.Reader {
	if f, ok := stdin.(*os.File); ok {
		return &whole{File: f}
	}
	return stdin
}
