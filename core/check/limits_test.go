package check

import (
	"strings"
	"testing"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

type limitRow struct {
	name  string
	grass string // empty: tall fescue
	what  []core.Product
	past  []laying
	now   laying
	rule  string // whose finding; empty: none of dose, season, interval
	want  Weight
	says  string
	do    string
	basis string // ground
}

// limitRows are hand calculations. The comment of each gives the source of the figures, in the words of the reference (a
// recalled one was not read), and the arithmetic; 1 acre is 43.56 times 1,000 sq ft, 1 gal 128 fl oz, 1 lb 16 oz.
func limitRows(t testing.TB) []limitRow {
	dry := func(name string, e label.Entry) core.Product {
		e.Form = measure.Dry
		return core.Product{ProductName: name, Label: e}
	}
	wet := func(name string, e label.Entry) core.Product { return core.Product{ProductName: name, Label: e} }
	rate := func(f float64, unit string) core.Maybe[measure.Rate] { return core.Known(rateIn(t, f, unit)) }
	entry := func(but []string, actives ...label.Active) label.Entry {
		return label.Entry{Actives: actives, None: none(but...)}
	}
	with := func(e label.Entry, change func(*label.Entry)) label.Entry { change(&e); return e }
	year, days, times := []string{label.LimitMostYear}, []string{label.LimitDaysBetween}, []string{label.LimitMostTimes}

	prodiamine := dry("P", entry(year, most(active("prodiamine", 0, 65), t, 1.5)))
	quinclorac := dry("Q", with(entry(append(year, days...), most(active("quinclorac", 0, 75), t, 1.5)), func(e *label.Entry) { e.DaysBetween = core.Known(21.0) }))
	halosulfuron := dry("H", with(entry(days, active("halosulfuron-methyl", 0, 75)), func(e *label.Entry) { e.DaysBetween = core.Known(42.0) }))
	mesotrione := wet("M", with(entry(append(year, label.LimitRateHigh, label.LimitMost), active("mesotrione", 4, 0)), func(e *label.Entry) {
		e.HasRateLow, e.RateLow, e.HasRateHigh, e.RateHigh = true, rateIn(t, 4, flAcre), true, rateIn(t, 8, flAcre)
		e.MostYear = rate(16, flAcre)
	}))
	return []limitRow{
		// prodiamine 65 WDG, recalled: most 1.5 lb a year. 0.5 oz/1,000 x 43.56 / 16 x 0.65 = 0.8848 lb; twice is 1.770.
		{
			"most of an active in a year", "",
			[]core.Product{prodiamine},
			[]laying{{"2026-03-01", "P", 0.5, ozThou}},
			laying{"2026-09-01", "P", 0.5, ozThou},
			"season", Stop, "prodiamine: 0.88 of 1.5 lb per acre this year, this would make 1.8.", "it fits again on 2027-01-01", GroundLabel,
		},
		// the same: 0.8848 + 0.347 oz/1,000 (0.6141) = 1.4989 of 1.5: within, and within a tenth of it.
		{
			"just within the most in a year", "",
			[]core.Product{prodiamine},
			[]laying{{"2026-03-01", "P", 0.5, ozThou}},
			laying{"2026-09-01", "P", 0.347, ozThou},
			"season", Note, "0.88 of 1.5 lb per acre this year, this would make 1.5.", "Plan without it", GroundLabel,
		},
		// the same: 0.8848 + 0.25 oz/1,000 (0.4424) = 1.327, less than nine tenths of 1.5 (1.35).
		{
			"well within", "",
			[]core.Product{prodiamine},
			[]laying{{"2026-03-01", "P", 0.5, ozThou}},
			laying{"2026-09-01", "P", 0.25, ozThou},
			"", None, "", "", "",
		},
		// the same, laid in the year before: the calendar year begins anew.
		{
			"the year before does not count", "",
			[]core.Product{prodiamine},
			[]laying{{"2025-10-01", "P", 0.5, ozThou}},
			laying{"2026-03-01", "P", 0.5, ozThou},
			"", None, "", "", "",
		},
		// the same, with a period of 365 days: 0.8848 of 2025-10-01 counts until 2026-09-30.
		{
			"the label's own period", "",
			[]core.Product{dry("P", with(entry(year, most(active("prodiamine", 0, 65), t, 1.5)), func(e *label.Entry) { e.YearDays = core.Known(365.0) }))},
			[]laying{{"2025-10-01", "P", 0.5, ozThou}},
			laying{"2026-03-01", "P", 0.5, ozThou},
			"season", Stop, "0.88 of 1.5 lb per acre since 2025-03-02, this would make 1.8.", "it fits again on 2026-10-01", GroundLabel,
		},
		// quinclorac 75 DF, recalled: most 1.5 lb a year. 0.367 oz/1,000 x 43.56 / 16 x 0.75 = 0.7494; 0.7494 x 3 = 2.248.
		{
			"a third application over the year's most", "",
			[]core.Product{quinclorac},
			[]laying{{"2026-04-01", "Q", 0.367, ozThou}, {"2026-05-01", "Q", 0.367, ozThou}},
			laying{"2026-06-01", "Q", 0.367, ozThou},
			"season", Stop, "quinclorac: 1.5 of 1.5 lb per acre this year, this would make 2.2.", "fits again on 2027-01-01", GroundLabel,
		},
		// quinclorac 75 DF, recalled: 21 days between. From 1 to 21 April are 20 days.
		{
			"a day too soon", "",
			[]core.Product{quinclorac},
			[]laying{{"2026-04-01", "Q", 0.2, ozThou}},
			laying{"2026-04-21", "Q", 0.2, ozThou},
			"interval", Stop, "quinclorac went down 20 days ago, on 2026-04-01; the label entry asks for 21 days between.", "again on 2026-04-22", GroundLabel,
		},
		{"on the day", "", []core.Product{quinclorac}, []laying{{"2026-04-01", "Q", 0.2, ozThou}}, laying{"2026-04-22", "Q", 0.2, ozThou}, "", None, "", "", ""},
		// halosulfuron-methyl 75 WDG, recalled: 42 days between. From 10 May to 20 June are 41 days.
		{
			"six weeks less a day", "",
			[]core.Product{halosulfuron},
			[]laying{{"2026-05-10", "H", 0.66, ozAcre}},
			laying{"2026-06-20", "H", 1.33, ozAcre},
			"interval", Stop, "41 days ago", "again on 2026-06-21", GroundLabel,
		},
		// mesotrione 4 SC, recalled: 4 to 8 fl oz/A, most 0.25 lb at once (8 / 128 x 4). 10 of 8 fl oz is 1.25.
		{
			"most in one application", "",
			[]core.Product{mesotrione},
			nil,
			laying{"2026-05-01", "M", 10, flAcre},
			"dose", Stop, "1.3 times the label's most", "", GroundLabel,
		},
		// mesotrione 4 SC, recalled: most 0.5 lb a year, 16 fl oz/A. 8 + 6 + 4 = 18; in fl oz per 1,000: 14 / 43.56 = 0.321 of 0.367, 0.413.
		{
			"most of a product in a year", "",
			[]core.Product{mesotrione},
			[]laying{{"2026-04-01", "M", 8, flAcre}, {"2026-06-01", "M", 6, flAcre}},
			laying{"2026-08-01", "M", 4, flAcre},
			"season", Stop, "mesotrione: 0.321 of 0.367 fl oz per 1,000 sq ft this year, this would make 0.413.", "fits again on 2027-01-01", GroundLabel,
		},
		// dithiopyr 0.1 G on fertiliser, a product label, New York: 11.5 lb/1,000 is 0.5 lb (11.5 x 43.56 x 0.001 = 0.5009), the most of a year.
		{
			"the year's most at once", "",
			[]core.Product{dry("D", entry(year, most(active("dithiopyr", 0, 0.1), t, 0.5)))},
			nil,
			laying{"2026-03-15", "D", 11.5, spread + lbThou},
			"season", Note, "dithiopyr: 0 of 0.5 lb per acre this year, this would make 0.5.", "", GroundLabel,
		},
		// the same with a blank entry: 5.7 lb/1,000 (0.2483) + 11.5 (0.5009) = 0.7492 of 0.5 by the label that was read.
		{
			"a blank entry, a source that was read", "",
			[]core.Product{dry("D", label.Entry{Actives: []label.Active{active("dithiopyr", 0, 0.1)}})},
			[]laying{{"2026-03-01", "D", 5.7, spread + lbThou}},
			laying{"2026-09-15", "D", 11.5, spread + lbThou},
			"season", Ask, "dithiopyr: 0.25 of 0.5 lb per acre this year, this would make 0.75.", "Look on the label", GroundExtension,
		},
		// dithiopyr 2 EW, recalled: most 1.5 lb a year. 0.73 fl oz/1,000 x 43.56 / 128 x 2 = 0.4969; four are 1.987. The label of the granule does not count.
		{
			"a blank entry, a recalled source", "",
			[]core.Product{wet("D", label.Entry{Actives: []label.Active{active("dithiopyr", 2, 0)}})},
			[]laying{{"2026-01-05", "D", 0.73, flThou}, {"2026-04-05", "D", 0.73, flThou}, {"2026-07-05", "D", 0.73, flThou}},
			laying{"2026-10-05", "D", 0.73, flThou},
			"season", Note, "dithiopyr: 1.49 of 1.5 lb per acre this year, this would make 1.99.", "Look on the label", GroundRecalled,
		},
		// bentazon 4 L, Pacific Northwest handbook: 2 pt/A is 1.0 lb, most 2.0 a year: a third makes 3.0.
		{
			"the handbook's most in a year", "",
			[]core.Product{wet("B", label.Entry{Actives: []label.Active{active("bentazon", 4, 0)}})},
			[]laying{{"2026-05-01", "B", 32, flAcre}, {"2026-06-01", "B", 32, flAcre}},
			laying{"2026-07-01", "B", 32, flAcre},
			"season", Ask, "bentazon: 2 of 2 lb per acre this year, this would make 3.", "Look on the label", GroundExtension,
		},
		// the same: 10 days between. From 1 to 10 May are 9.
		{
			"the handbook's days between", "",
			[]core.Product{wet("B", label.Entry{Actives: []label.Active{active("bentazon", 4, 0)}})},
			[]laying{{"2026-05-01", "B", 32, flAcre}},
			laying{"2026-05-10", "B", 32, flAcre},
			"interval", Ask, "bentazon went down 9 days ago, on 2026-05-01; the label entry is blank, the reference has 10 days between.", "again on 2026-05-11", GroundExtension,
		},
		// imazaquin, Georgia, 2012: 42 days. From 1 May to 11 June are 41. The label has none: nothing is asked.
		{
			"none on the label", "",
			[]core.Product{wet("I", entry(nil, active("imazaquin", 1.5, 0)))},
			[]laying{{"2026-05-01", "I", 32, flAcre}},
			laying{"2026-06-11", "I", 32, flAcre},
			"", None, "", "", "",
		},
		{
			"the same, blank", "",
			[]core.Product{wet("I", label.Entry{Actives: []label.Active{active("imazaquin", 1.5, 0)}})},
			[]laying{{"2026-05-01", "I", 32, flAcre}},
			laying{"2026-06-11", "I", 32, flAcre},
			"interval", Ask, "41 days ago", "again on 2026-06-12", GroundExtension,
		},
		// carfentrazone-ethyl 1.9 EW, recalled: 14 days. From 1 to 14 May are 13.
		{
			"days between, recalled", "",
			[]core.Product{wet("C", label.Entry{Actives: []label.Active{active("carfentrazone-ethyl", 1.9, 0)}})},
			[]laying{{"2026-05-01", "C", 1, flAcre}},
			laying{"2026-05-14", "C", 1, flAcre},
			"interval", Note, "the reference has 14 days between", "", GroundRecalled,
		},
		// isoxaben G, second application, Clemson 2021: 56 days. From 1 March to 20 April are 50.
		{
			"days between of a granule", "",
			[]core.Product{dry("X", label.Entry{Actives: []label.Active{active("isoxaben", 0, 0.5)}})},
			[]laying{{"2026-03-01", "X", 2, spread + lbThou}},
			laying{"2026-04-20", "X", 2, spread + lbThou},
			"interval", Ask, "50 days ago", "again on 2026-04-26", GroundExtension,
		},
		// the same active in another product: 42 days by the label entry of H, 10 days since K.
		{
			"the active in another product", "",
			[]core.Product{halosulfuron, dry("K", entry(nil, active("halosulfuron-methyl", 0, 5)))},
			[]laying{{"2026-05-10", "K", 10, ozAcre}},
			laying{"2026-05-20", "H", 0.66, ozAcre},
			"interval", Ask, "halosulfuron-methyl (in K) went down 10 days ago, on 2026-05-10", "again on 2026-06-21", GroundLabel,
		},
		{
			"the same on the day", "",
			[]core.Product{halosulfuron, dry("K", entry(nil, active("halosulfuron-methyl", 0, 5)))},
			[]laying{{"2026-05-10", "K", 10, ozAcre}},
			laying{"2026-06-21", "H", 0.66, ozAcre},
			"", None, "", "", "",
		},
		// sulfentrazone 4 SC, recalled: most 0.375 lb a year. S 8 fl oz (0.25) + T, 0.5 lb/gal, 32 fl oz (0.125) = 0.375, and S 4 fl oz more (0.125) = 0.5.
		{
			"the active of two products in a year", "",
			[]core.Product{wet("S", entry(year, most(active("sulfentrazone", 4, 0), t, 0.375))), wet("T", entry(nil, active("Sulfentrazone", 0.5, 0)))},
			[]laying{{"2026-04-01", "S", 8, flAcre}, {"2026-05-20", "T", 32, flAcre}},
			laying{"2026-07-01", "S", 4, flAcre},
			"season", Stop, "sulfentrazone: 0.375 of 0.375 lb per acre this year, this would make 0.5.", "", GroundLabel,
		},
		// atrazine, sprayable, residential, after the decision of 2020 (NC State extension): 1.0 lb at once. 2 qt/A of 4 L is 2.0 lb.
		{
			"more than residential turf may get at once", "st_augustinegrass",
			[]core.Product{wet("A", label.Entry{Actives: []label.Active{active("atrazine", 4, 0)}})},
			nil,
			laying{"2026-03-01", "A", 64, flAcre},
			"dose", Ask, "atrazine would go down at 2 lb per acre; the reference has at most 1 in one application.", "Look on the label", GroundExtension,
		},
		// the same, with 2 qt/A on the label entry: the entry decides, and what was read stands beside it.
		{
			"the label entry allows it", "st_augustinegrass",
			[]core.Product{wet("A", with(label.Entry{Actives: []label.Active{active("atrazine", 4, 0)}}, func(e *label.Entry) {
				e.HasRateHigh, e.RateHigh = true, rateIn(t, 64, flAcre)
			}))},
			nil,
			laying{"2026-03-01", "A", 64, flAcre},
			"dose", Note, "the label entry allows it, the reference has at most 1", "Look whether", GroundExtension,
		},
		// atrazine, granular: 2.0 lb at once. 4.5 lb/1,000 of 1 per cent are 4.5 x 43.56 x 0.01 = 1.96 lb.
		{
			"a granule has a limit of its own", "st_augustinegrass",
			[]core.Product{dry("A", label.Entry{Actives: []label.Active{active("atrazine", 0, 1)}})},
			nil,
			laying{"2026-03-01", "A", 4.5, spread + lbThou},
			"", None, "", "", "",
		},
		// glyphosate, highest label rate as a paper states it: 1.5 lb acid at once. 80 fl oz of 3 lb/gal are 1.875 lb.
		{
			"a paper's most at once", "bermudagrass_hybrid",
			[]core.Product{wet("G", label.Entry{Actives: []label.Active{active("glyphosate", 3, 0)}})},
			nil,
			laying{"2026-01-20", "G", 80, flAcre},
			"dose", Ask, "1.9 lb per acre; the reference has at most 1.5", "", GroundTrial,
		},
		// trinexapac-ethyl 1 EC, recalled, species-specific from 0.125 to 1.0 fl oz/1,000: 0.5 is twice 0.25, and half of 1.0.
		{
			"rates by grass, the one that allows less", "bermudagrass_hybrid",
			[]core.Product{trinexapac(t)},
			nil,
			laying{"2026-05-01", "R", 0.5, flThou},
			"dose", Stop, "2.0 times the label's most", "", GroundLabel,
		},
		{"rates by grass, the one that allows more", "tall_fescue", []core.Product{trinexapac(t)}, nil, laying{"2026-05-01", "R", 0.5, flThou}, "", None, "", "", ""},
		// how often in a year: arithmetic.
		{
			"applications in a year", "",
			[]core.Product{wet("N", with(entry(times), func(e *label.Entry) { e.MostTimes = core.Known(2.0) }))},
			[]laying{{"2026-02-01", "N", 4, flAcre}, {"2026-05-01", "N", 4, flAcre}},
			laying{"2026-08-01", "N", 4, flAcre},
			"season", Stop, "N: 2 of 2 applications this year, this would be number 3.", "fits again on 2027-01-01", GroundLabel,
		},
		// mesotrione, Elmore et al. 2018, Kentucky bluegrass: most 0.5 lb a year. 8 + 8 + 4 fl oz are 0.625 lb. On tall fescue only the recalled row speaks.
		{
			"a source on one grass", "kentucky_bluegrass",
			[]core.Product{wet("M", label.Entry{Actives: []label.Active{active("mesotrione", 4, 0)}})},
			[]laying{{"2026-04-01", "M", 8, flAcre}, {"2026-06-01", "M", 8, flAcre}},
			laying{"2026-08-01", "M", 4, flAcre},
			"season", Ask, "mesotrione: 0.5 of 0.5 lb per acre this year, this would make 0.63.", "", GroundTrial,
		},
		{
			"the same on another grass", "tall_fescue",
			[]core.Product{wet("M", label.Entry{Actives: []label.Active{active("mesotrione", 4, 0)}})},
			[]laying{{"2026-04-01", "M", 8, flAcre}, {"2026-06-01", "M", 8, flAcre}},
			laying{"2026-08-01", "M", 4, flAcre},
			"season", Note, "this would make 0.63.", "", GroundRecalled,
		},
		// a content that is blank: what is known of the sum is at least 0.8848 of 1.5, and R is named.
		{
			"a content that is not entered", "",
			[]core.Product{prodiamine, dry("R", entry(nil, label.Active{Name: "prodiamine"}))},
			[]laying{{"2026-03-01", "R", 0.5, ozThou}},
			laying{"2026-09-01", "P", 0.5, ozThou},
			"season", Note, "at least 0 of 1.5 lb per acre this year, this would make 0.88. Not in the sum, because it is not known how much: R.", "", GroundLabel,
		},
		// a trace, 5 per cent of the lowest rate of 4 fl oz/A, is no application: it begins no interval and is none.
		{
			"a trace begins no interval", "",
			[]core.Product{wet("M", with(entry(days, active("mesotrione", 4, 0)), func(e *label.Entry) {
				e.HasRateLow, e.RateLow, e.DaysBetween = true, rateIn(t, 4, flAcre), core.Known(14.0)
			}))},
			[]laying{{"2026-05-01", "M", 0.2, flAcre}},
			laying{"2026-05-03", "M", 4, flAcre},
			"", None, "", "", "",
		},
		{
			"a trace is no application", "",
			[]core.Product{wet("M", with(entry(days, active("mesotrione", 4, 0)), func(e *label.Entry) {
				e.HasRateLow, e.RateLow, e.DaysBetween = true, rateIn(t, 4, flAcre), core.Known(14.0)
			}))},
			[]laying{{"2026-05-01", "M", 4, flAcre}},
			laying{"2026-05-03", "M", 0.2, flAcre},
			"", None, "", "", "",
		},
	}
}

func TestLabelLimits(t *testing.T) {
	for _, row := range limitRows(t) {
		t.Run(row.name, func(t *testing.T) {
			grass := row.grass
			if grass == "" {
				grass = "tall_fescue"
			}
			b := newAcre(t, grass, row.what)
			for _, l := range row.past {
				b.lay(l)
			}
			r, err := Before(b.Book, b.ready(row.now))
			if err != nil {
				t.Fatal(err)
			}
			seen := 0
			for _, f := range r.Findings {
				if f.Rule != "dose" && f.Rule != "season" && f.Rule != "interval" {
					continue
				}
				seen++
				if f.Rule != row.rule || f.Weight != row.want || !strings.Contains(f.Says, row.says) || !strings.Contains(f.Do, row.do) || f.Ground != row.basis || f.Source == "" {
					t.Errorf("%s %s (%s, %s)\n says %s\n do %s\nwant %s %s (%s) %s | %s", f.Weight, f.Rule, f.Ground, f.Source, f.Says, f.Do, row.want, row.rule, row.basis, row.says, row.do)
				}
			}
			if want := min(len(row.rule), 1); seen != want {
				t.Errorf("%d findings of these rules, want %d: %+v", seen, want, r.Findings)
			}
		})
	}
}
