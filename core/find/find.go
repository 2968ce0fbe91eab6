package find

import (
	"sort"
	"strings"

	"example.com/tintline/core"
)

// The kinds of thing that are found.
const (
	Lawn        = "lawn"
	Product     = "product"
	Mix         = "mix"
	Compartment = "compartment"
	Applicator  = "applicator"
)

// Most is how many are found at most.
const Most = 20

// Hit is a thing that was found. Name is what the book knows it by, a letter for a compartment; Words say more of it.
type Hit struct{ Kind, Name, Words string }

// In finds what bears the letters typed: in its name (a compartment's too), or in what belongs to it, which are a lawn's
// customer, address, zones and phone, a product's actives, the mix in a compartment. Best first: the whole name, a name
// that begins so, a word of it that does, then what belongs to it likewise, then either anywhere within, then a name
// that has the letters in order, from the first of a word on. Of equals lawns come first, and what was entered first. Case does not matter.
func In(b *core.Book, typed string) []Hit {
	want := plain(typed)
	if want == "" {
		return nil
	}
	type ranked struct {
		Hit
		rank rank
	}
	var found []ranked
	for _, c := range candidates(b) {
		best := none
		for _, n := range c.names {
			best = min(best, nameRank(plain(n), want))
		}
		for _, o := range c.belongs {
			best = min(best, belongsRank(plain(o), want))
		}
		best = min(best, phoneRank(c.phone, want))
		if best < none {
			found = append(found, ranked{c.Hit, best})
		}
	}
	sort.SliceStable(found, func(i, j int) bool { return found[i].rank < found[j].rank })
	var out []Hit
	for i := range min(len(found), Most) {
		out = append(out, found[i].Hit)
	}
	return out
}

// candidate is a thing that may be found, and by what.
type candidate struct {
	Hit
	names, belongs []string
	phone          string
}

func candidates(b *core.Book) []candidate {
	var out []candidate
	for _, l := range b.Lawns() {
		c := candidate{Hit: Hit{Lawn, l.LawnName, lawnWords(l)}, names: []string{l.LawnName}, phone: l.Phone}
		c.belongs = append(l.ZoneNames(), l.Customer, l.Address)
		out = append(out, c)
	}
	for _, h := range b.Products() {
		c := candidate{Hit: Hit{Product, h.Name, h.Now().Label.Words()}, names: []string{h.Name}}
		if c.Words == "" {
			c.Words = h.Now().Label.Kind
		}
		for _, a := range h.Now().Label.Actives {
			c.belongs = append(c.belongs, a.Name)
		}
		out = append(out, c)
	}
	for _, m := range b.Mixes() {
		var holds []string
		for _, p := range m.Parts {
			holds = append(holds, p.Product)
		}
		out = append(out, candidate{Hit: Hit{Mix, m.MixName, strings.Join(holds, " + ")}, names: []string{m.MixName}})
	}
	if b.Rig() == nil {
		return out
	}
	for _, r := range b.Rig().Compartments {
		letter := string(r.Letter)
		mix := b.MixIn(letter)
		out = append(out, candidate{Hit: Hit{Compartment, letter, joined(r.Name, mix)}, names: []string{letter, r.Name}, belongs: []string{mix}})
	}
	for _, a := range b.Rig().Applicators {
		out = append(out, candidate{Hit: Hit{Applicator, a.Name, strings.ReplaceAll(a.Type, "_", "-")}, names: []string{a.Name}, belongs: []string{a.Type}})
	}
	return out
}

func lawnWords(l *core.Lawn) string {
	address := l.Address
	if strings.EqualFold(address, l.LawnName) {
		address = ""
	}
	return joined(l.Customer, address, l.Area().Text()+" sq ft")
}

// joined leaves out what is empty.
func joined(parts ...string) string {
	var out []string
	for _, p := range parts {
		if p != "" {
			out = append(out, p)
		}
	}
	return strings.Join(out, ", ")
}
