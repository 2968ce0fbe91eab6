package core

import (
	"fmt"
	"strings"

	"example.com/tintline/core/label"
)

func admitLawn(f *Lawn) error {
	if err := name("lawn", f.LawnName); err != nil {
		return err
	}
	if len(f.Zones) == 0 {
		return refuse("Give it at least one zone with a grass and an area.", "The lawn %s has no zone.", f.LawnName)
	}
	if err := admitDate(f.KnownSince); err != nil {
		return err
	}
	if err := admitWhereAndWhen(f); err != nil {
		return err
	}
	if err := admitTariff(f); err != nil {
		return err
	}
	for i := range f.Zones {
		if err := admitZone(f.LawnName, &f.Zones[i]); err != nil {
			return err
		}
	}
	return unique("zone", f.ZoneNames())
}

func admitZone(lawn string, z *Zone) error {
	if err := name("zone", z.Name); err != nil {
		return err
	}
	if z.Grass == "" {
		return refuse("Name the grass; the check cannot work without it.", "The zone %s of %s has no grass.", z.Name, lawn)
	}
	if err := knownGrass(z.Grass, false); err != nil {
		return err
	}
	if z.Area <= 0 || z.Area > LargestArea {
		return refuse("Give more than 0, up to 10 square kilometres.", "The area of zone %s of %s is %.6g sq ft.", z.Name, lawn, z.Area.SquareFeet())
	}
	if z.Price.Known && (z.Price.V < 0 || z.Price.V > HighestPrice) {
		return refuse("Give 0 to 100,000 dollars.", "The price of zone %s of %s is %s.", z.Name, lawn, z.Price.V.Text())
	}
	if z.Growth == "" && z.GrowthSince != "" {
		return refuse("Say one of "+strings.Join(label.Growths(), ", ")+", or leave the date out.", "The growth of zone %s of %s has a date and no state.", z.Name, lawn)
	}
	if err := admitGrowth(z.Growth, z.GrowthSince); err != nil {
		return err
	}
	for _, s := range z.Sites {
		if !containsText(label.SiteKinds(), s.Kind) {
			return refuse("Say one of "+strings.Join(label.SiteKinds(), ", ")+".", "%q is no kind of site in zone %s of %s.", s.Kind, z.Name, lawn)
		}
		if s.Feet.Known && (s.Feet.V < 0 || s.Feet.V > FurthestFeet) {
			return refuse(fmt.Sprintf("Give 0 to %d ft.", FurthestFeet), "The %s by zone %s of %s is %.6g ft off.", label.SiteWords(s.Kind), z.Name, lawn, s.Feet.V)
		}
		if err := admitDate(s.Date); err != nil {
			return err
		}
	}
	return nil
}
