package label

import (
	"os"
	"strconv"
	"strings"
	"testing"
)

// TestEstablishedTurf holds the verdict on established turf of which nothing else is known, active by active and grass by
// grass, against testdata/established.tsv, which was reckoned from the sources' rows by other means than this package. A
// cell is a letter, the number of rows of the pair, of all stages, and the source that decides if it was read. The letters: T tolerant, M moderate, D dormant only, N
// not tolerant, ? nothing; in lower case where no row that was read says so.
func TestEstablishedTurf(t *testing.T) {
	text, err := os.ReadFile("testdata/established.tsv")
	if err != nil {
		t.Fatal(err)
	}
	rows := strings.Split(strings.TrimSuffix(string(text), "\n"), "\n")
	names := strings.Split(rows[0], "\t")[1:]
	all := map[[2]string]int{}
	for _, r := range Tolerances() {
		all[[2]string{r.Active, r.Grass}]++
	}
	cells := 0
	for _, row := range rows[1:] {
		c := strings.Split(row, "\t")
		for i, grass := range names {
			cells++
			v := Tolerance(c[0], grass, Circumstances{})
			got := cellOf(v) + strconv.Itoa(all[[2]string{c[0], grass}])
			if len(v.Rows) > 0 && v.Rows[0].read() {
				got += " " + v.Rows[0].Source
			}
			if got != c[1+i] {
				t.Errorf("%s on %s is %s, not %s", c[0], grass, got, c[1+i])
			}
		}
	}
	if cells != 52*13 {
		t.Errorf("%d cells", cells)
	}
}

func cellOf(v Verdict) string {
	letter := string("?TMDN"[v.Rating])
	if v.Rating == RatingUnknown && v.Recalled {
		letter = "t"
	}
	if v.Recalled {
		return strings.ToLower(letter)
	}
	return letter
}
