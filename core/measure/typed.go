package measure

import (
	"math/big"
	"strings"
)

// ReadVolume reads what a person types into a field that takes a volume: "41",
// "41 gal", "1.5 qt", "12oz", "6,200 mL", "1/2", "1 1/2 gal", "1 gal 12 oz". A bare
// number is in the unit expect, a key of units.csv. Case does not matter, and oz
// here means fluid ounces. Where expect is empty there is no such unit, and each
// number needs its own. Refused in one sentence: what is no number, a unit of
// something else, less than nothing, and what does not fit.
func ReadVolume(text, expect string) (Volume, error) {
	n, err := readInt("volume", expect, text)
	return Volume(n), err
}

// ReadArea reads an area as ReadVolume does: "6,200", "6200 sqft", "0.14 ac".
func ReadArea(text, expect string) (Area, error) {
	n, err := readInt("area", expect, text)
	return Area(n), err
}

// ReadMass reads a weight as ReadVolume does: "50 lb", "12 oz", "2 lb 4 oz".
func ReadMass(text, expect string) (Mass, error) {
	n, err := readInt("mass", expect, text)
	return Mass(n), err
}

// ReadLength reads a length as ReadVolume does: "400 ft", "1/2 in", "5' 6\"".
func ReadLength(text, expect string) (Length, error) {
	n, err := readInt("length", expect, text)
	return Length(n), err
}

// ReadSpeed reads a speed as ReadVolume does: "3 mph", "88 ft/min".
func ReadSpeed(text, expect string) (Speed, error) {
	n, err := readInt("speed", expect, text)
	return Speed(n), err
}

// ReadMoney reads an amount of money as ReadVolume does, also with the sign in
// front: "$68.50".
func ReadMoney(text, expect string) (Money, error) {
	rest := strings.TrimSpace(text)
	if strings.HasPrefix(rest, "$") {
		rest = strings.TrimSpace(rest[1:]) + " $"
	}
	n, err := readIntAs("money", expect, rest, text)
	return Money(n), err
}

// ReadFlow reads a flow as ReadVolume does: "4.1", "4.1 gpm", "15 L/min".
func ReadFlow(text, expect string) (Flow, error) {
	r, err := readTyped("flow", expect, text, text)
	if err != nil {
		return 0, err
	}
	f, _ := r.Float64()
	return Flow(f), nil
}

// ReadPressure reads a pressure as ReadVolume does: "40", "40 psi", "2.8 bar".
func ReadPressure(text, expect string) (Pressure, error) {
	r, err := readTyped("pressure", expect, text, text)
	if err != nil {
		return 0, err
	}
	f, _ := r.Float64()
	return Pressure(f), nil
}

// ReadAmount reads an amount of a product of a kind: a volume if Liquid, a weight
// if Dry.
func ReadAmount(text, expect string, k Kind) (Amount, error) {
	n, err := readInt(k.quantity(), expect, text)
	return Amount{N: n, Kind: k}, err
}

// ReadRate reads a rate of a product of a kind: "3" in the unit expect (such as
// fl_oz_per_1000_sqft), "3 fl oz/1000 sq ft", "4 pt per acre". An amount without
// an area is for the area of expect; where expect is empty, both units are needed.
func ReadRate(text, expect string, k Kind) (Rate, error) {
	var amount string
	var area *unit
	if expect != "" {
		a, over, kind, err := rateUnits(expect)
		if err != nil {
			return Rate{}, err
		}
		if kind != k {
			return Rate{}, textErrorf("%q does not fit a %s product.", expect, k)
		}
		amount, area = a.key, over
	}
	left, right, found := cutPer(text)
	if found {
		name := normal(strings.ReplaceAll(right, ",", ""))
		if area = namedUnit("area", name); area == nil {
			return Rate{}, textErrorf("%s is no area; write the rate as %s per 1,000 sq ft, acre, m2 or ha.", quoted(right), usualAmount(k))
		}
	}
	r, err := readTyped(k.quantity(), amount, left, text)
	if err == nil && area == nil {
		err = textErrorf("%s names no area; write the rate as %s per 1,000 sq ft, acre, m2 or ha.", quoted(text), usualAmount(k))
	}
	if err != nil {
		return Rate{}, err
	}
	v, _ := r.Quo(r, area.ratio).Float64()
	return Rate{V: v, Kind: k}, nil
}

// usualAmount is the unit in which labels most often give products of a kind.
func usualAmount(k Kind) string {
	if k == Dry {
		return "lb"
	}
	return "fl oz"
}

// cutPer cuts a typed rate at its last "per" or at a slash that is no fraction's.
func cutPer(text string) (amount, area string, found bool) {
	low := lower(text)
	if i := strings.LastIndex(low, "per "); i > 0 {
		return low[:i], low[i+4:], true
	}
	i := strings.LastIndexByte(low, '/')
	if i <= 0 || strings.IndexFunc(low[:i], func(r rune) bool { return r >= 'a' && r <= 'z' }) < 0 {
		return low, "", false
	}
	return low[:i], low[i+1:], true
}

func readInt(quantity, expect, text string) (int64, error) {
	return readIntAs(quantity, expect, text, text)
}

// readIntAs reads text and, in a sentence, names it as it was typed.
func readIntAs(quantity, expect, text, typed string) (int64, error) {
	r, err := readTyped(quantity, expect, text, typed)
	if err != nil {
		return 0, err
	}
	n, ok := ratInt(r)
	if !ok {
		return 0, textErrorf("%s is more than can be kept.", quoted(typed))
	}
	return n, nil
}

// readTyped reads one or more numbers with their units and gives the sum in the
// quantity's base unit. Only a single number may stand without a unit.
func readTyped(quantity, expect, text, typed string) (*big.Rat, error) {
	var fallback *unit
	if expect != "" {
		var err error
		if fallback, err = unitOf(quantity, expect); err != nil {
			return nil, err
		}
	}
	rest := strings.TrimSpace(lower(text))
	if rest == "" {
		return nil, textErrorf("Nothing is typed; this field takes %s: %s.", article(quantity), allowed(quantity))
	}
	if len(rest) > maxDigits {
		return nil, textErrorf("%s is too long; at most %d characters are read.", quoted(typed), maxDigits)
	}
	sum := new(big.Rat)
	for first := true; rest != ""; first = false {
		number, after, err := typedNumber(rest, typed)
		if err != nil {
			return nil, err
		}
		name, next := typedUnit(after)
		u := fallback
		switch {
		case name == "" && next == "" && u == nil:
			return nil, textErrorf("%s has no unit; write it as %s: %s.", quoted(typed), article(quantity), allowed(quantity))
		case name == "" && !first, name == "" && next != "":
			return nil, textErrorf("%s has a number without a unit; write each with its unit.", quoted(typed))
		case name != "":
			if u = namedUnit(quantity, name); u == nil {
				return nil, wrongUnit(quantity, name, typed)
			}
		}
		sum.Add(sum, number.Mul(number, u.ratio))
		rest = next
	}
	return sum, nil
}

// typedUnit cuts the unit's name from the front of text; the next number, if any,
// begins the rest. Digits straight after a letter (m2, ft2) belong to the name.
func typedUnit(text string) (name, rest string) {
	for i := range len(text) {
		begins := digits(text[i:]) > 0 || (text[i] == '.' && digits(text[i+1:]) > 0)
		if begins && (i == 0 || !wordByte(text[i-1])) {
			return normal(text[:i]), text[i:]
		}
	}
	return normal(text), ""
}

// wordByte says whether a digit behind c still belongs to the name.
func wordByte(c byte) bool { return c >= 'a' && c <= 'z' || c >= '0' && c <= '9' }

// namedUnit gives the unit that a person means in a field of this quantity, or nil.
func namedUnit(quantity, name string) *unit {
	for _, u := range units {
		if u.quantity != quantity {
			continue
		}
		if u.key == name {
			return u
		}
		for _, n := range u.names {
			if n == name {
				return u
			}
		}
	}
	return nil
}

// lower makes ASCII letters small. It leaves all else as it is, so that lengths
// in bytes do not change.
func lower(text string) string {
	return strings.Map(func(r rune) rune {
		if r >= 'A' && r <= 'Z' {
			return r + 'a' - 'A'
		}
		return r
	}, text)
}

// normal writes a unit's name as units.csv does: small letters, no stops, single
// spaces.
func normal(name string) string {
	name = strings.ReplaceAll(lower(name), ".", " ")
	name = strings.Join(strings.Fields(name), " ")
	return strings.ReplaceAll(name, " / ", "/")
}
