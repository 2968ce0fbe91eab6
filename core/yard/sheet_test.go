package yard

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.com/tintline/core"
	"example.com/tintline/core/check"
	"example.com/tintline/core/measure"
)

// sheetLines is a book in which a load of three products is planned for b: 60 gal at 1.5 gal per 1,000 sq ft are 40
// thousand sq ft, so 40 fl oz of weed, 20 oz of powder and 8 fl oz of sticker (arithmetic); liquid are 48 fl oz, 0.375 gal.
const sheetLines = `
{"fact":"rig","name":"truck","compartments":[{"letter":"a","name":"warm","capacity_gal":200,"heel_gal":2,"agitation":"paddle"},{"letter":"b","name":"cool","capacity_gal":100,"heel_gal":2,"agitation":"none"}],"cell_gal":0.2,"return_line_gal":0.1,"hoses":[{"name":"reel","inside_diameter_in":0.375,"length_ft":300}],"applicators":[{"name":"gun","kind":"gun","hose":"reel","delivery_gal_per_1000_sqft":1.5,"flow_gpm":2.5}]}
{"fact":"product","name":"sticker","form":"liquid","kind":"adjuvant","mixing_class":"adjuvant","signal":"caution"}
{"fact":"product","name":"weed","form":"liquid","kind":"herbicide","mixing_class":"ec","signal":"danger","reentry":"keep off until it has dried","package_gal":2.5}
{"fact":"product","name":"powder","form":"dry","kind":"herbicide","mixing_class":"wp"}
{"fact":"mix","name":"M","parts":[{"product":"sticker","rate_fl_oz_per_1000_sqft":0.2},{"product":"weed","rate_fl_oz_per_1000_sqft":1},{"product":"powder","rate_oz_per_1000_sqft":0.5}]}
{"fact":"day_opened","date":"2026-05-28","operator":"R. Example"}
{"fact":"load_planned","into":"b","volume_gal":60,"mix":"M","for":"gun"}
`

var sheetClock = core.Moment{Unix: 1_780_000_000, Offset: -18_000}

func sheetMore(t *testing.T, b *core.Book, line string) {
	t.Helper()
	l, err := core.DecodeLine([]byte(line))
	if err != nil {
		t.Fatalf("%s\n%v", line, err)
	}
	enter(t, b, l.Fact)
}

func sheetOf(t *testing.T, b *core.Book, into string) *LoadSheet {
	t.Helper()
	s, err := SheetOf(b, sheetClock, into)
	if err != nil {
		t.Fatal(err)
	}
	return &s
}

// TestSheetOf: the lines stand in the order of doing, each can be ticked, and the ticks and readings are those of the book.
func TestSheetOf(t *testing.T) {
	b := play(t, sheetLines)
	s := sheetOf(t, b, "b")
	var items []string
	for _, l := range s.Lines {
		items = append(items, l.Item)
	}
	want := "do/gear do/jar do/place do/air_gap do/meter_before water do/agitator powder do/stir/powder weed do/stir/weed sticker do/rinse do/rest_of_water do/meter_after do/cap_and_label"
	if got := strings.Join(items, " "); got != want {
		t.Errorf("%s\nwant %s", got, want)
	}
	gear := s.Line(core.StepGear)
	if gear.Says != "protective equipment: signal word danger, of weed" || !strings.Contains(gear.Details[0].Says, "a respirator where the label has one. The label in hand decides.") || !strings.Contains(gear.Details[1].Says, "No signal word is entered for powder") {
		t.Errorf("%+v", gear)
	}
	for item, gal := range map[string]float64{"water": 29.8125, "do/rest_of_water": 29.8125} { // (60 - 0.375) / 2
		if got := measure.Volume(s.Line(item).Amount.N).Gallons(); got < gal-0.0001 || got > gal+0.0001 {
			t.Errorf("%s: %.4f gal, want %.4f", item, got, gal)
		}
	}
	if s.Jar == nil || s.Verdict != check.Ask || !strings.Contains(s.Line(core.StepJar).Details[0].Says, "stands for 170 sq ft") {
		t.Errorf("the jar: %+v", s.Line(core.StepJar))
	}
	if says := s.Line(core.StepLabelled).Details[0].Says; says != "Going back on the lawn, weed: keep off until it has dried." {
		t.Error(says)
	}
	for _, l := range s.Lines {
		sheetMore(t, b, `{"fact":"ticked","list":"load/b","item":"`+l.Item+`"}`)
	}
	if s = sheetOf(t, b, "b"); s.Next("") != nil {
		t.Errorf("%+v is not done", s.Next(""))
	}
	if _, err := SheetOf(b, sheetClock, "a"); err == nil || err.Error() != "No load is planned for a." {
		t.Error(err)
	}
}

// TestSheetMeter: the meter is held against the water of the load, 59.625 gal.
func TestSheetMeter(t *testing.T) {
	for _, row := range []struct {
		after, says string
		wrong       bool
	}{
		{"1059.625", "The meter gave 59.6 gal for 59.6 gal of water.", false},
		{"1060", "The meter gave 60.0 gal for 59.6 gal of water, 0.6 % more.", false},
		{"1062", "The meter gave 62.0 gal for 59.6 gal of water, 4.0 % more: the strength is off by as much.", true},
		{"1050", "The meter gave 50.0 gal for 59.6 gal of water, 16.1 % less: the strength is off by as much.", true},
	} {
		b := play(t, sheetLines+`{"fact":"ticked","list":"load/b","item":"do/meter_before","meter_gal":1000}`)
		if meant := sheetOf(t, b, "b").Line(core.StepMeterAfter).Says; meant != "water meter after: 1,059.6 gal is meant" {
			t.Error(meant)
		}
		sheetMore(t, b, `{"fact":"ticked","list":"load/b","item":"do/meter_after","meter_gal":`+row.after+`}`)
		if s := sheetOf(t, b, "b"); s.MeterWords() != row.says || s.MeterWrong != row.wrong {
			t.Errorf("%s: %q %v", row.after, s.MeterWords(), s.MeterWrong)
		}
	}
}

// TestSheetText: the printed sheet of three products is one page of 72 columns.
func TestSheetText(t *testing.T) {
	b := play(t, sheetLines+`{"fact":"ticked","list":"load/b","item":"do/gear"}
{"fact":"ticked","list":"load/b","item":"do/place","place":"yard behind the barn"}`)
	s := sheetOf(t, b, "b")
	text := s.Text(b, sheetClock)
	if n := strings.Count(text, "\n"); n > 60 {
		t.Errorf("%d lines are more than a page", n)
	}
	for _, l := range strings.Split(text, "\n") {
		if len([]rune(l)) > 72 {
			t.Errorf("over 72 columns: %s", l)
		}
	}
	if strings.Contains(strings.ToLower(text), "safe") {
		t.Error("it says safe")
	}
	golden := filepath.Join("testdata", "sheet.txt")
	if os.Getenv("TINTLINE_SHEET") != "" {
		if err := os.MkdirAll("testdata", 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(golden, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if want, err := os.ReadFile(golden); err != nil || string(want) != text {
		t.Errorf("the sheet is\n%s\n%v; TINTLINE_SHEET=1 writes it anew", text, err)
	}
}

func TestSheetTables(t *testing.T) {
	for _, g := range gearBySignal {
		if g.wear == "" || g.source == "" {
			t.Errorf("%+v", g)
		}
	}
	for item, list := range fillDetails {
		if core.ItemWords(item) == item {
			t.Errorf("%s is no step", item)
		}
		for _, d := range list {
			if d.Says == "" || d.Source == "" {
				t.Errorf("%s: %+v", item, d)
			}
		}
	}
}

// TestSheetOfWater: a load of water has nothing to wear for, to stir or to rinse.
func TestSheetOfWater(t *testing.T) {
	b := play(t, sheetLines+`{"fact":"load_planned","into":"a","volume_gal":40}`)
	var items []string
	for _, l := range sheetOf(t, b, "a").Lines {
		items = append(items, l.Item)
	}
	if got := strings.Join(items, " "); got != "do/place do/air_gap do/meter_before water do/meter_after" {
		t.Error(got)
	}
}
