package notice

import (
	"bufio"
	"encoding/json"
	"os"
	"strings"
	"testing"

	"example.com/tintline/core"
	"example.com/tintline/core/tally"
)

const morning = 1_780_000_000 // 2026-05-28T20:26:40Z

var setUp = `{"fact":"rig","name":"truck","compartments":[{"letter":"a","name":"one","capacity_gal":300,"heel_gal":2},{"letter":"b","name":"two","capacity_gal":100,"heel_gal":2}],"cell_gal":0.2,"return_line_gal":0.1,"hoses":[{"name":"reel","inside_diameter_in":0.375,"length_ft":300}],"applicators":[{"name":"gun","kind":"gun","hose":"reel","delivery_gal_per_1000_sqft":1.6,"flow_gpm":2.5}]}
{"fact":"product","name":"Weedout","form":"liquid","kind":"herbicide","actives":[{"name":"2,4-D","lb_per_gal":3.8}],"registration":"00000-11","grasses":["all_turf"],"reentry":"keep off for 4 hours and until dry"}
{"fact":"product","name":"Silent","form":"liquid","kind":"herbicide","actives":[{"name":"dicamba","lb_per_gal":1}],"registration":"00000-12","grasses":["all_turf"]}
{"fact":"mix","name":"W","parts":[{"product":"Weedout","rate_fl_oz_per_1000_sqft":1},{"product":"Silent","rate_fl_oz_per_1000_sqft":0.5}]}
{"fact":"lawn","name":"77 Fir","customer":"=A, \"B\"` + "\u202e" + `","address":"77 Fir Lane","zones":[{"name":"front","grass":"tall_fescue","area_sqft":4000,"mix":"W"}]}
{"fact":"lawn","name":"9 Gum","zones":[{"name":"all","grass":"tall_fescue","area_sqft":2000}]}
{"fact":"setting","name":"business","value":"Example Lawns"}
{"fact":"setting","name":"business_phone","value":"555-0100"}
{"fact":"day_opened","date":"2026-05-28","operator":"R. Example","route":["77 Fir","9 Gum"]}
{"fact":"loaded","into":"a","volume_gal":200,"mix":"W","for":"gun"}
{"fact":"lined_up","supply":["a"],"return":"a"}
{"fact":"pushed_back","into":"a","volume_gal":8}`

const visited = `
{"fact":"visit_begun","lawn":"77 Fir"}
{"fact":"sprayed","lawn":"77 Fir","applicator":"gun","by":"area"}
{"fact":"visit_done","lawn":"77 Fir"}`

func at(hours float64) core.Moment {
	return core.Moment{Unix: morning + int64(hours*3600), Offset: -18_000}
}

func enter(t *testing.T, b *core.Book, when core.Moment, lines string) {
	t.Helper()
	for _, s := range strings.Split(strings.TrimSpace(lines), "\n") {
		l, err := core.DecodeLine([]byte(s))
		if err != nil {
			t.Fatalf("%s\n%v", s, err)
		}
		put(t, b, when, l.Fact)
	}
}

func put(t *testing.T, b *core.Book, when core.Moment, facts ...core.Fact) {
	t.Helper()
	es, err := b.Prepare("test", when, facts...)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range es {
		if err := b.Apply(e); err != nil {
			t.Fatal(err)
		}
	}
}

func book(t *testing.T, lines string) *core.Book {
	t.Helper()
	b := core.NewBook(1)
	enter(t, b, at(0), setUp+lines)
	return b
}

func kinds(list []Owed) string {
	var out []string
	for _, o := range list {
		out = append(out, o.Kind+" "+o.Lawn)
	}
	return strings.Join(out, ", ")
}

// TestRulesAsPublished holds the tables against the published figures of signs and notices, each row with its source.
func TestRulesAsPublished(t *testing.T) {
	f, err := os.Open("testdata/published.jsonl")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows := 0
	for lines := bufio.NewScanner(f); lines.Scan(); rows++ {
		var r struct {
			ID, Source string
			Inputs     struct {
				State    string
				Distance *float64 `json:"distance_ft"`
			}
			Published struct {
				Hours, Least, Most, Window *float64
				Attempts                   *int64    `json:"phone_attempts_min"`
				Before                     *float64  `json:"hours_before"`
				BeforeMin                  *float64  `json:"hours_before_min"`
				BeforeMax                  *float64  `json:"hours_before_max"`
				WindowMax                  *float64  `json:"window_h_max"`
				Yards                      *float64  `json:"distance_yards"`
				Min                        []float64 `json:"min_in"`
				NotBefore                  string    `json:"remove_not_before"`
			}
		}
		if err := json.Unmarshal(lines.Bytes(), &r); err != nil {
			t.Fatal(err)
		}
		state, _, _ := strings.Cut(r.Inputs.State, " ")
		same := func(what string, got core.Maybe[float64], want *float64) {
			if want != nil && (!got.Known || got.V != *want) {
				t.Errorf("%s (%s): %s is %+v, published %g", r.ID, r.Source, what, got, *want)
			}
		}
		if strings.HasPrefix(r.ID, "LAW-SGN") {
			s := SignRuleOf(state)
			if s == nil {
				t.Errorf("%s: no rule of %s", r.ID, state)
				continue
			}
			same("hours", s.Hours, r.Published.Hours)
			if (r.Published.NotBefore != "") && !s.NextDay {
				t.Errorf("%s: the day after is not held", r.ID)
			}
			for _, inches := range r.Published.Min {
				if !strings.Contains(s.Size, strings.TrimSuffix(strings.TrimSuffix(jsonNumber(inches), ".0"), " ")) {
					t.Errorf("%s: %q has no %g in", r.ID, s.Size, inches)
				}
			}
			continue
		}
		n := RuleOf(state, core.ToldNeighbour)
		if n == nil {
			t.Errorf("%s: no rule of %s", r.ID, state)
			continue
		}
		p := r.Published
		same("least hours", n.HoursLeast, p.BeforeMin)
		same("least hours", n.HoursLeast, p.Before)
		same("most hours", n.HoursMost, p.BeforeMax)
		same("window", n.Window, p.WindowMax)
		same("feet", n.Feet, r.Inputs.Distance)
		if p.Yards != nil {
			feet := *p.Yards * 3
			same("feet", n.Feet, &feet)
		}
		if p.Attempts != nil && n.Calls != *p.Attempts {
			t.Errorf("%s: %d calls", r.ID, n.Calls)
		}
	}
	if rows < 9 {
		t.Errorf("only %d rows", rows)
	}
}

func jsonNumber(f float64) string {
	b, _ := json.Marshal(f)
	return string(b)
}

func TestEveryRuleNamesItsSourceAndMark(t *testing.T) {
	for _, r := range SignRules() {
		if r.Source == "" || !strings.Contains("read part second", r.Mark) || r.Mark == "" || r.Words == "" {
			t.Errorf("%+v", r)
		}
	}
	for _, r := range Rules() {
		if r.Source == "" || !strings.Contains("read part second", r.Mark) || r.Mark == "" || r.Words == "" {
			t.Errorf("%+v", r)
		}
	}
	options := ""
	for _, s := range core.Settings() {
		if s.Name == core.NoticeState {
			options = "|" + strings.Join(s.Options, "|") + "|"
		}
	}
	for _, r := range SignRules() {
		if !strings.Contains(options, "|"+r.State+"|") {
			t.Errorf("%s cannot be set", r.State)
		}
	}
	for _, r := range Rules() {
		if !strings.Contains(options, "|"+r.State+"|") {
			t.Errorf("%s cannot be set", r.State)
		}
	}
}

// TestOwedByState: without a state nothing is owed; Ohio's rule (OAC 901:5-11-09) asks for signs of 24 hours and a notice at
// each application.
func TestOwedByState(t *testing.T) {
	b := book(t, visited)
	if got := kinds(List(b, at(1))); got != "" {
		t.Errorf("without a state: %s", got)
	}
	enter(t, b, at(1), `{"fact":"setting","name":"state","value":"OH"}`)
	list := List(b, at(1))
	if got := kinds(list); got != "sign_up 77 Fir, notice 77 Fir" {
		t.Fatalf("owed in Ohio: %s", got)
	}
	for _, o := range list {
		put(t, b, at(1), o.Done...)
	}
	if got := kinds(List(b, at(2))); got != "" {
		t.Errorf("after both were logged: %s", got)
	}
	if g := b.SignsOf("77 Fir", "2026-05-28"); len(g) != 1 || g[0].Due != at(25) {
		t.Errorf("the signs: %+v", g)
	}
	if got := kinds(List(b, at(24.9))); got != "" {
		t.Errorf("before the hours ended: %s", got)
	}
	list = List(b, at(25))
	if got := kinds(list); got != "sign_down 77 Fir" {
		t.Fatalf("after 24 hours: %s", got)
	}
	put(t, b, at(26), list[0].Done...)
	if got := kinds(List(b, at(27))); got != "" || len(Look(b, at(27)).Signs) != 0 {
		t.Errorf("after they were taken down: %s", got)
	}
}

// TestSignsStandOverTheClose: what stands is still there on the next day; a strike of the entry takes them away.
func TestSignsStandOverTheClose(t *testing.T) {
	b := book(t, visited+`
{"fact":"signed","lawn":"77 Fir","what":"up","count":2,"hours":48}`)
	seq := int64(b.Seq())
	c := b.Clone()
	put(t, c, at(1), &core.Struck{Of: seq, Reason: "slip"})
	if got := Look(c, at(1)).Signs; len(got) != 0 {
		t.Errorf("struck: %+v", got)
	}
	enter(t, b, at(1), `{"fact":"day_closed"}
{"fact":"day_opened","date":"2026-05-29","operator":"R. Example","route":["9 Gum"]}`)
	kept, err := core.Resume(b.Keep())
	if err != nil {
		t.Fatal(err)
	}
	for _, one := range []*core.Book{b, kept} {
		if got := Look(one, at(20)).Signs; len(got) != 1 || got[0].Count != 2 {
			t.Errorf("on the next day: %+v", got)
		}
	}
	if got := kinds(List(b, at(48))); got != "sign_down 77 Fir" {
		t.Errorf("owed after 48 hours: %s", got)
	}
}

// TestNextDay: the rules of Georgia and others have the next day, not hours.
func TestNextDay(t *testing.T) {
	b := book(t, visited+`
{"fact":"setting","name":"state","value":"GA"}`)
	put(t, b, at(0), PutUp(b, "77 Fir"))
	if g := b.SignsOf("77 Fir", "2026-05-28"); len(g) != 1 || g[0].Due.String() != "2026-05-29T00:00:00-05:00" {
		t.Errorf("%+v", g)
	}
}

// TestNeighbourOfTomorrow: a lawn carried over to tomorrow has a window of 12 to 72 hours before the start of that day; after two failed calls
// a note on the door is what is to be done (7 Pa. Code 128.112).
func TestNeighbourOfTomorrow(t *testing.T) {
	b := book(t, visited+`
{"fact":"setting","name":"state","value":"PA"}
{"fact":"carried_over","lawn":"9 Gum","reason":"wind","until":"2026-05-29"}`)
	n, err := ReadNeighbour(b, "9 Gum", "Next Door, 555-0117, 40 ft, register, has asthma, ring twice")
	if err != nil || n.HoursLeast.V != 12 || n.HoursMost.V != 72 || n.Calls != 2 || n.Feet.V != 40 || n.Phone != "555-0117" || n.Note != "has asthma, ring twice" {
		t.Fatalf("%+v %v", n, err)
	}
	put(t, b, at(0), n)
	list := List(b, at(0))
	if len(list) != 1 || list[0].Kind != KindNeighbour || list[0].Window() != "2026-05-26 08:00 to 2026-05-28 20:00" {
		t.Fatalf("%+v", list)
	}
	for range 2 {
		put(t, b, at(0), List(b, at(0))[0].Failed...)
	}
	list = List(b, at(0))
	if !strings.HasPrefix(list[0].Do, "Leave a note on the door of Next Door") || len(list[0].Failed) != 0 || !strings.Contains(list[0].Says, "2 calls failed") {
		t.Fatalf("after two calls: %+v", list[0])
	}
	if late := List(b, at(9)); !strings.Contains(late[0].Do, "Choose another date for 9 Gum: too late to tell Next Door.") {
		t.Errorf("after the window: %s", late[0].Do)
	}
	put(t, b, at(1), list[0].Done...)
	if got := kinds(List(b, at(1))); got != "" {
		t.Errorf("after the note: %s", got)
	}
}

func TestReentry(t *testing.T) {
	for _, row := range []struct {
		words string
		hours float64 // below 0: none
	}{
		{"keep off for 4 hours", 4},
		{"do not enter until dry", -1},
		{"12-hour interval; 24 hrs for sod", 24},
		{"0.5 h", 0.5},
		{"", -1},
	} {
		if h := Hours(row.words); h.Known != (row.hours >= 0) || h.Known && h.V != row.hours {
			t.Errorf("%q: %+v", row.words, h)
		}
	}
	b := book(t, visited)
	c := Clocks(b)
	if len(c) != 1 || c[0].Until != at(4) || c[0].By != "Weedout" || len(c[0].Blank) != 1 || c[0].Blank[0] != "Silent" {
		t.Fatalf("%+v", c)
	}
	if got := c[0].Left(at(0.5)); got != "3 h 30 min" {
		t.Errorf("left: %s", got)
	}
	if got := c[0].Left(at(4)); !strings.HasPrefix(got, "the hours ended") {
		t.Errorf("left: %s", got)
	}
}

func TestCustomersNotice(t *testing.T) {
	b := book(t, visited)
	put(t, b, at(0), &core.Signed{Lawn: "77 Fir", What: core.SignsUp, Count: 1, Hours: core.Known(24.0)})
	d, err := Of(b, "77 Fir", "2026-05-28", tally.RecordsOf(b))
	if err != nil {
		t.Fatal(err)
	}
	text := d.Text()
	for _, want := range []string{
		"Example Lawns", "555-0100", "77 Fir Lane", "00000-11", "2,4-D", "herbicide", "Weedout: keep off for 4 hours and until dry.",
		"Silent: the label's words are not entered here; the label in hand decides.", "to stay until 2026-05-29, 15:26", PoisonControl,
		`customer                     =A, "B"`,
	} {
		if !strings.Contains(strings.Join(strings.Fields(text), " "), strings.Join(strings.Fields(want), " ")) {
			t.Errorf("the notice has no %q:\n%s", want, text)
		}
	}
	page, err := d.HTML()
	if err != nil || strings.ContainsRune(text, '\u202e') || !strings.Contains(page, "<bdi>=A, &#34;B&#34;\u202e</bdi>") {
		t.Error("the direction of writing is turned beyond the name")
	}
	if strings.Contains(strings.ToLower(text), "sa"+"fe") {
		t.Error("a word that is never said")
	}
	if _, err = Of(b, "77 Fir", "2026-05-01", nil); err == nil {
		t.Error("a notice of a day on which nothing was laid")
	}
	if _, err = Of(b, "1 Nowhere", "2026-05-29", nil); err == nil {
		t.Error("a notice for no lawn")
	}
	ahead, err := Of(b, "77 Fir", "2026-05-29", tally.RecordsOf(b))
	if err != nil || !strings.HasPrefix(ahead.Text(), "Advance notice") || !strings.Contains(ahead.Text(), "00000-12") {
		t.Errorf("%v\n%s", err, ahead.Text())
	}
	if gum, err := Of(b, "9 Gum", "2026-05-29", nil); err != nil || !strings.Contains(gum.Text(), "all: the mix is not decided yet.") {
		t.Errorf("%v\n%s", err, gum.Text())
	}
}

// TestRecordHasThem: the rows of the record name signs, notices and each attempt.
func TestRecordHasThem(t *testing.T) {
	b := book(t, `
{"fact":"neighbour","lawn":"77 Fir","name":"Next Door","phone":"555-0117","register":"own_request"}
{"fact":"told","lawn":"77 Fir","whom":"neighbour","name":"Next Door","how":"phone","result":"failed"}
{"fact":"told","lawn":"77 Fir","whom":"neighbour","name":"Next Door","how":"text","result":"reached"}`+visited+`
{"fact":"signed","lawn":"77 Fir","what":"up","count":2,"hours":24}
{"fact":"told","lawn":"77 Fir","whom":"customer","how":"paper_at_door"}`)
	r := tally.RecordsOf(b)[0]
	if r.Signs.V != 2 || !strings.Contains(r.SignsAt, "2 at 15:26, to stay until 2026-05-29 15:26") || r.Notice != "paper at the door 2026-05-28 15:26: notice" ||
		r.Neighbours != "Next Door by phone 2026-05-28 15:26, no answer; Next Door by text 2026-05-28 15:26: advance notice" {
		t.Errorf("%+v\n%q\n%q\n%q", r.Signs, r.SignsAt, r.Notice, r.Neighbours)
	}
	o := Look(b, at(1))
	if text := o.Printed().Text(); !strings.Contains(text, "no answer") || !strings.Contains(text, "2026-05-29 15:26") {
		t.Errorf("%s", text)
	}
}
