package main

import (
	"bytes"
	"cmp"
	"errors"
	"slices"

	"example.com/tintline/core"
	"example.com/tintline/store"
)

// Last lists up to n entries before a number, newest first.
func (j screenJournal) Last(before uint64, n int) ([]core.Entry, error) {
	file := j.file()
	if file == nil {
		return nil, nil
	}
	if before == 0 {
		last, err := file.Last()
		if err != nil {
			return nil, told{explain(err)}
		}
		before = last + 1
	}
	from := uint64(1)
	if before > uint64(n) {
		from = before - uint64(n)
	}
	var out []core.Entry
	err := file.Each(from, func(r store.Record) error {
		if r.Number >= before {
			return errEnough
		}
		return j.collect(&out, r, n)
	})
	return backwards(out, err)
}

// OfLawn lists the last n entries about a lawn, newest first, with the strikes that are about many lawns.
func (j screenJournal) OfLawn(lawn string, n int) ([]core.Entry, error) {
	file := j.file()
	if file == nil {
		return nil, nil
	}
	var out []core.Entry
	for _, want := range [][]byte{core.LawnKey(lawn), core.ManyLawnsKey()} {
		var some []core.Entry
		err := file.EachKey(want, func(key []byte, r store.Record) error {
			if !bytes.Equal(key, want) {
				return errEnough
			}
			return j.collect(&some, r, n)
		})
		if err != nil && !errors.Is(err, errEnough) {
			return backwards(nil, err)
		}
		out = append(out, some...)
	}
	slices.SortFunc(out, func(a, b core.Entry) int { return cmp.Compare(a.Seq, b.Seq) })
	return backwards(out[max(len(out)-n, 0):], nil)
}

// errEnough ends a walk that has seen all it wants.
var errEnough = errors.New("enough")

// collect adds an entry and keeps the last n.
func (j screenJournal) collect(out *[]core.Entry, r store.Record, n int) error {
	e, err := core.Decode(r.Number, r.Action, r.Body)
	if err != nil {
		return j.unreadable(err)
	}
	*out = append(*out, e)
	if len(*out) > n {
		*out = (*out)[1:]
	}
	return nil
}

func backwards(list []core.Entry, err error) ([]core.Entry, error) {
	if err != nil && !errors.Is(err, errEnough) {
		return nil, told{explain(err)}
	}
	slices.Reverse(list)
	return list, nil
}
