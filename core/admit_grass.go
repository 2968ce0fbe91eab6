package core

import (
	"strings"
	"time"

	"example.com/tintline/core/label"
)

func (s *state) admitGrowthSeen(f *GrowthSeen, at Moment) error {
	lawn := s.Lawn(f.Lawn)
	if lawn == nil {
		return s.noLawn(f.Lawn)
	}
	for _, z := range f.Zones {
		if _, ok := lawn.Zone(z); !ok {
			return s.noZone(lawn, z)
		}
	}
	if f.Growth == "" {
		return refuse("Say one of "+strings.Join(label.Growths(), ", ")+".", "The state of growth is not said.")
	}
	if f.Since > at.Date() {
		return refuse("Give the date since which it has been so.", "How it grows was seen on %s, and is said to be so since %s.", at.Date(), f.Since)
	}
	return admitGrowth(f.Growth, f.Since)
}

// admitGrowth admits a state of growth and its date, either of them empty.
func admitGrowth(growth, since string) error {
	if growth != "" && !containsText(label.Growths(), growth) {
		return refuse("Say one of "+strings.Join(label.Growths(), ", ")+".", "%q is not a state of growth.", growth)
	}
	return admitDate(since)
}

// admitDate admits a date or nothing.
func admitDate(date string) error {
	if date == "" {
		return nil
	}
	if _, err := time.Parse(time.DateOnly, date); err != nil {
		return refuse("Write it as in 2026-05-28.", "%q is not a date.", date)
	}
	return nil
}

func (s *state) admitCautioned(f *Cautioned) error {
	weights := []string{"stop", "ask", "note", NoCaution}
	if !containsText(weights, f.Weight) {
		return refuse("Say one of "+strings.Join(weights, ", ")+".", "%q is not a weight of a note.", f.Weight)
	}
	if f.Product != "" && s.Product(f.Product) == nil {
		return s.noProduct(f.Product)
	}
	if f.Product != "" && f.Active != "" {
		return refuse("Name one of the two.", "The note names a product and an active.")
	}
	if f.Active != "" && f.Weight != NoCaution && !s.knownActive(f.Active) {
		return refuse("Nearest known names: "+strings.Join(label.NearestActives(f.Active), ", ")+".", "%q is no active that the reference or a product of the book has.", f.Active)
	}
	if f.Grass != "" {
		if err := knownGrass(f.Grass, false); err != nil {
			return err
		}
	}
	lawn := s.Lawn(f.Lawn)
	switch {
	case f.Lawn != "" && lawn == nil:
		return s.noLawn(f.Lawn)
	case f.Zone != "" && lawn == nil:
		return refuse("Name its lawn.", "The note is about a zone %q of no lawn.", f.Zone)
	case f.Zone != "":
		if _, ok := lawn.Zone(f.Zone); !ok {
			return s.noZone(lawn, f.Zone)
		}
	}
	if f.Weight != NoCaution && strings.TrimSpace(f.Says) == "" {
		return refuse("Say why, in a few words.", "The note says nothing.")
	}
	if f.Product == "" && f.Active == "" && f.Grass == "" && f.Lawn == "" {
		return refuse("Name a product, an active, a grass or a lawn.", "The note is about nothing.")
	}
	return nil
}

// knownActive tells whether the reference or a label entry of the book has an active: a note on a name that was typed wrong
// would never be heard.
func (s *state) knownActive(name string) bool {
	if _, ok := label.FindActive(name); ok {
		return true
	}
	for i := range s.products {
		for _, a := range s.products[i].Now().Label.Actives {
			if ActiveName(a.Name) == ActiveName(name) {
				return true
			}
		}
	}
	return false
}
