package store

import "encoding/binary"

// What only files of format 1 hold: a row of its own for each key of a record,
// each action under its whole name, and no rows. They are read and never written.

// An action's value: form, first, last, seal.
func actionValue(id string, first, last uint64) []byte {
	v := binary.AppendUvarint([]byte{form1}, first)
	return seal([]byte(id), binary.AppendUvarint(v, last))
}

func parseAction(id, value []byte) (first, last uint64, err error) {
	b, err := unsealForm(form1, id, value)
	if err != nil {
		return 0, 0, err
	}
	first, b, ok1 := cutUvarint(b)
	last, b, ok2 := cutUvarint(b)
	if !ok1 || !ok2 || len(b) != 0 || first == 0 || last < first {
		return 0, 0, errForm
	}
	return first, last, nil
}
