package check

import (
	"strings"
	"testing"

	"example.com/tintline/core"
)

// Each row is one thing typed, and what is said of it where it is doubted. The bounds are the book's settings.
var doubtRows = []struct {
	name, lines, typed, says string // says is empty where there is no doubt
	source                   string
}{
	{"gauge as booked", "", `{"fact":"gauge_read","compartment":"a","volume_gal":200}`, "", "200 gal loaded"},
	{"gauge within three bands", "", `{"fact":"gauge_read","compartment":"a","volume_gal":191.5}`, "", "arithmetic: 1 per cent of 300 gal is 3, three times 9"},
	{
		"gauge beyond three bands", "", `{"fact":"gauge_read","compartment":"a","volume_gal":190.5}`,
		"The gauge of a says 190.5 gal; the book has 200.0 gal, ±3.00: 9.50 gal less.", "arithmetic: 200 less 190.5 is over 9",
	},
	{
		"gauge beyond a tenth of the tank", `{"fact":"setting","name":"gauge_error_pct","value":"20"}`, `{"fact":"gauge_read","compartment":"a","volume_gal":231}`,
		"31.0 gal more", "arithmetic: three bands are 180 gal, a tenth of the tank is 30",
	},
	{
		"gauge within a wider band", `{"fact":"setting","name":"gauge_error_pct","value":"2"}`, `{"fact":"gauge_read","compartment":"a","volume_gal":190.5}`, "",
		"arithmetic: three times 6 gal",
	},
	{
		"push-back into where the changeover has it", hoseOf("b") + `{"fact":"lined_up","supply":["a"],"return":"a"}
` + alder, `{"fact":"pushed_back","into":"b","volume_gal":2.64}`, "", "the old mix goes where it came from",
	},
	{
		"push-back into a third", hoseOf("b") + `{"fact":"lined_up","supply":["a"],"return":"a"}
` + alder, `{"fact":"pushed_back","into":"c","volume_gal":2.64}`,
		"2.64 gal that came from b and a would go into c: 5.0 per cent of it", "arithmetic: hose, cell and what follows, 2.64 of 52.64 gal",
	},
	{
		"a little into a third", hoseOf("b") + `{"fact":"lined_up","supply":["a"],"return":"a"}
` + alder, `{"fact":"pushed_back","into":"c","volume_gal":0.5}`, "", "arithmetic: 0.5 of 50.5 gal is under 1 per cent",
	},
	{"all of a zone again", atAlder("front", "4000"), `{"fact":"sprayed","lawn":"Alder","zones":["front"],"applicator":"gun","by":"area"}`, "front has had 4,000 sq ft in this visit", ""},
	{"the rest of a zone", atAlder("front", "3000"), `{"fact":"sprayed","lawn":"Alder","zones":["front"],"applicator":"gun","by":"area","area_sqft":1000}`, "", "3,000 and 1,000 of 4,000"},
	{"more than the rest of a zone", atAlder("front", "3000"), `{"fact":"sprayed","lawn":"Alder","zones":["front"],"applicator":"gun","by":"area","area_sqft":1500}`, "4,500 of 4,000 sq ft", ""},
	{"another zone", atAlder("front", "4000"), `{"fact":"sprayed","lawn":"Alder","zones":["back"],"applicator":"gun","by":"area"}`, "", ""},
	{
		"too many gallons", hoseOf("a") + alder, `{"fact":"sprayed","lawn":"Alder","applicator":"gun","by":"gallons","volume_gal":18}`,
		"18.0 gal on 7,400 sq ft is 1.5 times what gun lays, 11.8 gal.", "arithmetic: 18 of 11.84 gal is 1.52",
	},
	{"too few gallons", hoseOf("a") + alder, `{"fact":"sprayed","lawn":"Alder","applicator":"gun","by":"gallons","volume_gal":5.8}`, "0.5 times", "arithmetic: 5.8 of 11.84 gal is 0.49"},
	{"gallons for the area given", hoseOf("a") + alder, `{"fact":"sprayed","lawn":"Alder","applicator":"gun","by":"gallons","volume_gal":5.8,"area_sqft":3700}`, "", "1.6 gal per 1,000 sq ft"},
	{
		"what the check stops", hoseOf("b") + alder, `{"fact":"sprayed","lawn":"Alder","zones":["front"],"applicator":"gun","by":"area"}`,
		"Compartment b: mesotrione is not for common bermudagrass", "label entry",
	},
	{
		"what the check stops, with a reason", hoseOf("b") + alder + `{"fact":"overridden","rule":"grass","lawn":"Alder","zone":"front","reason":"asked for"}`,
		`{"fact":"sprayed","lawn":"Alder","zones":["front"],"applicator":"gun","by":"area"}`, "", "",
	},
	{
		"while the day is on hold", hoseOf("a") + alder + `{"fact":"held","cause":"wind"}`,
		`{"fact":"sprayed","lawn":"Alder","applicator":"gun","by":"area"}`, "The day is on hold for wind", "",
	},
	{
		"tint when it is due", hoseOf("b") + `{"fact":"lined_up","supply":["a"],"return":"a"}
` + alder, `{"fact":"tint_seen","volume_gal":1.8}`, "", "the hose holds 1.72 gal",
	},
	{
		"tint far too early", hoseOf("b") + `{"fact":"lined_up","supply":["a"],"return":"a"}
` + alder, `{"fact":"tint_seen","volume_gal":0.8}`, "The tint at 0.80 gal is not where it is looked for", "half of the hose",
	},
	{
		"tint far too late, by seconds", hoseOf("b") + `{"fact":"lined_up","supply":["a"],"return":"a"}
` + alder, `{"fact":"tint_seen","seconds":90}`, "The tint at 3.75 gal", "arithmetic: 90 s at 2.5 gpm",
	},
	{
		"tint when it is due, the push booked before", hoseOf("b") + `{"fact":"lined_up","supply":["a"],"return":"a"}
` + alder + `{"fact":"pushed_back","into":"b","volume_gal":2.64}`, `{"fact":"tint_seen","volume_gal":1.8}`, "", "",
	},
	{"a breeze more", "", `{"fact":"weather","wind_mph":14}`, "", "8 mph more"},
	{"a storm out of nothing", "", `{"fact":"weather","wind_mph":60}`, "Wind 60 mph; 0 min ago it was 6.", "54 mph more"},
	{"a frost in May", "", `{"fact":"weather","wind_mph":6,"temp_f":26}`, "26 F; 0 min ago it was 64.", "38 F less"},
	{"what the book refuses", "", `{"fact":"gauge_read","compartment":"a","volume_gal":900}`, "", "above the capacity"},
	{"what nobody doubts", "", `{"fact":"noted","lawn":"Alder","text":"gate sticks"}`, "", ""},
}

func atAlder(zone, area string) string {
	return hoseOf("a") + alder + `{"fact":"sprayed","lawn":"Alder","zones":["` + zone + `"],"applicator":"gun","by":"area","area_sqft":` + area + `}`
}

func TestDoubt(t *testing.T) {
	for _, row := range doubtRows {
		t.Run(row.name, func(t *testing.T) {
			b := play(t, loadedLines+row.lines)
			l, err := core.DecodeLine([]byte(row.typed))
			if err != nil {
				t.Fatal(err)
			}
			before := b.StateDigest()
			words, do, doubtful := Doubt(b, clock, l.Fact)
			if doubtful != (row.says != "") || !strings.Contains(words, row.says) {
				t.Errorf("%v: %q, want %q", doubtful, words, row.says)
			}
			if doubtful && (!strings.HasSuffix(words, ".") || !strings.HasSuffix(do, ".") || strings.Contains(strings.ToLower(words+do), "safe")) {
				t.Errorf("no sentences: %q %q", words, do)
			}
			if b.StateDigest() != before {
				t.Error("the doubt changed the book")
			}
		})
	}
}

func TestOldWeatherIsNotCompared(t *testing.T) {
	b := play(t, loadedLines)
	l, _ := core.DecodeLine([]byte(`{"fact":"weather","wind_mph":60}`))
	later := clock
	later.Unix += 121 * 60
	if words, _, doubtful := Doubt(b, later, l.Fact); doubtful {
		t.Error(words)
	}
}
