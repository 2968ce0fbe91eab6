package reckon

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestHoseRefusals(t *testing.T) {
	tests := []struct{ kind, in, want string }{
		{"hose", "", "To reckon hose, inside_diameter_in and length_ft, or volume_gal is missing."},
		{"hose", "inside_diameter_in=0.5 length_ft=0", `length_ft is "0"; it must be above 0.`},
		{"hose", "inside_diameter_in=0 length_ft=9", `inside_diameter_in is "0"; it must be above 0.`},
		{"hose", "inside_diameter_in=NaN length_ft=9", `inside_diameter_in is "NaN"; it must be a plain number such as 1.5.`},
		{"hose", "inside_diameter_in=0.5", "length_ft is missing"},
		{"hose", "length_ft=9", "inside_diameter_in is missing"},
		{"hose", "inside_diameter_in=0.5 diameter_m=0.01 length_ft=9", "already gives it"},
		{"hose", "inside_diameter_in=0.5 length_ft=9 volume_gal=1", "already gives it"},
		{"hose", "inside_diameter_in=0.5 length_ft=9 outside_diameter_in=0.5", "more than inside_diameter_in"},
		{"hose", "volume_gal=1 temperature_c=90", "from 0 to 40 C"},
		{"hose", "volume_gal=1 temperature_f=31", "from 0 to 40 C"},
		{"hose", "volume_gal=1 temperature_c=9 temperature_f=40", "already gives it"},
		{"hose", "volume_gal=1 colour=2", `takes no input "colour"`},
		{"pressure", "", "To reckon pressure, inside_diameter_in with flow_gpm"},
		{"pressure", "inside_diameter_in=0.5 length_ft=0 flow_gpm=3", `length_ft is "0"; it must be above 0.`},
		{"pressure", "flow_gpm=3", "inside_diameter_in is missing"},
		{"pressure", "inside_diameter_in=0.5", "flow_gpm or inlet_pressure_psi is missing"},
		{"pressure", "inside_diameter_in=0.5 inlet_pressure_psi=30", "length_ft is missing"},
		{"pressure", "reynolds=9000", "relative_roughness is missing"},
		{"pressure", "reynolds=9000 relative_roughness=0 formula=guess", "Colebrook, Haaland"},
		{"pressure", "inside_diameter_in=0.5 flow_gpm=3 outlet=shut", `outlet is "shut"; it must be open.`},
		{"pressure", "inside_diameter_in=0.5 length_ft=100 flow_gpm=3 inlet_pressure_psi=9", "more than the 10.27 psi that flow and height cost"},
		{"pressure", "inside_diameter_in=0.5 length_ft=100 height_ft=100 inlet_pressure_psi=9", "psi that the height costs"},
		{"pressure", "inside_diameter_in=0.5 length_ft=100 flow_gpm=3 inlet_pressure_psi=90 outlet=open", "already gives it"},
		{"pressure", "inside_diameter_in=0.5 flow_gpm=3 reynolds=9000", "already gives it"},
		{"pressure", "inside_diameter_in=0.5 flow_gpm=3 roughness_mm=1 relative_roughness=0.1", "already gives it"},
		{"pressure", "inside_diameter_in=0.5 flow_gpm=3 hazen_williams_c=140 roughness_mm=1", "a law without it"},
		{"pressure", "inside_diameter_in=0.5 flow_gpm=3 hazen_williams_c=140 formula=Haaland", "a law without it"},
		{"pressure", "reynolds=9000 relative_roughness=1", "below 1, a share of the bore"},
		{"levelling", "area_m2=1 orifice_area_m2=0.001 cd=1.2 dh0_m=0.5", "at most 1"},
		{"gauge", "shape=lying diameter_in=30 radius_in=16 length_in=60 depth_in=10", `radius_in is "16"; it must be left out, for the shape lying is not measured by it.`},
		{"gauge", "shape=upright diameter_in=30 slant_height_in=3 depth_in=10", "slant_height_in"},
		{"gauge", "shape=segment diameter_in=30 length_in=3 depth_in=10", "the shape segment is not measured by it"},
		{"gauge", "shape=ellipse width_in=48 height_in=32 length_in=60 depth_in=3 head=conical", "the shape ellipse has none"},
		{"gauge", "shape=upright diameter_in=30 bottom=conical depth_in=10", "To reckon gauge, bottom_depth_in is missing."},
		{"gauge", "shape=lying diameter_in=30 length_in=60 head=spherical depth_in=10", "To reckon gauge, head_depth_in is missing."},
		{"changeover", "", "To reckon changeover, inside_diameter_in and length_ft, or reynolds is missing."},
		{"changeover", "inside_diameter_in=0.5 length_ft=0 flow_gpm=3", `length_ft is "0"; it must be above 0.`},
		{"changeover", "inside_diameter_in=0.5 length_ft=9 flow_gpm=NaN", "a plain number"},
		{"changeover", "inside_diameter_in=0.5 length_ft=9 flow_gpm=3 bypass_flow_gpm=8 pump_flow_gpm=7", `bypass_flow_gpm is "8"; it must be at most pump_flow_gpm, 7 gpm.`},
		{"changeover", "inside_diameter_in=0.5 length_ft=9 flow_gpm=8 pump_flow_gpm=7", `flow_gpm is "8"; it must be at most pump_flow_gpm, 7 gpm.`},
		{"changeover", "inside_diameter_in=0.5 length_ft=9 bypass_flow_gpm=7 pump_flow_gpm=7", "so that something leaves the gun"},
		{"changeover", "inside_diameter_in=0.5 length_ft=9 flow_gpm=3 bypass_flow_gpm=4 pump_flow_gpm=7", "already gives it"},
		{"changeover", "inside_diameter_in=0.5 length_ft=9 pump_flow_gpm=7", "flow_gpm is missing"},
		{"changeover", "inside_diameter_in=0.5 length_ft=9 bypass_flow_gpm=4", "flow_gpm is missing"},
		{"changeover", "inside_diameter_in=0.5 length_ft=9 dead_volume_gal=0.2", "flow_gpm with"},
		{"changeover", "inside_diameter_in=0.5 dead_volume_gal=0.2", "length_ft is missing"},
		{"changeover", "inside_diameter_in=0.5 length_ft=9 flow_gpm=3 stop_at_new_fraction=1", "between 0 and 1"},
		{"changeover", "inside_diameter_in=0.5 length_ft=9 flow_gpm=3 stop_at_new_fraction=0", "above 0"},
		{"changeover", "hose_volume_gal=0", "above 0"},
		{"changeover", "hose_volume_gal=1 sigma_volume_gal=1 d_over_ud=1", "already gives it"},
		{"changeover", "volume_of_a_gal=1", "volume_b_before_gal is missing"},
		{"changeover", "volume_of_a_gal=1 volume_b_before_gal=9", "conc_a_oz_gal is missing"},
		{"changeover", "volume_of_a_gal=0 volume_b_before_gal=0 conc_a_oz_gal=1", "above 0 where volume_b_before is 0"},
		{"changeover", "volume_of_a_gal=1 volume_b_before_gal=9 conc_a_oz_gal=1 label_oz_per_1000ft2=1", "carrier_gal_per_1000ft2 is missing"},
		{"changeover", "volume_of_a_gal=1 volume_b_before_gal=9 conc_a_oz_gal=1 label_fl_oz_per_1000ft2=1 carrier_gal_per_acre=1", "a weight, as conc_a_oz_gal"},
	}
	for _, tt := range tests {
		got, err := Do(tt.kind, pairs(tt.in))
		if err == nil || !strings.Contains(err.Error(), tt.want) || !strings.HasSuffix(err.Error(), ".") {
			t.Errorf("%s %s: %v, %v\nwant %s", tt.kind, tt.in, len(got), err, tt.want)
			continue
		}
		if hint, ok := err.(interface{ Do() string }); !ok || !strings.HasSuffix(hint.Do(), ".") {
			t.Errorf("%s %s: nothing to do about it", tt.kind, tt.in)
		}
	}
}

// What to do is said as one would say it.
func TestWhatToDoAboutAnInput(t *testing.T) {
	for _, row := range []struct{ want, do string }{
		{"above 0", "Give length_ft as a figure above 0."},
		{"left out, for volume_gal already gives it", "Leave length_ft out."},
		{"a plain number such as 1.5", "Give length_ft as a plain number such as 1.5."},
	} {
		if got := (&InputError{Key: "length_ft", Value: "0", Want: row.want}).Do(); got != row.do {
			t.Errorf("%s: %s", row.want, got)
		}
	}
}

// Whatever is given, the answer is a figure of 0 or more or a sentence, and the same every time.
func TestHoseKindsAnswerOrSay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		kind := rapid.SampledFrom([]string{"hose", "pressure", "changeover"}).Draw(t, "kind")
		in := map[string]string{}
		for _, key := range rapid.SliceOfNDistinct(rapid.SampledFrom(Inputs(kind)), 1, 8, rapid.ID[string]).Draw(t, "keys") {
			in[key] = rapid.OneOf(
				rapid.Map(rapid.Float64Range(0.001, 300), func(f float64) string { return fmt.Sprint(f) }),
				rapid.SampledFrom([]string{"0", "1e-30", "1e30", "open", "Haaland", "0.9", "-1", "20"}),
			).Draw(t, key)
		}
		got, err := Do(kind, in)
		again, errAgain := Do(kind, in)
		if (err == nil) != (errAgain == nil) || (err != nil && err.Error() != errAgain.Error()) || !maps.Equal(got, again) {
			t.Fatalf("%v, %v; then %v, %v", got, err, again, errAgain)
		}
		for _, k := range slices.Sorted(maps.Keys(got)) {
			if f, ok := got[k].(float64); ok && !(f >= 0 && f <= math.MaxFloat64) {
				t.Fatalf("%s = %v", k, f)
			}
		}
	})
}
