package yard

import (
	"maps"
	"strings"

	"example.com/tintline/core"
)

// Document is an answer for a script: the figures under their own keys, and what every answer has.
func (a Answer) Document() map[string]any {
	out := map[string]any{}
	maps.Copy(out, a.Facts)
	out["kind"], out["about"], out["possible"] = a.Kind, a.About, a.Possible
	out["why"], out["do"] = orNull(a.Why), orNull(a.Do)
	out["says"] = orEmpty(a.Says)
	working := []string{}
	for _, s := range a.Steps {
		working = append(working, s.Says)
	}
	out["working"] = working
	found := []map[string]any{}
	for _, f := range a.Findings {
		found = append(found, map[string]any{"weight": f.Weight.String(), "says": f.Says, "do": orNull(f.Do), "source": orNull(f.Source)})
	}
	out["findings"] = found
	out["plan"] = planFacts(a.Plan)
	return out
}

// planFacts is the load that would be planned; null where there is none.
func planFacts(p *core.LoadPlanned) any {
	if p == nil {
		return nil
	}
	list := []map[string]any{}
	for _, part := range p.Parts {
		f := amountFacts(part.Amount)
		f["product"] = part.Product
		list = append(list, f)
	}
	return map[string]any{"into": p.Into, "volume_gal": p.Volume.Gallons(), "mix": orNull(p.Mix), "for": orNull(p.For), "parts": list}
}

func orNull(s string) any {
	if s == "" {
		return nil
	}
	return s
}

// Text is an answer as people read it: figures, findings, and below them the working.
func (a Answer) Text() string {
	var w strings.Builder
	w.WriteString(a.About + "\n")
	if !a.Possible {
		w.WriteString("  not possible: " + a.Why + "\n  " + a.Do + "\n")
	}
	for _, s := range a.Says {
		w.WriteString("  " + s + "\n")
	}
	for _, f := range a.Findings {
		w.WriteString(strings.ToUpper(f.Weight.String()) + "  " + f.Says + "\n")
		if f.Do != "" {
			w.WriteString("      " + f.Do + "\n")
		}
		if f.Source != "" {
			w.WriteString("      (" + f.Source + ")\n")
		}
	}
	w.WriteString("\nworking\n")
	for _, s := range a.Steps {
		w.WriteString("  " + s.Says + "\n")
	}
	w.WriteString("The label and local rules decide.\n")
	return w.String()
}
