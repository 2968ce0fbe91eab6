package core

import (
	"bufio"
	"encoding/hex"
	"fmt"
	"os"
	"strings"
	"testing"
)

// TestStoredFormStays holds the stored form of every fact: core/testdata/stored.txt was written by the first
// version and is never to be changed, only added to, because there are books that hold it. A fact that gets a
// new field keeps its row and gets a second one.
func TestStoredFormStays(t *testing.T) {
	f, err := os.Open("testdata/stored.txt")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	seen := map[string]bool{}
	for rows := bufio.NewScanner(f); rows.Scan(); {
		if strings.HasPrefix(rows.Text(), "#") {
			continue
		}
		part := strings.SplitN(rows.Text(), "\t", 3)
		b, err := hex.DecodeString(part[1])
		if err != nil {
			t.Fatal(err)
		}
		e, err := Decode(1, "golden", b)
		if err != nil {
			t.Errorf("%s is not read any more: %v", part[0], err)
			continue
		}
		// A line of an older version may lack newer keys; it must still say the same.
		if l, err := DecodeLine([]byte(part[2])); err != nil {
			t.Errorf("%s: its line is not read any more: %v", part[0], err)
		} else if said := (&Entry{Seq: l.Seq, At: l.At.V, Truck: l.Truck, What: l.Fact, Digest: l.Digest}); hex.EncodeToString(said.Encode()) != part[1] {
			t.Errorf("%s: its line says something else than its bytes", part[0])
		}
		if got := hex.EncodeToString(e.Encode()); got != part[1] {
			t.Errorf("%s is stored as\n%s\nand was\n%s", part[0], got, part[1])
		}
		seen[e.What.Name()] = true
	}
	for _, n := range FactNames() {
		if !seen[n] {
			t.Errorf("there is no stored form of %s; add the row\n%s", n, storedRow(n))
		}
	}
}

// storedRow is a row of the file, for a fact that has none yet.
func storedRow(name string) string {
	e := Entry{Seq: 1, Action: "golden", Truck: 7, At: Moment{1_779_979_320, -18_000}, What: (&filler{}).fact(NewFact(name), true)}
	e.Digest = chain(Digest{}, e.Seq, e.Truck, e.body())
	return fmt.Sprintf("%s\t%x\t%s", name, e.Encode(), EncodeLine(e, 0))
}
