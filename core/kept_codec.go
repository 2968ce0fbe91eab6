package core

import (
	"encoding/binary"
	"math"
	"slices"

	"example.com/tintline/core/fluid"
)

// keptCodec goes through the fields of a book and writes each of them, or reads it: what is kept is listed once for both
// ways.
type keptCodec struct {
	w       *binaryWriter // nil: it reads
	r       *binaryReader
	history *historyWriter
	// What was read of these bounds the keys that may come.
	products, origins int
	spare             []fluid.Part // room for amounts that are read
}

// wholeNumber is any whole number.
type wholeNumber interface {
	~int | ~int32 | ~int64 | ~uint8 | ~uint32 | ~uint64
}

func whole[T wholeNumber](k *keptCodec, p *T) {
	if k.w != nil {
		k.w.int(int64(*p))
		return
	}
	v := k.r.int()
	if *p = T(v); int64(*p) != v {
		k.r.fail("the number %d is out of range", v)
	}
}

// figure keeps all bits.
func figure[T ~float64](k *keptCodec, p *T) {
	if k.w != nil {
		k.w.bits(float64(*p))
		return
	}
	var b [8]byte
	k.raw(b[:])
	*p = T(math.Float64frombits(binary.LittleEndian.Uint64(b[:])))
}

func (k *keptCodec) raw(p []byte) {
	switch {
	case k.w != nil:
		k.w.b = append(k.w.b, p...)
	case len(k.r.b) < len(p):
		k.r.fail("it is cut short")
	default:
		copy(p, k.r.b)
		k.r.b = k.r.b[len(p):]
	}
}

func (k *keptCodec) yes(p *bool) {
	if k.w != nil {
		k.w.yes(*p)
		return
	}
	v := k.r.uint()
	if *p = v == 1; v > 1 {
		k.r.fail("%d is neither yes nor no", v)
	}
}

func text[T ~string](k *keptCodec, p *T) {
	if k.w != nil {
		k.w.str(string(*p))
		return
	}
	*p = T(k.r.str())
}

func (k *keptCodec) moment(m *Moment) {
	whole(k, &m.Unix)
	whole(k, &m.Offset)
}

// count writes how many there are, or reads it: never more than there are bytes left.
func (k *keptCodec) count(n int) int {
	if k.w != nil {
		k.w.count(n)
		return n
	}
	return k.r.count()
}

// kept goes through a list. Room for what is read grows as it is read: a length that is not true costs no memory.
func kept[T any](k *keptCodec, p *[]T, each func(*T)) {
	n := k.count(len(*p))
	if k.w != nil {
		for i := range *p {
			each(&(*p)[i])
		}
		return
	}
	*p = nil
	if n > 0 {
		*p = make([]T, 0, min(n, firstRoom))
	}
	var none T
	for i := 0; i < n && k.r.err == nil; i++ {
		*p = append(*p, none)
		each(&(*p)[i])
	}
}

// there keeps whether a pointer leads anywhere, and what it leads to.
func there[T any](k *keptCodec, p **T, what func(*T)) {
	is := *p != nil
	if k.yes(&is); !is {
		return
	}
	if k.w == nil {
		*p = new(T)
	}
	what(*p)
}

// named goes through a map in the order of its names.
func named[K ~string, V any](k *keptCodec, p *map[K]V, each func(K, *V)) {
	n := k.count(len(*p))
	if k.w != nil {
		names := make([]K, 0, n)
		for name := range *p {
			names = append(names, name)
		}
		slices.Sort(names)
		for _, name := range names {
			v := (*p)[name]
			text(k, &name)
			each(name, &v)
		}
		return
	}
	if *p == nil && n > 0 || len(*p) == 0 && n > firstRoom {
		*p = make(map[K]V, min(n, firstMap))
	}
	var name, before K
	var v, none V
	for i := 0; i < n && k.r.err == nil; i++ {
		if text(k, &name); i > 0 && name <= before {
			k.r.fail("names are out of order")
		}
		v = none
		each(name, &v)
		(*p)[name], before = v, name
	}
}

// firstMap bounds the room that is made for a map before its first name was read.
const firstMap = 1 << 12

// fact keeps what is a fact, or has the fields of one.
func (k *keptCodec) fact(f Fact) {
	if k.w != nil {
		k.w.factFields(f)
		return
	}
	f.fields(walker{k.r})
	k.r.end()
}

// parts keeps amounts by key; keys below limit are known.
func (k *keptCodec) parts(p *fluid.Parts, limit int) {
	n := k.count(len(*p))
	if k.w == nil {
		*p = k.room(n)
	}
	before := int32(-1)
	for i := range *p {
		q := &(*p)[i]
		whole(k, &q.Key)
		whole(k, &q.N)
		if k.w == nil && (q.Key <= before || int(q.Key) >= limit || q.N == 0) {
			k.r.fail("amounts are out of order")
			return
		}
		before = q.Key
	}
}

// room is a list of so many amounts. Many short ones are cut from one: none is ever changed in place.
func (k *keptCodec) room(n int) fluid.Parts {
	if n == 0 {
		return nil
	}
	if len(k.spare) < n {
		k.spare = make([]fluid.Part, max(n, firstRoom))
	}
	out := k.spare[:n:n]
	k.spare = k.spare[n:]
	return out
}

func (k *keptCodec) holds(p *fluid.Parts) { k.parts(p, k.products) }
func (k *keptCodec) from(p *fluid.Parts)  { k.parts(p, k.origins) }

func (k *keptCodec) liquid(l *fluid.Liquid) {
	whole(k, &l.Volume)
	k.from(&l.From)
	k.holds(&l.Holds)
}

// origin keeps the key of an origin, or that liquid keeps its own.
func (k *keptCodec) origin(p *int32) {
	if whole(k, p); k.w == nil && *p != fluid.KeepOrigins && (*p < 0 || int(*p) >= k.origins) {
		k.r.fail("there is no origin %d", *p)
	}
}
