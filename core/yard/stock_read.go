package yard

import (
	"math"
	"strconv"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

// StockHint is what may be typed of a stock.
const StockHint = "bought 2 x 2.5 gal 62.00; counted 3.75 gal; reorder at 1 gal"

// ReadStocked reads a purchase ("bought 2 x 2.5 gal 62.00 from Example Supply lot A7", "bought 2 x 2.5 gal 31.00 each"), a count ("counted 3.75 gal",
// "counted 1 x 2.5 gal + 1 qt") or the line below which to order ("reorder at 1 gal", "reorder off"). An amount without a unit is in gallons, or in
// pounds where the product is dry.
func ReadStocked(b *core.Book, product, said string) (*core.Stocked, error) {
	p := b.Product(product)
	if p == nil {
		return nil, measure.Troublef("Enter its label first.", "There is no product %q in the book.", product)
	}
	f := &core.Stocked{Product: product}
	word, rest, _ := strings.Cut(strings.Join(strings.Fields(strings.ReplaceAll(said, "×", " x ")), " "), " ")
	switch strings.ToLower(word) {
	case core.Bought:
		return f, readBought(f, p.Label.Form, rest)
	case core.Counted:
		f.What = core.Counted
		for _, piece := range strings.Split(rest, "+") {
			n, size, err := packagesOf(piece, p.Label.Form)
			if err != nil {
				return nil, err
			}
			f.Amount = measure.Amount{N: f.Amount.N + measure.MulDiv(size.N, n.Or(1), 1), Kind: p.Label.Form}
		}
		return f, nil
	case core.Reorder, "order":
		f.What, f.Amount.Kind = core.Reorder, p.Label.Form
		rest = strings.TrimPrefix(rest, "at ")
		if rest == "off" {
			return f, nil
		}
		var err error
		f.Amount, err = stockAmount(rest, p.Label.Form)
		return f, err
	}
	return nil, measure.Troublef("Write "+StockHint+".", "%q begins neither with bought nor with counted or reorder.", said)
}

// readBought reads what stands behind the word: packages or an amount, the price of all of it or of each, the supplier, the lot.
func readBought(f *core.Stocked, form measure.Kind, rest string) error {
	f.What = core.Bought
	rest, f.Lot = behind(rest, "lot")
	rest, f.Supplier = behind(rest, "from")
	words := strings.Fields(rest)
	each := false
	if n := len(words); n > 0 && strings.EqualFold(words[n-1], "each") {
		each, words = true, words[:n-1]
	}
	if n := len(words); n > 1 && price(words[n-1]) && !strings.EqualFold(words[n-2], "x") {
		paid, err := measure.ReadMoney(words[n-1], "usd")
		if err != nil {
			return err
		}
		f.Paid, words = core.Known(paid), words[:n-1]
		if n := len(words); n > 1 && strings.EqualFold(words[n-1], "for") {
			words = words[:n-1]
		}
	}
	n, size, err := packagesOf(strings.Join(words, " "), form)
	if err != nil {
		return err
	}
	if !n.Known {
		f.Amount = size
	} else {
		f.Packages, f.Package = core.Known(float64(n.V)), size
	}
	if each && f.Paid.Known {
		if !n.Known {
			return measure.Troublef("Give the packages, such as 2 x 2.5 gal 31.00 each, or the price of all of it.", "It is not said how many were bought for %s each.", f.Paid.V.Text())
		}
		f.Paid.V = measure.Money(measure.MulDiv(int64(f.Paid.V), n.V, 1))
	}
	return nil
}

// behind cuts a text at a word, and gives what stands behind it.
func behind(text, word string) (before, after string) {
	i := strings.LastIndex(" "+strings.ToLower(text)+" ", " "+word+" ")
	if i < 0 {
		return text, ""
	}
	return strings.TrimSpace(text[:i]), strings.TrimSpace(text[min(i+len(word), len(text)):])
}

// price tells whether a word is a plain figure, with or without a dollar sign.
func price(word string) bool {
	word = strings.ReplaceAll(strings.TrimPrefix(word, "$"), ",", "")
	f, err := strconv.ParseFloat(word, 64)
	return err == nil && !math.IsNaN(f) && !math.IsInf(f, 0)
}

// packagesOf reads "2 x 2.5 gal", "2 jugs" or "5 gal". Of jugs without a size the label entry says it.
func packagesOf(said string, form measure.Kind) (n core.Maybe[int64], size measure.Amount, err error) {
	said = strings.TrimSpace(said)
	count, rest, cut := strings.Cut(strings.ToLower(said), "x")
	if whole, errN := strconv.ParseInt(strings.TrimSpace(count), 10, 32); cut && errN == nil {
		size, err = stockAmount(rest, form)
		return core.Known(whole), size, err
	}
	words := strings.Fields(strings.ToLower(said))
	if len(words) == 2 && strings.Contains(" jug jugs bag bags package packages bottle bottles box boxes ", " "+words[1]+" ") {
		if whole, errN := strconv.ParseInt(words[0], 10, 32); errN == nil {
			return core.Known(whole), measure.Amount{Kind: form}, nil
		}
	}
	size, err = stockAmount(said, form)
	return n, size, err
}

// stockAmount reads an amount as a stock is counted. A weight of what is liquid, and a volume of what is dry, is refused in one sentence.
func stockAmount(said string, form measure.Kind) (measure.Amount, error) {
	units := [2]string{measure.Liquid: "gal", measure.Dry: "lb"}
	a, err := measure.ReadAmount(strings.TrimSpace(said), units[form], form)
	if err == nil {
		return a, nil
	}
	if other, errOther := measure.ReadAmount(strings.TrimSpace(said), units[1-form], 1-form); errOther == nil {
		if form == measure.Liquid {
			return a, measure.Troublef("Give a volume, such as fl oz or gal.", "It is liquid and is measured by volume, but %s is a weight.", other.Text())
		}
		return a, measure.Troublef("Give a weight, such as oz or lb.", "It is dry and is weighed, but %s is a volume.", other.Text())
	}
	return a, err
}

// StockedWords is what an entry of the stock would come to, beside what it says: the total and the price of each, or how far the count is from
// what the book says. Empty: nothing.
func StockedWords(b *core.Book, f *core.Stocked) string {
	switch {
	case f.What == core.Bought && f.Packages.Known:
		out := f.Amount.Text() + " in all"
		if f.Paid.Known && f.Packages.V >= 1 {
			out += ", " + measure.Money(measure.MulDivRound(int64(f.Paid.V), 1, int64(f.Packages.V))).Text() + " each"
		}
		return out
	case f.What == core.Counted:
		have := b.Stock(f.Product).Have
		if !have.Known {
			return "the first count"
		}
		off := measure.Amount{N: f.Amount.N - have.V.N, Kind: f.Amount.Kind}
		switch {
		case off.N > 0:
			return off.Text() + " more than the book says"
		case off.N < 0:
			off.N = -off.N
			return off.Text() + " less than the book says"
		}
		return "as the book says"
	}
	return ""
}
