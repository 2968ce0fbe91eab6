package core

import (
	"math"

	"example.com/tintline/core/calib"
	"example.com/tintline/core/measure"
)

// gauged is what the readings of gauges have shown: by how much each compartment holds another volume than is booked, and
// by how much more than area times rate each applicator puts down, as a share. All of it is tied together by the
// covariances of calib.Filter, whose factors are here those shares, so that nothing known is 0. It is never changed in
// place: copies of the book share it.
type gauged struct {
	days    int64 // that were opened
	tanks   []gaugedTank
	factors []gaugedFactor
	mean    []float64
	cov     [][]float64
}

// gaugedTank is what went out of a compartment since its last reading by area times rate, and how often it was loaded.
type gaugedTank struct {
	letter byte
	begun  bool
	loads  int64
	draws  []gaugedDraw
}

// gaugedDraw is what one applicator took at one delivery rate.
type gaugedDraw struct {
	applicator string
	delivery   float64
	volume     measure.Volume
	squares    float64 // sum of the squares of the single jobs, gal2
}

// gaugedFactor is an applicator at one delivery rate: another tip, or another rate in force, is another one.
type gaugedFactor struct {
	applicator string
	delivery   float64
	n, odd     int64
	day        int64 // of the last reading
}

// mostFactors is how many are kept; the one that was read longest ago goes first.
const mostFactors = 16

// copy is one of its own.
func (g *gauged) copy() *gauged {
	c := g.copyTanks()
	c.factors = append([]gaugedFactor(nil), c.factors...)
	f := c.filter().Copy()
	c.mean, c.cov = f.Mean, f.Cov
	return c
}

// copyTanks is one that shares factors, means and covariances: for what only goes out of tanks, or into them.
func (g *gauged) copyTanks() *gauged {
	if g == nil {
		return &gauged{}
	}
	c := *g
	c.tanks = append([]gaugedTank(nil), g.tanks...)
	for i := range c.tanks {
		c.tanks[i].draws = append([]gaugedDraw(nil), c.tanks[i].draws...)
	}
	return &c
}

func (g *gauged) filter() *calib.Filter {
	return &calib.Filter{Tanks: len(g.tanks), Applicators: len(g.factors), Mean: g.mean, Cov: g.cov}
}

func (g *gauged) tankAt(letter byte) int {
	if g != nil {
		for i := range g.tanks {
			if g.tanks[i].letter == letter {
				return i
			}
		}
	}
	return -1
}

func (g *gauged) factorAt(applicator string, delivery float64) int {
	if g != nil {
		for i := range g.factors {
			if g.factors[i].applicator == applicator && g.factors[i].delivery == delivery {
				return i
			}
		}
	}
	return -1
}

// addTank makes a place for a compartment.
func (g *gauged) addTank(letter byte) int {
	at := len(g.tanks)
	g.tanks = append(g.tanks, gaugedTank{letter: letter})
	g.insert(at)
	return at
}

// addFactor makes a place for a factor, in that of the one read longest ago where there is none left.
func (g *gauged) addFactor(applicator string, delivery float64) int {
	if len(g.factors) == mostFactors {
		oldest := 0
		for i, f := range g.factors {
			if f.day < g.factors[oldest].day {
				oldest = i
			}
		}
		g.factors[oldest] = gaugedFactor{applicator: applicator, delivery: delivery, day: g.days}
		return oldest
	}
	g.factors = append(g.factors, gaugedFactor{applicator: applicator, delivery: delivery, day: g.days})
	g.insert(len(g.mean))
	return len(g.factors) - 1
}

// insert puts an unknown that is surely 0 before the one at a place. Nothing that is shared is changed.
func (g *gauged) insert(at int) {
	g.mean = append(g.mean[:at:at], append([]float64{0}, g.mean[at:]...)...)
	cov := make([][]float64, 0, len(g.mean))
	for i, row := range g.cov {
		if i == at {
			cov = append(cov, make([]float64, len(g.mean)))
		}
		cov = append(cov, append(row[:at:at], append([]float64{0}, row[at:]...)...))
	}
	if len(cov) < len(g.mean) {
		cov = append(cov, make([]float64, len(g.mean)))
	}
	g.cov = cov
}

// forget begins a tank anew: nothing is known of it but what will be told with its next reading.
func (g *gauged) forget(tank int) {
	t := &g.tanks[tank]
	t.begun, t.loads, t.draws = false, 0, nil
	g.filter().SetTank(tank, 0, 0)
}

// noteLoad notes that a compartment was loaded; one that was empty begins anew.
func (s *state) noteLoad(letter byte, empty bool) {
	if letter == 0 {
		return
	}
	i := s.gauged.tankAt(letter)
	if empty {
		if i >= 0 {
			g := s.gauged.copy()
			g.forget(i)
			s.gauged = g
		}
		return
	}
	g := s.gauged.copyTanks()
	if i < 0 {
		i = g.addTank(letter)
	}
	g.tanks[i].loads++
	s.gauged = g
}

// noteDraw notes what a spraying by area takes from the compartments that are open to the pump, from each an equal part.
func (s *state) noteDraw(f *Sprayed) {
	a, open := s.Applicator(f.Applicator), s.plumbing.LineUp.Supply
	if f.By != ByArea || a == nil || s.plumbing.Tank(a.Name) != nil || len(open) == 0 || f.Volume.V <= 0 {
		return
	}
	g := s.gauged.copyTanks()
	part := f.Volume.V / measure.Volume(len(open))
	for _, letter := range open {
		i := g.tankAt(letter)
		if i < 0 {
			i = g.addTank(letter)
		}
		g.tanks[i].draw(a, part)
	}
	s.gauged = g
}

func (t *gaugedTank) draw(a *Applicator, v measure.Volume) {
	gal := v.Gallons()
	for i := range t.draws {
		if d := &t.draws[i]; d.applicator == a.Name && d.delivery == a.Delivery.V {
			d.volume += v
			d.squares += float64(gal * gal)
			return
		}
	}
	t.draws = append(t.draws, gaugedDraw{a.Name, a.Delivery.V, v, float64(gal * gal)})
}

// drawn is all that went by area times rate since the last reading.
func (t *gaugedTank) drawn() measure.Volume {
	var sum measure.Volume
	for _, d := range t.draws {
		sum += d.volume
	}
	return sum
}

// noteDay counts the days, over which factors drift.
func (s *state) noteDay() {
	if s.gauged == nil {
		return
	}
	g := *s.gauged
	g.days++
	s.gauged = &g
}

// read takes a reading of a compartment: what the gauge says against what was booked, and what else went since the reading before.
func (s *state) noteReading(f *GaugeRead, booked, moved measure.Volume) {
	i := s.gauged.tankAt(f.Compartment)
	if len(f.Teaching) == 0 {
		if i >= 0 { // what the figures rest on is not told: it begins anew
			g := s.gauged.copy()
			g.forget(i)
			s.gauged = g
		}
		return
	}
	g, t := s.gauged.copy(), &f.Teaching[0]
	if i < 0 {
		i = g.addTank(f.Compartment)
	}
	used := g.until(i, moved, t)
	off, sd := (f.Volume.V - booked).Gallons(), t.ReadSD.Gallons()
	odd := t.OddSDs > 0 && g.filter().Off(i, off, sd) > t.OddSDs
	for _, k := range used {
		if odd {
			g.factors[k].odd++
		} else {
			g.factors[k].n++
		}
	}
	if odd {
		g.filter().SetTank(i, 0, sd)
	} else {
		g.see(i, off, sd, t.Step.Gallons())
		g.mean[i] -= off
	}
	g.tanks[i].begun, g.tanks[i].loads, g.tanks[i].draws = true, 0, nil
	s.gauged = g
}

// see takes a reading that lies so far off what is booked.
func (g *gauged) see(tank int, off, sd, step float64) {
	f := g.filter()
	if step > 0 && f.Coarse(tank, step) && f.ReadBetween(tank, off-step/2, off+step/2) {
		return
	}
	f.Read(tank, off, sd)
}

// until brings a tank from its last reading to now, and lists the factors of what was drawn.
func (g *gauged) until(tank int, moved measure.Volume, t *Teaching) []int {
	now := &g.tanks[tank]
	f := g.filter()
	if !now.begun {
		f.SetTank(tank, 0, t.TankSD.Gallons())
	}
	for range min(now.loads, 1000) {
		f.Moved(tank, 0, t.TankSD.Gallons())
	}
	f.Moved(tank, 0, float64(t.Moved*max(moved-now.drawn(), 0).Gallons()))
	var used []int
	for _, d := range now.draws {
		k, ok := g.factorFor(d, t)
		if !ok {
			continue
		}
		used = append(used, k)
		g.filter().Sprayed(tank, k, d.volume.Gallons(), math.Sqrt(d.squares), t.Job)
	}
	return used
}

// factorFor is the factor of a draw, begun where it is new and brought to this day where it is not.
func (g *gauged) factorFor(d gaugedDraw, t *Teaching) (int, bool) {
	if k := g.factorAt(d.applicator, d.delivery); k >= 0 {
		days := float64(g.days - g.factors[k].day)
		g.factors[k].day = g.days
		g.filter().Drift(k, float64(t.Drift*math.Sqrt(max(days, 0))))
		return k, true
	}
	for _, f := range t.Factors {
		if f.Applicator == d.applicator {
			k := g.addFactor(d.applicator, d.delivery)
			g.filter().SetFactor(k, 0, f.SD)
			return k, true
		}
	}
	return 0, false
}

// noteJob learns from a spraying whose gallons were read before and after: it stands against its own area times rate.
func (s *state) noteJob(f *Sprayed) {
	a := s.Applicator(f.Applicator)
	if f.By != ByGauge || len(f.Teaching) == 0 || a == nil {
		return
	}
	rate := a.Delivery.Volume(f.Area.V)
	if rate <= 0 {
		return
	}
	g, t := s.gauged.copy(), &f.Teaching[0]
	i := g.addTank(0) // for this once
	gal := rate.Gallons()
	k, ok := g.factorFor(gaugedDraw{applicator: a.Name, delivery: a.Delivery.V}, t)
	if !ok {
		return
	}
	g.filter().Sprayed(i, k, gal, gal, t.Job)
	off, sd := (rate - f.Volume.V).Gallons(), float64(math.Sqrt2*t.ReadSD.Gallons())
	if t.OddSDs > 0 && g.filter().Off(i, off, sd) > t.OddSDs {
		g.factors[k].odd++
	} else {
		g.filter().Read(i, off, sd)
		g.factors[k].n++
	}
	g.dropTank(i)
	s.gauged = g
}

func (g *gauged) dropTank(at int) {
	g.tanks = append(g.tanks[:at:at], g.tanks[at+1:]...)
	g.mean = append(g.mean[:at:at], g.mean[at+1:]...)
	g.cov = append(g.cov[:at:at], g.cov[at+1:]...)
	for i, row := range g.cov {
		g.cov[i] = append(row[:at:at], row[at+1:]...)
	}
}
