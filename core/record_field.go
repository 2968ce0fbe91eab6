package core

import (
	_ "embed"
	"encoding/csv"
	"math"
	"strconv"
	"strings"
	"time"
	"unicode"
	"unicode/utf8"
)

//go:embed record_fields.csv
var recordFieldsText string

// The kinds of what stands in a field of the application record.
const (
	RecordText   = "text"
	RecordNumber = "number"
	RecordClock  = "clock" // time of day, "09:35"
	RecordDate   = "date"  // "2026-05-28"
)

// RecordField is a field of the application record. Law names what rules ask for that it answers; with a question mark behind it, one of
// the fields that answer it is enough.
type RecordField struct {
	Key, Kind, Unit, Title, Words string
	Fill                          bool // it may be filled by hand
	Law                           []string
}

var recordFields = readRecordFields()

func readRecordFields() []RecordField {
	rows, err := csv.NewReader(strings.NewReader(recordFieldsText)).ReadAll()
	if err != nil {
		panic("core/record_fields.csv: " + err.Error()) // embedded, and read by every test
	}
	var out []RecordField
	for _, r := range rows[1:] {
		out = append(out, RecordField{Key: r[0], Kind: r[1], Unit: r[2], Fill: r[3] == yes, Title: r[4], Law: strings.Fields(r[5]), Words: r[6]})
	}
	return out
}

// RecordFields lists the fields of the application record in the order in which they are printed.
func RecordFields() []RecordField { return append([]RecordField(nil), recordFields...) }

// RecordFieldOf finds a field by its key or its title.
func RecordFieldOf(name string) (RecordField, bool) {
	for _, f := range recordFields {
		if f.Key == name || strings.EqualFold(f.Title, name) {
			return f, true
		}
	}
	return RecordField{}, false
}

// LongestRecordText bounds what is filled in, in letters.
const LongestRecordText = 300

// Read checks what is filled into a field and writes it as it is kept: a number without blanks, a time of day as "09:35".
func (f RecordField) Read(value string) (string, error) {
	value = strings.TrimSpace(value)
	if value == "" {
		return "", refuse("Write it, or none where there is none.", "The field %s gets nothing.", f.Title)
	}
	switch f.Kind {
	case RecordNumber:
		n, err := strconv.ParseFloat(value, 64)
		if err != nil || math.IsNaN(n) || math.Abs(n) > 1e6 {
			return "", refuse("Write it as in 6.5.", "%q is no figure for %s.", value, f.Title)
		}
		return strconv.FormatFloat(n, 'g', -1, 64), nil
	case RecordClock:
		t, err := time.Parse(clockForm, value)
		if err != nil {
			return "", refuse("Write it as in 09:35.", "%q is no time of day for %s.", value, f.Title)
		}
		return t.Format(clockForm), nil
	case RecordDate:
		if _, err := time.Parse(time.DateOnly, value); err != nil {
			return "", refuse("Write it as in 2026-03-14.", "%q is no date for %s.", value, f.Title)
		}
		return value, nil
	}
	if n := utf8.RuneCountInString(value); n > LongestRecordText {
		return "", refuse("Write it shorter.", "What stands in %s has %d letters; up to %d are possible.", f.Title, n, LongestRecordText)
	}
	if strings.ContainsFunc(value, unicode.IsControl) {
		return "", refuse("Write it in one line.", "What stands in %s has a line break or a sign that cannot be seen.", f.Title)
	}
	return value, nil
}

// fillable lists the fields that may be filled by hand.
func fillable() string {
	var out []string
	for _, f := range recordFields {
		if f.Fill {
			out = append(out, f.Key)
		}
	}
	return strings.Join(out, ", ")
}
