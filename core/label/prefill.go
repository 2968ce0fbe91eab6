package label

import "slices"

// PrefillGrasses lists the grasses that sources which were read call tolerant when established, for each of the actives,
// alone or in a mixture of them, and of which none that was read or recalled says otherwise. It is an offer for a tick
// list that the operator confirms from the label, never an entry by itself. What is added to a mix is left out of it.
func PrefillGrasses(names []string) []string {
	e := Entry{Actives: make([]Active, len(names))}
	for i, n := range names {
		e.Actives[i].Name = n
	}
	parts := e.parts(e.Most)
	rated := slices.DeleteFunc(parts, func(p part) bool {
		a, ok := FindActive(p.name)
		return ok && (a.Class == ClassAdjuvant || a.Class == ClassDye)
	})
	if len(rated) == 0 {
		return nil
	}
	var out []string
	for _, g := range grasses {
		if supported(rated, g.Name) {
			out = append(out, g.Name)
		}
	}
	return out
}

func supported(parts []part, grass string) bool {
	for i := range parts {
		v := blockVerdict(parts[i].blocks, grass, &Circumstances{})
		if v.Rating > Tolerant {
			return false
		}
		parts[i].clear, parts[i].harmless = v.Rating == Tolerant, false
	}
	return backed(parts)
}
