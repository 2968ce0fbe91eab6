package label

import "example.com/tintline/core/measure"

// PartVerdict is what the reference says of an active of a product, or of a mixture of some of them.
type PartVerdict struct {
	Name    string
	Rate    measure.Maybe[measure.Rate] // of the active, by weight
	Verdict Verdict
}

// Verdicts lists what the reference says of each active of a product on a grass, mixtures last: that on which May rests.
func (e Entry) Verdicts(grass string, c Circumstances, rate measure.Maybe[measure.Rate]) []PartVerdict {
	if c.Form == "" {
		c.Form = e.goesDownAs()
	}
	parts := e.parts(rate)
	out := make([]PartVerdict, 0, len(parts))
	for i := range parts {
		c.Rate = parts[i].rate
		out = append(out, PartVerdict{parts[i].name, parts[i].rate, blockVerdict(parts[i].blocks, grass, &c)})
	}
	return out
}
