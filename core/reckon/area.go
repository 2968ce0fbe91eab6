package reckon

import (
	"math"
	"strings"
)

// dimension finds a length whose key is name, "_" and a unit.
func (in *inputs) dimension(name string) (quantity, error) {
	return in.one(name+"_", plain("length"), false)
}

// area answers the area of a shape from its measures, and what of a lot is lawn.
func area(in *inputs) (map[string]any, error) {
	out := answers{}
	shape, err := in.shape()
	if err != nil {
		return nil, err
	}
	size, err := in.shapes(shape, out)
	if err != nil {
		return nil, err
	}
	lot, err := in.one("lot_", plain("area"), false)
	if err != nil {
		return nil, err
	}
	other, err := in.one("non_lawn_", plain("area"), false)
	if err != nil {
		return nil, err
	}
	if err := in.unknown(); err != nil {
		return nil, err
	}
	if size.given {
		out.area("area_", size.base)
		out.area("", size.base)
	}
	whole := lot
	if !lot.given {
		whole = size
	}
	switch {
	case !whole.given && !other.given:
		return nil, &MissingError{Kind: in.kind, What: "the measures of a shape (length_ft and width_ft, diameter_ft, radius_ft, base_ft and height_ft, offset_widths_ft and spacing_ft) or lot_sqft"}
	case !whole.given:
		return nil, &MissingError{Kind: in.kind, What: "lot_sqft"}
	case lot.given && !other.given:
		return nil, &MissingError{Kind: in.kind, What: "non_lawn_sqft"}
	case other.given && other.base > whole.base:
		return nil, &InputError{Key: other.key, Value: in.value[other.key], Want: "at most the whole, " + whole.key}
	case other.given:
		out.area("lawn_", whole.base-other.base)
	}
	return out, nil
}

// shape reads which shape length and width are meant for.
func (in *inputs) shape() (string, error) {
	s, given := in.value["shape"]
	if !given {
		return "", nil
	}
	in.taken["shape"] = true
	switch s = strings.ToLower(s); s {
	case "rectangle", "oval":
		return s, nil
	}
	return "", &InputError{Key: "shape", Value: in.value["shape"], Want: "rectangle or oval"}
}

// shapes reads the measures of one shape and gives its area in mm².
func (in *inputs) shapes(shape string, out answers) (quantity, error) {
	names := []string{"length", "width", "diameter", "radius", "base", "height", "spacing"}
	var d [7]quantity
	for i, name := range names {
		var err error
		if d[i], err = in.dimension(name); err != nil {
			return quantity{}, err
		}
	}
	length, width, diameter, radius, base, height, spacing := d[0], d[1], d[2], d[3], d[4], d[5], d[6]
	widths, err := in.offsets()
	if err != nil {
		return quantity{}, err
	}
	var found []quantity
	add := func(key string, um2 float64) {
		// µm² to mm²: a million to one.
		found = append(found, quantity{given: true, key: key, base: um2 / 1e6})
	}
	if length.given && width.given {
		if shape == "oval" {
			add(length.key, math.Pi/4*length.base*width.base)
		} else {
			add(length.key, length.base*width.base)
		}
	}
	if diameter.given {
		add(diameter.key, math.Pi/4*diameter.base*diameter.base)
	}
	if radius.given {
		add(radius.key, math.Pi*radius.base*radius.base)
	}
	if base.given && height.given {
		add(base.key, base.base*height.base/2)
	}
	if widths.given {
		out.plain("sum_", "length", lengthUnits, widths.base)
		if spacing.given {
			add(widths.key, widths.base*spacing.base)
		}
	}
	if err := in.halves(length, width, base, height, widths, spacing); err != nil {
		return quantity{}, err
	}
	switch {
	case len(found) > 1:
		return quantity{}, &InputError{Key: found[1].key, Value: in.value[found[1].key], Want: "left out, for " + found[0].key + " already gives a shape"}
	case len(found) == 0 && shape != "":
		return quantity{}, &MissingError{Kind: in.kind, What: "length_ft and width_ft"}
	case len(found) == 0:
		return quantity{}, nil
	case shape != "" && !length.given:
		return quantity{}, &InputError{Key: "shape", Value: shape, Want: "left out, for it goes with length_ft and width_ft"}
	}
	return found[0], nil
}

// halves refuses a measure that stands without the one it is multiplied with.
func (in *inputs) halves(length, width, base, height, widths, spacing quantity) error {
	for _, pair := range []struct {
		one, other           quantity
		oneName, missingName string
	}{
		{length, width, "length_ft", "width_ft"},
		{base, height, "base_ft", "height_ft"},
		{widths, spacing, "offset_widths_ft", "spacing_ft"},
	} {
		switch {
		case pair.one.given && !pair.other.given:
			return &MissingError{Kind: in.kind, What: pair.missingName}
		case pair.other.given && !pair.one.given:
			return &MissingError{Kind: in.kind, What: pair.oneName}
		}
	}
	return nil
}

// offsets reads the list of widths taken at equal spacings and gives their sum.
func (in *inputs) offsets() (quantity, error) {
	var q quantity
	for _, key := range in.keys {
		name, ok := strings.CutPrefix(key, "offset_widths_")
		if !ok {
			continue
		}
		f, ok := factor("length", name)
		if !ok {
			continue
		}
		if q.given {
			return q, &InputError{Key: key, Value: in.value[key], Want: "left out, for " + q.key + " already gives it"}
		}
		list, err := in.list(key)
		if err != nil {
			return q, err
		}
		sum := 0.0
		for _, w := range list { // a list as typed, in its order
			sum += w
		}
		q = quantity{given: true, key: key, base: sum * f}
	}
	return q, nil
}
