package sheet

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"example.com/tintline/core"
)

const (
	lawnHead = "lawn,customer,address,zone,grass,area_sqft,hazards,price_usd\n"
	mixHead  = "mix,product,rate\n"
	prodHead = "name,form,kind,actives,registration,grasses,rate_low,rate_high,wind_max_mph\n"
	rigHead  = "part,name,letter,capacity_gal,heel_gal,inside_diameter_in,length_ft,volume_gal,kind,hose,delivery_gal_per_1000_sqft,supply,return,valves\n"
	tipHead  = "part,name,applicator,delivery_gal_per_1000_sqft,delivery_lb_per_1000_sqft,pressure_psi,letter,capacity_gal,kind,hopper_lb,volume_gal,gauge_marks_gal\n"
	tipTwo   = "rig,r\ncompartment,,,,,,a,100\ncompartment,,,,,,b,100\nhose,reel,,,,,,,,,1\napplicator,gun,,1.5,,,,,gun\n"
	// plumb sets a rig up whose row says more of its plumbing.
	plumb  = "part,name,letter,capacity_gal,volume_gal,suction_gal,dead_legs_gal,pump_flow_gpm,pump_psi,cross_inside_diameter_in,cross_length_ft,cross_loss,tint,agitation,mark_unit,plan_sqft,floor_in,gauge_off_in,outside_diameter_in,dry_lb,pair_flow_gpm,pair_pump_psi,pair_gun_psi,needs_psi,kind,delivery_gal_per_1000_sqft\ncompartment,,a,100\ncompartment,,b,100\nhose,reel,,,1\n"
	rigTwo = "rig,r\ncompartment,,a,100\ncompartment,,b,100\nhose,reel,,,,,,1\n"
)

func TestWhatIsWrong(t *testing.T) {
	for _, row := range []struct {
		kind, src string
		line      int
		column    string
		what      string // part of it
		allowed   string // part of it
		nearest   string
	}{
		// files
		{Lawns, "", 0, "", "The file is empty.", "a header row", ""},
		{Lawns, " \n\r\n", 0, "", "The file is empty.", "a header row", ""},
		{Lawns, lawnHead, 0, "", "no rows below it", "at least one row", ""},
		{Lawns, lawnHead + ",,,\n", 0, "", "no rows below it", "at least one row", ""},
		{Lawns, "\xff\xfel\x00a\x00", 0, "", "The file is in UTF-16.", "CSV in UTF-8", ""},
		{Lawns, "PK\x03\x04....", 0, "", "workbook", "CSV in UTF-8", ""},
		{Lawns, lawnHead + "x,,,front,tall fescue,5\nCaf\xe9,,,front,tall fescue,5\n", 3, "", "0xe9", "CSV in UTF-8", ""},
		{Lawns, strings.ReplaceAll(lawnHead, ",", ";") + "x;;;front;tall fescue;5\n", 1, "", "semicolons between them", "commas", ""},
		{Lawns, strings.ReplaceAll(lawnHead, ",", "\t"), 1, "", "tabs between them", "commas", ""},
		{Lawns, lawnHead + "a \"b\" c,,,front,tall fescue,5\n", 2, "", "quotation mark stands inside", "in quotation marks", ""},
		{Lawns, lawnHead + "x,,,front,tall fescue,5\n\"y,,,front,tall fescue,5\nz\n", 3, "", "does not end with one", "in quotation marks", ""},
		// headers
		{Lawns, "lawn,zone,gras,area_sqft\nx,front,tall fescue,5\n", 1, "gras", `lawns has no column "gras".`, "one of lawn, customer", "grass"},
		{Lawns, "lawn,zone,grass,zone,area_sqft\nx,front,tall fescue,y,5\n", 1, "zone", "at place 2 and at place 4", "each column once", ""},
		{Lawns, "lawn,zone,grass\nx,front,tall fescue\n", 1, "area_sqft", "The column is missing", "into the first row", ""},
		{Lawns, "1 Sample Street,front,tall fescue,500\n", 1, "", "names no column of lawns", "some of lawn", ""},
		{Lawns, mixHead + "a,b,5 oz per acre\n", 1, "", "the columns of mixes, not of lawns", "some of lawn", ""},
		{Lawns, lawnHead + "x,,,front,tall fescue,6,200,,,9\n", 2, "", `"9" stands at place 10`, "with a comma in it in quotation marks", ""},
		// lawns
		{Lawns, lawnHead + "x,,,front,tal fescue,5\n", 2, "grass", `"tal fescue" is not a known grass.`, "one of bahiagrass", "tall_fescue, fine_fescue, bahiagrass"},
		{Lawns, lawnHead + "x,,,front,all_turf,5\n", 2, "grass", "not a known grass", "one of bahiagrass", ""},
		{Lawns, lawnHead + "x,,,front,,5\n", 2, "grass", "The cell is empty.", "one of bahiagrass", ""},
		{Lawns, lawnHead + "x,,,front,tall fescue,5 gal\n", 2, "area_sqft", `"5 gal" is a volume`, "up to 107,600,000 sq ft", ""},
		{Lawns, lawnHead + "x,,,front,tall fescue,0\n", 2, "area_sqft", "out of range", "up to 107,600,000 sq ft", ""},
		{Lawns, lawnHead + "x,,,front,tall fescue,-5\n", 2, "area_sqft", "less than nothing", "up to 107,600,000 sq ft", ""},
		{Lawns, lawnHead + "x,,,front,tall fescue,5,,1000000\n", 2, "price_usd", "out of range", "0 to 100,000 dollars", ""},
		{Lawns, lawnHead + "x/y,,,front,tall fescue,5\n", 2, "lawn", "slash", "without a slash", ""},
		{Lawns, lawnHead + "\"x\ny\",,,front,tall fescue,5\n", 2, "lawn", "control character", "on one line", ""},
		{Lawns, lawnHead + "x," + strings.Repeat("y", 2001) + ",,front,tall fescue,5\n", 2, "customer", "2001 letters; 2000 are allowed", "up to 2000", ""},
		{Lawns, lawnHead + "x,,,front,tall fescue,5\ny,,,front,tall fescue,5\nx,,,front,zoysiagrass,5\n", 4, "zone", "stands on line 2 already", "stands nowhere else", ""},
		{Lawns, lawnHead + "x,A,,front,tall fescue,5\nx,B,,back,tall fescue,5\n", 3, "customer", `"B" differs from "A"`, "the same on each row", ""},
		// mixes
		{Mixes, mixHead + "m,example mesotrion 4,4 fl oz per acre\n", 2, "product", "There is no product", "one of example mesotrione 4, ", "example mesotrione 4"},
		{Mixes, mixHead + "m,example iron 5,4\n", 2, "rate", `"4" has no unit`, "with both units", ""},
		{Mixes, mixHead + "m,example iron 5,4 fl oz\n", 2, "rate", "names no area", "with both units", ""},
		{Mixes, mixHead + "m,example iron 5,4 lb per acre\n", 2, "rate", "is a weight; this field takes a volume", "with both units", ""},
		{Mixes, mixHead + "m,example quinclorac 75,4 pt per acre\n", 2, "rate", "is a volume; this field takes a weight", "with both units", ""},
		{Mixes, mixHead + "m,example iron 5,0 fl oz per acre\n", 2, "rate", "must be more than 0", "more than 0", ""},
		{Mixes, mixHead + "m,example iron 5,4 fl oz per acre\nn,example iron 5,4 fl oz per acre\nm,example iron 5,5 fl oz per acre\n", 4, "product", "stands on line 2 already", "nowhere else", ""},
		{Mixes, "mix,product,rate,base\nm,example iron 5,4 fl oz per acre,\nm,example quinclorac 75,1 oz per acre,example irn mix\n", 3, "base", `There is no mix "example irn mix".`, "one of example cool weed mix", "example iron mix"},
		{Mixes, "mix,product,rate,base\nm,example iron 5,4 fl oz per acre,n\nn,example iron 5,4 fl oz per acre\n", 2, "base", "does not stand above it", "the name of the mix", ""},
		{Mixes, "mix,product,rate,base\nm,example iron 5,4 fl oz per acre,m\n", 2, "base", "does not stand above it", "the name of the mix", ""},
		// products
		{Products, prodHead + "p,liqid\n", 2, "form", `"liqid" is not known here.`, "liquid or dry", "liquid"},
		{Products, prodHead + "p,dry,,iron five%\n", 2, "actives", "cannot be read", "iron 5%", ""},
		{Products, prodHead + "p,dry,,dicamba 0.5\n", 2, "actives", "cannot be read", "% by weight or lb/gal", ""},
		{Products, prodHead + "p,dry,,iron 101%\n", 2, "actives", "out of range", "iron 5%", ""},
		{Products, prodHead + "p,dry,,mesotrione 21 lb/gal\n", 2, "actives", "up to 100% or 20 lb/gal", "iron 5%", ""},
		{Products, prodHead + "p,dry,,,,tall fescue; bermuda\n", 2, "grasses", `"bermuda" is not a known grass.`, "all_turf, or some of", "bermudagrass_common, bermudagrass_hybrid, fine_fescue"},
		{Products, prodHead + "p,dry,,,,,4 fl oz per acre\n", 2, "rate_low", "is a volume; this field takes a weight", "with both units", ""},
		{Products, prodHead + "p,dry,,,,,,,101\n", 2, "wind_max_mph", "out of range", "0 to 100 mph", ""},
		{Products, prodHead + "p,dry\nq,dry\np,dry\n", 4, "name", "stands on line 2 already", "nowhere else", ""},
		{Products, prodHead + "q,dry\np,dry,,,,,5 oz per acre,4 oz per acre\n", 3, "rate_low", "The lowest rate of p", "", ""},
		{Products, prodHead + "example iron 5,dry\n", 2, "", "is in the book as liquid and cannot become dry", "", ""},
		// rig
		{Rig, rigHead + "rigg,r\n", 2, "part", `"rigg" is not known here.`, "rig, compartment", "rig"},
		{Rig, rigHead + ",r\n", 2, "part", "The cell is empty.", "rig, compartment", ""},
		{Rig, rigHead + "compartment,,a,100\n", 0, "", "No row sets up the rig itself.", "a row with rig under part", ""},
		{Rig, rigHead + rigTwo + "rig,s\n", 6, "part", "stands on line 2 already", "", ""},
		{Rig, rigHead + "rig,r\ncompartment,,a,100\nhose,reel,,,,,,1\n", 3, "", "The number of compartments is 1.", "", ""},
		{Rig, rigHead + "rig,r\ncompartment,,a,100\ncompartment,,c,100\nhose,reel,,,,,,1\n", 4, "letter", "no compartment b", "a letter, a to f", ""},
		{Rig, rigHead + rigTwo + "compartment,,b,100\n", 6, "letter", "stands on line 4 already", "", ""},
		{Rig, rigHead + rigTwo + "compartment,,cc,100\n", 6, "letter", `"cc" is no letter`, "a to f", ""},
		{Rig, rigHead + rigTwo + "compartment,,c,100,100\n", 6, "heel_gal", "The heel of compartment c is 100.0 gal of 100.0.", "0 to 10,000 gal", ""},
		{Rig, rigHead + rigTwo + "compartment,,c,10001\n", 6, "capacity_gal", "out of range", "more than 0 and up to 10,000 gal, or in another unit such as 41 qt", ""},
		{Rig, rigHead + rigTwo + "compartment,,c,,\n", 6, "capacity_gal", "The cell is empty.", "up to 10,000 gal", ""},
		{Rig, rigHead + rigTwo + "hose,short,,,,3/8\n", 6, "volume_gal", "neither a volume nor both", "gal", ""},
		{Rig, rigHead + rigTwo + "hose,short,,,,13,5\n", 6, "inside_diameter_in", "out of range", "up to 12 in", ""},
		{Rig, rigHead + rigTwo + "hose,reel,,,,,,1\n", 6, "name", `The hose "reel" stands on line 5 already.`, "", ""},
		{Rig, rigHead + rigTwo + "hose,short,c,,,,,1\n", 6, "letter", `"c" stands where a row of part hose has nothing.`, "nothing there", ""},
		{Rig, rigHead + rigTwo + "applicator,gun,,,,,,,gun,real,1.5\n", 6, "hose", `There is no hose "real".`, "one of reel", "reel"},
		{Rig, rigHead + rigTwo + "applicator,gun,,,,,,,gunn,reel,1.5\n", 6, "kind", "is not known here", "gun, ride_on, backpack or spreader", "gun"},
		{Rig, rigHead + rigTwo + "applicator,gun,,,,,,,gun,reel\n", 6, "delivery_gal_per_1000_sqft", "needs its delivery rate", "gal per 1,000 sq ft", ""},
		{Rig, rigHead + rigTwo + "applicator,gun,,,,,,,gun,reel,1.5 lb\n", 6, "delivery_gal_per_1000_sqft", "is a weight", "gal per 1,000 sq ft", ""},
		{Rig, rigHead + rigTwo + "applicator,gun,,,,,,,gun,reel,1.5\napplicator,g,,,,,,,gun,reel,1.5\napplicator,h2,,,,,,,gun,reel,1.5\n", 7, "", `The applicator "g" has the name of a compartment.`, "", ""},
		{Rig, tipHead + tipTwo + "tip,red,gn,1.5\n", 7, "applicator", `There is no applicator "gn".`, "one of gun", "gun"},
		{Rig, tipHead + tipTwo + "tip,red,gun,,\n", 7, "delivery_gal_per_1000_sqft", "needs the delivery rate", "gal per 1,000 sq ft", ""},
		{Rig, tipHead + tipTwo + "tip,red,gun,1.5,3\n", 7, "delivery_lb_per_1000_sqft", "in gallons already", "200 lb per 1,000 sq ft", ""},
		{Rig, tipHead + tipTwo + "tip,red,gun,1.5,,1001\n", 7, "pressure_psi", "out of range", "1,000 psi, or in another unit such as 2.8 bar", ""},
		{Rig, tipHead + tipTwo + "tip,red,gun,1.5,,40 gpm\n", 7, "pressure_psi", "is a flow", "1,000 psi", ""},
		{Rig, tipHead + tipTwo + "applicator,spreader,,,,,,,spreader,30 gal\n", 7, "hopper_lb", "is a volume", "0 to 22,000 lb", ""},
		{Rig, tipHead + tipTwo + "applicator,pack,,1.5,,,,,backpack,30\n", 7, "hopper_lb", "has no hopper", "", ""},
		{Rig, tipHead + tipTwo + "compartment,,,,,,c,100,,,,half\n", 7, "gauge_marks_gal", `"half" is no mark`, "1/4=50", ""},
		{Rig, tipHead + tipTwo + "compartment,,,,,,c,100,,,,half=50 lb\n", 7, "gauge_marks_gal", `"50 lb" is a weight`, "1/4=50", ""},
		{Rig, tipHead + tipTwo + "compartment,,,,,,c,100,,,,half=50;full=40\n", 7, "gauge_marks_gal", "stands for 40.0 gal", "", ""},
		{Rig, rigHead + rigTwo + "line_up,x,,,,,,,,,,a;c\n", 6, "supply", `There is no compartment "c".`, "one of a, b", ""},
		{Rig, rigHead + rigTwo + "line_up,x,,,,,,,,,,a;a\n", 6, "supply", "twice", "each once", ""},
		{Rig, rigHead + rigTwo + "line_up,x,,,,,,,,,,a,,suction\n", 6, "valves", "no valve with its position", "suction valve=left", ""},
		{Rig, plumb + "rig,r,,,,-1\n", 5, "suction_gal", "is less than nothing", "0 to 10,000 gal", ""},
		{Rig, plumb + "rig,r,,,,,fill line\n", 5, "dead_legs_gal", `"fill line" is no branch with its gallons`, "second reel=0.2", ""},
		{Rig, plumb + "rig,r,,,,,fill line=0\n", 5, "dead_legs_gal", "out of range", "second reel=0.2", ""},
		{Rig, plumb + "rig,r,,,,,x=1; x=2\n", 5, "dead_legs_gal", `"x" stands twice.`, "second reel=0.2", ""},
		{Rig, plumb + "rig,r,,,,,,0\n", 5, "pump_flow_gpm", "out of range", "up to 500 gpm", ""},
		{Rig, plumb + "rig,r,,,,,,,1001\n", 5, "pump_psi", "out of range", "1,000 psi", ""},
		{Rig, plumb + "rig,r,,,,,,,,13\n", 5, "cross_inside_diameter_in", "out of range", "up to 12 in", ""},
		{Rig, plumb + "rig,r,,,,,,,,,0\n", 5, "cross_length_ft", "out of range", "more than 0", ""},
		{Rig, plumb + "rig,r,,,,,,,,,,7 psi\n", 5, "cross_loss", "no sum of loss coefficients", "up to 1,000", ""},
		{Rig, plumb + "rig,r\ncompartment,,c,100,,,,,,,,,blue,jett\n", 6, "agitation", `"jett" is not known here.`, "paddle, jet or none", "jet"},
		{Rig, plumb + "rig,r\ncompartment,,c,100,,,,,,,,,blue,jet,ft\n", 6, "mark_unit", `"ft" is not known here.`, "in or cm", ""},
		{Rig, plumb + "rig,r\ncompartment,,c,100,,,,,,,,,blue,jet,in,0\n", 6, "plan_sqft", "out of range", "more than 0", ""},
		{Rig, plumb + "rig,r\ncompartment,,c,100,,,,,,,,,blue,jet,in,6,2 lb\n", 6, "floor_in", "is a weight", "in", ""},
		{Rig, plumb + "rig,r\ncompartment,,c,100,,,,,,,,,blue,jet,in,6,2,241\n", 6, "gauge_off_in", "out of range", "0 to 240 in", ""},
		{Rig, plumb + "rig,r\nhose,short,,,1,,,,,,,,,,,,,,0\n", 6, "outside_diameter_in", "out of range", "up to 12 in", ""},
		{Rig, plumb + "rig,r\nhose,short,,,1,,,,,,,,,,,,,,,3 gal\n", 6, "dry_lb", "is a volume", "lb", ""},
		{Rig, plumb + "rig,r\nhose,short,,,1,,,,,,,,,,,,,,,,2,1001,30\n", 6, "pair_pump_psi", "out of range", "1,000 psi", ""},
		{Rig, plumb + "rig,r\nhose,short,,,1,,,,,,,,,,,,,,,,2,30,100\n", 6, "pair_flow_gpm", "Hose short has 30 psi at the pump and 100 psi at the gun.", "", ""},
		{Rig, plumb + "rig,r\nhose,short,,,1,,,,,,,,,,,,,,,,2,30\n", 6, "", "not all is given", "", ""},
		{Rig, plumb + "rig,r\napplicator,gun,,,,,,,,,,,,,,,,,,,,,,0,gun,1.5\n", 6, "needs_psi", "out of range", "1,000 psi", ""},
		{Rig, plumb + "rig,r\ncompartment,,c,100,,,,8\n", 6, "pump_flow_gpm", "stands where a row of part compartment has nothing", "nothing there", ""},
		{Rig, rigHead + rigTwo + "line_up,x,,,,,,,,,,a,,s=1;s=2\n", 6, "valves", "stands twice", "suction valve=left", ""},
	} {
		var all Troubles
		_, err := Read(row.kind, "f.csv", []byte(row.src), filledBook(t))
		if !errors.As(err, &all) {
			t.Errorf("%s %q: read, or refused as %v", row.kind, row.src, err)
			continue
		}
		got := all[0]
		if got.File != "f.csv" || got.Line != row.line || got.Column != row.column || !strings.Contains(got.What, row.what) ||
			!strings.Contains(got.Allowed, row.allowed) || (row.nearest != "" && got.Nearest != row.nearest) {
			t.Errorf("%s %q:\n got %+v\nwant line %d column %s: %s / %s / %s", row.kind, row.src, got, row.line, row.column, row.what, row.allowed, row.nearest)
		}
		if what, do := got.Sentences(); !strings.HasSuffix(what, ".") || !strings.HasSuffix(do, ".") || strings.HasSuffix(do, "..") {
			t.Errorf("no sentences: %q %q", what, do)
		}
	}
}

func TestAllTroublesAreSaidInOrder(t *testing.T) {
	src := lawnHead + "x,,,front,tal fescue,5 gal\ny,,,front,tall fescue,\n"
	_, err := Read(Lawns, "f.csv", []byte(src), nil)
	var all Troubles
	if !errors.As(err, &all) || len(all) != 3 {
		t.Fatalf("%v", err)
	}
	for i, want := range []string{"f.csv, line 2, column grass: ", "f.csv, line 2, column area_sqft: ", "f.csv, line 3, column area_sqft: "} {
		if !strings.HasPrefix(all[i].Error(), want) {
			t.Errorf("%d: %s", i, all[i].Error())
		}
	}
	what, do := all.Sentences()
	if !strings.HasSuffix(what, " 2 more cells are wrong.") || !strings.Contains(do, "nearest known: tall_fescue") || !strings.Contains(do, "nothing of the file was imported") {
		t.Errorf("%s %s", what, do)
	}
	var one *Trouble
	if !errors.As(err, &one) || one.Line != 2 {
		t.Errorf("the first is not found: %v", one)
	}
	_, err = Read(Lawns, "f.csv", []byte(lawnHead+strings.Repeat("x,,,front,nothing,5\n", 100)), nil)
	if !errors.As(err, &all) || len(all) != 20 || !strings.HasSuffix(err.Error(), "At least 19 more cells are wrong.") {
		t.Errorf("%d: %v", len(all), err)
	}
}

func TestTooMany(t *testing.T) {
	var lawns, zones strings.Builder
	lawns.WriteString(lawnHead)
	zones.WriteString(lawnHead)
	for i := range Most + 2 {
		fmt.Fprintf(&lawns, "lawn %d,,,front,tall fescue,5\n", i)
		fmt.Fprintf(&zones, "lawn %d,,,zone %d,tall fescue,5\n", i%9, i)
	}
	_, err := Read(Lawns, "f", []byte(lawns.String()), nil)
	var one *Trouble
	if !errors.As(err, &one) || one.Line != Most+2 || !strings.Contains(one.What, "at most 5000") {
		t.Errorf("%v", err)
	}
	if facts, err := Read(Lawns, "f", []byte(zones.String()), nil); err != nil || len(facts) != 9 {
		t.Errorf("%d lawns of many rows (%v)", len(facts), err)
	}
	_, err = Read(Lawns, "f", []byte(lawnHead+strings.Repeat("a\n", mostRows+5)), nil)
	if !errors.As(err, &one) || one.Line != mostRows+2 || !strings.Contains(one.What, "more than 50000 rows") {
		t.Errorf("%v", err)
	}
}

// The rig of a book that holds liquid cannot lose the part that holds it: that is no fault of one row.
func TestRigAroundLiquid(t *testing.T) {
	b := filledBook(t)
	enter(t, b, []core.Fact{&core.DayOpened{Date: "2026-05-28", Operator: "J. Example"}, &core.Loaded{Into: "a", Volume: 100 * 3785411784}})
	_, err := Read(Rig, "f", []byte(rigHead+"hose,reel,,,,,,1\ncompartment,,a,50\ncompartment,,b,50\nrig,r\n"), b)
	var one *Trouble
	if !errors.As(err, &one) || one.Line != 5 || !strings.Contains(one.What, "holds 100.0 gal") {
		t.Errorf("%v", err)
	}
}

func TestForms(t *testing.T) {
	f, err := Row(Products, map[string]string{"name": " a product ", "form": "Dry", "rate_high": "2 lb/acre"}, nil)
	if p, ok := f.(*core.Product); err != nil || !ok || p.ProductName != "a product" || !p.Label.HasRateHigh {
		t.Errorf("%+v (%v)", f, err)
	}
	_, err = Row(Lawns, map[string]string{"lawn": "x", "zone": "front", "grass": "fescu", "area_sqft": "5"}, nil)
	if err == nil || err.Error() != `"fescu" is not a known grass.` {
		t.Errorf("%v", err)
	}
	_, err = Row(Lawns, map[string]string{"lawn": "x", "gras": "fescu"}, nil)
	if err == nil || !strings.HasPrefix(err.Error(), `lawns has no column "gras".`) {
		t.Errorf("%v", err)
	}
	_, err = Rows(Rig, []map[string]string{{"part": "rig", "name": "r"}, {"part": "compartment", "letter": "a"}}, nil)
	if err == nil || !strings.HasPrefix(err.Error(), "row 2, column capacity_gal: The cell is empty.") {
		t.Errorf("%v", err)
	}
	if _, err = Rows(Rig, nil, nil); err == nil || err.Error() != "No row is filled in." {
		t.Errorf("%v", err)
	}
	if _, err = Row("routes", nil, nil); err == nil || !strings.Contains(err.Error(), "no kind of sheet") {
		t.Errorf("%v", err)
	}
	for _, row := range []struct{ kind, column, cell, want string }{
		{Rig, "capacity_gal", "41 qt", ""},
		{Rig, "capacity_gal", "41 lb", `"41 lb" is a weight; this field takes a volume: gal, qt, pt, fl oz, L or mL.`},
		{Mixes, "rate", "2 lb per acre", ""},
		{Mixes, "rate", "2 fl_oz_per_acre", ""},
		{Mixes, "rate", "2 lb", `"2 lb" names no area; write the rate as lb per 1,000 sq ft, acre, m2 or ha.`},
		{Lawns, "customer", "", ""},
		{Lawns, "zone", " ", "The cell is empty."},
		{Lawns, "zome", "x", `lawns has no column "zome".`},
	} {
		got := ""
		if err := Check(row.kind, row.column, row.cell); err != nil {
			got = err.Error()
		}
		if got != row.want {
			t.Errorf("%s %s %q: %s", row.kind, row.column, row.cell, got)
		}
	}
}
