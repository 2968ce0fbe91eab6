package hydraulics

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func init() {
	claim("hose volume calibration from dye arrival", func(in inputs) answer {
		seen := Timed(in.f("flow_gpm"), in.f("flow_rel_sd"), in.f("time_s")/60, in.f("time_sd_s")/60)
		post := Estimate{in.f("prior_gal"), in.f("prior_sd_gal")}.With(seen)
		return answer{"obs_gal": seen.Value, "obs_sd_gal": seen.SD, "post_gal": post.Value, "post_sd_gal": post.SD}
	})
	claim("rate-factor prior from survey fractions", func(in inputs) answer {
		share := in.list("fraction_within_5pct")
		return answer{"implied_sd_pct[0]": SDWithin(share[0], 5), "implied_sd_pct[1]": SDWithin(share[1], 5)}
	})
	claim("uniform gauge band, exact posterior", func(in inputs) answer {
		r := Remaining{in.f("prior_v_gal"), in.f("prior_k"), in.f("p11_gal2"), in.f("p12_gal"), in.f("p22")}
		after, ok := r.Between(in.f("reading_low_gal"), in.f("reading_high_gal"))
		if !ok {
			return answer{}
		}
		v, f := math.Sqrt(after.VV), math.Sqrt(after.FF)
		return answer{
			"volume_gal": after.Volume, "rate_factor": after.Factor,
			"sd_volume_gal": v, "sd_rate_factor": f, "correlation": after.VF / v / f,
		}
	})
}

// A second look never makes a figure less known, and lands between the two.
func TestASecondEstimateHelps(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		draw := func(name string) Estimate {
			return Estimate{rapid.Float64Range(-50, 50).Draw(t, name), rapid.Float64Range(0, 10).Draw(t, name+" sd")}
		}
		a, b := draw("a"), draw("b")
		c := a.With(b)
		if c.SD > min(a.SD, b.SD)+1e-9 {
			t.Fatalf("%+v with %+v is known to %g", a, b, c.SD)
		}
		if c.Value < min(a.Value, b.Value)-1e-9 || c.Value > max(a.Value, b.Value)+1e-9 {
			t.Fatalf("%+v with %+v is %g", a, b, c.Value)
		}
	})
}

// A reading leaves the volume between its ends, and one that cannot be is refused.
func TestAReadingBetweenMarks(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := Remaining{Volume: rapid.Float64Range(0, 300).Draw(t, "v"), Factor: 1, VV: rapid.Float64Range(0.01, 100).Draw(t, "vv"), FF: 0.01}
		r.VF = rapid.Float64Range(-0.9, 0.9).Draw(t, "correlation") * math.Sqrt(r.VV*r.FF)
		low := rapid.Float64Range(0, 300).Draw(t, "low")
		high := low + rapid.Float64Range(0.1, 50).Draw(t, "step")
		after, ok := r.Between(low, high)
		if !ok {
			return
		}
		if after.Volume < low-1e-6 || after.Volume > high+1e-6 || after.VV > r.VV*(1+1e-9) || after.FF > r.FF*(1+1e-9) {
			t.Fatalf("%+v between %g and %g is %+v", r, low, high, after)
		}
	})
	if _, ok := (Remaining{Volume: 100, Factor: 1, VV: 1, FF: 0.01}).Between(20, 25); ok {
		t.Error("a reading eighty deviations off is taken")
	}
}
