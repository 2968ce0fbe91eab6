package upkeep

import (
	"math"
	"strings"
	"testing"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

// TestGlycol holds the table and the sum against their sources.
func TestGlycol(t *testing.T) {
	// handbook of chemistry, table 5.13: per cent by volume, freezing point F
	for pct, f := range map[float64]float64{5: 30, 10: 28, 15: 25, 20: 20, 25: 16, 30: 9, 35: 3, 40: -5, 45: -16, 50: -28} {
		if got, err := Freezes(pct); err != nil || got != f {
			t.Errorf("%g %%: %g F, %v", pct, got, err)
		}
	}
	// worked by hand: 4 gal of 25 % and 1.5 gal of water: 25 x 4 / 5.5 = 18.18 %, between 25 F at 15 and 20 F at 20: 21.8
	pct, err := Thinned(25, measure.Gallons(4), measure.Gallons(1.5))
	if err != nil || math.Abs(pct-18.1818) > 1e-4 {
		t.Errorf("%g %%, %v", pct, err)
	}
	if f, err := Freezes(pct); err != nil || math.Abs(f-21.818) > 1e-3 {
		t.Errorf("%g F, %v", f, err)
	}
	for _, bad := range []float64{-1, 60, math.NaN()} {
		if _, err := Freezes(bad); err == nil {
			t.Errorf("%g %% freezes", bad)
		}
	}
	if _, err := Thinned(0, 1, 1); err == nil {
		t.Error("nothing thinned gives something")
	}
}

const setUp = `{"fact":"rig","name":"truck","compartments":[{"letter":"a","name":"warm","capacity_gal":300,"heel_gal":2},{"letter":"b","name":"cool","capacity_gal":160,"heel_gal":2}],"cell_gal":0.2,"return_line_gal":0.1,"hoses":[{"name":"reel","inside_diameter_in":0.375,"length_ft":300}],"applicators":[{"name":"gun","kind":"gun","hose":"reel","delivery_gal_per_1000_sqft":1.5,"flow_gpm":2.5}]}`

type logger struct {
	t  *testing.T
	b  *core.Book
	at core.Moment
}

func newLogger(t *testing.T) *logger {
	k := &logger{t, core.NewBook(1), core.Moment{Unix: 1_780_000_000}} // 2026-05-28
	k.lines(setUp)
	return k
}

func (k *logger) lines(lines string) {
	k.t.Helper()
	for _, s := range strings.Split(strings.TrimSpace(lines), "\n") {
		l, err := core.DecodeLine([]byte(s))
		if err == nil {
			var es []core.Entry
			if es, err = k.b.Prepare("test", k.at, l.Fact); err == nil {
				err = k.b.Apply(es[0])
			}
		}
		if err != nil {
			k.t.Fatalf("%s: %v", s, err)
		}
	}
}

func (k *logger) due(days int64) string {
	at := k.at
	at.Unix += days * 86_400
	var out []string
	for _, it := range Due(k.b, at) {
		out = append(out, it.State+" "+it.Words())
	}
	return strings.Join(out, "; ")
}

// TestWhatIsDue by hours, gallons, days and season; each figure by hand.
func TestWhatIsDue(t *testing.T) {
	k := newLogger(t)
	k.lines(`{"fact":"metered","engine_h":100}
{"fact":"task","name":"oil","engine_h":50}
{"fact":"task","name":"strainers","through_gal":100}
{"fact":"task","name":"grease","days":7}
{"fact":"task","name":"plug","season":"spring"}
{"fact":"task","name":"pump oil","pump_h":250}`)
	want := "due plug: this spring; not known pump oil: pump hours were never read; later oil: 0.0 of 50 engine hours; later strainers: 0 of 100 gal; later grease: 0 of 7 days"
	if got := k.due(0); got != want {
		t.Errorf("at first: %s", got)
	}
	k.lines(`{"fact":"upkept","task":"plug","cost_usd":12.5}
{"fact":"metered","engine_h":146}
{"fact":"loaded","into":"a","volume_gal":200}
{"fact":"lined_up","supply":["a"],"return":"a"}
{"fact":"pushed_back","to":"waste/pail","volume_gal":120}
{"fact":"metered","pump_h":10}`)
	if got := k.due(8); !strings.HasPrefix(got, "due strainers: 120 of 100 gal; due grease: 8 of 7 days; soon oil: 46.0 of 50 engine hours; later ") || !strings.Contains(got, "plug: each spring") {
		t.Errorf("after 8 days: %s", got)
	}
	k.lines(`{"fact":"upkept","task":"strainers"}
{"fact":"metered","engine_h":10,"changed":"yes"}
{"fact":"metered","engine_h":15}`)
	if got := k.due(0); !strings.HasPrefix(got, "due oil: 51.0 of 50 engine hours; later ") { // 46 by the old meter and 5 by the new one
		t.Errorf("with another meter: %s", got)
	}
	if got := Short(k.b, k.at); got != "upkeep due: oil: 51.0 of 50 engine hours" {
		t.Errorf("short: %s", got)
	}
	k.lines(`{"fact":"task","name":"oil","retired":"yes"}`)
	if k.b.Upkeep("oil") != nil {
		t.Error("a task that was retired is still there")
	}
}

// TestOnceIsOnce: the first oil of a new engine is no task any more once it is done.
func TestOnceIsOnce(t *testing.T) {
	k := newLogger(t)
	for _, f := range StartFacts(k.b) {
		es, err := k.b.Prepare("start", k.at, f)
		if err != nil {
			t.Fatal(err)
		}
		if err := k.b.Apply(es[0]); err != nil {
			t.Fatal(err)
		}
	}
	n := len(k.b.Upkeeps())
	if n != len(Starting()) || len(StartFacts(k.b)) != 0 {
		t.Fatalf("%d tasks of %d", n, len(Starting()))
	}
	k.lines(`{"fact":"upkept","task":"engine oil of a new engine"}`)
	if len(k.b.Upkeeps()) != n-1 {
		t.Error("what is done once is still to be done")
	}
	for _, f := range Starting() {
		if f.Source == "" || f.Words == "" {
			t.Errorf("%s has no source or no words", f.TaskName)
		}
	}
}

func TestPapersAndLists(t *testing.T) {
	k := newLogger(t)
	k.lines(`{"fact":"paper","name":"insurance","kind":"insurance","until":"2027-01-31"}
{"fact":"paper","name":"licence","kind":"licence","number":"00000-7","until":"2026-06-10","training_h":6}
{"fact":"paper","name":"turf certificate","kind":"certification","until":"2026-05-27"}
{"fact":"ticked","list":"check/winter 2026","item":"drain tanks and pump and hose"}`)
	var got []string
	for _, p := range Papers(k.b, "2026-05-28") {
		got = append(got, p.State+" "+p.PaperName+": "+p.Says)
	}
	if s := strings.Join(got, "; "); s != "due turf certificate: ended on 2026-05-27; soon licence: ends on 2026-06-10, in 13 days; 6 h of training still to be had; later insurance: valid until 2027-01-31" {
		t.Errorf("papers: %s", s)
	}
	done := 0
	for _, i := range List(k.b, "winter", "2026-11-29") {
		if i.Source == "" {
			t.Errorf("%s has no source", i.Item)
		}
		if i.Done {
			done++
		}
	}
	if done != 1 || len(Lists()) != 3 {
		t.Errorf("%d ticked, lists %v", done, Lists())
	}
}
