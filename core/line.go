package core

import (
	"errors"
	"strconv"
	"strings"
)

// Line is an entry as one line of text. Without a digest it is a fact to be admitted as if typed.
type Line struct {
	Fact      Fact
	At        Maybe[Moment]
	Seq       uint64 // 0: not given
	Action    string
	Truck     uint32
	Digest    Digest
	HasDigest bool
}

// EncodeLine writes an entry as one line of JSON, exact and complete. struckBy is the number of the entry
// that struck it, 0 if none.
func EncodeLine(e Entry, struckBy uint64) []byte {
	w := newJSONWriter()
	seq := int64(e.Seq)
	w.integer(0, "seq", &seq)
	name, at := e.What.Name(), e.At.String()
	w.text(0, "fact", &name)
	w.text(0, "at", &at)
	e.What.fields(walker{w})
	w.later = false
	w.text(0, "action", &e.Action)
	truck := int64(e.Truck)
	w.integer(0, "truck", &truck)
	if struckBy == 0 {
		w.raw("struck_by", "null")
	} else {
		w.raw("struck_by", strconv.FormatUint(struckBy, 10))
	}
	d := e.Digest.String()
	w.text(0, "digest", &d)
	return w.end()
}

// DecodeLine reads one line of JSON. An unknown key, fact or unit is refused with what is allowed.
func DecodeLine(b []byte) (Line, error) {
	r := readObject(b, "", 0)
	var l Line
	var seq, truck, struck int64
	var at, digest string
	r.integer(0, "seq", &seq)
	r.text(0, "at", &at)
	r.text(0, "action", &l.Action)
	r.integer(0, "truck", &truck)
	r.integer(0, "struck_by", &struck)
	r.text(0, "digest", &digest)
	if r.err != nil {
		return l, r.err
	}
	if seq < 0 || truck < 0 || truck > 1<<31 || len(l.Action) > 64 {
		r.fail("seq, truck or action is out of range: %d, %d, %q.", seq, truck, short([]byte(l.Action)))
		return l, r.err
	}
	l.Seq, l.Truck = uint64(seq), uint32(truck)
	if at != "" {
		m, err := ParseMoment(at)
		if err != nil {
			return l, err
		}
		if !m.sound() {
			r.fail("at is %s, which is out of range.", at)
			return l, r.err
		}
		l.At = Known(m)
	}
	if digest != "" {
		d, err := ParseDigest(digest)
		if err != nil {
			return l, err
		}
		l.Digest, l.HasDigest = d, true
	}
	r.allowed = []string{"at"} // what the journal adds is read, but nobody types it
	l.Fact = r.readFact()
	if l.HasDigest && errors.Is(r.err, errUnknown) {
		return l, ofNewer(r.err)
	}
	return l, r.err
}

// ofNewer is said of a line that a journal wrote and that holds what this version does not know.
func ofNewer(err error) error {
	what, _, _ := strings.Cut(err.Error(), "; allowed are")
	return &Problem{
		What: what + " in this version, and the line has a digest: a newer version wrote it.",
		Do:   "Read the lines with the newer program that wrote them.",
		Err:  ErrNewer,
	}
}
