package core

import (
	"encoding/binary"

	"example.com/tintline/core/measure"
)

// packed is the older history of a zone as a snapshot has it, newest first. It is read when it is asked for and never
// changed: what is cut off it is cut off at the end.
type packed struct {
	b  []byte
	of *packedNames // of all zones together
}

// packedNames are what the numbers in it stand for, and how many there are.
type packedNames struct {
	texts    []string // dates and grasses
	versions []int32  // how many each product had: a damaged history cannot name others
}

func (p packed) empty() bool { return len(p.b) == 0 }

func (p packed) read() packedReader { return packedReader{packed: p} }

// since is so much of it as was laid from a date on.
func (p packed) since(from string) packed {
	r := p.read()
	for {
		before := len(r.b)
		laid := r.link()
		if laid == nil || laid[0].Date < from {
			p.b = p.b[:len(p.b)-before]
			return p
		}
	}
}

// packedReader reads link after link. What cannot be read ends it.
type packedReader struct {
	packed
	bad bool
}

func (r *packedReader) uint() uint64 {
	v, n := binary.Uvarint(r.b)
	if n <= 0 {
		r.bad, r.b = true, nil
		return 0
	}
	r.b = r.b[n:]
	return v
}

func (r *packedReader) int() int64 {
	v, n := binary.Varint(r.b)
	if n <= 0 {
		r.bad, r.b = true, nil
		return 0
	}
	r.b = r.b[n:]
	return v
}

// text is one of the dates and grasses.
func (r *packedReader) text() string {
	n := r.uint()
	if n >= uint64(len(r.of.texts)) {
		r.bad = true
		return ""
	}
	return r.of.texts[n]
}

// link reads what one spraying or spreading laid, nil at the end.
func (r *packedReader) link() []Went {
	if len(r.b) == 0 {
		return nil
	}
	n := r.uint()
	if n == 0 || n > uint64(len(r.of.versions)) {
		return nil
	}
	all := Went{Seq: r.uint(), Date: r.text(), Grass: r.text(), Area: measure.Area(r.int()), after: r.uint()}
	out := make([]Went, n)
	for i := range out {
		w := all
		product, version := r.uint(), r.uint()
		w.Amount, w.Peak, w.Round = r.int(), r.int(), int32(r.int())
		if r.bad || product >= uint64(len(r.of.versions)) || version >= uint64(r.of.versions[product]) {
			return nil
		}
		w.Product, w.Version = int32(product), int32(version)
		out[i] = w
	}
	return out
}

// historyWriter packs histories, and gathers their texts in the order in which they come.
type historyWriter struct {
	texts []string
	at    map[string]int
}

func (h *historyWriter) text(w *binaryWriter, s string) {
	n, ok := h.at[s]
	if !ok {
		n = len(h.texts)
		h.at[s], h.texts = n, append(h.texts, s)
	}
	w.count(n)
}

// pack writes what went on a zone. All that one spraying laid has number, date, grass and area in common.
func (h *historyWriter) pack(w *binaryWriter, z *zoneHistory) {
	for laid := range z.newest() {
		w.count(len(laid))
		w.count(int(laid[0].Seq))
		h.text(w, laid[0].Date)
		h.text(w, laid[0].Grass)
		w.int(int64(laid[0].Area))
		w.count(int(laid[0].after))
		for i := range laid {
			w.count(int(laid[i].Product))
			w.count(int(laid[i].Version))
			w.int(laid[i].Amount)
			w.int(laid[i].Peak)
			w.int(int64(laid[i].Round))
		}
	}
}
