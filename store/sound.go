package store

// checkSound runs once before the first commit of an open store.
func (s *Store) checkSound(v *view) error {
	if s.sound {
		return nil
	}
	err := v.checkPages()
	s.sound = err == nil
	return err
}

// What a page is for.
const (
	unused = iota
	inUse
	leafOf // a leaf that has not been read: it may be followed by more of its pages
	isFree
)

// checkPages compares the list of free pages with the pages in use: a page that
// is both would be written over. Only branches are read, a hundredth of the file,
// and the few leaves whose neighbours are not accounted for.
func (v *view) checkPages() error {
	state := make([]byte, v.m.pages)
	state[0], state[1] = inUse, inUse
	mark := func(id, extent uint64, as byte) error {
		for i := id; i < id+extent; i++ {
			if state[i] != unused {
				return v.bad(&errPage{i, "it is used twice"})
			}
			state[i] = as
		}
		return nil
	}
	free, extent, err := loadFreelist(v.file, v.m)
	if err != nil {
		return v.bad(err)
	}
	if err := mark(v.m.freelist, extent, inUse); err != nil {
		return err
	}
	for _, id := range free {
		if err := mark(id, 1, isFree); err != nil {
			return err
		}
	}
	roots := []tree{{root: v.m.root}}
	for _, t := range v.dir {
		if t.inline == nil {
			roots = append(roots, t)
		}
	}
	for _, t := range roots {
		if err := v.markTree(t, mark); err != nil {
			return err
		}
	}
	return v.checkRuns(state)
}

// markTree marks the pages of one tree, level by level. The way down its left
// side tells at which level the leaves are.
func (v *view) markTree(t tree, mark func(id, extent uint64, as byte) error) error {
	w := walker{v: v}
	if _, _, _, err := w.first(t); err != nil {
		return err
	}
	depth := len(w.stack)
	level := []uint64{t.root}
	for d := 1; d < depth; d++ {
		var below []uint64
		for _, id := range level {
			p, err := loadPage(v.file, id, v.m.pages)
			if err != nil {
				return v.bad(err)
			}
			if !p.branch {
				return v.bad(&errPage{id, "it is a leaf too high in the tree"})
			}
			if err := mark(id, p.extent, inUse); err != nil {
				return err
			}
			for i := range p.count {
				child := p.child(i)
				if child < 2 || child >= v.m.pages {
					return v.bad(&errPage{child, "it lies outside the file"})
				}
				below = append(below, child)
			}
		}
		level = below
	}
	for _, id := range level {
		if err := mark(id, 1, leafOf); err != nil {
			return err
		}
	}
	return nil
}

// checkRuns reads each leaf that is followed by pages without a use, or by a
// free one, and sees that its length is the reason, or no reason.
func (v *view) checkRuns(state []byte) error {
	for id := uint64(2); id < uint64(len(state)); id++ {
		if state[id] == unused {
			return v.bad(&errPage{id, "it is neither in use nor free"})
		}
		if state[id] != leafOf {
			continue
		}
		end := id + 1
		for end < uint64(len(state)) && state[end] == unused {
			end++
		}
		if end == id+1 && (end == uint64(len(state)) || state[end] != isFree) {
			continue
		}
		p, err := loadPage(v.file, id, v.m.pages)
		if err != nil {
			return v.bad(err)
		}
		if p.extent != end-id {
			return v.bad(&errPage{id, "the pages after it are not accounted for"})
		}
		id = end - 1
	}
	return nil
}
