package main

import (
	"bytes"
	"encoding/binary"
	"encoding/json"
	"fmt"
	"hash/crc32"
	"math/rand"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"go.etcd.io/bbolt"

	"example.com/tintline/core"
	"example.com/tintline/store"
)

// verifyJSON runs the command and reads its answer.
func verifyJSON(t *testing.T, path string) (code int, v verified) {
	t.Helper()
	code, out, stderr := call(t, "", "verify", "--book", path, "--json")
	if out == "" {
		t.Fatalf("verify says nothing; code %d, %s", code, stderr)
	}
	if err := json.Unmarshal([]byte(out), &v); err != nil {
		t.Fatalf("%s: %v", out, err)
	}
	if v.OK != (code == 0) || v.OK != (len(v.Changed)+len(v.Damaged) == 0) {
		t.Fatalf("exit code %d with %s", code, out)
	}
	return code, v
}

// recordsOf reads the entries of a book.
func recordsOf(t *testing.T, path string) (out []store.Record, entries []core.Entry) {
	t.Helper()
	s, err := store.Open(path, store.Options{ReadOnly: true})
	if err != nil {
		t.Fatal(err)
	}
	defer func() { _ = s.Close() }()
	if err := s.Each(1, func(r store.Record) error {
		e, err := core.Decode(r.Number, r.Action, r.Body)
		r.Body, r.Keys = bytes.Clone(r.Body), cloneKeys(r.Keys)
		out, entries = append(out, r), append(entries, e)
		return err
	}); err != nil {
		t.Fatal(err)
	}
	return out, entries
}

func cloneKeys(keys [][]byte) (out [][]byte) {
	for _, k := range keys {
		out = append(out, bytes.Clone(k))
	}
	return out
}

func TestVerifyOfAWholeBook(t *testing.T) {
	path := workedBook(t)
	code, v := verifyJSON(t, path)
	if code != 0 || v.Entries != 87 || v.Days != 3 || v.State == nil || v.Journal == nil {
		t.Fatalf("code %d, %+v", code, v)
	}
	_, status, _ := call(t, "", "status", "--book", path, "--json")
	if !strings.Contains(status, `"state":"`+*v.State+`","journal":"`+*v.Journal) {
		t.Errorf("status says other digests than verify: %s", status)
	}
	code, out, _ := call(t, "", "verify", "--book", path)
	if code != 0 || strings.Count(out, "\n") > 20 || !strings.Contains(out, "each follows from the one before") {
		t.Errorf("code %d\n%s", code, out)
	}
}

// workedBook is the demo's book with more entries and a close, so that there is something beside the entries.
func workedBook(t *testing.T) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "book.db")
	if code, _, err := call(t, "", "demo", "--make", path); code != 0 {
		t.Fatal(err)
	}
	code, _, err := call(t, worked, "enter", "-", "--book", path)
	if code != 0 {
		t.Fatal(err)
	}
	return path
}

// worked goes on with the demo's day, closes it and begins the next.
const worked = `{"fact":"pushed_back","at":"2026-05-28T09:33:00-05:00","into":"b","volume_gal":1.72}
{"fact":"visit_begun","at":"2026-05-28T09:40:00-05:00","lawn":"21 Copper Kettle Way"}
{"fact":"sprayed","at":"2026-05-28T09:52:00-05:00","lawn":"21 Copper Kettle Way","zones":["front"],"applicator":"gun","by":"area"}
{"fact":"sprayed","at":"2026-05-28T10:01:00-05:00","lawn":"21 Copper Kettle Way","zones":["back"],"applicator":"gun","by":"gallons","volume_gal":9.9}
{"fact":"struck","at":"2026-05-28T10:02:00-05:00","of":76,"instead":{"fact":"sprayed","lawn":"21 Copper Kettle Way","zones":["back"],"applicator":"gun","by":"gallons","volume_gal":9.6}}
{"fact":"visit_done","at":"2026-05-28T10:04:00-05:00","lawn":"21 Copper Kettle Way"}
{"fact":"visit_skipped","at":"2026-05-28T10:10:00-05:00","lawn":"The Old Button Works","reason":"gate locked"}
{"fact":"gauge_read","at":"2026-05-28T10:40:00-05:00","compartment":"a","volume_gal":150.5}
{"fact":"setting","at":"2026-05-28T11:21:00-05:00","name":"wind_ask_mph","value":9}
{"fact":"rinsed","at":"2026-05-28T11:50:00-05:00","compartment":"c","water_gal":5,"to":"waste/pad"}
{"fact":"day_closed","at":"2026-05-28T16:00:00-05:00","overnight":"a and b stay loaded"}
{"fact":"day_opened","at":"2026-05-29T06:30:00-05:00","date":"2026-05-29","operator":"R. Example","route":["Twin Gables"]}
{"fact":"loaded","at":"2026-05-29T06:40:00-05:00","into":"a","volume_gal":20,"mix":"warm weed","for":"gun"}
{"fact":"lined_up","at":"2026-05-29T07:00:00-05:00","supply":["a"],"return":"a"}
{"fact":"pushed_back","at":"2026-05-29T07:05:00-05:00","into":"b","volume_gal":1.5}
`

// TestAChangedRecordIsToldFromDamage: an entry is written anew in the file, with a seal that fits, by way of the file's
// own engine. That is a change. A flipped bit in the same place is damage.
func TestAChangedRecordIsToldFromDamage(t *testing.T) {
	path := workedBook(t)
	records, entries := recordsOf(t, path)
	whole, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	for _, seq := range []int{1, 31, 75, len(entries)} {
		e := entries[seq-1]
		e.At.Unix -= 60
		writeRecord(t, path, uint64(seq), records[seq-1].Body, e.Encode())
		code, v := verifyJSON(t, path)
		if code != exitDamaged || len(v.Changed) != 1 || *v.Changed[0].Entry != uint64(seq) {
			t.Fatalf("entry %d changed: code %d, %+v", seq, code, v)
		}
		says := v.Changed[0].Says
		date := "2026-05-28"
		switch {
		case seq == 1 || seq == 31:
			date = "2026-04-09"
		case seq == len(entries):
			date = "2026-05-29"
		}
		if !strings.Contains(says, " of "+date+" (") {
			t.Errorf("entry %d: the day is missing in %q", seq, says)
		}
		_, text, _ := call(t, "", "verify", "--book", path)
		if !strings.Contains(text, "was changed after it was written") || strings.Count(text, "\n") > 20 {
			t.Errorf("entry %d changed:\n%s", seq, text)
		}

		flipped := bytes.Clone(whole)
		body := records[seq-1].Body
		for at := bytes.Index(flipped, body); at >= 0; at = bytes.Index(flipped, body) {
			flipped[at+5] ^= 4 // in pages that are free by now too, which nothing reads
		}
		if err := os.WriteFile(path, flipped, 0o600); err != nil {
			t.Fatal(err)
		}
		code, v = verifyJSON(t, path)
		if code != exitDamaged || len(v.Changed) != 0 || len(v.Damaged) == 0 {
			t.Fatalf("entry %d damaged: code %d, %+v", seq, code, v)
		}
		if err := os.WriteFile(path, whole, 0o600); err != nil {
			t.Fatal(err)
		}
	}
}

// writeRecord puts another body into a record and seals it, as somebody would who knows the form of the file.
func writeRecord(t *testing.T, path string, n uint64, from, to []byte) {
	t.Helper()
	db, err := bbolt.Open(path, 0o600, nil)
	if err != nil {
		t.Fatal(err)
	}
	defer func() { _ = db.Close() }()
	err = db.Update(func(tx *bbolt.Tx) error {
		b, key := tx.Bucket([]byte("records")), binary.BigEndian.AppendUint64(nil, n)
		value := bytes.Replace(b.Get(key), from, to, 1)
		value = value[:len(value)-4]
		table := crc32.MakeTable(crc32.Castagnoli)
		value = binary.BigEndian.AppendUint32(value, crc32.Update(crc32.Checksum(key, table), table, value))
		if err := b.Put(key, value); err != nil {
			return err
		}
		// The head names its commit.
		head := tx.Bucket([]byte("head"))
		h := bytes.Clone(head.Get([]byte("head")))
		h = binary.BigEndian.AppendUint64(h[:1], uint64(tx.ID()))
		h = append(h, head.Get([]byte("head"))[9:]...)
		h = h[:len(h)-4]
		h = binary.BigEndian.AppendUint32(h, crc32.Update(crc32.Checksum([]byte("head"), table), table, h))
		return head.Put([]byte("head"), h)
	})
	if err != nil {
		t.Fatal(err)
	}
}

// TestAForgedBookIsFoundByItsChain: whoever makes the whole file anew with one entry changed has every seal right.
func TestAForgedBookIsFoundByItsChain(t *testing.T) {
	records, entries := recordsOf(t, workedBook(t))
	path := filepath.Join(t.TempDir(), "forged.db")
	err := store.CreateWith(path, "forged", storeOptions(false), func(add func(string, []store.Item) error) error {
		for i, r := range records {
			e := entries[i]
			if e.Seq == 76 {
				f := *e.What.(*core.Sprayed)
				f.Volume.V /= 2
				e.What = &f
			}
			if err := add(fmt.Sprintf("action %d", i), []store.Item{{Body: e.Encode(), Keys: r.Keys}}); err != nil {
				return err
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	code, v := verifyJSON(t, path)
	if code != exitDamaged || len(v.Changed) != 1 || len(v.Damaged) != 0 || *v.Changed[0].Entry != 76 {
		t.Fatalf("code %d, %+v", code, v)
	}
	for _, want := range []string{"Entry 76 of 2026-05-28 (sprayed 21 Copper Kettle Way back", "or entry 75 before it", "Entries 1 to 74 are as they were written."} {
		if !strings.Contains(v.Changed[0].Says, want) {
			t.Errorf("%q is missing in %q", want, v.Changed[0].Says)
		}
	}
	if v.State != nil {
		t.Error("a state is told though the entries cannot be believed")
	}
}

// TestDamageIsNeverCalledAChange: bits flipped anywhere.
func TestDamageIsNeverCalledAChange(t *testing.T) {
	path := workedBook(t)
	whole, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	chance := rand.New(rand.NewSource(1)) //nolint:gosec // repeatable on purpose
	found := 0
	for range 60 {
		flipped := bytes.Clone(whole)
		flipped[chance.Intn(len(whole))] ^= 1 << chance.Intn(8)
		if err := os.WriteFile(path, flipped, 0o600); err != nil {
			t.Fatal(err)
		}
		code, out, _ := call(t, "", "verify", "--book", path, "--json")
		var v verified
		if err := json.Unmarshal([]byte(out), &v); err != nil {
			t.Fatalf("%s: %v", out, err)
		}
		if len(v.Changed) > 0 {
			t.Fatalf("a flipped bit is called a change: %s", out)
		}
		if code == exitDamaged {
			found++
		} else if code != 0 {
			t.Fatalf("code %d: %s", code, out)
		}
	}
	if found == 0 {
		t.Fatal("no flipped bit was found at all")
	}
}

func TestVerifyOfWhatIsNoBook(t *testing.T) {
	dir := t.TempDir()
	empty, list := filepath.Join(dir, "empty.db"), filepath.Join(dir, "list.db")
	for path, text := range map[string]string{empty: "", list: "shopping list\n"} {
		if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		if code, v := verifyJSON(t, path); code != exitDamaged || len(v.Damaged) != 1 {
			t.Errorf("%s: code %d, %+v", path, code, v)
		}
		if code, out, err := call(t, "", "verify", "--book", path); code != exitDamaged || out != "" || strings.Count(err, "\n") != 2 {
			t.Errorf("%s: code %d, %q, %q", path, code, out, err)
		}
	}
	if code, _, err := call(t, "", "verify", "--book", filepath.Join(dir, "none.db")); code != exitCannot || !strings.Contains(err, "There is no book") {
		t.Errorf("code %d, %s", code, err)
	}
}
