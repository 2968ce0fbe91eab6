package store

import (
	"bytes"
	"slices"

	"go.etcd.io/bbolt"
)

// batch is what one commit will write. Actions and keys wait until the end, to
// go into their trees in order: neighbours share pages.
type batch struct {
	h       head
	records []pair
	actions []pair
	keys    [][]byte
}

type pair struct{ k, v []byte }

// add numbers the items of an action, which were checked.
func (b *batch) add(action string, items []Item) Answer {
	first := b.h.last + 1
	a := Answer{Action: action, First: first, Last: b.h.last + uint64(len(items))}
	for i, it := range items {
		n := first + uint64(i)
		k := numberKey(n)
		v := appendRecord(nil, k, uint64(i), uint64(len(items)), action, it)
		b.records = append(b.records, pair{k, v})
		b.h.running = run(b.h.running, lastSeal(v))
		from := len(b.keys)
		for _, key := range it.Keys {
			// The same key twice on one record is one row.
			if ok := orderedKey(key, n); !slices.ContainsFunc(b.keys[from:], func(k []byte) bool { return bytes.Equal(k, ok) }) {
				b.keys = append(b.keys, ok)
				b.h.keys++
			}
		}
	}
	b.h.last = a.Last
	b.h.actions++
	b.actions = append(b.actions, pair{[]byte(action), actionValue(action, a.First, a.Last)})
	return a
}

// sort puts actions and keys in order.
func (b *batch) sort() {
	slices.SortFunc(b.actions, func(x, y pair) int { return bytes.Compare(x.k, y.k) })
	slices.SortFunc(b.keys, bytes.Compare)
}

// write puts the sorted batch into a transaction.
func (b *batch) write(tx *bbolt.Tx) error {
	records, actions, keys := tx.Bucket(bucketRecords), tx.Bucket(bucketActions), tx.Bucket(bucketKeys)
	for _, bk := range []*bbolt.Bucket{records, actions, keys} {
		bk.FillPercent = fill
	}
	for _, r := range b.records {
		if err := records.Put(r.k, r.v); err != nil {
			return err
		}
	}
	for _, a := range b.actions {
		if err := actions.Put(a.k, a.v); err != nil {
			return err
		}
	}
	for _, k := range b.keys {
		if err := keys.Put(k, nil); err != nil {
			return err
		}
	}
	return b.h.write(tx)
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
	}
	return nil
}
