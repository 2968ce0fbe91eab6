package main

import (
	"example.com/tintline/core"
	"example.com/tintline/core/glance"
	"example.com/tintline/core/measure"
)

// checkAnswer is what check --json prints.
type checkAnswer struct {
	Verdict  string       `json:"verdict"`
	Findings []findingRow `json:"findings"`
	Plan     struct {
		Gal     float64  `json:"gal"`
		Stays   *float64 `json:"stays_gal"`
		Seconds *float64 `json:"seconds"`
		// What is spread, by weight: null where nothing is.
		Product     *string  `json:"product"`
		Amount      *float64 `json:"amount_lb"`
		HopperStays *float64 `json:"hopper_stays_lb"`
		FromBag     *float64 `json:"from_bag_lb"`
	} `json:"plan"`
	NotChecked []string           `json:"not_checked"`
	Changeover *glance.Changeover `json:"changeover"` // null where the nozzle is clean enough
}

// findingRow is a finding; reason is why the operator goes on in spite of it.
type findingRow struct {
	Rule         string           `json:"rule"`
	Weight       string           `json:"weight"`
	Part         string           `json:"part"`
	Product      *string          `json:"product"`
	Products     []string         `json:"products"` // all of which the same is said
	Active       *string          `json:"active"`
	Grass        *string          `json:"grass"`
	Zone         *string          `json:"zone"` // null where it is about none, or several
	Zones        []string         `json:"zones"`
	Area         float64          `json:"area_sqft"`
	Multiple     *float64         `json:"multiple"`
	ShareOfLabel *float64         `json:"share_of_label"`
	Limit        *float64         `json:"limit"`
	Figured      *float64         `json:"figured"`
	Unit         *string          `json:"unit"`
	Ground       string           `json:"ground"`
	Source       *string          `json:"source"`
	Says         string           `json:"says"`
	Do           string           `json:"do"`
	PushBack     *glance.PushBack `json:"push_back"`
	Reason       *string          `json:"reason"`
	About        *string          `json:"about"` // which of the things that the rule looks at
	Also         []findingRow     `json:"also"`  // what was merged into it, each as it was found
}

func number(m core.Maybe[float64]) *float64 {
	if !m.Known {
		return nil
	}
	return &m.V
}

func gallons(m core.Maybe[measure.Volume]) *float64 {
	if !m.Known {
		return nil
	}
	gal := m.V.Gallons()
	return &gal
}

func pounds(m core.Maybe[measure.Mass]) *float64 {
	if !m.Known {
		return nil
	}
	lb := m.V.Pounds()
	return &lb
}

func text(s string) *string {
	if s == "" {
		return nil
	}
	return &s
}
