package reckon

import (
	"example.com/tintline/core/batch"
	"example.com/tintline/core/measure"
)

// Working is the key under which an answer says how it was worked out, as a list of sentences.
const Working = "working"

// working puts the lines of the working into an answer.
func (a answers) working(steps []batch.Step) {
	lines := make([]string, 0, len(steps))
	for _, s := range steps {
		lines = append(lines, s.Says)
	}
	a[Working] = lines
}

// verdict answers whether something can be done and, where it cannot, why.
func (a answers) verdict(possible bool, why, do string) {
	a["possible"], a["why"], a["do"] = possible, nil, nil
	if !possible {
		a["why"], a["do"] = why, do
	}
}

// after answers base behind each unit of the quantity: "gal_water".
func (a answers) after(quantity string, units []string, suffix string, base float64) {
	for _, u := range units {
		f, _ := factor(quantity, u)
		a[u+suffix] = base / f
	}
}

// strength answers an amount in a volume, as oz_gal and as oz_per_gal.
func (a answers) strength(prefix, kind string, base float64) {
	units := unitsOf(kind)
	a.per(prefix, kind, units, "volume", tankVolumes, base)
	for _, top := range units {
		for _, bottom := range tankVolumes {
			a[prefix+top+"_"+bottom] = a[prefix+top+"_per_"+bottom]
		}
	}
}

// unitsOf are the units that an amount of product is answered in, told by volume or by mass.
func unitsOf(kind string) []string {
	if kind == "volume" {
		return volumeUnits
	}
	return massUnits
}

// formOf is how a product is measured that is told by volume or by mass.
func formOf(kind string) measure.Kind {
	if kind == "mass" {
		return measure.Dry
	}
	return measure.Liquid
}

// eitherKind reads quantities that are told by volume or by mass, all of them the same way; unit makes the reader of one kind's units.
func (in *inputs) eitherKind(unit func(kind string) func(string) (float64, bool), positive bool, have string, prefixes ...string) (kind string, out map[string]quantity, err error) {
	kind, out = have, map[string]quantity{}
	for _, k := range []string{"volume", "mass"} {
		for _, prefix := range prefixes {
			q, err := in.one(prefix, unit(k), positive)
			if err != nil {
				return kind, nil, err
			}
			if !q.given {
				continue
			}
			if out[prefix].given {
				return kind, nil, in.twice(out[prefix], q)
			}
			if kind != "" && kind != k {
				want := map[string]string{"volume": "a volume", "mass": "a weight"}[kind]
				return kind, nil, &InputError{Key: q.key, Value: in.value[q.key], Want: want + " of product, as the other figures tell it"}
			}
			kind, out[prefix] = k, q
		}
	}
	return kind, out, nil
}

// volumeOf is a quantity as a volume of whole nanolitres.
func volumeOf(q quantity) measure.Volume {
	return measure.Volume(measure.Concentration(q.base).In(1, measure.Liquid).N)
}
