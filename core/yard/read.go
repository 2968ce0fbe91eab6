package yard

import (
	"sort"
	"strconv"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

// ReadAmount reads an amount of a product: a volume of a liquid, a weight of a dry one. Where the product is not named, the unit says which.
func ReadAmount(said, product string, b *core.Book) (measure.Amount, error) {
	if p := b.Product(product); p != nil {
		unit := map[measure.Kind]string{measure.Liquid: "fl_oz", measure.Dry: "oz"}[p.Label.Form]
		return measure.ReadAmount(said, unit, p.Label.Form)
	}
	if strings.Contains(strings.ToLower(said), "fl") {
		return measure.ReadAmount(said, "fl_oz", measure.Liquid)
	}
	if a, err := measure.ReadAmount(said, "", measure.Dry); err == nil && !strings.HasSuffix(strings.ToLower(strings.TrimSpace(said)), "oz") {
		return a, nil
	}
	return measure.ReadAmount(said, "fl_oz", measure.Liquid)
}

// Read changes a question by a line of text: pieces with commas between, in any order. A compartment's letter, a mix, an applicator ("gun" or
// "for gun"), a product, gallons, an area, "4 loads", "3 rinses", "1 to 10".
func Read(b *core.Book, kind string, q Ask, said string) (Ask, error) {
	if strings.TrimSpace(said) == "" {
		return q, measure.Troublef("Type one of "+Offered(kind)+".", "Nothing is typed.")
	}
	q.lettered = false
	if whole := strings.ToLower(strings.TrimSpace(said)); len(whole) > 1 && q.named(b, whole) {
		return q, nil // also where the name has a comma, or "for" in it
	}
	for _, piece := range pieces(q.cutNames(b, said)) {
		if err := q.take(b, kind, piece); err != nil {
			return q, err
		}
	}
	return q, nil
}

// cutNames takes mixes and products out of a line whose names have a comma or a "for" in them, the longest first.
func (q *Ask) cutNames(b *core.Book, said string) string {
	var names []string
	for _, m := range b.Mixes() {
		names = append(names, m.MixName)
	}
	for _, p := range b.Products() {
		names = append(names, p.Name)
	}
	sort.SliceStable(names, func(i, j int) bool { return len(names[i]) > len(names[j]) })
	for _, n := range names {
		if !strings.Contains(n, ",") && !strings.Contains(n, " for ") {
			continue
		}
		if at := strings.Index(lower(said), lower(n)); at >= 0 && q.named(b, strings.ToLower(n)) {
			said = said[:at] + " , " + said[at+len(n):]
		}
	}
	return said
}

// lower makes ASCII letters small, byte by byte, so that places in the text stay where they are.
func lower(s string) string {
	out := []byte(s)
	for i, c := range out {
		if c >= 'A' && c <= 'Z' {
			out[i] = c + 'a' - 'A'
		}
	}
	return string(out)
}

// pieces parts a line at its commas, but not within a figure with thousands, and before "for".
func pieces(said string) []string {
	said = strings.ReplaceAll(" "+said, " for ", " , ")
	var out []string
	rest := said
	for i := 0; i < len(rest); i++ {
		if rest[i] != ',' || (i > 0 && i+1 < len(rest) && digit(rest[i-1]) && digit(rest[i+1])) {
			continue
		}
		out = append(out, rest[:i])
		rest, i = rest[i+1:], -1
	}
	out = append(out, rest)
	var full []string
	for _, p := range out {
		if p = strings.TrimSpace(p); p != "" {
			full = append(full, p)
		}
	}
	return full
}

func digit(c byte) bool { return c >= '0' && c <= '9' }

// Offered is what a line of text may say of a question, with an example each.
func Offered(kind string) string {
	words := "a letter, a mix, an applicator"
	switch kind {
	case "load":
		return words + ", 100 gal or 20,000 sq ft"
	case "topup":
		return words + " or 150 gal"
	case "blend":
		return "a letter and another one (b, a), an applicator or 20 gal"
	case "jug":
		return "a product, 4 loads or 12 fl oz; package 1 gal"
	case "use-up":
		return "a letter, an applicator, 3 gal or 1 to 10"
	case "tint":
		return "a letter, a tint, 0.5 fl oz a gal, or 150 gal to fill to"
	case "rinse":
		return "a letter, 3 rinses, or 48 gal in all"
	}
	return words + " or 20 gal"
}

// take reads one piece.
func (q *Ask) take(b *core.Book, kind, piece string) error {
	low := strings.ToLower(piece)
	switch {
	case len(low) == 1 && b.Plumbing().Compartment(low[0]) != nil:
		q.letter(kind, low[0])
		return nil
	case q.named(b, low):
		return nil
	case q.counted(kind, low):
		return nil
	}
	return q.figure(b, kind, piece)
}

// letter takes a compartment. Of a blend the first is the one that is run over, the second the one that takes it.
func (q *Ask) letter(kind string, l byte) {
	switch {
	case kind == "blend" && q.lettered:
		q.Into = l
	case kind == "blend":
		q.From, q.Into, q.lettered = l, 0, true
	default:
		q.Into = l
	}
}

// Lettered is the question about another compartment, as a letter pressed says it: of a blend the first letter is the one that is run over, the
// second the one that takes it, the third begins anew.
func (q Ask) Lettered(kind string, l byte) Ask {
	if kind == "blend" && q.lettered && q.Into == 0 && l != q.From {
		q.Into, q.lettered = l, false
		return q
	}
	q.lettered = false
	q.letter(kind, l)
	q.Volume = core.Maybe[measure.Volume]{} // that was of the other one
	return q
}

// named takes a mix, an applicator or a product, whatever its case.
func (q *Ask) named(b *core.Book, low string) bool {
	for _, m := range b.Mixes() {
		if strings.EqualFold(m.MixName, low) {
			q.Mix = m.MixName
			return true
		}
	}
	if b.Rig() != nil {
		for _, a := range b.Rig().Applicators {
			if strings.EqualFold(a.Name, low) {
				q.For = a.Name
				return true
			}
		}
	}
	for _, p := range b.Products() {
		if strings.EqualFold(p.Name, low) {
			q.Name = p.Name
			return true
		}
	}
	return false
}

// counted takes "4 loads", "3 rinses" and "1 to 10".
func (q *Ask) counted(kind, low string) bool {
	f := strings.Fields(low)
	if len(f) == 3 && f[0] == "1" && f[1] == "to" && kind == "use-up" {
		thin, err := measure.ParseNumber(f[2])
		q.Thin = core.Known(thin)
		return err == nil
	}
	if len(f) != 2 {
		return false
	}
	n, err := strconv.Atoi(f[0])
	if err != nil {
		return false
	}
	switch {
	case kind == "jug" && strings.HasPrefix(f[1], "load"):
		q.Loads, q.Each = n, core.Maybe[measure.Amount]{}
	case kind == "rinse" && (strings.HasPrefix(f[1], "rinse") || strings.HasPrefix(f[1], "time")):
		q.Rinses = n
	default:
		return false
	}
	return true
}

// figure takes an area, an amount or gallons.
func (q *Ask) figure(b *core.Book, kind, piece string) error {
	if kind == "load" {
		if a, err := measure.ReadArea(piece, ""); err == nil {
			q.Area, q.Volume = core.Known(a), core.Maybe[measure.Volume]{}
			return nil
		}
	}
	if kind == "jug" {
		if rest, ok := strings.CutPrefix(strings.ToLower(piece), "package "); ok {
			a, err := ReadAmount(rest, q.about(b, kind), b)
			if err != nil {
				return q.unread(kind, piece)
			}
			q.Pack = core.Known(a)
			return nil
		}
		a, err := ReadAmount(piece, q.about(b, kind), b)
		if err != nil {
			return q.unread(kind, piece)
		}
		q.Each, q.Loads = core.Known(a), 0
		return nil
	}
	if rest, ok := dosed(piece); ok && kind == "tint" {
		a, err := ReadAmount(rest, q.about(b, kind), b)
		if err != nil {
			return q.unread(kind, piece)
		}
		q.Dose = core.Known(a)
		return nil
	}
	v, err := measure.ReadVolume(piece, "gal")
	if err != nil {
		return q.led(b, kind, piece)
	}
	q.Volume, q.Area = core.Known(v), core.Maybe[measure.Area]{}
	return nil
}

// led takes a figure that a name follows without a comma: "100 gal weed".
func (q *Ask) led(b *core.Book, kind, piece string) error {
	const longest = 3 // words of a figure with its unit: 10,000 sq ft
	words := strings.Fields(piece)
	for n := min(longest, len(words)-1); n > 0; n-- {
		figure, rest := strings.Join(words[:n], " "), strings.Join(words[n:], " ")
		_, notVolume := measure.ReadVolume(figure, "gal")
		_, notArea := measure.ReadArea(figure, "")
		if (notVolume != nil && notArea != nil) || !q.named(b, strings.ToLower(rest)) {
			continue
		}
		return q.figure(b, kind, figure)
	}
	return q.unread(kind, piece)
}

// about is the product that an amount is of: the one named, else the one that the question is about.
func (q *Ask) about(b *core.Book, kind string) string {
	if q.Name != "" {
		return q.Name
	}
	if kind == "jug" {
		if p, _, err := jugOf(b, *q); err == nil {
			return p.ProductName
		}
		return ""
	}
	if c, err := compartment(b, q.Into); err == nil {
		if p, err := tintProduct(b, "", c); err == nil {
			return p.ProductName
		}
	}
	return ""
}

// dosed takes "a gal" off the end of a dose.
func dosed(piece string) (string, bool) {
	low := strings.ToLower(piece)
	for _, end := range []string{" a gallon", " a gal", " per gallon", " per gal", "/gal"} {
		if rest, ok := strings.CutSuffix(low, end); ok {
			return rest, true
		}
	}
	return piece, false
}

func (q *Ask) unread(kind, piece string) error {
	return measure.Troublef("Type one of "+Offered(kind)+".", "%q is neither a name of the book nor a figure that this takes.", piece)
}
