package tui

import (
	"fmt"
	"slices"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/exp/golden"

	"example.com/tintline/core"
)

// morning opens a day of nine visits and loads three mixes; b is lined up, and the hose is full of it.
const morning = `{"fact":"day_opened","date":"2026-05-28","operator":"R. Example","route":["77 Fir Lane","418 Alder Court","12 Fir Lane","9 Oak Street","31 Maple Drive","5 Birch Row","60 Elm Street","2 Willow Way","14 Cedar Court"]}
{"fact":"loaded","into":"a","volume_gal":200,"mix":"bermuda, zoysia","for":"gun"}
{"fact":"loaded","into":"b","volume_gal":100,"mix":"fescue, bluegrass","for":"gun"}
{"fact":"loaded","into":"c","volume_gal":40,"mix":"iron, any grass","for":"gun"}
{"fact":"lined_up","supply":["b"],"return":"b"}
{"fact":"pushed_back","into":"b","volume_gal":3.5}
{"fact":"weather","wind_mph":6,"wind_from":"SW","temp_f":64}`

// atAlder is the second visit of the day: another grass than the first, with a lined up and b in the hose.
const atAlder = morning + `
{"fact":"visit_begun","lawn":"77 Fir Lane"}
{"fact":"sprayed","lawn":"77 Fir Lane","applicator":"gun","by":"area"}
{"fact":"visit_done","lawn":"77 Fir Lane"}
{"fact":"visit_begun","lawn":"418 Alder Court"}
{"fact":"lined_up","supply":["a"],"return":"a"}`

// fullDay is the same day after one on which a lawn was carried over, with all kinds of visits in it.
const fullDay = `{"fact":"lawn","name":"12 Fir Lane","customer":"C. Example","address":"12 Fir Lane","phone":"555-0112","gate":"left side, the latch is high","dog":"brown one, barks only","notes":"ring first","zones":[{"name":"front","grass":"tall_fescue","area_sqft":4100,"hazards":["gate","dog"]},{"name":"back","grass":"tall_fescue","area_sqft":2000}]}
{"fact":"day_opened","date":"2026-05-27","operator":"R. Example","route":["12 Fir Lane","5 Birch Row"]}
{"fact":"noted","lawn":"12 Fir Lane","text":"new sod along the drive, leave it alone until July"}
{"fact":"carried_over","lawn":"5 Birch Row","reason":"wet","until":"2026-06-02"}
{"fact":"carried_over","lawn":"12 Fir Lane","zones":[{"zone":"back","area_sqft":2000}],"reason":"wind"}
{"fact":"day_closed"}
` + morning + `
{"fact":"visit_begun","lawn":"77 Fir Lane","kind":"call_back","cause":"weeds are back"}
{"fact":"sprayed","lawn":"77 Fir Lane","applicator":"gun","by":"area"}
{"fact":"visit_done","lawn":"77 Fir Lane"}
{"fact":"visit_skipped","lawn":"9 Oak Street","reason":"dog"}
{"fact":"carried_over","lawn":"60 Elm Street","reason":"no time"}
{"fact":"visit_begun","lawn":"12 Fir Lane"}
{"fact":"sprayed","lawn":"12 Fir Lane","zones":["back"],"applicator":"gun","by":"area"}`

func demo(o *Options) { o.Demo = true }

// situations are the screens that are looked at. Each stands in a golden at 80x24 and at 120x40.
var situations = append([]situated{
	{"on_the_road", func(t *testing.T) *cab { return climbIn(t, morning, demo) }},
	{"clean_and_ready", func(t *testing.T) *cab { return climbIn(t, morning, demo).press("enter") }},
	{"hose_holds_other_mix", func(t *testing.T) *cab { return climbIn(t, atAlder, demo) }},
	{"clean_after_push", func(t *testing.T) *cab { return climbIn(t, atAlder).press("enter") }},
	{"wrong_line_up", func(t *testing.T) *cab { return climbIn(t, atAlder).press("b") }},
	{"turned_to_a", func(t *testing.T) *cab { return climbIn(t, atAlder).press("b", "a") }},
	{"ask_for_old_weather", func(t *testing.T) *cab {
		return climbIn(t, morning).press("enter").wait(80*time.Minute).press("h", "h")
	}},
	{"ask_for_strong_wind", func(t *testing.T) *cab {
		return climbIn(t, morning).press("enter", "i").type_("9 SW 64")
	}},
	{"stop_with_two_stops", func(t *testing.T) *cab {
		return climbIn(t, atAlder).press("i").type_("14 W 70 40%")
	}},
	{"stop_reason_line", func(t *testing.T) *cab { return climbIn(t, atAlder).press("y") }},
	{"stop_went_on", func(t *testing.T) *cab { return climbIn(t, atAlder).press("y").type_("3") }},
	{"ride_on_chosen", func(t *testing.T) *cab {
		return climbIn(t, atAlder).press("enter", "p").type_("5 ride-on").press("h")
	}},
	{"spreader_chosen", func(t *testing.T) *cab { return climbIn(t, atAlderWithFood(t)).press("h", "h") }},
	{"ride_on_in_one_pass", func(t *testing.T) *cab {
		return climbIn(t, morning+spreading(t)+`
{"fact":"loaded","into":"ride-on","volume_gal":10,"mix":"bermuda, zoysia","for":"ride-on"}
{"fact":"loaded","into":"ride-on","mix":"food","parts":[{"product":"Example Food","amount_lb":60}]}
{"fact":"visit_begun","lawn":"418 Alder Court"}`).press("h")
	}},
	{"hopper_not_for_the_grass", func(t *testing.T) *cab {
		return climbIn(t, morning+spreading(t)+`
{"fact":"loaded","into":"spreader","parts":[{"product":"Example Lime","amount_lb":10}]}
{"fact":"visit_begun","lawn":"418 Alder Court"}`).press("h", "h")
	}},
	{"all_zones_done", func(t *testing.T) *cab { return climbIn(t, morning).press("enter", "enter") }},
	{"one_zone_left", func(t *testing.T) *cab {
		return climbIn(t, atAlder).press("enter", "l").type_("front 6.2")
	}},
	{"skip_line", func(t *testing.T) *cab { return climbIn(t, atAlder).press("k") }},
	{"line_is_wrong", func(t *testing.T) *cab { return climbIn(t, morning).press("enter", "l").type_("11 psi") }},
	{"strike_question", func(t *testing.T) *cab { return climbIn(t, atAlder).press("u") }},
	{"refused", func(t *testing.T) *cab { return climbIn(t, morning).press("o").type_("b 170") }},
	{"close_the_day", func(t *testing.T) *cab {
		c := climbIn(t, morning)
		for range 9 {
			c.press("k").type_("3")
		}
		return c.press("enter")
	}},
	{"visits", func(t *testing.T) *cab { return climbIn(t, fullDay, demo).press("g", "v") }},
	{"visits_kind_line", func(t *testing.T) *cab {
		return climbIn(t, morning).press("g", "v", "down", "k").type_("2").press("n", "o")
	}},
	{"visits_on_hold", func(t *testing.T) *cab {
		return climbIn(t, atAlder+"\n"+`{"fact":"held","cause":"wind"}`).press("g", "v", "o")
	}},
	{"visits_no_day", func(t *testing.T) *cab { return climbIn(t, "").press("g", "v") }},
	{"find_hint", func(t *testing.T) *cab { return climbIn(t, atAlder).press("s", "f", "i") }},
	{"find", func(t *testing.T) *cab { return climbIn(t, atAlder).press("s", "e", "x", "a", "down", "down") }},
	{"find_lawn_to_put_in", func(t *testing.T) *cab {
		return climbIn(t, `{"fact":"lawn","name":"7 Ash Close","customer":"D. Example","zones":[{"name":"all","grass":"tall_fescue","area_sqft":3300}]}`+"\n"+morning).press("g", "v", "i", "a", "s", "h")
	}},
	{"weather", func(t *testing.T) *cab {
		return climbIn(t, atAlder).wait(30*time.Minute).press("j", "i").type_("7 W 66 45% 6h").press("g", "w")
	}},
	{"weather_limits", func(t *testing.T) *cab {
		return climbIn(t, coolLimits+morning).press("enter", "i").type_("6 SW 64 55% 8h high 88 forecast county airport 6:10 inversion no").press("g", "w")
	}},
	{"weather_forecast_missing", func(t *testing.T) *cab {
		return climbIn(t, coolLimits+morning).press("enter")
	}},
	{"site_stop", func(t *testing.T) *cab {
		return climbIn(t, coolLimits+besideFir+morning).press("enter", "i").type_("6 SW 64 55% 8h high 80 forecast county airport 6:10 inversion no")
	}},
	{"weather_on_hold", func(t *testing.T) *cab {
		return climbIn(t, atAlder).press("i").type_("12 W 66").press("w", "enter").press("g", "w", "down", "down", "down", "down", "down")
	}},
	{"on_hold", func(t *testing.T) *cab { return climbIn(t, atAlder).press("i").type_("12 W 66").press("w", "enter") }},
	{"on_hold_and_calm_again", func(t *testing.T) *cab {
		return climbIn(t, morning).press("w").type_("1").wait(time.Hour).press("i").type_("5 W 66")
	}},
	{"hold_offered", func(t *testing.T) *cab { return climbIn(t, morning).press("i").type_("12 W 66") }},
	{"lawn", func(t *testing.T) *cab { return climbIn(t, fullDay, demo).press("g", "l") }},
	{"lawn_changed", func(t *testing.T) *cab {
		return climbIn(t, fullDay).press("g", "l", "down", "enter").type_("x").press("esc", "i")
	}},
	{"lawn_list", func(t *testing.T) *cab { return climbIn(t, fullDay).press("g", "l", "o") }},
	{"journal", func(t *testing.T) *cab { return climbIn(t, atAlder).press("g", "j") }},
	{"journal_entry", func(t *testing.T) *cab { return climbIn(t, atAlder).press("g", "j", "down", "down", "down", "enter") }},
	{"journal_strike_question", func(t *testing.T) *cab {
		return climbIn(t, atAlder).press("g", "j").press("down", "down", "down", "down", "down", "down", "down", "u")
	}},
	{"journal_struck", func(t *testing.T) *cab {
		return climbIn(t, atAlder).press("g", "j", "down", "down", "down", "o").type_("7.2 gal")
	}},
	{"journal_put_right", func(t *testing.T) *cab {
		return climbIn(t, atAlder).press("g", "j", "down", "down", "down", "o")
	}},
	{"no_day_open", func(t *testing.T) *cab { return climbIn(t, "") }},
	{"empty_book", func(t *testing.T) *cab { return climbIn(t, noBook, demo) }},
	{"help", func(t *testing.T) *cab { return climbIn(t, atAlder).press("?") }},
	{"change_look", func(t *testing.T) *cab { return climbIn(t, atAlder).press("t") }},
	{"change_look_at_other", func(t *testing.T) *cab { return climbIn(t, atAlder).press("t", "c") }},
	{"change_at_the_lid", func(t *testing.T) *cab { return climbIn(t, atAlder).press("t", "enter") }},
	{"change_delay", func(t *testing.T) *cab {
		return climbIn(t, atAlder).press("t", "enter", "enter").passes(3 * time.Second)
	}},
	{"change_running", func(t *testing.T) *cab {
		return climbIn(t, atAlder).press("t", "enter", "enter").passes(30 * time.Second)
	}},
	{"change_no_tint", func(t *testing.T) *cab {
		return climbIn(t, atAlder).press("t", "enter", "enter").passes(67 * time.Second)
	}},
	{"change_clean", func(t *testing.T) *cab {
		return climbIn(t, atAlder).press("t", "enter", "enter").passes(55 * time.Second).press("t").passes(32 * time.Second)
	}},
	{"change_stopped", func(t *testing.T) *cab {
		return climbIn(t, atAlder).press("t", "enter", "enter").passes(50 * time.Second).press("enter")
	}},
	{"list_of_pages", func(t *testing.T) *cab { return climbIn(t, atAlder).press("g") }},
	{"tally", func(t *testing.T) *cab { return twoLawns(t).press("g", "n", "t") }},
	{"tally_folded", func(t *testing.T) *cab { return twoLawns(t).press("g", "n", "t", "enter", "down", "enter", "down") }},
	{"closing", func(t *testing.T) *cab { return twoLawns(t).press("g", "n", "k") }},
	{"aboard", func(t *testing.T) *cab { return twoLawns(t).press("x") }},
	{"upkeep", func(t *testing.T) *cab {
		return twoLawns(t).press("g", "n", "u", "enter").press("p").typed("turf licence 2026-06-10 number 00000-7").press("enter")
	}},
	{"money", func(t *testing.T) *cab { return twoLawns(t).press("g", "n", "i") }},
	{"records", func(t *testing.T) *cab { return twoLawns(t).press("g", "n", "r") }},
	{"record", func(t *testing.T) *cab { return twoLawns(t).press("g", "n", "r", "enter") }},
	{"products", func(t *testing.T) *cab { return twoLawns(t).press("g", "p") }},
	{"product", func(t *testing.T) *cab { return twoLawns(t).press("g", "p", "down", "enter") }},
	{"product_on_grasses", func(t *testing.T) *cab {
		return climbIn(t, atAlder).press("g", "p", "enter").goesTo("grass/tall_fescue", "down")
	}},
	{"product_versions", func(t *testing.T) *cab {
		return climbIn(t, morning+labelChanged).press("g", "p", "enter", "pgdown", "pgdown", "pgdown", "pgdown", "pgdown")
	}},
	{"grasses", func(t *testing.T) *cab { return climbIn(t, atAlder, demo).press("g", "k") }},
	{"grasses_cell", func(t *testing.T) *cab {
		return climbIn(t, atAlder+cautions).press("g", "k", "right").goesTo("grass/kentucky_bluegrass", "down")
	}},
	{"grasses_many", func(t *testing.T) *cab {
		return climbIn(t, manyProducts).press("g", "k", "right", "right", "right", "down")
	}},
	{"grasses_nothing_loaded", func(t *testing.T) *cab { return climbIn(t, "").press("g", "k") }},
	{"grasses_no_product", func(t *testing.T) *cab { return emptyRig(t).press("g", "k", "right", "down") }},
	{"grasses_why", func(t *testing.T) *cab {
		return climbIn(t, atAlder+cautions).press("g", "k", "right").goesTo("grass/kentucky_bluegrass", "down").press("w")
	}},
	{"lawn_one_grass_this_year", func(t *testing.T) *cab {
		return climbIn(t, spreading(t)[1:]+"\n"+lastWeeks).press("g", "l").goesTo("may/front", "down").press("pgdown")
	}},
	{"mixes", func(t *testing.T) *cab { return climbIn(t, atAlder+weedAndIron).press("g", "x") }},
	{"mix", func(t *testing.T) *cab {
		return climbIn(t, atAlder+weedAndIron).press("g", "x", "down", "down", "down", "enter")
	}},
	{"mix_new", func(t *testing.T) *cab { return climbIn(t, atAlder).press("g", "x", "enter", "n") }},
	{"gauges", func(t *testing.T) *cab {
		return climbIn(t, morning+charted(t)).press("o").type_("b 97").press("g", "g", "b")
	}},
	{"gauges_taught", func(t *testing.T) *cab { return climbIn(t, gunPutsMore(1.12, 5)).press("g", "g") }},
	{"taught", func(t *testing.T) *cab { return climbIn(t, gunPutsMore(1.12, 5)).press("g", "y", "g") }},
	{"taught_little", func(t *testing.T) *cab { return climbIn(t, gunPutsMore(1.02, 1)).press("g", "y", "g") }},
	{"taught_nothing", func(t *testing.T) *cab { return climbIn(t, morning).press("g", "y", "g") }},
	{"gauge_marks", func(t *testing.T) *cab { return climbIn(t, morning+charted(t)).press("g", "g", "enter", "down") }},
	{"gauge_line_is_wrong", func(t *testing.T) *cab {
		return climbIn(t, morning+charted(t)).press("g", "g", "enter", "l").type_("3")
	}},
	{"empty_truck", func(t *testing.T) *cab { return climbIn(t, emptyTruck).press("enter") }},
	{"loads", func(t *testing.T) *cab { return climbIn(t, morning+loadPlanned).press("g", "o", "b") }},
	{"load_line", func(t *testing.T) *cab { return climbIn(t, morning).press("g", "o", "b", "enter") }},
	{"load_ticks", func(t *testing.T) *cab { return climbIn(t, morning+loadPlanned).press("g", "o", "enter") }},
	{"load_all_in", allIn},
	{"load_of_three", func(t *testing.T) *cab { return ofThree(t, "").press("enter") }},
	{"load_jar_line", func(t *testing.T) *cab { return ofThree(t, "").press("enter", "enter") }},
	{"load_of_what_does_not_mix", func(t *testing.T) *cab { return ofThree(t, jarFailedBefore) }},
	{"line_ups", func(t *testing.T) *cab { return climbIn(t, atAlder).press("g", "u", "b") }},
	{"line_ups_odd", func(t *testing.T) *cab {
		return climbIn(t, morning+oddLineUps(t)).press("g", "u", "l").type_("a+b return a")
	}},
	{"loads_with_hoppers", func(t *testing.T) *cab { return climbIn(t, morning+hoppers(t)).press("g", "o", "pgdown", "down") }},
	{"slow_disk", func(t *testing.T) *cab {
		c := climbIn(t, atAlder)
		c.slow = true
		return c.press("enter", "b")
	}},
	{"trouble", func(t *testing.T) *cab {
		c := climbIn(t, atAlder)
		c.disk.err = &core.Problem{What: "The file cannot take more: the disk is full.", Do: "Free some room, then open the book again and look whether the last entry is there.", Err: errDisk}
		return c.press("enter")
	}},
	{"rig", func(t *testing.T) *cab { return tipped(t).press("g", "r").goesTo("applicator/gun", "down").press("t") }},
	{"rig_hose", func(t *testing.T) *cab { return tipped(t).press("g", "r").goesTo("hose/reel", "down").press("enter") }},
	{"rig_compartment", func(t *testing.T) *cab {
		return tipped(t).press("g", "r").goesTo("compartment/c", "down").press("enter", "pgdown")
	}},
	{"rig_applicator", func(t *testing.T) *cab { return tipped(t).press("g", "r").goesTo("applicator/", "down").press("enter") }},
	{"rig_tip", func(t *testing.T) *cab { return tipped(t).press("g", "r").goesTo("tip/gun/06", "down").press("enter") }},
	{"rig_take_away", func(t *testing.T) *cab {
		return tipped(t).press("g", "r").goesTo("applicator/spreader", "down").press("x")
	}},
	{"settings", func(t *testing.T) *cab {
		return climbIn(t, `{"fact":"setting","name":"wind_ask_mph","value":7}`).press("g", "h", "down", "down", "down")
	}},
	{"settings_line", func(t *testing.T) *cab { return climbIn(t, morning).press("g", "h", "enter").type_("0") }},
	{"settings_theme", func(t *testing.T) *cab { return climbIn(t, morning).press("g", "h").down("theme").press("enter") }},
	{"form_rig_tank", func(t *testing.T) *cab {
		return climbIn(t, noBook).press("enter").typed("300 160").press("enter", "enter")
	}},
	{"form_rig_applicators", func(t *testing.T) *cab {
		return climbIn(t, noBook).press("enter").typed("300 160 90").press("pgdown", "down", "down")
	}},
	{"form_wrong", func(t *testing.T) *cab {
		return climbIn(t, noBook).press("enter").typed("300 160").press("enter", "enter", "enter", "enter").typed("1").press("enter")
	}},
	{"form_product", func(t *testing.T) *cab {
		return firstProduct(t).typed("Example Iron").press("enter", "right")
	}},
	{"form_grasses", func(t *testing.T) *cab {
		return firstProduct(t).typed("Example Iron").press("enter", "right", "enter").typed("2").press("pgdown", "down", " ")
	}},
	{"form_lawn", func(t *testing.T) *cab { return firstLawn(t).typed("12 Elm Road").press("enter").typed("6200") }},
	{"form_lawn_grass", func(t *testing.T) *cab {
		return firstLawn(t).typed("12 Elm Road").press("enter").typed("6200").press("pgdown").typed("fes")
	}},
	{"form_lawn_of_many", func(t *testing.T) *cab { return climbIn(t, morning).opens((*Model).formLawn) }},
	{"form_zone", func(t *testing.T) *cab {
		return climbIn(t, morning).opens(func(m *Model) tea.Cmd { return m.formZone("9 Oak Street") }).typed("front").press("enter")
	}},
	{"findings", func(t *testing.T) *cab { return climbIn(t, atAlder).press("i").type_("14 W 70 40%").press("z") }},
	{"findings_gone_on", func(t *testing.T) *cab { return climbIn(t, atAlder).press("y").type_("3").press("z") }},
	{"form_zone_more", func(t *testing.T) *cab {
		return climbIn(t, fullDay).press("g", "l").down("front").press("s", "right", "enter", "enter")
	}},
	{"form_caution", func(t *testing.T) *cab {
		return climbIn(t, fullDay).press("g", "l").down("front").press("j").typed("Example Cool").press("enter")
	}},
	{"lawn_grows", func(t *testing.T) *cab { return climbIn(t, fullDay).press("g", "l").down("back").press("w") }},
	{"form_product_of_many", func(t *testing.T) *cab {
		return climbIn(t, morning).opens((*Model).formProduct).typed("Example Iron").press("enter")
	}},
	{"product_whole", func(t *testing.T) *cab { return climbIn(t, morning+wholeLabel).press("g", "p", "down", "enter") }},
	{"form_ticks", func(t *testing.T) *cab { return climbIn(t, morning).opens((*Model).formProduct).offeredTicks() }},
	{"form_label", func(t *testing.T) *cab {
		return climbIn(t, morning).press("g", "p", "down", "enter", "i", "down").typed("mesotrione 4 lb/gal")
	}},
	{"form_label_weather", func(t *testing.T) *cab {
		return climbIn(t, morning).press("g", "p", "down", "enter", "i", "pgdown", "pgdown", "pgdown").typed("none").press("enter").typed("200").press("enter")
	}},
	{"form_recipe", func(t *testing.T) *cab {
		return climbIn(t, morning).press("g", "x", "enter", "i", "enter").typed("white clover")
	}},
	{"form_day", func(t *testing.T) *cab {
		return firstLawn(t).typed("12 Elm Road").press("enter").typed("6200").press("pgdown").typed("ta").press("enter").typed("R. Example").press("enter").typed("90").press("enter")
	}},
	{"form_mix", func(t *testing.T) *cab {
		return climbIn(t, morning).opens(func(m *Model) tea.Cmd { return m.formMix("iron, any grass") }).
			typed("both").press("enter", "enter", "right", "enter").typed("2").press("enter")
	}},
}, slices.Concat(plumbingSituations, changeSituations, bookSituations, mixingSituations, calibrateSituations, noticeSituations)...)

func TestScreens(t *testing.T) {
	for _, s := range situations {
		for _, size := range [][2]int{{80, 24}, {120, 40}} {
			t.Run(fmt.Sprintf("%s_%dx%d", s.name, size[0], size[1]), func(t *testing.T) {
				golden.RequireEqual(t, []byte(s.cab(t).size(size[0], size[1]).screen()))
			})
		}
	}
}

func TestSmallScreens(t *testing.T) {
	for _, s := range situations {
		switch s.name {
		case "hose_holds_other_mix", "stop_with_two_stops", "stop_reason_line", "help", "clean_and_ready", "on_the_road", "turned_to_a", "strike_question",
			"form_rig_tank", "form_wrong", "form_product", "form_grasses", "form_mix", "empty_book", "settings", "rig",
			"plumbing", "pressure", "gauge_chart_filled", "grasses", "grasses_cell", "grasses_many", "grasses_why":
			for _, size := range [][2]int{{40, 16}, {60, 20}} {
				t.Run(fmt.Sprintf("%s_%dx%d", s.name, size[0], size[1]), func(t *testing.T) {
					golden.RequireEqual(t, []byte(s.cab(t).size(size[0], size[1]).screen()))
				})
			}
		}
	}
	for _, size := range [][2]int{{40, 16}, {80, 24}, {120, 40}} {
		t.Run(fmt.Sprintf("nine_tanks_%dx%d", size[0], size[1]), func(t *testing.T) {
			golden.RequireEqual(t, []byte(inRig(t, rigOf(6, 3)).size(size[0], size[1]).screen()))
		})
	}
	t.Run("too_small_50x10", func(t *testing.T) {
		golden.RequireEqual(t, []byte(climbIn(t, morning).size(50, 10).screen()))
	})
	t.Run("ascii_80x24", func(t *testing.T) {
		c := climbIn(t, atAlder, func(o *Options) { o.ASCII = true })
		golden.RequireEqual(t, []byte(c.screen()))
	})
}
