package label

import (
	"slices"
	"strings"
	"testing"
)

// TestTablesAreWhole: the figures are those of the tables as they were made; a row more or less is a change of the
// reference, and is meant.
func TestTablesAreWhole(t *testing.T) {
	for name, got := range map[string][2]int{
		"tolerances": {len(Tolerances()), 1065}, "rates": {len(Rates()), 98}, "nitrogen": {len(nitrogenRows), 66},
		"sources": {len(Sources()), 196}, "actives": {len(Actives()), 189}, "mixtures": {len(mixtures), 4},
		"actives and mixtures with rows": {len(blocksAt), 52},
	} {
		if got[0] != got[1] {
			t.Errorf("%d %s, not %d", got[0], name, got[1])
		}
	}
	if rated := RatedActives(); len(rated) != 52 || !slices.IsSorted(rated) || len(slices.Compact(rated)) != 52 {
		t.Errorf("%v", rated)
	}
	ratings := map[Rating]int{}
	recalled := 0
	for _, r := range Tolerances() {
		ratings[r.Rating]++
		if r.Recalled() {
			recalled++
		}
	}
	want := map[Rating]int{Tolerant: 550, NotTolerant: 257, Moderate: 161, RatingUnknown: 81, OnlyDormant: 16}
	for r, n := range want {
		if ratings[r] != n {
			t.Errorf("%d rows are %s, not %d", ratings[r], r, n)
		}
	}
	if recalled != 315 {
		t.Errorf("%d rows are recalled", recalled)
	}
}

func TestEveryRowOfTheReferenceIsKnown(t *testing.T) {
	stages := []string{StageEstablished, StageEstablishing, StageSeedling, StageDormant, StageGreenUp}
	bases := []string{BasisTrial, BasisLabel, BasisExtension, BasisRecalled, BasisNone}
	for _, r := range Tolerances() {
		at := r.Active + " on " + r.Grass + ", " + r.Source
		if _, ok := FindGrass(r.Grass); !ok {
			t.Errorf("%s: no such grass", at)
		}
		for _, part := range strings.Split(r.Active, between) {
			if name, ok := ReadActive(part); !ok || name != part {
				t.Errorf("%s: %q is no active", at, part)
			}
		}
		if !slices.Contains(stages, r.When.Stage) || !slices.Contains(bases, r.Basis) || r.Words == "" {
			t.Errorf("%s: stage %q, basis %q, words %q", at, r.When.Stage, r.Basis, r.Words)
		}
		if _, ok := FindSource(r.Source); !ok {
			t.Errorf("%s: no such source", at)
		}
		if _, ok := FindSource(r.Contradicted); !ok && r.Contradicted != "" {
			t.Errorf("%s: contradicted by what is no source", at)
		}
		if (r.Basis == BasisRecalled) != (r.Source == "memory") || (r.Basis == BasisNone) != (r.Source == "not_found") {
			t.Errorf("%s: its basis is %s", at, r.Basis)
		}
		if (r.Rating == RatingUnknown) != (r.Basis == BasisNone) {
			t.Errorf("%s: rated %s by %s", at, r.Rating, r.Basis)
		}
		conditionsMakeSense(t, at, r)
	}
}

// conditionsMakeSense: an upper bound belongs to what clears, a lower one to what warns; a cultivar that a row names must
// not take a warning off the others.
func conditionsMakeSense(t *testing.T, at string, r Row) {
	t.Helper()
	w := r.When
	if w.MostRate.Known && r.Rating != Tolerant && !w.MostIsLimit {
		t.Errorf("%s: %s, and a rate that was tried", at, r.Rating)
	}
	if w.LeastRate.Known && r.Rating != Moderate && r.Rating != NotTolerant {
		t.Errorf("%s: %s from a rate on", at, r.Rating)
	}
	if w.Form != "" && w.Form != FormSpray && w.Form != FormGranule {
		t.Errorf("%s: form %q", at, w.Form)
	}
	for _, g := range w.NotIn {
		if !slices.Contains(Growths(), g) {
			t.Errorf("%s: no growth %q", at, g)
		}
	}
	if w.TempMax.Known && (w.TempMax.V < 60 || w.TempMax.V > 110) {
		t.Errorf("%s: %g F", at, w.TempMax.V)
	}
}

func TestEverySourceSaysWhatItIs(t *testing.T) {
	for _, s := range Sources() {
		if s.Institution == "" || s.Title == "" || (s.URL == "") != (s.ID == "memory" || s.ID == "not_found") {
			t.Errorf("%+v", s)
		}
		if got, ok := FindSource(s.ID); !ok || got != s {
			t.Errorf("%s is not found", s.ID)
		}
	}
	if got := SourceWords("memory"); got != "recalled, not read" {
		t.Errorf("memory is %q", got)
	}
	if got := SourceWords("not_found"); got != "nothing found" {
		t.Errorf("not found is %q", got)
	}
	for _, r := range Rates() {
		if _, ok := FindSource(r.Source); !ok {
			t.Errorf("%+v: no such source", r)
		}
	}
	for _, r := range nitrogenRows {
		if _, ok := FindSource(r.Source); !ok {
			t.Errorf("%+v: no such source", r)
		}
	}
}

// TestNoTextCallsAnythingByTheWord: nothing that is printed from the tables holds a word that no tool of this trade should
// say. Addresses stand as they are.
func TestNoTextCallsAnythingByTheWord(t *testing.T) {
	const word = "sa" + "fe"
	for name, text := range map[string]string{
		"tolerance": toleranceTSV, "actives": activesTSV, "rates": ratesTSV, "nitrogen": nitrogenTSV,
	} {
		if i := strings.Index(strings.ToLower(text), word); i >= 0 {
			t.Errorf("%s: %q", name, text[max(0, i-60):min(len(text), i+40)])
		}
	}
	for _, s := range Sources() {
		if strings.Contains(strings.ToLower(s.Institution+s.Title+s.Seen), word) {
			t.Errorf("%+v", s)
		}
	}
}

func TestActivesAreNamedOnceAndFound(t *testing.T) {
	classes := []string{ClassPre, ClassPost, ClassPrePost, ClassNonselective, ClassInsecticide, ClassFungicide, ClassFertiliser, ClassRegulator, ClassAdjuvant, ClassDye}
	spelled := map[string]string{}
	last := ""
	for _, a := range Actives() {
		if name := strings.ToLower(a.Name); name <= last {
			t.Errorf("%s is out of order", a.Name)
		} else {
			last = name
		}
		if !slices.Contains(classes, a.Class) || a.Group == "" || a.Trace < 'A' || a.Trace > 'F' || a.Trace == 'E' {
			t.Errorf("%+v", a)
		}
		if _, ok := FindSource(a.Source); !ok {
			t.Errorf("%s: no such source", a.Name)
		}
		for _, s := range append([]string{a.Name}, a.Aliases...) {
			if other, twice := spelled[bare(s)]; twice {
				t.Errorf("%q is %s and %s", s, other, a.Name)
			}
			spelled[bare(s)] = a.Name
			if got, ok := FindActive(strings.ToUpper(s)); !ok || got.Name != a.Name {
				t.Errorf("%q finds %q", s, got.Name)
			}
		}
	}
}

func BenchmarkTables(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		all, _ := readBlocks(toleranceTSV)
		mixturesOf(all)
		indexActives(readActives(activesTSV))
		readSources(sourcesTSV)
		readNitrogen(nitrogenTSV)
	}
}

func BenchmarkMay(b *testing.B) {
	b.ReportAllocs()
	e := Entry{Grasses: []string{AllTurf}, Actives: []Active{{Name: "2,4-D amine"}, {Name: "MCPP"}, {Name: "dicamba"}}}
	for b.Loop() {
		May(e, "st_augustinegrass", Circumstances{}, e.Most)
	}
}
