package tui

import (
	"strings"
	"testing"
)

func TestProductsAreListedWithWhatIsAboard(t *testing.T) {
	c := climbIn(t, morning).press("g", "p").sees("Example Warm", "liquid herbicide", "12 blank")
	all, _ := c.book().Aboard("Example Iron")
	c.sees(all.Text())
}

func TestProductPage(t *testing.T) {
	c := climbIn(t, morning).press("g", "p", "down", "enter").sees(
		"Example Cool", "triclopyr 4 lb per gal; herbicide", "HRAC 4", "00000-2", "0.2 fl oz per 1,000 sq ft", "tall fescue, Kentucky bluegrass",
		"most in a year      blank: not checked", "still to enter for today: most in a year, days between, wind limit",
	).size(200, 60).sees("in compartment b", "fescue, bluegrass  0.15 fl oz").press("pgdown", "pgdown", "pgdown").sees(
		"I  injures", "this label entry lays 0.136 to 0.272 lb per acre of it", "recalled, not read", "version 1", "2026-05-28 09:22, in force: as first entered",
	).size(80, 24)
	c.press("esc").sees("Example Iron").press("esc").sees("take from")
}

func TestProductShowsEachVersion(t *testing.T) {
	again := `
{"fact":"product","name":"Example Iron","form":"dry","kind":"iron","grasses":["tall_fescue"]}`
	climbIn(t, morning+again).press("g", "p", "down", "down", "enter").sees("actives             blank: not checked").size(120, 60).
		press("pgdown", "pgdown").sees("version 2", "in force: grasses with tall fescue; without all turf; lowest rate blank, was 1", "highest rate blank, was 4 oz per 1,000 sq ft", "version 1", "as first entered")
}

func TestProductsByTaps(t *testing.T) {
	c := climbIn(t, morning).tapOn("g pages").tapOn("Products").tapOn("Example Warm").sees("metsulfuron-methyl")
	c.tapOn("bermuda, zoysia").sees("stands in a", "listed for").tapOn("Esc back").sees("metsulfuron-methyl")
	if c.facts() != "" {
		t.Errorf("logged: %s", c.facts())
	}
}

func TestNewMixFromAnotherByTaps(t *testing.T) {
	c := climbIn(t, morning).tapOn("g pages").tapOn("Mixes").tapOn("bermuda, zoysia").tapOn("n new from this")
	c.sees("add to bermuda, zoysia").tapOn("2 Example Iron").tapOn("Enter go on")
	c.sees("1 1.00 oz per 1,000 sq ft").tapOn("2 4.00 oz per 1,000 sq ft").tapOn("Enter go on")
	c.tapOn("1 bermuda, zoysia + Example Iron").tapOn("Enter log it")
	c.sees("made from", "Example Iron 4.00 oz per 1,000 sq ft is added", "common bermudagrass, zoysiagrass (by each")
	mix := c.book().Mix("bermuda, zoysia + Example Iron")
	if c.facts() != "mix" || mix == nil || len(mix.Parts) != 2 || mix.Base != "bermuda, zoysia" {
		t.Errorf("logged %s: %+v", c.facts(), mix)
	}
}

func TestNewMixAboveTheLabelIsRefused(t *testing.T) {
	c := climbIn(t, morning).size(120, 40).press("g", "x", "enter", "n").type_("example warm 2").type_("strong")
	c.sees("Example Warm: 2.00 is above the label's most, 1.50 fl oz per 1,000 sq ft (mix strong).")
	if c.facts() != "" || c.book().Mix("strong") != nil {
		t.Errorf("logged: %s", c.facts())
	}
	c.press("esc", "n").type_("example warm 1.4").type_("strong")
	c.sees("Example Warm 1.40 fl oz per 1,000 sq ft, there 1.20 fl oz per 1,000 sq ft")
	c.press("n").type_("Example Cool 0.05 fl oz per 1,000 sq ft").type_("both")
	c.sees("UNDER THE LABEL", "no grass by each of its products", "made from  strong")
}

func TestAMixStaysWhenTheLabelIsLowered(t *testing.T) {
	climbIn(t, morning+weedAndIron).press("g", "x", "down", "down", "down", "enter").size(120, 40).
		sees("Example Iron", "OVER THE LABEL: 1 to 3.5 oz")
}

func TestNewMixKeepsWhatWasTyped(t *testing.T) {
	c := climbIn(t, morning).size(120, 40).press("g", "x", "enter", "n")
	c.type_("Exmple Iron 2").sees("does not begin with a product", "The nearest name is Example Iron.", "Exmple Iron 2")
	c.press("esc", "n").type_("Example Iron 2 gal").sees("Example Iron 2 gal", "add to")
	c.press("esc", "n").type_("Example Iron 2").type_("bermuda, zoysia").sees("There is a mix bermuda, zoysia already.")
	c.press("esc").sees("One mix")
	if c.facts() != "" {
		t.Errorf("logged: %s", c.facts())
	}
}

func TestPagesOfAnEmptyBookSayWhatIsMissing(t *testing.T) {
	rig := strings.Split(truck(t), "\n")[0]
	c := climbIn(t, noBook)
	enterLines(t, c.book(), c.at, rig)
	c.size(80, 24).press("g", "p").sees("The book has no product yet.").press("esc", "g", "x").sees("The book has no mix yet.")
}

// weedAndIron is a mix that is made from another and lays too much of one product since its label was read again.
const weedAndIron = `
{"fact":"mix","name":"weed and iron","base":"bermuda, zoysia","parts":[{"product":"Example Iron","rate_oz_per_1000_sqft":4}]}
{"fact":"product","name":"Example Iron","form":"dry","kind":"iron","grasses":["all_turf"],"rate_low_oz_per_1000_sqft":1,"rate_high_oz_per_1000_sqft":3.5}`

func TestNewProductAndMixAreForms(t *testing.T) {
	c := climbIn(t, morning).press("g", "p", "n")
	if c.model().form == nil {
		t.Fatalf("no form:\n%s", c.screen())
	}
	c = climbIn(t, morning).press("g", "x", "n")
	if c.model().form == nil {
		t.Fatalf("no form:\n%s", c.screen())
	}
}
