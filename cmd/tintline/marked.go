package main

import (
	"bytes"
	"errors"
	"slices"
	"strings"
	"time"

	"example.com/tintline/core"
	"example.com/tintline/store"
)

// wanted says which entries of the journal are asked for; what is empty has no bound.
type wanted struct {
	since    uint64
	from, to string // days, both inclusive
	lawn     string
}

// takes tells whether an entry with these keys is one of them.
func (w wanted) takes(r store.Record) bool {
	if r.Number < w.since {
		return false
	}
	day, lawn := w.from == "" && w.to == "", w.lawn == ""
	for _, k := range r.Keys {
		day = day || w.inDays(k)
		lawn = lawn || bytes.Equal(k, core.LawnKey(w.lawn))
	}
	return day && lawn
}

func (w wanted) inDays(key []byte) bool {
	date, ok := strings.CutPrefix(string(key), string(core.DayKey("")))
	return ok && date >= w.from && (w.to == "" || date <= w.to)
}

// mostMonths is up to how many months are looked up one by one; more are found as quickly by reading all.
const mostMonths = 60

// numbers looks up the entries wanted by their keys. False: no key leads to them, and all are to be read.
func (k *keptBook) numbers(w wanted) ([]uint64, bool, error) {
	var prefixes [][]byte
	switch {
	case w.lawn != "":
		prefixes = [][]byte{core.LawnKey(w.lawn)}
	case w.from != "" && w.from == w.to:
		prefixes = [][]byte{core.DayKey(w.from)}
	case w.from != "" && w.to != "":
		if prefixes = months(w.from, w.to); len(prefixes) > mostMonths {
			return nil, false, nil
		}
	default:
		return nil, false, nil
	}
	var out []uint64
	for _, p := range prefixes {
		err := k.file().EachKey(p, func(_ []byte, r store.Record) error {
			if w.takes(r) {
				out = append(out, r.Number)
			}
			return nil
		})
		if err != nil {
			return nil, false, err
		}
	}
	slices.Sort(out) // a clock set back puts a later entry under an earlier day
	return slices.Compact(out), true, nil
}

// months are the keys with which those of all days in these months begin.
func months(from, to string) [][]byte {
	t, err := time.Parse(time.DateOnly, from[:len("2006-01")]+"-01")
	var out [][]byte
	for ; err == nil && t.Format(time.DateOnly) <= to && len(out) <= mostMonths; t = t.AddDate(0, 1, 0) {
		out = append(out, core.DayKey(t.Format("2006-01")))
	}
	return out
}

// marked reads the entries wanted in order, each with the entry that struck it. A strike reaches back to the last close of
// a day and no further, so an entry is given out when the close behind it was read, or the end of the journal: by then all
// that could strike it was seen, whatever its own keys are.
func (k *keptBook) marked(w wanted, f func(e core.Entry, struckBy uint64) error) error {
	list, found, err := k.numbers(w)
	if err != nil {
		return err
	}
	m := &marking{w: w, list: list, found: found, give: f, struck: map[uint64]uint64{}}
	from := max(w.since, 1)
	for {
		if found {
			if len(m.list) == 0 {
				return nil
			}
			from = m.list[0]
		}
		err := k.file().Each(from, func(r store.Record) error {
			e, err := core.Decode(r.Number, r.Action, r.Body)
			if err != nil {
				return k.unreadable(err)
			}
			return m.see(r, e)
		})
		switch {
		case errors.Is(err, errEnough):
			continue
		case err == nil:
			err = m.flush()
		}
		return err
	}
}

// marking holds the entries wanted since the last close.
type marking struct {
	w      wanted
	list   []uint64 // the numbers that are still to come
	found  bool     // by their keys
	since  []core.Entry
	struck map[uint64]uint64
	give   func(core.Entry, uint64) error
}

// see takes an entry, and gives out those that can no longer be struck. It ends the walk where the next one wanted lies
// further on.
func (m *marking) see(r store.Record, e core.Entry) error {
	take := false
	switch {
	case !m.found:
		take = m.w.takes(r)
	case len(m.list) > 0 && m.list[0] == r.Number:
		take, m.list = true, m.list[1:]
	}
	if f, ok := e.What.(*core.Struck); ok {
		for _, n := range append([]int64{f.Of}, f.Also...) {
			if _, twice := m.struck[uint64(n)]; !twice { // a later strike is about what stands in its place
				m.struck[uint64(n)] = e.Seq
			}
			take = take || (m.w.lawn != "" && m.holds(uint64(n)) && r.Number >= m.w.since)
		}
	}
	if take {
		m.since = append(m.since, e)
	}
	if _, closes := e.What.(*core.DayClosed); !closes {
		return nil
	}
	if err := m.flush(); err != nil {
		return err
	}
	if m.found && (len(m.list) == 0 || m.list[0] > r.Number+1) {
		return errEnough
	}
	return nil
}

// holds tells whether an entry is among those wanted; a strike of many lawns carries the key of none of them.
func (m *marking) holds(seq uint64) bool {
	return slices.ContainsFunc(m.since, func(e core.Entry) bool { return e.Seq == seq })
}

func (m *marking) flush() error {
	for _, e := range m.since {
		if err := m.give(e, m.struck[e.Seq]); err != nil {
			return err
		}
	}
	m.since = m.since[:0]
	clear(m.struck)
	return nil
}
