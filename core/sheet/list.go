package sheet

import (
	"slices"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// items parts the cell of a list at its semicolons.
func items(cell string) []string {
	var out []string
	for _, s := range strings.Split(cell, ";") {
		if s = strings.TrimSpace(s); s != "" {
			out = append(out, s)
		}
	}
	return out
}

// texts takes texts with semicolons between them.
func texts() reader {
	return reader{"any texts on one line, with semicolons between them", func(cell string) (any, error) {
		return items(cell), plain(cell)
	}}
}

func unknownGrass(typed string) error {
	return &fault{what: quote(typed) + " is not a known grass.", nearest: strings.Join(label.NearestGrasses(typed), ", ")}
}

func grassNames() string {
	var out []string
	for _, g := range label.Grasses() {
		out = append(out, g.Name)
	}
	return strings.Join(out, ", ")
}

// grass takes one grass by its name.
func grass() reader {
	return reader{"one of " + grassNames(), func(cell string) (any, error) {
		n, ok := label.ReadGrass(cell)
		if !ok || n == label.AllTurf {
			return nil, unknownGrass(cell)
		}
		return n, nil
	}}
}

// grasses takes the grasses that a label lists.
func grasses() reader {
	return reader{label.AllTurf + ", or some of " + grassNames() + " with semicolons between them", func(cell string) (any, error) {
		var out []string
		for _, s := range items(cell) {
			n, ok := label.ReadGrass(s)
			if !ok {
				return nil, unknownGrass(s)
			}
			out = append(out, n)
		}
		return out, nil
	}}
}

// letter takes a compartment's letter.
func letter() reader {
	return reader{"a letter, a to f", func(cell string) (any, error) {
		l := strings.ToLower(cell)
		if len(l) != 1 || l[0] < 'a' || l[0] > 'f' {
			return nil, faultf("%s is no letter of a compartment.", quote(cell))
		}
		return l[0], nil
	}}
}

// letters takes the letters of compartments.
func letters() reader {
	return reader{"letters, a to f, with semicolons between them, each once", func(cell string) (any, error) {
		var out []byte
		for _, s := range strings.FieldsFunc(cell, func(r rune) bool { return strings.ContainsRune("; ,", r) }) {
			l, err := letter().read(s)
			if err != nil {
				return nil, err
			}
			if slices.Contains(out, l.(byte)) {
				return nil, faultf("%s names compartment %s twice.", quote(cell), s)
			}
			out = append(out, l.(byte))
		}
		return out, nil
	}}
}

// marks takes the marks of a gauge, each with the volume at it.
func marks() reader {
	return volumes("marks of the gauge from the lowest up, each with its gallons, such as 1/4=50; 1/2=100; full=200", "mark", gallons(false),
		func(mark string, v measure.Volume) core.GaugeMark { return core.GaugeMark{Mark: mark, Volume: v} })
}

// volumes takes a list of things that each have a name and a volume.
func volumes[T any](allowed, what string, volume reader, made func(string, measure.Volume) T) reader {
	return reader{allowed, func(cell string) (any, error) {
		var out []T
		seen := map[string]bool{}
		for _, s := range items(cell) {
			name, typed, ok := strings.Cut(s, "=")
			name, typed = strings.TrimSpace(name), strings.TrimSpace(typed)
			if !ok || name == "" || typed == "" || len([]rune(name)) > core.LongestName {
				return nil, faultf("%s is no %s with its gallons.", quote(s), what)
			}
			v, err := volume.read(typed)
			if err != nil {
				return nil, err
			}
			if seen[name] {
				return nil, faultf("%s stands twice.", quote(name))
			}
			seen[name] = true
			out = append(out, made(name, v.(measure.Volume)))
		}
		return out, plain(cell)
	}}
}

// pairs takes valves and their positions.
func pairs() reader {
	return reader{"valves and their positions, such as suction valve=left; return valve=shut", func(cell string) (any, error) {
		if err := plain(cell); err != nil {
			return nil, err
		}
		out := map[string]string{}
		for _, s := range items(cell) {
			k, v, ok := strings.Cut(s, "=")
			k, v = strings.TrimSpace(k), strings.TrimSpace(v)
			if !ok || k == "" || v == "" {
				return nil, faultf("%s is no valve with its position.", quote(s))
			}
			if _, twice := out[k]; twice {
				return nil, faultf("The valve %s stands twice.", quote(k))
			}
			out[k] = v
		}
		return out, nil
	}}
}
