package sheet

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"
)

// mostRows bounds a file whose facts have several rows each.
const mostRows = 10 * Most

// parse parts a file into rows.
func (s *reading) parse(kind string, src []byte) {
	src = bytes.TrimPrefix(src, []byte("\ufeff"))
	if !s.isText(src) {
		return
	}
	if !bytes.Contains(src, []byte("\n")) { // an old way to end a line
		src = bytes.ReplaceAll(src, []byte("\r"), []byte("\n"))
	}
	in := csv.NewReader(bytes.NewReader(src))
	in.FieldsPerRecord, in.ReuseRecord = -1, true
	headers, ok := s.header(kind, in)
	if !ok {
		return
	}
	for {
		cells, err := in.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			s.broken(err)
			return
		}
		line, _ := in.FieldPos(0)
		if r := s.filled(line, headers, cells); len(r.cells) > 0 {
			s.rows = append(s.rows, r)
		}
		if len(s.rows) > mostRows {
			s.add(Trouble{Line: line, What: fmt.Sprintf("The file has more than %d rows; an action has at most %d entries.", mostRows, Most), Allowed: "the rest into a second file and import both"})
			return
		}
	}
	if len(s.rows) == 0 {
		s.add(Trouble{What: "The file has a header row and no rows below it.", Allowed: "at least one row below the header"})
	}
}

// isText says whether the file is UTF-8 and not empty.
func (s *reading) isText(src []byte) bool {
	const asText = "the file as CSV in UTF-8, which a spreadsheet offers under save as"
	switch {
	case len(bytes.TrimSpace(src)) == 0:
		s.add(Trouble{What: "The file is empty.", Allowed: "a header row and at least one row below it"})
	case bytes.HasPrefix(src, []byte("\xff\xfe")), bytes.HasPrefix(src, []byte("\xfe\xff")):
		s.add(Trouble{What: "The file is in UTF-16.", Allowed: asText})
	case bytes.HasPrefix(src, []byte("PK\x03\x04")):
		s.add(Trouble{What: "The file is a workbook or an archive and no CSV.", Allowed: asText})
	case !utf8.Valid(src):
		at := 0
		for {
			r, n := utf8.DecodeRune(src[at:])
			if r == utf8.RuneError && n == 1 {
				break
			}
			at += n
		}
		s.add(Trouble{
			Line: 1 + bytes.Count(src[:at], []byte("\n")), What: fmt.Sprintf("The line holds a byte, %#x, that is not UTF-8.", src[at]), Allowed: asText,
		})
	default:
		return true
	}
	return false
}

// broken says what is wrong with the quotation marks, which is all that a CSV file can have wrong.
func (s *reading) broken(err error) {
	var p *csv.ParseError
	if !errors.As(err, &p) {
		s.add(Trouble{What: "The file cannot be read as CSV: " + err.Error() + ".", Allowed: "cells with commas between them"})
		return
	}
	t := Trouble{Line: p.Line, What: "A quotation mark stands inside a cell.", Allowed: `the whole cell in quotation marks and the mark in it twice, such as "a 5"" pipe"`}
	if errors.Is(p.Err, csv.ErrQuote) {
		t.Line, t.What = p.StartLine, fmt.Sprintf("A cell that begins with a quotation mark does not end with one (looked up to line %d).", p.Line)
	}
	s.add(t)
}

// header reads the first row: the name of the column at each place, empty where there is none.
func (s *reading) header(kind string, in *csv.Reader) ([]string, bool) {
	cells, err := in.Read()
	if err != nil {
		s.broken(err)
		return nil, false
	}
	line, _ := in.FieldPos(0)
	if t, yes := s.otherMark(cells, line); yes {
		s.add(t)
		return nil, false
	}
	out := make([]string, len(cells))
	at := map[string]int{}
	var unknown []Trouble
	for i, cell := range cells {
		name := headerName(trim(cell))
		if name == "" {
			continue
		}
		if find(s.columns, name) == nil {
			t := unknownColumn(kind, trim(cell), s.columns)
			t.Line = line
			unknown = append(unknown, t)
			continue
		}
		if first, twice := at[name]; twice {
			s.add(Trouble{Line: line, Column: name, What: fmt.Sprintf("The column stands twice, at place %d and at place %d.", first+1, i+1), Allowed: "each column once"})
			continue
		}
		at[name], out[i] = i, name
	}
	if other := kindOf(cells); len(at) == 0 || len(unknown) > 0 && other != "" && other != kind {
		s.noHeader(kind, other, line)
		return nil, false
	}
	for _, t := range unknown {
		s.add(t)
	}
	for i := range s.columns {
		if c := &s.columns[i]; c.Required && len(unknown) == 0 {
			if _, there := at[c.Name]; !there {
				s.add(Trouble{Line: line, Column: c.Name, What: "The column is missing; each row needs it.", Allowed: "it into the first row, and below it " + c.allowed})
			}
		}
	}
	s.present = map[string]bool{}
	for name := range at {
		s.present[name] = true
	}
	return out, len(s.troubles) == 0
}

// otherMark finds a header whose names have another mark between them than a comma.
func (s *reading) otherMark(cells []string, line int) (Trouble, bool) {
	if len(cells) != 1 {
		return Trouble{}, false
	}
	for _, other := range []struct{ mark, words string }{{";", "semicolons"}, {"\t", "tabs"}, {"|", "bars"}} {
		parts := strings.Split(cells[0], other.mark)
		if len(parts) > 1 && find(s.columns, headerName(trim(parts[0]))) != nil {
			return Trouble{Line: line, What: "The columns have " + other.words + " between them.", Allowed: "commas between them, which a spreadsheet offers under save as CSV"}, true
		}
	}
	return Trouble{}, false
}

// kindOf is the kind that has all the columns of a first row, and at least two of them; empty if none has.
func kindOf(cells []string) string {
	for _, kind := range Kinds {
		columns, _ := table(kind)
		n := 0
		for _, cell := range cells {
			name := headerName(trim(cell))
			if name != "" && find(columns, name) == nil {
				n = -len(cells)
			}
			if name != "" {
				n++
			}
		}
		if n > 1 {
			return kind
		}
	}
	return ""
}

// noHeader is for a first row without one known name, or with the names of another kind.
func (s *reading) noHeader(kind, other string, line int) {
	t := Trouble{Line: line, What: fmt.Sprintf("The first row names no column of %s.", kind), Allowed: "a header row with some of " + strings.Join(names(s.columns), ", ")}
	if other != "" {
		t.What = fmt.Sprintf("The first row has the columns of %s, not of %s.", other, kind)
	}
	s.add(t)
}

// filled is a row with its filled cells.
func (s *reading) filled(line int, headers, cells []string) *row {
	r := &row{reading: s, line: line, cells: map[string]string{}}
	for i, cell := range cells {
		if cell = trim(cell); cell == "" {
			continue
		}
		if i >= len(headers) || headers[i] == "" {
			s.add(Trouble{Line: line, What: fmt.Sprintf("%s stands at place %d, under no column name.", quote(cell), i+1), Allowed: "a cell with a comma in it in quotation marks, and nothing where there is no column"})
			continue
		}
		r.cells[headers[i]] = cell
	}
	return r
}
