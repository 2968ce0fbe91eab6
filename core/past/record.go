package past

import (
	"math"
	"slices"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
	"example.com/tintline/core/tally"
)

const recordPrefix = "record/"

// RecordKey is the key of the application record of a day.
func RecordKey(date string, opened uint64) []byte { return dayKey(recordPrefix, date, opened) }

// recordWriter writes the fields of a record; texts by their place in the day's list.
type recordWriter struct {
	*writer
	texts []string
	at    map[string]int
}

func (w *recordWriter) Text(_ string, v *string) {
	i, there := w.at[*v]
	if !there {
		i, w.at[*v] = len(w.texts), len(w.texts)
		w.texts = append(w.texts, *v)
	}
	w.count(i)
}

func (w *recordWriter) Number(_ string, v *core.Maybe[float64]) {
	if w.yes(v.Known); v.Known {
		w.uint(math.Float64bits(v.V))
	}
}

func (w *recordWriter) Area(_ string, v *measure.Area)     { w.int(int64(*v)) }
func (w *recordWriter) Volume(_ string, v *measure.Volume) { w.int(int64(*v)) }
func (w *recordWriter) Amount(_ string, v *measure.Amount) {
	w.uint(uint64(v.Kind))
	w.int(v.N)
}

// encodeRecords writes the texts before the records, so that a reader that looks for one lawn or product can pass on.
func encodeRecords(h head, list []tally.Record) []byte {
	body := &recordWriter{writer: &writer{b: make([]byte, 0, 96*len(list))}, at: map[string]int{}}
	body.count(len(list))
	seq := h.opened
	for i := range list {
		r := &list[i]
		body.int(int64(r.Seq - seq))
		seq = r.Seq
		body.count(len(r.Pieces))
		body.ints(r.Pieces...)
		r.Walk(body)
	}
	w := &writer{b: make([]byte, 0, len(body.b)+1024)}
	w.head(h)
	w.count(len(body.texts))
	for _, s := range body.texts {
		w.text(s)
	}
	return append(w.b, body.b...)
}

// recordReader reads what recordWriter wrote.
type recordReader struct {
	*reader
	texts []string
	used  int // of the texts, which stand in the order of their first use
}

func (r *recordReader) Text(_ string, v *string) {
	if i := r.first(len(r.texts), &r.used); r.err == nil {
		*v = r.texts[i]
	}
}

func (r *recordReader) Number(_ string, v *core.Maybe[float64]) {
	*v = core.Maybe[float64]{}
	if r.yes() {
		f := math.Float64frombits(r.uint())
		if math.IsNaN(f) || math.IsInf(f, 0) {
			r.fail("a figure is no number")
			return
		}
		*v = core.Known(f)
	}
}

func (r *recordReader) Area(_ string, v *measure.Area)     { *v = measure.Area(r.int()) }
func (r *recordReader) Volume(_ string, v *measure.Volume) { *v = measure.Volume(r.int()) }
func (r *recordReader) Amount(_ string, v *measure.Amount) {
	*v = measure.Amount{Kind: r.kind(), N: r.int()}
}

// records reads what follows the head, and calls f with each record where the day may hold what is asked for.
func (r *reader) records(h head, q Query, f func(*tally.Record)) error {
	in := &recordReader{reader: r}
	for n := r.count(); n > 0 && r.err == nil; n-- {
		unique(r, &in.texts, r.text())
	}
	if r.err != nil {
		return r.err
	}
	if (q.Lawn != "" && !slices.Contains(in.texts, q.Lawn)) || (q.Product != "" && !slices.Contains(in.texts, q.Product)) {
		return nil
	}
	seq := h.opened
	for n := r.count(); n > 0 && r.err == nil; n-- {
		one := tally.Record{Opened: h.opened}
		seq += uint64(r.int())
		one.Seq = seq
		for m := r.count(); m > 0 && r.err == nil; m-- {
			one.Pieces = append(one.Pieces, r.int())
		}
		one.Walk(in)
		if r.err == nil && q.records(&one) {
			f(&one)
		}
	}
	if r.err == nil && in.used != len(in.texts) {
		r.fail("a text is of no use")
	}
	return r.end()
}

func (q Query) records(r *tally.Record) bool {
	return (q.Lawn == "" || r.Lawn == q.Lawn) && (q.Product == "" || r.Product == q.Product)
}

// Records lists the application record, oldest first, the book's own day included, with what was amended and what stood
// there first beside it.
func Records(b *core.Book, read Reader, q Query) ([]tally.Record, error) {
	var out []tally.Record
	w := newWalk(b.Day(), recordPrefix, q.From, q.To)
	err := w.days(read, func(h head, r *reader) error {
		return r.records(h, q, func(one *tally.Record) { out = append(out, *one) })
	})
	if err != nil {
		return nil, err
	}
	if w.has(b.Day()) {
		own := tally.RecordsOf(b)
		for i := range own {
			if q.records(&own[i]) {
				out = append(out, own[i])
			}
		}
	}
	tally.Amend(out, b.Amendments())
	return out, nil
}
