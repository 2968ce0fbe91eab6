package main

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"

	"example.com/tintline/core"
)

// longestLine bounds what one line may take of the memory.
const longestLine = 4 << 20

// lineReader reads facts, one a line, and keeps one line ahead where entries of one action may follow.
type lineReader struct {
	name  string
	in    *bufio.Reader
	n     int // number of the line read last
	ahead *numbered
	after error // what ended the reading ahead; it is told when its turn comes
}

// numbered is a line with its number in the file.
type numbered struct {
	core.Line
	n int
}

// openLines opens a file of lines; "-" is standard input.
func (a *app) openLines(name string) (*lineReader, io.Closer, error) {
	if name == "-" {
		return newLineReader("standard input", a.stdin), io.NopCloser(nil), nil
	}
	st, err := os.Stat(name)
	if err == nil && st.IsDir() {
		return nil, nil, &failure{what: fmt.Sprintf("%s is a folder, and no file of lines.", name), do: "Check the path.", code: exitCannot}
	}
	f, err := os.Open(name)
	if err != nil {
		return nil, nil, &failure{
			what: fmt.Sprintf("The lines in %s cannot be read: %v.", name, bareError(err)), do: "Check the path.", code: exitCannot, err: err,
		}
	}
	return newLineReader(name, f), f, nil
}

func newLineReader(name string, in io.Reader) *lineReader {
	return &lineReader{name: name, in: bufio.NewReaderSize(in, 1<<16)}
}

// refused names file and line, and keeps what to do about it.
func (r *lineReader) refused(n int, err error) error {
	f := *explain(err)
	f.what = fmt.Sprintf("%s, line %d: %s", r.name, n, f.what)
	f.err = err
	if errors.Is(err, core.ErrChain) || errors.Is(err, core.ErrOrder) {
		f.do = "Take the lines as the journal wrote them, all of them and in order, or leave out seq and digest."
	}
	return &f
}

// next reads one line, nil at the end. Lines of blanks are passed over.
func (r *lineReader) next() (*numbered, error) {
	if l, err := r.ahead, r.after; l != nil || err != nil {
		r.ahead, r.after = nil, nil
		return l, err
	}
	for {
		text, err := r.read()
		if err != nil || text == nil {
			return nil, err
		}
		if text = bytes.TrimSpace(text); len(text) == 0 {
			continue
		}
		l, err := core.DecodeLine(text)
		if err != nil {
			return nil, r.refused(r.n, err)
		}
		return &numbered{l, r.n}, nil
	}
}

// read gives the next line as it stands, nil at the end.
func (r *lineReader) read() ([]byte, error) {
	var text []byte
	r.n++
	for {
		part, err := r.in.ReadSlice('\n')
		text = append(text, part...)
		switch {
		case len(text) > longestLine:
			return nil, r.refused(r.n, usage("The line is longer than %d bytes.", longestLine))
		case errors.Is(err, bufio.ErrBufferFull):
			continue
		case errors.Is(err, io.EOF):
			if len(text) == 0 {
				return nil, nil
			}
			return text, nil
		case err != nil:
			return nil, r.refused(r.n, &failure{what: err.Error() + ".", do: "Check the file.", code: exitCannot, err: err})
		}
		return text, nil
	}
}

// action reads the lines of one action, none at the end: restored lines that follow one another with the
// same action, or one line.
func (r *lineReader) action() ([]*numbered, error) {
	first, err := r.next()
	if err != nil || first == nil {
		return nil, err
	}
	out := []*numbered{first}
	for first.HasDigest && first.Action != "" {
		l, err := r.next()
		if err != nil {
			r.after = err
			return out, nil
		}
		if l == nil {
			return out, nil
		}
		if !l.HasDigest || l.Action != first.Action {
			r.ahead = l
			return out, nil
		}
		out = append(out, l)
	}
	return out, nil
}
