package measure

import (
	"math/big"
	"strings"
)

// typedNumber reads a number from the front of text: "41", "6,200", "0.14", ".5",
// "1/2", "1 1/2", "1-1/2". typed is the whole text, for the sentence.
func typedNumber(text, typed string) (number *big.Rat, rest string, err error) {
	if strings.HasPrefix(text, "-") || strings.HasPrefix(text, "−") {
		return nil, "", textErrorf("%s is less than nothing; write it without the sign.", quoted(typed))
	}
	n, commas := numberLength(text)
	plain := text[:n]
	if commas {
		if !grouped(plain) {
			return nil, "", textErrorf("%s has a comma that marks no thousands; write 6,200 or 6200, and decimals with a point.", quoted(typed))
		}
		plain = strings.ReplaceAll(plain, ",", "")
	}
	if _, ok := plainDecimal(plain); !ok {
		return nil, "", textErrorf("%s does not begin with a number; write one such as 41, 1.5 or 1 1/2.", quoted(typed))
	}
	number, err = decimal(plain)
	if err != nil {
		return nil, "", err
	}
	rest = text[n:]
	if strings.Contains(plain, ".") {
		return number, strings.TrimLeft(rest, " "), nil
	}
	return withFraction(number, rest, typed)
}

// withFraction reads what may follow a whole number: "/2" makes it the numerator,
// " 1/2" or "-1/2" is added to it.
func withFraction(whole *big.Rat, text, typed string) (number *big.Rat, rest string, err error) {
	rest = strings.TrimLeft(text, " ")
	if below, after, ok := fractionBelow(rest); ok {
		return divided(whole, below, after, typed)
	}
	mixed := strings.TrimPrefix(rest, "-")
	n := digits(mixed)
	if n == 0 || n == len(mixed) || (len(rest) == len(text) && len(mixed) == len(rest)) {
		return whole, rest, nil
	}
	below, after, ok := fractionBelow(strings.TrimLeft(mixed[n:], " "))
	if !ok {
		return whole, rest, nil
	}
	top, _ := new(big.Rat).SetString(mixed[:n])
	part, after, err := divided(top, below, after, typed)
	if err != nil {
		return nil, "", err
	}
	return whole.Add(whole, part), after, nil
}

// fractionBelow reads "/ 2" from the front of text.
func fractionBelow(text string) (below, rest string, ok bool) {
	if !strings.HasPrefix(text, "/") {
		return "", text, false
	}
	text = strings.TrimLeft(text[1:], " ")
	n := digits(text)
	return text[:n], text[n:], n > 0
}

func divided(top *big.Rat, below, rest, typed string) (*big.Rat, string, error) {
	d, ok := new(big.Rat).SetString(below)
	if !ok || d.Sign() == 0 {
		return nil, "", textErrorf("%s divides by zero.", quoted(typed))
	}
	return top.Quo(top, d), strings.TrimLeft(rest, " "), nil
}

// numberLength counts the digits, commas and one point that text begins with. A
// point or comma that no digit follows ends the number: it belongs to the unit.
func numberLength(text string) (n int, commas bool) {
	point := false
	for n < len(text) {
		c := text[n]
		switch {
		case c >= '0' && c <= '9':
		case c == ',' && !point && digits(text[n+1:]) > 0:
			commas = true
		case c == '.' && !point && digits(text[n+1:]) > 0:
			point = true
		default:
			return n, commas
		}
		n++
	}
	return n, commas
}

// grouped says whether the commas of a number mark thousands.
func grouped(text string) bool {
	whole, _, _ := strings.Cut(text, ".")
	groups := strings.Split(whole, ",")
	if len(groups[0]) == 0 || len(groups[0]) > 3 {
		return false
	}
	for _, g := range groups[1:] {
		if len(g) != 3 {
			return false
		}
	}
	return true
}
