package tui

import (
	"strings"

	"example.com/tintline/core/check"
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
	"example.com/tintline/tui/theme"
)

// stretch is a length of pipe and what most of it came from. The key counts only where there is liquid.
type stretch struct {
	volume measure.Volume
	key    int32
	air    bool
}

// cellStretches share the cell out by origin: it is one mixture, so the order says nothing.
func cellStretches(c *fluid.Cell) []stretch {
	var out []stretch
	for _, p := range c.Liquid.From {
		out = append(out, stretch{volume: measure.Volume(p.N), key: p.Key})
	}
	if void := c.Size - c.Liquid.Volume; void > 0 {
		out = append(out, stretch{volume: void, air: true})
	}
	return out
}

func hoseStretches(h *fluid.Hose) []stretch {
	var out []stretch
	for _, p := range h.FromPumpEnd() {
		for _, f := range p.From {
			out = append(out, stretch{volume: measure.Volume(f.N), key: f.Key})
		}
		if p.Air > 0 {
			out = append(out, stretch{volume: p.Air, air: true})
		}
	}
	return out
}

// drawStretches draws n columns, each with the sign of what most of it holds; of the runs none vanishes, however short,
// as long as there are as many columns.
func (m *Model) drawStretches(all []stretch, runs []check.Run, n int) []span {
	keys := columnKeys(all, n)
	showRuns(keys, runs)
	var out []span
	for _, k := range keys {
		t, r := theme.Dim, m.g.air
		if k != airKey {
			t, r = m.originToken(k), m.originSign(k)
		}
		if last := len(out) - 1; last >= 0 && out[last].t == t && strings.HasSuffix(out[last].s, string(r)) {
			out[last].s += string(r)
			continue
		}
		out = append(out, span{t, string(r)})
	}
	return out
}

// columnKeys is the origin of most of what each of n columns holds.
func columnKeys(all []stretch, n int) []int32 {
	var total measure.Volume
	for _, s := range all {
		total += s.volume
	}
	if total == 0 || n <= 0 {
		return nil
	}
	out := make([]int32, n)
	sum := map[int32]measure.Volume{}
	at, i := measure.Volume(0), 0 // at: where all[i] begins
	for c := range out {
		from := measure.Volume(measure.MulDiv(int64(total), int64(c), int64(n)))
		to := measure.Volume(measure.MulDiv(int64(total), int64(c+1), int64(n)))
		most := measure.Volume(-1)
		clear(sum)
		for j, begin := i, at; j < len(all) && begin < to; j++ {
			end := begin + all[j].volume
			if part := min(end, to) - max(begin, from); part > 0 {
				k := all[j].key
				if all[j].air {
					k = airKey
				}
				if sum[k] += part; sum[k] > most {
					most, out[c] = sum[k], k
				}
			}
			if end <= to {
				i, at = j+1, end
			}
			begin = end
		}
	}
	return out
}

// showRuns gives each run that has no column of its own the one in which its middle lies, or the next one that is left for
// it: the runs keep their order.
func showRuns(keys []int32, runs []check.Run) {
	n, total := len(keys), measure.Volume(0)
	for _, r := range runs {
		total += r.Volume
	}
	if total == 0 || len(runs) > n {
		return
	}
	column := func(v measure.Volume) int { return min(int(measure.MulDiv(int64(n), int64(v), int64(total))), n-1) }
	own := make([]int, len(runs))
	begin := measure.Volume(0)
	for i, r := range runs {
		own[i] = column(begin + r.Volume/2)
		for c := column(begin + r.Volume - 1); c >= column(begin); c-- {
			if keys[c] == runKey(r) {
				own[i] = c
			}
		}
		if begin += r.Volume; i > 0 {
			own[i] = max(own[i], own[i-1]+1)
		}
	}
	for i, most := len(runs)-1, n-1; i >= 0; i-- {
		own[i] = min(own[i], most)
		most = own[i] - 1
	}
	for i, r := range runs {
		keys[own[i]] = runKey(r)
	}
}

func runKey(r check.Run) int32 {
	if r.Air {
		return airKey
	}
	return r.Key
}

// airKey stands for air among the keys of origins.
const airKey int32 = -1
