package core

import (
	"math"

	"example.com/tintline/core/fluid"
	"example.com/tintline/core/hydraulics"
	"example.com/tintline/core/measure"
)

// Learned is what is known of a hose and of the mixing cell behind it: what they hold, with standard uncertainties.
type Learned struct {
	Hose, HoseSD measure.Volume
	Cell, CellSD measure.Volume
	FromRig      bool // no changeover has shown the hose yet: it is what was entered with the rig
	CellFromRig  bool // none has shown the cell, for which half or full has to be timed
	N            int  // changeovers that were learned from
	Odd          int  // those that lay too far off to be learned from
}

// learning is the state of all unknowns: the cell, and of each hose its volume and the error of the flow at it. Volumes
// are in nL, the flow's error is a share. An error of the flow is the same each time, so that it does not average out.
// It is never changed in place: copies of the book share it.
type learning struct {
	hoses []learnedHose
	cell  bool // the cell is among the unknowns that were begun
	shown bool // by half or full of a changeover
	mean  []float64
	cov   [][]float64
}

type learnedHose struct {
	name   string
	n, odd int
	flow   measure.Flow // at the last changeover
}

// The places in the state: the cell first, then two for each hose.
const cellAt = 0

func hoseAt(i int) int { return 1 + 2*i }
func flowOf(i int) int { return 2 + 2*i }

func (l *learning) index(hose string) int {
	if l != nil {
		for i := range l.hoses {
			if l.hoses[i].name == hose {
				return i
			}
		}
	}
	return -1
}

// clone is a state of its own, with a place for a hose that it does not have yet.
func (l *learning) clone(hose string) *learning {
	c := &learning{}
	if l != nil {
		c.cell, c.shown, c.hoses = l.cell, l.shown, append(c.hoses, l.hoses...)
		c.mean = append(c.mean, l.mean...)
	} else {
		c.mean = []float64{0}
	}
	if c.index(hose) < 0 {
		c.hoses = append(c.hoses, learnedHose{name: hose})
		c.mean = append(c.mean, 0, 0)
	}
	c.cov = make([][]float64, len(c.mean))
	for i := range c.cov {
		c.cov[i] = make([]float64, len(c.mean))
		if l != nil && i < len(l.cov) {
			copy(c.cov[i], l.cov[i])
		}
	}
	return c
}

// begin sets one unknown to a prior that has nothing to do with the others.
func (l *learning) begin(at int, mean, sd float64) {
	for i := range l.cov {
		l.cov[at][i], l.cov[i][at] = 0, 0
	}
	l.mean[at], l.cov[at][at] = mean, float64(sd*sd)
}

// part is an unknown with what it weighs in an observation.
type part struct {
	at     int
	weight float64
}

// look is how far an observation lies from what is expected of it, and the variance of that; each is how it goes with
// every unknown.
func (l *learning) look(z, sd float64, parts []part) (off, variance float64, each []float64) {
	off, variance = z, float64(sd*sd)
	each = make([]float64, len(l.mean))
	for _, p := range parts {
		off -= float64(p.weight * l.mean[p.at])
		for i := range each {
			each[i] += float64(p.weight * l.cov[i][p.at])
		}
	}
	for _, p := range parts {
		variance += float64(p.weight * each[p.at])
	}
	return off, variance, each
}

// see updates the state by one observation, the linear Bayesian update (Kalman 1960), and says how many standard
// deviations it lay off.
func (l *learning) see(z, sd float64, parts []part) float64 {
	off, variance, each := l.look(z, sd, parts)
	if !(variance > 0) {
		return 0
	}
	for i := range l.mean {
		gain := each[i] / variance
		l.mean[i] += float64(gain * off)
		for j := range l.mean {
			l.cov[i][j] -= float64(gain * each[j])
		}
	}
	return math.Abs(off) / math.Sqrt(variance)
}

func (l *learning) volume(at int) measure.Volume {
	return measure.Volume(math.RoundToEven(l.mean[at]))
}

func (l *learning) sd(at int) measure.Volume {
	return measure.Volume(math.RoundToEven(math.Sqrt(max(l.cov[at][at], 0))))
}

// hoseSize is what a hose holds: as learned, else as entered.
func (l *learning) hoseSize(h RigHose) measure.Volume {
	if i := l.index(h.Name); i >= 0 && l.hoses[i].n > 0 {
		return l.volume(hoseAt(i))
	}
	return h.Volume
}

// cellSize is what the cell holds: as learned, else as entered.
func (l *learning) cellSize(f *Rig) measure.Volume {
	if l != nil && l.cell {
		return l.volume(cellAt)
	}
	return f.WholeCell()
}

// WholeCell is the mixing cell as it was entered: pump, strainer and manifold, with the suction pipe that the
// compartments share and the dead legs. They count as well mixed until a changeover shows what is.
func (f *Rig) WholeCell() measure.Volume {
	v := f.Cell + f.Suction
	for _, d := range f.DeadLegs {
		v += d.Volume
	}
	return v
}

// learnedUnder is what stays learned if the rig is entered anew: of a hose whose bore, length and volume are as they
// were, and of the cell if what makes it up is.
func (s *state) learnedUnder(f *Rig) *learning {
	l, was := s.learned, s.entered
	if l == nil || was == nil {
		return l
	}
	kept := &learning{cell: l.cell && sameCell(was, f)}
	keep := []int{cellAt}
	for i, h := range l.hoses {
		if now, before := f.hose(h.name), was.hose(h.name); now != nil && before != nil && sameHose(*now, *before) {
			kept.hoses = append(kept.hoses, h)
			keep = append(keep, hoseAt(i), flowOf(i))
		}
	}
	for _, i := range keep {
		kept.mean = append(kept.mean, l.mean[i])
		var row []float64
		for _, j := range keep {
			row = append(row, l.cov[i][j])
		}
		kept.cov = append(kept.cov, row)
	}
	if kept.shown = kept.cell && l.shown; !kept.cell {
		kept.begin(cellAt, 0, 0)
	}
	return kept
}

func sameHose(a, b RigHose) bool {
	return a.Bore == b.Bore && a.Length == b.Length && a.Volume == b.Volume
}

func sameCell(a, b *Rig) bool { return a.WholeCell() == b.WholeCell() }

// RigHose finds a hose's set-up (empty: the first), nil if there is none.
func (s *state) RigHose(name string) *RigHose {
	if s.rig == nil {
		return nil
	}
	return s.rig.hose(name)
}

func (f *Rig) hose(name string) *RigHose {
	for i := range f.Hoses {
		if name == "" || f.Hoses[i].Name == name {
			return &f.Hoses[i]
		}
	}
	return nil
}

// hoseDoubt is the share by which the volume of a hose is uncertain until it is measured: by its bore where bore and
// length gave it, else that of a volume that was entered. One that bore and length do not bear out is uncertain by as much
// as they differ, and at most by the bore: it may be a measured one, or that of several lengths coupled.
func (s *state) hoseDoubt(h *RigHose) float64 {
	entered := s.Setting(HoseErrorPct) / 100
	if !h.Bore.Known || !h.Length.Known {
		return entered
	}
	band, by := hydraulics.BoreBand(h.Bore.V), fluid.BoreVolume(h.Bore.V, h.Length.V)
	if h.Volume == by || by <= 0 {
		return band
	}
	off := math.Abs(float64(h.Volume-by)) / float64(by)
	return min(max(off, entered), max(band, entered))
}

// Learned is what is known of a hose (empty: the first) and of the cell; nothing where there is no such hose.
func (s *state) Learned(hose string) Learned {
	h := s.plumbing.Hose(hose)
	if h == nil || s.entered == nil {
		return Learned{}
	}
	out := Learned{Hose: h.Size, Cell: s.plumbing.Cell.Size, FromRig: true, CellFromRig: true}
	if r := s.entered.hose(h.Name); r != nil {
		out.HoseSD = share(h.Size, s.hoseDoubt(r))
	}
	out.CellSD = share(out.Cell, s.Setting(CellErrorPct)/100)
	l := s.learned
	if l != nil && l.cell {
		out.CellSD, out.CellFromRig = l.sd(cellAt), !l.shown
	}
	if i := l.index(h.Name); i >= 0 {
		out.N, out.Odd = l.hoses[i].n, l.hoses[i].odd
		if out.N > 0 {
			out.FromRig, out.HoseSD = false, l.sd(hoseAt(i))
		}
	}
	return out
}

func share(v measure.Volume, of float64) measure.Volume {
	return measure.Volume(math.RoundToEven(float64(float64(v) * of)))
}

func (s *state) digestLearned(w *binaryWriter) {
	l := s.learned
	if l == nil || len(l.hoses) == 0 && !l.cell {
		return
	}
	w.str("learned")
	w.yes(l.cell)
	w.yes(l.shown)
	for _, h := range l.hoses {
		w.str(h.name)
		w.count(h.n)
		w.count(h.odd)
	}
	for i := range l.mean {
		w.int(int64(math.Float64bits(l.mean[i])))
		for j := range l.cov[i] {
			w.int(int64(math.Float64bits(l.cov[i][j])))
		}
	}
}
