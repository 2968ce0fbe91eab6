package calib

import (
	"math"
	"math/rand/v2"
	"testing"

	"pgregory.net/rapid"
)

func closeTo(got, want, tol float64) bool { return math.Abs(got-want) <= tol }

// TestFilterCases: two days whose figures were had by conditioning all unknowns at once, outside the program (scipy), and
// one whose reading only says between which marks it lies, by quadrature.
func TestFilterCases(t *testing.T) {
	sdRead := func(step, other float64) float64 { return math.Hypot(step/math.Sqrt(12), other) }
	type want struct{ v, k, sv, sk, corr float64 }
	check := func(name string, f *Filter, w want) {
		t.Helper()
		v, sv := f.Gallons(0)
		k, sk := f.Factor(0)
		if !closeTo(v, w.v, 1e-4) || !closeTo(k, w.k, 1e-5) || !closeTo(sv, w.sv, 1e-4) || !closeTo(sk, w.sk, 1e-5) || !closeTo(f.Correlation(0, 0), w.corr, 1e-4) {
			t.Errorf("%s: %.5f %.6f %.5f %.6f %.5f, want %+v", name, v, k, sv, sk, f.Correlation(0, 0), w)
		}
	}
	one := NewFilter(1, 1)
	one.SetTank(0, 100, 2)
	one.SetFactor(0, 1, 0.10)
	one.Sprayed(0, 0, 24, 24, 0.05)
	one.Read(0, 72, sdRead(5, 0.5))
	check("one job", one, want{72.6897, 1.07094, 1.3896, 0.07579, -0.3929})

	day := NewFilter(1, 1)
	day.SetTank(0, 150, 1.5)
	day.SetFactor(0, 1, 0.08)
	jobs := func(gallons ...float64) {
		for _, g := range gallons {
			day.Sprayed(0, 0, g, g, 0.05)
		}
	}
	jobs(10, 14, 8)
	day.Read(0, 115, sdRead(5, 1))
	jobs(12, 16)
	day.Moved(0, 60, 1)
	jobs(9, 11, 13)
	day.Read(0, 105, sdRead(5, 1))
	check("a day", day, want{105.8060, 1.11071, 1.6485, 0.03015, -0.5723})

	coarse := NewFilter(1, 1)
	coarse.SetTank(0, 100, 1)
	coarse.SetFactor(0, 1, 0.10)
	coarse.Sprayed(0, 0, 24, 24, 0.05)
	if !coarse.ReadBetween(0, 70, 75) {
		t.Fatal("refused")
	}
	check("between marks", coarse, want{73.2564, 1.08030, 1.2549, 0.06576, -0.5585})
}

// TestSumsAreJobs: jobs that follow one another may be given as their sum with the root of the sum of their squares.
func TestSumsAreJobs(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := NewFilter(2, 2)
		f.SetTank(0, 100, rapid.Float64Range(0, 3).Draw(t, "sd"))
		f.SetTank(1, 50, 1)
		f.SetFactor(0, 1, rapid.Float64Range(0.01, 0.2).Draw(t, "k"))
		f.SetFactor(1, 1.1, 0.1)
		f.Sprayed(1, 0, 7, 7, 0.05)
		f.Read(1, 44, 1)
		g := f.Copy()
		sum, squares := 0.0, 0.0
		for _, v := range rapid.SliceOfN(rapid.Float64Range(0, 20), 1, 8).Draw(t, "jobs") {
			f.Sprayed(0, 0, v, v, 0.05)
			sum += v
			squares += v * v
		}
		g.Sprayed(0, 0, sum, math.Sqrt(squares), 0.05)
		for i := range f.Mean {
			if !closeTo(f.Mean[i], g.Mean[i], 1e-9) {
				t.Fatalf("mean %d: %g and %g", i, f.Mean[i], g.Mean[i])
			}
			for j := range f.Mean {
				if !closeTo(f.Cov[i][j], g.Cov[i][j], 1e-9) || !closeTo(f.Cov[i][j], f.Cov[j][i], 1e-9) {
					t.Fatalf("covariance %d %d: %g and %g", i, j, f.Cov[i][j], g.Cov[i][j])
				}
			}
		}
	})
}

// TestFilterIsConditioning: the same as all first unknowns and noises written as one vector and conditioned on all readings
// at once.
func TestFilterIsConditioning(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		const tanks, guns = 2, 2
		f := NewFilter(tanks, guns)
		// A row says how an unknown is made of independent standard normal sources; base is its mean.
		var base [tanks + guns]float64
		row := make([][]float64, tanks+guns)
		sources := 0
		source := func() int { sources++; return sources - 1 }
		add := func(i, s int, by float64) {
			for len(row[i]) <= s {
				row[i] = append(row[i], 0)
			}
			row[i][s] += by
		}
		plus := func(i, j int, by float64) {
			base[i] += by * base[j]
			for s, v := range row[j] {
				add(i, s, by*v)
			}
		}
		for i := range tanks {
			base[i] = 100
			add(i, source(), 2)
			f.SetTank(i, 100, 2)
		}
		for j := range guns {
			base[tanks+j] = 1
			add(tanks+j, source(), 0.1)
			f.SetFactor(j, 1, 0.1)
		}
		var seen [][]float64
		var off []float64
		for range rapid.IntRange(1, 12).Draw(t, "steps") {
			i, j := rapid.IntRange(0, tanks-1).Draw(t, "tank"), rapid.IntRange(0, guns-1).Draw(t, "gun")
			if rapid.IntRange(0, 2).Draw(t, "what") > 0 {
				d := rapid.Float64Range(1, 20).Draw(t, "job")
				plus(i, tanks+j, -d)
				add(i, source(), 0.05*d)
				f.Sprayed(i, j, d, d, 0.05)
				continue
			}
			z := f.Mean[i] + rapid.Float64Range(-3, 3).Draw(t, "off")
			look := append([]float64(nil), row[i]...)
			s := source()
			for len(look) <= s {
				look = append(look, 0)
			}
			look[s] = 1.5
			seen, off = append(seen, look), append(off, z-base[i])
			f.Read(i, z, 1.5)
		}
		mean, cov := condition(base[:], row, seen, off)
		for i := range mean {
			if !closeTo(mean[i], f.Mean[i], 1e-7) {
				t.Fatalf("mean %d is %g, at once %g", i, f.Mean[i], mean[i])
			}
			for j := range mean {
				if !closeTo(cov[i][j], f.Cov[i][j], 1e-7) {
					t.Fatalf("covariance %d %d is %g, at once %g", i, j, f.Cov[i][j], cov[i][j])
				}
			}
		}
	})
}

func dot(a, b []float64) float64 {
	sum := 0.0
	for i := range min(len(a), len(b)) {
		sum += a[i] * b[i]
	}
	return sum
}

// condition is mean and covariance of rows given what was seen, by Gaussian elimination on all of it.
func condition(base []float64, row, seen [][]float64, off []float64) ([]float64, [][]float64) {
	n, m := len(seen), len(row)
	a := make([][]float64, n) // seen x seen, then off, then seen x rows
	for i := range a {
		for j := range seen {
			a[i] = append(a[i], dot(seen[i], seen[j]))
		}
		a[i] = append(a[i], off[i])
		for j := range row {
			a[i] = append(a[i], dot(seen[i], row[j]))
		}
	}
	for c := range n {
		best := c
		for r := c; r < n; r++ {
			if math.Abs(a[r][c]) > math.Abs(a[best][c]) {
				best = r
			}
		}
		a[c], a[best] = a[best], a[c]
		for r := range n {
			if r == c {
				continue
			}
			by := a[r][c] / a[c][c]
			for k := range a[r] {
				a[r][k] -= by * a[c][k]
			}
		}
	}
	mean, cov := append([]float64(nil), base...), make([][]float64, m)
	for i := range m {
		for s := range n {
			mean[i] += dot(seen[s], row[i]) * a[s][n] / a[s][s]
		}
		for j := range m {
			v := dot(row[i], row[j])
			for s := range n {
				v -= dot(seen[s], row[i]) * a[s][n+1+j] / a[s][s]
			}
			cov[i] = append(cov[i], v)
		}
	}
	return mean, cov
}

// TestFilterIsConsistent: over many invented days with a gauge that is read to its step, the squared error against what the
// filter says of itself comes to the number of unknowns (2), and 95 per cent of the truths lie in the region that should
// hold 95 (Bar-Shalom's normalised error).
func TestFilterIsConsistent(t *testing.T) {
	dice := rand.New(rand.NewPCG(5, 7))
	const days = 4000
	sum, inside := 0.0, 0
	for range days {
		f := NewFilter(1, 1)
		v, k := 150+1.5*dice.NormFloat64(), 1+0.08*dice.NormFloat64()
		f.SetTank(0, 150, 1.5)
		f.SetFactor(0, 1, 0.08)
		for _, step := range []float64{10, 14, 8, 0, 12, 16, 9, 11, 13, 0} {
			if step > 0 {
				v -= k*step + 0.05*step*dice.NormFloat64()
				f.Sprayed(0, 0, step, step, 0.05)
				continue
			}
			z := 5 * math.Round((v+dice.NormFloat64())/5)
			f.Read(0, z, math.Hypot(5/math.Sqrt(12), 1))
		}
		dv, dk := v-f.Mean[0], k-f.Mean[1]
		det := f.Cov[0][0]*f.Cov[1][1] - f.Cov[0][1]*f.Cov[0][1]
		e := (dv*dv*f.Cov[1][1] - 2*dv*dk*f.Cov[0][1] + dk*dk*f.Cov[0][0]) / det
		sum += e
		if e < 5.991 { // 95 per cent of chi squared with two degrees of freedom
			inside++
		}
	}
	if mean, share := sum/days, float64(inside)/days; mean < 1.85 || mean > 2.2 || share < 0.93 || share > 0.97 {
		t.Errorf("normalised error %.3f, %.3f inside", mean, share)
	}
}
