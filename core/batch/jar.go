package batch

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"strings"

	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// JarStand is how long a jar stands before it is shaken and looked at, in minutes.
//
// Source: Utah State University extension, jar test, 2012.
const JarStand = 15

// JarAsk is a load of which a jar is to be made up.
type JarAsk struct {
	Volume   measure.Volume // of the load
	Parts    []JarPart
	Delivery measure.Rate      // for which it is made up; 0: not known
	Order    label.MixingOrder // none: the usual one
}

// JarPart is a product of the load.
type JarPart struct {
	Name   string
	Entry  label.Entry
	Amount measure.Amount
}

// Jar is a small one of the load: what goes into a quart, in the order of adding, and what the sheet gives for a pint.
type Jar struct {
	Parts     []JarStep
	StandsFor measure.Maybe[measure.Area] // the area that the quart stands for
	Working   []Step
}

// JarStep is a product of the jar.
type JarStep struct {
	Name    string
	Class   string
	InQuart measure.Amount // at the strength of the load
	InPint  string         // "1 tablespoon", by its class; empty: the sheet has none
	Source  string         // of InPint
}

//go:embed jar.csv
var jarCSV string

var jarSpoons = readJar(jarCSV)

func readJar(text string) map[string][2]string {
	rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil {
		panic("core/batch/jar.csv: " + err.Error()) // embedded: a broken table is a broken build, held by a test
	}
	out := map[string][2]string{}
	for _, r := range rows[1:] {
		out[r[0]] = [2]string{r[1], r[2]}
	}
	return out
}

// JarOf makes a load small: a quart of it, which stands for 250/G sq ft where it is laid at G gal per 1,000 sq ft, and
// holds 0.25/G of each product's rate per 1,000 sq ft (arithmetic). It fails with a measure.Trouble.
func JarOf(ask JarAsk) (Jar, error) {
	if ask.Volume <= 0 {
		return Jar{}, measure.Troublef("Give more than 0 gal.", "The load of which a jar is asked is %s gal.", ask.Volume.Text())
	}
	if len(ask.Parts) < 2 {
		return Jar{}, measure.Troublef("Name two or more.", "A jar holds at least two products; the load has %d.", len(ask.Parts))
	}
	var j Jar
	if ask.Delivery.V > 0 {
		area := ask.Delivery.AreaFor(measure.USQuart)
		j.StandsFor = measure.Known(area)
		j.Working = append(j.Working, Step{fmt.Sprintf("a quart at %s stands for %s sq ft", laying(ask.Delivery), area.Text())})
	}
	var products []label.ToAdd
	of := map[string]JarPart{}
	for _, p := range ask.Parts {
		products = append(products, label.ToAdd{Name: p.Name, Entry: p.Entry})
		of[p.Name] = p
	}
	for _, s := range label.OrderOf(ask.Order, products...).Steps {
		a := of[s.Name].Amount
		small := measure.Amount{N: measure.MulDivRound(a.N, int64(measure.USQuart), int64(ask.Volume)), Kind: a.Kind}
		spoons := jarSpoons[s.Class]
		j.Parts = append(j.Parts, JarStep{s.Name, s.Class, small, spoons[0], spoons[1]})
		j.Working = append(j.Working, Step{fmt.Sprintf("%s of %s in %s gal = %s in a quart", a.Text(), s.Name, ask.Volume.Text(), SmallText(small))})
	}
	return j, nil
}

// SmallText is an amount too small for ounces: millilitres or grams to two places.
func SmallText(a measure.Amount) string {
	if a.Kind == measure.Liquid {
		return fmt.Sprintf("%.2f mL", measure.Volume(a.N).Millilitres())
	}
	return fmt.Sprintf("%.2f g", measure.Mass(a.N).Grams())
}
