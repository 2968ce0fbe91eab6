package main

import (
	"bufio"
	"bytes"
	"errors"
	"io"
	"os"

	"example.com/tintline/core"
)

// linesSpan is what a file of lines reaches over.
type linesSpan struct {
	first, last uint64      // numbers; 0: there is not one whole line
	digest      core.Digest // of the last
	end         int64       // of the last whole line
}

func spanOf(path string) (s linesSpan, err error) {
	f, err := os.Open(path)
	if err != nil {
		return s, err
	}
	defer func() { _ = f.Close() }()
	st, err := f.Stat()
	if err != nil {
		return s, err
	}
	head, err := bufio.NewReader(io.LimitReader(f, longestLine)).ReadBytes('\n')
	if errors.Is(err, io.EOF) {
		return s, nil // not one whole line
	}
	if err != nil {
		return s, err
	}
	l, err := core.DecodeLine(bytes.TrimSpace(head))
	if err != nil || !l.HasDigest || l.Seq == 0 {
		return s, errNotLines
	}
	s.first = l.Seq
	text, end, err := lastLine(f, st.Size())
	if err != nil {
		return s, err
	}
	if l, err = core.DecodeLine(text); err != nil || !l.HasDigest || l.Seq < s.first {
		return s, errNotLines
	}
	s.last, s.digest, s.end = l.Seq, l.Digest, end
	return s, nil
}

var errNotLines = errors.New("they are not lines of a journal")

// lastLine reads the last line that ends in a newline, and says where it ends.
func lastLine(f *os.File, size int64) (text []byte, end int64, err error) {
	for n := int64(1 << 16); ; n *= 8 {
		from := max(size-n, 0)
		b := make([]byte, size-from)
		if _, err := f.ReadAt(b, from); err != nil && !errors.Is(err, io.EOF) {
			return nil, 0, err
		}
		stop := bytes.LastIndexByte(b, '\n')
		start := bytes.LastIndexByte(b[:max(stop, 0)], '\n')
		if stop >= 0 && (start >= 0 || from == 0) {
			return b[start+1 : stop], from + int64(stop) + 1, nil
		}
		if from == 0 || n > longestLine {
			return nil, 0, errNotLines
		}
	}
}

// linesHold tells which entries a file of lines reaches over.
func linesHold(path string) (first, last uint64, ok bool) {
	s, err := spanOf(path)
	return s.first, s.last, err == nil && s.first > 0
}

// readLines reads the whole lines after an entry. One that cannot be read, the torn last one above all, is passed over.
func readLines(path string, above uint64) ([]core.Line, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer func() { _ = f.Close() }()
	var out []core.Line
	in := bufio.NewReaderSize(f, 1<<16)
	for {
		text, err := in.ReadBytes('\n')
		if len(text) > 0 {
			l, bad := core.DecodeLine(bytes.TrimSpace(text))
			if bad == nil && l.HasDigest && l.At.Known && l.Seq > above {
				out = append(out, l)
			}
		}
		if errors.Is(err, io.EOF) {
			return out, nil
		}
		if err != nil {
			return out, err
		}
	}
}
