package past

import (
	"bytes"
	"testing"

	"pgregory.net/rapid"

	"example.com/tintline/core"
	"example.com/tintline/core/tally"
)

// aSeason is a short one that is always the same.
func aSeason(t rapid.TB) *season {
	k := newSeason(t)
	for range 3 {
		k.date = k.date.AddDate(0, 0, 1)
		if err := k.open(); err != nil {
			t.Fatal(err)
		}
		for _, line := range []string{
			`{"fact":"visit_begun","lawn":"77 Fir"}`,
			`{"fact":"spread","lawn":"77 Fir","applicator":"spreader","product":"food","amount_lb":9}`,
			`{"fact":"sprayed","lawn":"77 Fir","applicator":"gun","by":"area"}`,
			`{"fact":"visit_done","lawn":"77 Fir"}`,
			`{"fact":"product","name":"warm weed","form":"liquid","kind":"herbicide","grasses":["bermudagrass_common"]}`,
			`{"fact":"sprayed","lawn":"418 Alder","applicator":"gun","by":"gallons","volume_gal":7}`,
			`{"fact":"gauge_read","compartment":"a","volume_gal":120}`,
			`{"fact":"day_closed"}`,
			`{"fact":"loaded","into":"a","volume_gal":20,"mix":"W","for":"gun"}`,
		} {
			k.must(t, line)
		}
	}
	return k
}

// decode reads a row as the queries do, and writes it again.
func decode(key, value []byte) (again []byte, err error) {
	if bytes.HasPrefix(key, []byte(laidPrefix)) {
		r, d := &reader{b: value, known: texts{}}, &day{}
		h := r.head(laidPrefix, key)
		if r.tables(h, d); r.err != nil {
			return nil, r.err
		}
		if err := r.pieces(d); err != nil {
			return nil, err
		}
		return encodeLaid(h, d.operator, d.laid), nil
	}
	if bytes.HasPrefix(key, []byte(recordPrefix)) {
		r := &reader{b: value, known: texts{}}
		h := r.head(recordPrefix, key)
		if r.err != nil {
			return nil, r.err
		}
		var list []tally.Record
		if err := r.records(h, Query{}, func(one *tally.Record) { list = append(list, *one) }); err != nil {
			return nil, err
		}
		return encodeRecords(h, list), nil
	}
	r, t := &reader{b: value, known: texts{}}, &tally.Tally{}
	h := r.head(sumsPrefix, key)
	if r.err != nil {
		return nil, r.err
	}
	if err := r.sums(h, t); err != nil {
		return nil, err
	}
	return encodeSums(h, t), nil
}

// FuzzRow: bytes that are no row give an error, and a row has one form only.
func FuzzRow(f *testing.F) {
	for _, r := range aSeason(f).kept.rows {
		f.Add(r.Key, r.Value)
	}
	f.Add(SumsKey("2026-05-28", 7), []byte{form, 0, 0, 0xff, 0xff, 0xff, 0xff, 0x0f})
	f.Fuzz(func(t *testing.T, key, value []byte) {
		again, err := decode(key, value)
		if err == nil && !bytes.Equal(again, value) {
			t.Fatalf("%x is read, and written again as %x", value, again)
		}
		b := core.NewBook(1)
		_, _, _ = Sums(b, (&Folded{[]Row{{key, value}}}).Read, "", "", core.Maybe[core.Moment]{})
	})
}

// TestEveryByteOfARowMatters: cut anywhere, lengthened, or with any byte changed, a row is refused or says something else.
func TestEveryByteOfARowMatters(t *testing.T) {
	refused, other := 0, 0
	for _, r := range aSeason(t).kept.rows {
		for i := range r.Value {
			if _, err := decode(r.Key, r.Value[:i]); err == nil {
				t.Fatalf("%q cut to %d bytes is read", r.Key, i)
			}
			for bit := range 8 {
				v := bytes.Clone(r.Value)
				v[i] ^= 1 << bit
				again, err := decode(r.Key, v)
				switch {
				case err != nil:
					refused++
				case bytes.Equal(again, v):
					other++
				default:
					t.Fatalf("%q with byte %d as %x is written again as %x", r.Key, i, v, again)
				}
			}
		}
		if _, err := decode(r.Key, append(bytes.Clone(r.Value), 0)); err == nil {
			t.Fatalf("%q with a byte more is read", r.Key)
		}
		for i := range r.Key {
			key := bytes.Clone(r.Key)
			if key[i] = 'x'; i < len(sumsPrefix)+dateLength+1 {
				if _, err := decode(key, r.Value); err == nil {
					t.Fatalf("the key %q is read", key)
				}
			}
		}
	}
	t.Logf("%d refused, %d another row", refused, other)
}
