package label

import (
	"strconv"
	"strings"
	"testing"

	"example.com/tintline/core/measure"
)

// TestOrderFollowsTheSheets: where the four sheets agree on two steps, the usual order has them so; where they do not, the
// table says it of one of the two.
func TestOrderFollowsTheSheets(t *testing.T) {
	sheets := []struct {
		column int
		source string
	}{
		{3, "Oklahoma State University extension, herbicide mixing order"},
		{4, "South Dakota State University extension, mixing order"},
		{5, "Iowa State University, tank mixing procedures, 2021"},
		{6, "Utah State University extension, jar test, 2012"},
	}
	rows := readCSV("mixing_order.csv", mixingOrderCSV)
	agreed, apart := 0, 0
	for i, a := range rows {
		for _, b := range rows[i+1:] {
			before, after := "", ""
			for _, s := range sheets {
				if a[s.column] == "" || b[s.column] == "" {
					continue
				}
				x, _ := strconv.Atoi(a[s.column])
				y, _ := strconv.Atoi(b[s.column])
				if x == 0 || y == 0 {
					t.Fatalf("%s or %s: a step of %s is no number", a[0], b[0], s.source)
				}
				if x < y {
					before = s.source
				}
				if x > y {
					after = s.source
				}
			}
			switch said := a[7] + b[7]; {
			case before != "" && after != "":
				apart++
				if said == "" {
					t.Errorf("%s and %s stand otherwise in %q and %q, and no row says so", a[0], b[0], before, after)
				}
			case after != "":
				t.Errorf("%s goes in before %s, but %s has it after", a[0], b[0], after)
			case before != "":
				agreed++
			}
		}
	}
	if agreed < 30 || apart < 4 {
		t.Errorf("%d pairs agreed, %d not: the table has lost columns", agreed, apart)
	}
}

func TestOrderTables(t *testing.T) {
	seen := map[string]bool{}
	for _, c := range orderClasses {
		if c.Words == "" || c.Source == "" || len(c.Letters) == 0 {
			t.Errorf("%+v", c)
		}
		for _, l := range c.Letters {
			if seen[l] {
				t.Errorf("%s stands twice", l)
			}
			seen[l] = true
		}
	}
	for letters := range formulations {
		if _, ok := FindOrderClass(letters); !ok && letters != "g" && letters != "gr" {
			t.Errorf("%s has no step", letters)
		}
	}
	for class, all := range mixingCautions {
		_, ok := FindOrderClass(class)
		if !ok && class != cautionAll && class != cautionMany && class != cautionLiquids && class != OrderUnknown {
			t.Errorf("cautions for %s, which is no class", class)
		}
		for _, c := range all {
			if c.Says == "" || c.Source == "" {
				t.Errorf("%s: %+v", class, c)
			}
		}
	}
}

func toAdd(words string) []ToAdd {
	var out []ToAdd
	for _, w := range strings.Split(words, "|") {
		letters, own, _ := strings.Cut(w, "=")
		p := ToAdd{w, Entry{Form: measure.Liquid, MixingClass: letters, MixingOrder: own}}
		switch letters {
		case "wp", "75 DF", "wg":
			p.Entry.Form = measure.Dry
		case "feed":
			p.Entry.MixingClass, p.Entry.Kind = "sl", "fertiliser"
		case "stuff":
			p.Entry.MixingClass, p.Entry.Kind = "", "adjuvant"
		}
		out = append(out, p)
	}
	return out
}

func TestOrderOf(t *testing.T) {
	for _, row := range []struct{ name, order, products, want string }{
		{"the usual one", "", "ec|adjuvant|sl|sc|wp|75 DF|cs", "wp|75 DF|sc|cs|sl|ec|adjuvant"},
		{"what feeds comes last", "", "feed|ec|stuff", "ec|stuff|feed"},
		{"unknown comes last before surfactants", "", "adjuvant|xyz|ec|wp", "wp|ec|xyz|adjuvant"},
		{"one class stays as given", "", "wdg|wg|df", "wdg|wg|df"},
		{"an own order", "wp df sc ec sl adjuvant", "sl|ec", "ec|sl"},
		{"an own order by letters", "wdg, wp", "wp|wg", "wg|wp"},
		{"the label has the last word", "", "ec=first: fill a quarter, add it|wp|adjuvant", "ec=first: fill a quarter, add it|wp|adjuvant"},
		{"after a step", "", "sl|wp=after sl|ec", "sl|wp=after sl|ec"},
		{"with a step", "", "ec|wp=with ec|sl", "sl|ec|wp=with ec"},
		{"last, behind all", "", "ec=last|feed|adjuvant", "adjuvant|feed|ec=last"},
		{"words that say no place are passed over", "", "ec=when the moon is full|wp", "wp|ec=when the moon is full"},
	} {
		var o MixingOrder
		if row.order != "" {
			var err error
			if o, err = ReadMixingOrder(row.order); err != nil {
				t.Fatal(err)
			}
		}
		var got []string
		for _, s := range OrderOf(o, toAdd(row.products)...).Steps {
			got = append(got, s.Name)
		}
		if strings.Join(got, "|") != row.want {
			t.Errorf("%s: %s, want %s", row.name, strings.Join(got, "|"), row.want)
		}
	}
}

func TestOrderCautions(t *testing.T) {
	says := func(a Adding) string {
		var out []string
		for _, c := range a.Cautions {
			out = append(out, c.Says)
		}
		for _, s := range a.Steps {
			for _, c := range s.Cautions {
				out = append(out, s.Name+": "+c.Says)
			}
		}
		return strings.Join(out, "\n")
	}
	three := says(OrderOf(nil, toAdd("ec|wp|wsb|adjuvant")...))
	for _, want := range []string{"1/2 to 3/4", "wp: Stir it to a slurry first, 2 parts of water to 1", "wsb: Soluble bags go in before", "ec: Pour it into water that moves", "adjuvant: It goes in last", "a few minutes", "wsb: One sheet fills to 80"} {
		if !strings.Contains(three, want) {
			t.Errorf("%q is not in:\n%s", want, three)
		}
	}
	if strings.Contains(three, "More than three") {
		t.Error("a surfactant counts as a partner")
	}
	if four := says(OrderOf(nil, toAdd("ec|wp|sl|sc")...)); !strings.Contains(four, "More than three partners") {
		t.Error("four partners are not said")
	}
	if x := says(OrderOf(nil, toAdd("xyz")...)); !strings.Contains(x, "look at the label") {
		t.Error("an unknown class is not said")
	}
}

func TestReadMixingOrder(t *testing.T) {
	whole, err := ReadMixingOrder("wp df sc sl ec adjuvant")
	if err != nil || strings.Join(whole, " ") != "conditioner bag ams wp df sc cs sl ec adjuvant fertiliser" {
		t.Errorf("%v %v", whole, err)
	}
	for text, want := range map[string]string{
		"":           "The order of adding names no step.",
		"wp glue":    `"glue" is no step of filling a tank.`,
		"wdg df sc":  "The order of adding has df twice.",
		"wp sc ec f": "The order of adding has sc twice.",
	} {
		if _, err := ReadMixingOrder(text); err == nil || err.Error() != want {
			t.Errorf("%q: %v", text, err)
		}
	}
	for words, ok := range map[string]bool{"first": true, "Before EC: as it says": true, "after": false, "before glue": false, "": false, "with wg": true} {
		if err := CheckMixingOrder(words); (err == nil) != ok {
			t.Errorf("%q: %v", words, err)
		}
	}
}
