package check

import (
	"fmt"
	"strings"
	"testing"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

// settling is the rig of the tests with how a and b are agitated, W1 of formulation a, C1 of formulation b.
func settling(a, b, wClass, cClass string) string {
	lines := loadedLines
	for letter, how := range map[string]string{"a": a, "b": b} {
		if how != "" {
			lines = strings.Replace(lines, `{"letter":"`+letter+`",`, `{"letter":"`+letter+`","agitation":"`+how+`",`, 1)
		}
	}
	for name, class := range map[string]string{"W1": wClass, "C1": cClass} {
		if class != "" {
			lines = strings.Replace(lines, `{"fact":"product","name":"`+name+`",`, `{"fact":"product","name":"`+name+`","mixing_class":"`+class+`",`, 1)
		}
	}
	return lines
}

func minutesLater(m int64) core.Moment { return core.Moment{Unix: clock.Unix + 60*m} }

func standingAt(t *testing.T, b *core.Book, lawn string, minutes int64, about string) *Finding {
	t.Helper()
	r, err := Before(b, Intent{Lawn: lawn, At: minutesLater(minutes)})
	if err != nil {
		t.Fatal(err)
	}
	for i := range r.Findings {
		for _, one := range r.Findings[i].All() {
			if r.Findings[i].Rule == "standing" && one.About == about {
				if one.Weight != Note || one.Ground == "" || one.Source == "" || !one.Figured.Known || !one.Limit.Known {
					t.Errorf("%+v", one)
				}
				return &one
			}
		}
	}
	return nil
}

// A paddle works while the engine turns, a jet only where the return goes; a compartment without either is moved by a load
// alone (common practice, from how rigs are plumbed). 30 min are the setting settle_min.
func TestWhatSettlesInTheCompartmentLinedUp(t *testing.T) {
	for _, row := range []struct {
		name, lines string
		minutes     int64
		says, do    string
	}{
		{"a jet, a suspension, 31 min", settling(core.Jet, "", "sc", "") + hoseOf("a"), 31, "Compartment a was last agitated at 20:26, 31 min ago, and suspension concentrate settles.", "Run the pump with the return to a for 5 min first."},
		{"30 min", settling(core.Jet, "", "sc", "") + hoseOf("a"), 30, "", ""},
		{"a solution", settling(core.Jet, "", "sl", "") + hoseOf("a"), 300, "", ""},
		{"a formulation that is not entered", settling(core.Jet, "", "", "") + hoseOf("a"), 300, "", ""},
		{"a paddle", settling(core.Paddle, "", "wg", "") + hoseOf("a"), 300, "", ""},
		{"neither", settling(core.NotAgitated, "", "wg", "") + hoseOf("a"), 40, "water-dispersible granule settles", "Stir a at the lid first"},
		{"nothing said of the rig", settling("", "", "wg", "") + hoseOf("a"), 300, "", ""},
		{"another time", settling(core.Jet, "", "sc", "") + hoseOf("a") + `{"fact":"setting","name":"settle_min","value":"60"}`, 59, "", ""},
	} {
		f := standingAt(t, play(t, row.lines), "Alder", row.minutes, aboutAgitation)
		switch {
		case row.says == "" && f != nil:
			t.Errorf("%s: says %s", row.name, f.Says)
		case row.says != "" && (f == nil || !strings.Contains(f.Says, row.says) || !strings.Contains(f.Do, row.do)):
			t.Errorf("%s: %+v", row.name, f)
		}
	}
}

// While a is drawn, what settles in b stands; it is said at one lawn, and the pump with the return to b ends it.
func TestWhatSettlesWhileAnotherIsDrawn(t *testing.T) {
	b := play(t, settling(core.Jet, core.Jet, "sl", "wg")+hoseOf("a"))
	if f := standingAt(t, b, "Alder", 20, aboutUnmoved); f != nil {
		t.Errorf("after 20 min: %s", f.Says)
	}
	f := standingAt(t, b, "Alder", 40, aboutUnmoved)
	if f == nil || f.Says != "What settles stands unagitated in b since 20:26. A jet works only where the return goes." || !strings.Contains(f.Do, "Before you draw from b, run the return to it for 5 min.") || f.Figured.V != 40 {
		t.Fatalf("%+v", f)
	}
	logAt(t, b, 45, `{"fact":"visit_begun","lawn":"Alder"}
{"fact":"sprayed","lawn":"Alder","applicator":"gun"}
{"fact":"visit_done","lawn":"Alder"}`)
	if f := standingAt(t, b, "Alder", 60, aboutUnmoved); f != nil {
		t.Errorf("said at the next lawn too: %s", f.Says)
	}
	if f := standingAt(t, b, "Fir", 60, aboutAgitation); f != nil { // a is lined up
		t.Errorf("%+v", f)
	}
	logAt(t, b, 60, `{"fact":"lined_up","supply":["b"],"return":"b"}`)
	if f := standingAt(t, b, "Fir", 60, aboutAgitation); f == nil || !strings.Contains(f.Says, "60 min ago") {
		t.Errorf("b is lined up now: %+v", f)
	}
	logAt(t, b, 61, `{"fact":"ran","seconds":300,"pump":"on"}`)
	if f := standingAt(t, b, "Fir", 61, aboutAgitation); f != nil {
		t.Errorf("it was run: %s", f.Says)
	}
}

func TestWhatSettlesWithoutAJet(t *testing.T) {
	b := play(t, settling(core.Jet, core.NotAgitated, "sl", "wg")+hoseOf("a"))
	f := standingAt(t, b, "Alder", 40, aboutUnmoved)
	if f == nil || f.Says != "What settles stands unagitated in b since 20:26." || f.Do != "Before you draw from b, stir it at the lid." {
		t.Fatalf("%+v", f)
	}
	b = play(t, settling(core.Jet, core.Paddle, "sl", "wg")+hoseOf("a"))
	if f := standingAt(t, b, "Alder", 400, aboutUnmoved); f != nil {
		t.Errorf("a paddle turns with the engine: %s", f.Says)
	}
}

func TestAgitatedForPages(t *testing.T) {
	b := play(t, settling(core.Jet, core.NotAgitated, "sc", "odd")+hoseOf("a"))
	list := Agitated(b, minutesLater(90))
	if len(list) != 3 {
		t.Fatalf("%+v", list)
	}
	a, other, c := list[0], list[1], list[2]
	if !a.Unmoved || a.Minutes.V != 90 || len(a.Settles) != 1 || a.Settles[0] != "W1" || len(a.Unknown) != 0 {
		t.Errorf("%+v", a)
	}
	if other.Unmoved || len(other.Unknown) != 1 || other.Minutes.V != 90 {
		t.Errorf("%+v", other)
	}
	if c.How != "" || c.At.Known || c.Unmoved {
		t.Errorf("%+v", c)
	}
}

// What is not entered is said once a day, and only where something rests on it.
func TestSettlingNotChecked(t *testing.T) {
	line := func(lines, lawn string) string {
		r, err := Before(play(t, lines), Intent{Lawn: lawn, At: clock})
		if err != nil {
			t.Fatal(err)
		}
		return strings.Join(r.NotChecked, "\n")
	}
	for _, row := range []struct{ lines, says, not string }{
		{settling("", "", "sc", "") + hoseOf("a"), "agitation of a: how it is agitated is not entered", ""},
		{settling("", "", "sl", "") + hoseOf("a"), "", "agitat"},
		{settling("", "", "", "") + hoseOf("a"), "", "formulation"},
		{settling(core.Jet, "", "", "") + hoseOf("a"), "formulation: 1 of 1 product", "agitat"},
		{settling(core.Jet, "", "q", "") + hoseOf("a"), "W1: whether q settles is not in the table", "formulation: "},
		{settling(core.Paddle, "", "", "") + hoseOf("a"), "", "formulation"},
		{settling("", "", "sc", "") + hoseOf("a") + `{"fact":"visit_begun","lawn":"Alder"}
{"fact":"sprayed","lawn":"Alder","applicator":"gun"}
{"fact":"visit_done","lawn":"Alder"}`, "", "agitat"},
	} {
		if got := line(row.lines, "Alder"); !strings.Contains(got, row.says) || row.not != "" && strings.Contains(got, row.not) {
			t.Errorf("%q, not %q: %s", row.says, row.not, got)
		}
	}
}

// After a night what stands in the plumbing is said until something moves there, what stands in the compartments at the
// first lawn of the day (Texas A&M extension: never leave it overnight in solution).
func TestWhatStoodOverNight(t *testing.T) {
	const night = 24 * 60
	b := play(t, loadedLines+hoseOf("b")+`{"fact":"lined_up","supply":["a"],"return":"a"}
{"fact":"pushed_back","into":"b","volume_gal":0.5}`)
	logAt(t, b, 60, `{"fact":"day_closed","overnight":"left in"}`)
	logAt(t, b, night, `{"fact":"day_opened","date":"2026-05-29","operator":"R. Example","route":["Fir","Alder"]}
{"fact":"weather","wind_mph":6,"wind_from":"SW","temp_f":64}`)
	f := standingAt(t, b, "Fir", night, aboutNight)
	if f == nil {
		t.Fatal("nothing is said of the night")
	}
	hose := b.Plumbing().Hose("reel")
	of := map[string]measure.Volume{}
	for _, st := range StoodSince(b, minutesLater(night)) {
		if st.Part == PartHose {
			for _, o := range st.Of {
				of[o.From] += o.Volume
			}
			if st.Of[0].From != "b" || st.Volume != hose.Size || st.Since != clock || st.Hours != 24 {
				t.Errorf("%+v", st)
			}
		}
	}
	for _, want := range []string{
		fmt.Sprintf("The hose holds %s of b and %s of a since 2026-05-28 20:26, the mixing cell ", gal(of["b"]), gal(of["a"])),
		"and the return line 0.10 gal of a.",
		"Compartment a holds 199.5 gal of W, compartment b holds 100.5 gal of C and compartment c holds 50.0 gal of I; the oldest was loaded 2026-05-28 20:26.",
	} {
		if !strings.Contains(f.Says, want) {
			t.Errorf("no %q in %s", want, f.Says)
		}
	}
	logAt(t, b, night+5, `{"fact":"pushed_back","into":"b","volume_gal":0.5}`)
	if f = standingAt(t, b, "Fir", night+6, aboutNight); f == nil || strings.Contains(f.Says, "hose") || !strings.HasPrefix(f.Says, "Compartment a holds ") {
		t.Errorf("after a push: %+v", f)
	}
	logAt(t, b, night+20, `{"fact":"visit_begun","lawn":"Alder"}
{"fact":"sprayed","lawn":"Alder","applicator":"gun"}
{"fact":"visit_done","lawn":"Alder"}`)
	if f = standingAt(t, b, "Fir", night+21, aboutNight); f != nil {
		t.Errorf("said twice: %s", f.Says)
	}
}

func TestWhatStoodForHours(t *testing.T) {
	b := play(t, loadedLines+hoseOf("a"))
	if list := StoodSince(b, minutesLater(200)); len(list) != 0 {
		t.Errorf("%+v", list)
	}
	more(t, b, `{"fact":"setting","name":"standing_h","value":"2"}`)
	if f := standingAt(t, b, "Alder", 119, aboutNight); f != nil {
		t.Errorf("%+v", f)
	}
	if f := standingAt(t, b, "Alder", 121, aboutNight); f == nil || !strings.Contains(f.Says, "The hose holds 1.72 gal of a since 20:26") || strings.Contains(f.Says, "Compartment") {
		t.Errorf("%+v", f)
	}
	// a drained hose and first water have nothing to stand
	more(t, b, `{"fact":"dumped","from":"hose/reel","volume_gal":1.72,"to":"waste/pail"}`)
	for _, s := range StoodSince(b, minutesLater(121)) {
		if s.Part == PartHose && s.Volume > measure.Gallons(0.01) {
			t.Errorf("%+v", s)
		}
	}
}
