package store

import (
	"bytes"
	"cmp"
	"errors"
	"slices"

	"go.etcd.io/bbolt"
)

// batch is what one commit will write. Actions, keys and rows wait until the end,
// to go into their trees in order: neighbours share pages.
type batch struct {
	h       head
	end     carried // the keys of the last record
	records []pair
	actions []newAction
	blocks  []pair // of actions, as they will be
	keys    [][]byte
	rows    []pair
	at      map[string]int // where a key is among the rows
}

type pair struct{ k, v []byte }

type newAction struct {
	block uint16
	rest  [actionRest]byte
	first uint64
}

// add numbers the items of an action, which were checked.
func (b *batch) add(action string, items []Item) Answer {
	first := b.h.last + 1
	a := Answer{Action: action, First: first, Last: b.h.last + uint64(len(items))}
	for i, it := range items {
		n := first + uint64(i)
		k := numberKey(n)
		refs := b.end.refs(n, it.Keys)
		v := appendRecord(nil, k, uint64(i), uint64(len(items)), action, it, refs)
		b.records = append(b.records, pair{k, v})
		b.h.running = run(b.h.running, lastSeal(v))
		next := carried{n: n, keys: it.Keys}
		for j, key := range it.Keys {
			if refs[j].back > 0 {
				next.first[j] = place{n - refs[j].back, refs[j].slot}
				continue
			}
			next.first[j] = place{n, j}
			if !hasKey(it.Keys[:j], key) { // the same key twice on one record is one row
				b.keys = append(b.keys, orderedKey(key, n))
				b.h.keys++
			}
		}
		b.end = next
		b.addRows(it.Rows)
	}
	b.end = b.end.clone()
	b.h.last = a.Last
	b.h.actions++
	block, rest := actionPlace(action)
	b.actions = append(b.actions, newAction{block, rest, first})
	return a
}

// sort puts actions, keys and rows in order.
func (b *batch) sort() {
	byKey := func(x, y pair) int { return bytes.Compare(x.k, y.k) }
	slices.SortFunc(b.actions, func(x, y newAction) int {
		return cmp.Or(cmp.Compare(x.block, y.block), cmp.Compare(x.first, y.first))
	})
	slices.SortFunc(b.keys, bytes.Compare)
	slices.SortFunc(b.rows, byKey)
}

// settle works out what depends on what is there: the blocks of actions, and what
// the head counts of rows. The batch is sorted.
func (b *batch) settle(block, row func(key []byte) (value []byte, ok bool, err error)) error {
	for i := 0; i < len(b.actions); {
		at := b.actions[i].block
		key := blockKey(at)
		var a actionBlock
		val, ok, err := block(key)
		if err == nil && ok {
			a, err = openBlock(key, val)
		}
		if err != nil {
			return err
		}
		for ; i < len(b.actions) && b.actions[i].block == at; i++ {
			a.add(b.actions[i].rest, b.actions[i].first)
		}
		b.blocks = append(b.blocks, pair{key, a.sealed(key)})
	}
	return b.countRows(row)
}

// write puts the sorted batch into a transaction.
func (b *batch) write(tx *bbolt.Tx) error {
	put := func(bucket []byte, fill float64, list []pair) error {
		bk := tx.Bucket(bucket)
		bk.FillPercent = fill
		for _, p := range list {
			if err := bk.Put(p.k, p.v); err != nil {
				return err
			}
		}
		return nil
	}
	keys := make([]pair, len(b.keys))
	for i, k := range b.keys {
		keys[i].k = k
	}
	fill := fillOthers
	if len(b.records) > MaxItems {
		fill = fillMany
	}
	return errors.Join(
		put(bucketRecords, fillRecords, b.records),
		put(bucketActions, fill, b.blocks),
		put(bucketKeys, fill, keys),
		put(bucketRows, fill, b.rows),
		b.h.write(tx),
	)
}

// checkAction tells what cannot be stored before anything is touched.
func checkAction(action string, items []Item) error {
	switch {
	case action == "" || len(action) > MaxAction:
		return refused("An action's name has 1 to %d bytes, this one has %d.", MaxAction, len(action))
	case len(items) == 0 || len(items) > MaxItems:
		return refused("An action holds 1 to %d entries, this one holds %d.", MaxItems, len(items))
	}
	for i, it := range items {
		if len(it.Body) > MaxBody {
			return refused("Entry %d of the action has %d bytes, more than %d.", i+1, len(it.Body), MaxBody)
		}
		if len(it.Keys) > MaxKeys {
			return refused("Entry %d of the action has %d keys, more than %d.", i+1, len(it.Keys), MaxKeys)
		}
		for _, k := range it.Keys {
			if len(k) > MaxKey {
				return refused("Entry %d of the action has a key of %d bytes, more than %d.", i+1, len(k), MaxKey)
			}
		}
		if err := checkRows(i+1, it.Rows); err != nil {
			return err
		}
	}
	return nil
}
