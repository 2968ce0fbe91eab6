package core

import (
	"slices"
	"sort"
	"strings"
)

// Jar is what is known of products in one tank: what a jar came to, or that they are marked as not to be mixed.
type Jar struct {
	Products []string // sorted
	Result   string
	Signs    []string
	Note     string
	Date     string
}

// pairMet are two products that went into a tank in one load, by their keys, the lower first.
type pairMet struct{ A, B int32 }

func (s *state) admitJarTested(f *JarTested) error {
	if len(f.Products) < 2 {
		return refuse("Name two or more.", "A jar holds at least two products; %d are named.", len(f.Products))
	}
	for _, p := range f.Products {
		if s.Product(p) == nil {
			return s.noProduct(p)
		}
	}
	if err := unique("product in the jar", f.Products); err != nil {
		return err
	}
	results := []string{JarMixed, JarFailed, JarNotMixing, JarMayMix}
	if !containsText(results, f.Result) {
		return refuse("Use "+strings.Join(results, ", ")+".", "The jar came to %q.", f.Result)
	}
	if failed := f.Result == JarFailed; failed != (len(f.Signs) > 0) {
		return refuse("Say "+JarFailed+" with what was seen: "+strings.Join(JarSigns(), ", ")+"; signs go with no other result.", "The jar came to %s, with %d signs.", f.Result, len(f.Signs))
	}
	for _, sign := range f.Signs {
		if !containsText(JarSigns(), sign) {
			return refuse("Use "+strings.Join(JarSigns(), ", ")+".", "%q is no sign of a jar that failed.", sign)
		}
	}
	if err := unique("sign", f.Signs); err != nil {
		return err
	}
	if f.Result == JarMayMix && s.markedApart(f.Products) < 0 {
		return refuse("There is nothing to take back.", "%s are not marked as not to be mixed.", strings.Join(f.Products, " and "))
	}
	return nil
}

// markedApart is where the mark of just these products stands; -1: there is none.
func (s *state) markedApart(products []string) int {
	return jarOf(s.unmixed, sortedTexts(products))
}

func sortedTexts(list []string) []string {
	out := append([]string(nil), list...)
	sort.Strings(out)
	return out
}

func jarOf(list []Jar, sorted []string) int {
	return slices.IndexFunc(list, func(j Jar) bool { return slices.Equal(j.Products, sorted) })
}

// applyJarTested keeps a result or a mark in the place of the one before. The lists are made anew: copies share them.
func (s *state) applyJarTested(e Entry, f *JarTested) {
	j := Jar{sortedTexts(f.Products), f.Result, append([]string(nil), f.Signs...), f.Note, e.At.Date()}
	list := &s.jars
	if f.Result == JarNotMixing || f.Result == JarMayMix {
		list = &s.unmixed
	}
	out := make([]Jar, 0, len(*list)+1)
	for _, old := range *list {
		if !slices.Equal(old.Products, j.Products) {
			out = append(out, old)
		}
	}
	if f.Result != JarMayMix {
		out = append(out, j)
	}
	*list = out
}

// meet keeps which products went into a tank in one load.
func (s *state) meet(parts []LoadPart) {
	var fresh []pairMet
	for i, p := range parts {
		for _, q := range parts[i+1:] {
			if m, ok := s.pairOf(p.Product, q.Product); ok && !slices.Contains(s.met, m) && !slices.Contains(fresh, m) {
				fresh = append(fresh, m)
			}
		}
	}
	if len(fresh) > 0 {
		s.met = append(append([]pairMet(nil), s.met...), fresh...)
	}
}

func (s *state) pairOf(a, b string) (pairMet, bool) {
	x, ok := s.productAt[a]
	y, too := s.productAt[b]
	return pairMet{int32(min(x, y)), int32(max(x, y))}, ok && too && x != y
}

// Jars lists what jars came to, the last of each set of products, oldest first.
func (s *state) Jars() []Jar { return s.jars }

// MarkedApart lists the products that the operator marked as not to be mixed, oldest first.
func (s *state) MarkedApart() []Jar { return s.unmixed }

// IsMarkedApart tells whether just these products are marked so.
func (s *state) IsMarkedApart(products []string) bool { return s.markedApart(products) >= 0 }

// Met tells whether two products went into a tank in one load before.
func (s *state) Met(a, b string) bool {
	m, ok := s.pairOf(a, b)
	return ok && slices.Contains(s.met, m)
}

// NotToMix lists the marks, and the jars that failed, of which all products are among these.
func (s *state) NotToMix(products []string) []Jar {
	var out []Jar
	among := func(j Jar) bool {
		return !slices.ContainsFunc(j.Products, func(p string) bool { return !containsText(products, p) })
	}
	for _, j := range s.unmixed {
		if among(j) {
			out = append(out, j)
		}
	}
	for _, j := range s.jars {
		if j.Result == JarFailed && among(j) && jarOf(out, j.Products) < 0 {
			out = append(out, j)
		}
	}
	return out
}

// Unmet lists the pairs of these products that never went into a tank in one load, stood in no jar and bear no mark.
func (s *state) Unmet(products []string) [][2]string {
	var out [][2]string
	known := func(a, b string) bool {
		in := func(j Jar) bool { return containsText(j.Products, a) && containsText(j.Products, b) }
		return s.Met(a, b) || slices.ContainsFunc(s.jars, in) || slices.ContainsFunc(s.unmixed, in)
	}
	for i, a := range products {
		for _, b := range products[i+1:] {
			if a != b && !known(a, b) {
				out = append(out, [2]string{a, b})
			}
		}
	}
	return out
}

// digestJars adds jars and marks; a book without either has the digest that it always had. Who met whom follows from the
// loads and is in none.
func (s *state) digestJars(w *binaryWriter) {
	if len(s.jars)+len(s.unmixed) == 0 {
		return
	}
	w.str("jars")
	for _, list := range [][]Jar{s.jars, s.unmixed} {
		w.count(len(list))
		for _, j := range list {
			w.texts(1, "", &j.Products)
			w.str(j.Result)
			w.texts(2, "", &j.Signs)
			w.str(j.Note)
			w.str(j.Date)
		}
	}
}
