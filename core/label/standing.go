package label

import (
	"strings"

	"example.com/tintline/core/measure"
)

// Standing is how a rate stands to those of a label entry.
type Standing int

// The standings. Against a blank rate nothing is held.
const (
	Unheld Standing = iota // the entry has no rate to hold it against
	TooLow
	Within
	TooHigh
)

// Hold holds a rate against the lowest and the highest of the entry, for whatever grass, as far as they are entered.
func (e Entry) Hold(r measure.Rate) Standing {
	most, least := e.MostAnywhere(), e.leastAnywhere()
	switch {
	case r.Kind != e.Form || !most.Known && !least.Known:
		return Unheld
	case most.Known && r.V > most.V.V:
		return TooHigh
	case least.Known && r.V < least.V.V:
		return TooLow
	}
	return Within
}

// MostAnywhere is the most that the label allows in one application on the grass where it allows most; unknown where the
// entry has no limit for one of its grasses.
func (e Entry) MostAnywhere() measure.Maybe[measure.Rate] {
	var most measure.Maybe[measure.Rate]
	for i, g := range e.rated() {
		m := e.MostFor(g)
		switch {
		case !m.Known:
			return m
		case i == 0 || m.V.V > most.V.V:
			most = m
		}
	}
	return most
}

// leastAnywhere is the lowest rate on the grass for which it is lowest.
func (e Entry) leastAnywhere() measure.Maybe[measure.Rate] {
	var least measure.Maybe[measure.Rate]
	for i, g := range e.rated() {
		low, _ := e.RatesFor(g)
		switch {
		case !low.Known:
			return low
		case i == 0 || low.V.V < least.V.V:
			least = low
		}
	}
	return least
}

// rated are the grasses for which an entry may have different rates: those that it lists, and AllTurf for all others
// where it lists every turfgrass, or none.
func (e Entry) rated() []string {
	if len(e.Grasses) > 0 && !e.Lists(AllTurf) {
		return e.Grasses
	}
	out := []string{AllTurf}
	for _, r := range e.Rates {
		out = append(out, r.Grasses...)
	}
	return out
}

// Blank names what the entry leaves out, so that it is not checked. What the label has none of is no blank.
func (e Entry) Blank() []string {
	var out []string
	for _, f := range []struct {
		known bool
		limit string // the key of what the label may have none of
		name  string
	}{
		{len(e.Actives) > 0, "", "actives"},
		{e.Registration != "", "", "registration"},
		{len(e.Grasses) > 0, "", "grasses"},
		{e.HasRateLow || e.leastAnywhere().Known, LimitRateLow, "lowest rate"},
		{e.HasRateHigh || e.MostAnywhere().Known, LimitRateHigh, "highest rate"},
		{e.HasWindMax, LimitWindMax, "wind limit"},
		{e.MostYear.Known, LimitMostYear, "most in a year"},
		{e.MostTimes.Known, LimitMostTimes, "times a year"},
		{e.DaysBetween.Known, LimitDaysBetween, "days between"},
		{e.TempMax.Known, LimitTempMax, "highest temperature"},
		{e.TempMin.Known, LimitTempMin, "lowest temperature"},
		{e.RainFree.Known, LimitRainFree, "rain-free hours"},
		{e.NoInversion != "", "", "inversion"},
		{e.ReseedDays.Known, LimitReseed, "wait before seeding"},
		{e.NewTurfDays.Known, LimitNewTurf, "wait on new turf"},
		{e.WaterFeet.Known, LimitWater, "strip along water"},
		{e.NoBloom != "", "", "bloom"},
	} {
		if !f.known && !(f.limit != "" && e.NoneOnLabel(f.limit)) {
			out = append(out, f.name)
		}
	}
	return out
}

// pesticides are the words of a kind of product that is sold under a registration number.
var pesticides = []string{"herbicide", "insecticide", "fungicide", "growth regulator", "pesticide", "miticide", "nematicide"}

// Pesticide tells whether a product is one that is sold under a registration number, by its kind or the class of an
// active. Fertiliser, iron, surfactant and dye are not.
func (e Entry) Pesticide() bool {
	kind := strings.ReplaceAll(strings.ToLower(e.Kind), "_", " ")
	for _, p := range pesticides {
		if strings.Contains(kind, p) {
			return true
		}
	}
	for _, a := range e.Actives {
		if info, ok := FindActive(a.Name); ok && !info.harmless() {
			return true
		}
	}
	return false
}

// OffRecord says why the record of what is laid of a product stays incomplete; empty if nothing keeps it so.
func (e Entry) OffRecord() string {
	if e.Registration == "" && e.Pesticide() {
		return "no registration number: the record of it stays incomplete"
	}
	return ""
}

// ListedByAll lists the grasses that all of these entries list, in order of their names: AllTurf alone if each of them
// lists every turfgrass.
func ListedByAll(entries []Entry) []string {
	var out []string
	general := len(entries) > 0
	for _, e := range entries {
		general = general && e.Lists(AllTurf)
	}
	if general {
		return []string{AllTurf}
	}
	for _, g := range grasses {
		all := len(entries) > 0
		for _, e := range entries {
			all = all && e.Lists(g.Name)
		}
		if all {
			out = append(out, g.Name)
		}
	}
	return out
}
