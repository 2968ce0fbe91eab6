package fluid

import (
	"sort"
	"strings"

	"example.com/tintline/core/measure"
)

// Place names where liquid can be. Inside the rig: "compartment/a", "cell", "return_line", "hose/H",
// "applicator/N". Outside: "water", "package/P", "zone/LAWN/ZONE", "waste/NAME", "unexplained".
type Place string

// The places that have no name of their own.
const (
	WaterSupply Place = "water"
	CellPlace   Place = "cell"
	ReturnPlace Place = "return_line"
	Unexplained Place = "unexplained"
)

// CompartmentPlace, HosePlace, ApplicatorPlace, PackagePlace, ZonePlace and WastePlace name the others.
func CompartmentPlace(letter byte) Place { return Place("compartment/" + string(letter)) }

// HosePlace is the place of a hose.
func HosePlace(name string) Place { return Place("hose/" + name) }

// ApplicatorPlace is the place of an applicator's own tank and of its hopper.
func ApplicatorPlace(name string) Place { return Place("applicator/" + name) }

// PackagePlace is where a product comes from; its account goes below zero as it is used.
func PackagePlace(product string) Place { return Place("package/" + product) }

// ZonePlace is a part of a lawn.
func ZonePlace(lawn, zone string) Place { return Place("zone/" + lawn + "/" + zone) }

// WastePlace is where something was dumped.
func WastePlace(name string) Place { return Place("waste/" + name) }

// Split returns the kind of place and its name; the name is empty for places that have none.
func (p Place) Split() (kind, name string) {
	kind, name, _ = strings.Cut(string(p), "/")
	return kind, name
}

// Accounts holds what has come to each place outside the rig, less what has left it.
type Accounts map[Place]Liquid

// Give books l to a place outside. Nothing opens no account.
func (a Accounts) Give(p Place, l Liquid) {
	if l.Empty() {
		return
	}
	l.From = nil
	a[p] = a[p].Plus(l)
}

// Take books l from a place outside. Nothing opens no account.
func (a Accounts) Take(p Place, l Liquid) {
	if l.Empty() {
		return
	}
	h := a[p]
	a[p] = Liquid{Volume: h.Volume - l.Volume, Holds: h.Holds.Minus(l.Holds)}
}

// Places lists the accounts in order of their names.
func (a Accounts) Places() []Place {
	out := make([]Place, 0, len(a))
	for p := range a {
		out = append(out, p)
	}
	sort.Slice(out, func(i, j int) bool { return out[i] < out[j] })
	return out
}

// Account is one line of the whole account.
type Account struct {
	Place    Place
	Volume   measure.Volume
	Products Parts
}
