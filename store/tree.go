package store

import "bytes"

// tree is one bucket: a page of its own, or small enough to stand inside the
// page of the buckets.
type tree struct {
	root   uint64
	inline *page
}

func parseTree(value []byte) (tree, error) {
	if len(value) < 16 {
		return tree{}, errForm
	}
	t := tree{root: order.Uint64(value)}
	if t.root != 0 {
		if len(value) != 16 {
			return tree{}, errForm
		}
		return t, nil
	}
	b := bytes.Clone(value[16:]) // aligned or not, it is read byte by byte
	p, err := parsePage(0, 0, b)
	if err != nil {
		return tree{}, err
	}
	if p.branch || len(p.b) != len(b) || order.Uint64(b) != 0 || order.Uint32(b[12:]) != 0 {
		return tree{}, errForm
	}
	t.inline = p
	return t, nil
}

// maxDepth is far beyond any tree that fits a disk: deeper means a circle.
const maxDepth = 24

// frame is a page on the way down, the element taken, and the first key that
// must not be reached any more (nil: none).
type frame struct {
	p    *page
	i    int
	high []byte
}

// walker goes through a tree in order of keys. Each page that it enters must
// begin with the very key by which it hangs, on which bbolt relies when it
// writes, and end before the next one.
type walker struct {
	v     *view
	keep  bool // pages may be asked for again: take them from the view's store
	stack []frame
	// before is the element in front of the place that seek found, nil if the
	// place is at the beginning of a leaf. Whoever misses a key must look at both
	// sides: a key that was damaged is still next to where it belongs, or else the
	// order of the page is broken.
	before [2][]byte
}

func (w *walker) push(id uint64, low, high []byte) error {
	p, err := w.v.page(id, w.keep)
	if err != nil {
		return err
	}
	if len(w.stack) >= maxDepth {
		return w.v.bad(&errPage{id, "the tree is too deep"})
	}
	if p.count == 0 && len(w.stack) > 0 {
		return w.v.bad(&errPage{id, "it is empty"})
	}
	if p.count > 0 {
		if low != nil && !bytes.Equal(p.key(0), low) || high != nil && bytes.Compare(p.key(p.count-1), high) >= 0 {
			return w.v.bad(&errPage{id, "its keys belong elsewhere"})
		}
	}
	w.stack = append(w.stack, frame{p: p, high: high})
	return nil
}

// enter goes down from the top frame into its element i.
func (w *walker) enter(i int) error {
	f := &w.stack[len(w.stack)-1]
	f.i = i
	high := f.high
	if i+1 < f.p.count {
		high = f.p.key(i + 1)
	}
	return w.push(f.p.child(i), f.p.key(i), high)
}

func (w *walker) start(t tree) error {
	w.stack = w.stack[:0]
	if t.inline != nil {
		w.stack = append(w.stack, frame{p: t.inline})
		return nil
	}
	return w.push(t.root, nil, nil)
}

// seek stands on the first key that is not below key; an empty one: the first.
func (w *walker) seek(t tree, key []byte) (k, v []byte, ok bool, err error) {
	if err = w.start(t); err != nil {
		return nil, nil, false, err
	}
	for {
		f := &w.stack[len(w.stack)-1]
		i := f.p.find(key)
		if !f.p.branch {
			f.i, w.before = i, [2][]byte{}
			if i > 0 {
				w.before = [2][]byte{f.p.key(i - 1), f.p.value(i - 1)}
			}
			return w.here()
		}
		// The branch to take is the last one whose key is not above ours.
		if i > 0 && (i == f.p.count || !bytes.Equal(f.p.key(i), key)) {
			i--
		}
		if err = w.enter(i); err != nil {
			return nil, nil, false, err
		}
	}
}

func (w *walker) first(t tree) (k, v []byte, ok bool, err error) { return w.seek(t, nil) }

func (w *walker) next() (k, v []byte, ok bool, err error) {
	w.stack[len(w.stack)-1].i++
	return w.here()
}

// here returns the element under the leaf's hand, going on to the next leaf when
// this one is at its end.
func (w *walker) here() (k, v []byte, ok bool, err error) {
	for {
		f := &w.stack[len(w.stack)-1]
		if f.i < f.p.count {
			if !f.p.branch {
				return f.p.key(f.i), f.p.value(f.i), true, nil
			}
			if err = w.enter(f.i); err != nil {
				return nil, nil, false, err
			}
			continue
		}
		if len(w.stack) == 1 {
			return nil, nil, false, nil
		}
		w.stack = w.stack[:len(w.stack)-1]
		w.stack[len(w.stack)-1].i++
	}
}

// get returns the value at exactly key.
func (v *view) get(t tree, key []byte) ([]byte, bool, error) {
	w := walker{v: v, keep: true}
	k, val, ok, err := w.seek(t, key)
	if err != nil || !ok || !bytes.Equal(k, key) {
		return nil, false, err
	}
	return val, true, nil
}
