package core

import (
	"errors"
	"fmt"
	"strings"

	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
)

func (s *state) admitLoaded(f *Loaded) error {
	if h := s.loadsHopper(f); h != nil {
		return s.admitHopperLoad(f, h)
	}
	t, _ := s.tank(f.Into)
	if t == nil {
		return s.noTank(f)
	}
	if err := positive("The load for "+f.Into, f.Volume); err != nil {
		return err
	}
	if err := admitMeters(f.MeterBefore, f.MeterAfter); err != nil {
		return err
	}
	if f.Mix != "" && s.Mix(f.Mix) == nil {
		return refuse(s.mixesHint(), "There is no mix %q in the book.", f.Mix)
	}
	if f.For != "" && s.Applicator(f.For) == nil {
		return refuse(s.applicatorsHint(), "The load is made up for %q, which is no applicator.", f.For)
	}
	var names []string
	var liquid measure.Volume
	for _, p := range f.Parts {
		prod := s.Product(p.Product)
		if prod == nil {
			return s.noProduct(p.Product)
		}
		names = append(names, p.Product)
		if p.Amount.Kind != prod.Label.Form {
			return refuse("Give a "+measureWords(prod.Label.Form)+".", "%s is %s, but its amount is a %s.", p.Product, formWords(prod.Label.Form), measureWords(p.Amount.Kind))
		}
		if p.Amount.N <= 0 || p.Amount.N > largestAmount {
			return refuse("Give more than 0, and no more than the tank could take.", "The amount of %s is %s.", p.Product, p.Amount.Text())
		}
		if p.Amount.Kind == measure.Dry && p.Amount.N/strongest > int64(f.Volume) {
			return refuse("Correct the amount or the volume.", "The load of %s gal cannot hold %s of %s.", f.Volume.Text(), p.Amount.Text(), p.Product)
		}
		if p.Amount.Kind == measure.Liquid {
			liquid += measure.Volume(p.Amount.N)
		}
		if liquid > f.Volume {
			return refuse("Correct the amounts or the volume.", "The products are %s gal or more together; the load is %s gal in all.", liquid.Text(), f.Volume.Text())
		}
	}
	if err := unique("product", names); err != nil {
		return err
	}
	return s.fits(f.Into, t, f.Volume, 0)
}

func measureWords(k measure.Kind) string {
	if k == measure.Dry {
		return "weight"
	}
	return "volume"
}

func (s *state) placesHint() string {
	var have []string
	for i := range s.plumbing.Compartments {
		have = append(have, string(fluid.CompartmentPlace(s.plumbing.Compartments[i].Letter)))
	}
	for i := range s.plumbing.Tanks {
		have = append(have, string(fluid.ApplicatorPlace(s.plumbing.Tanks[i].Name)))
	}
	return "Name one of " + strings.Join(have, ", ") + "."
}

func (s *state) tanksHint() string {
	var have []string
	for i := range s.plumbing.Compartments {
		have = append(have, string(s.plumbing.Compartments[i].Letter))
	}
	for i := range s.plumbing.Tanks {
		have = append(have, s.plumbing.Tanks[i].Name)
	}
	if len(have) == 0 {
		return "Enter the rig first."
	}
	return "The rig has " + strings.Join(have, ", ") + "."
}

// fits refuses more than a tank has room for; out is what the same move takes out of it.
func (s *state) fits(name string, t *fluid.Tank, in, out measure.Volume) error {
	if after := t.Liquid.Volume + in - out; after > t.Capacity {
		return tooMuch(name, t, in, t.Room()+out)
	}
	return nil
}

// tooMuch says that in does not fit into a tank and most would.
func tooMuch(name string, t *fluid.Tank, in, most measure.Volume) error {
	do := "read its gauge and log it first, if it holds less than that."
	if len(name) > 1 {
		do = "log first what it has laid."
	}
	if most > 0 {
		// Rounded down, so that what is offered fits.
		do = fmt.Sprintf("Give at most %.2f gal, or %s", float64(measure.MulDiv(int64(most), 100, int64(measure.USGallon)))/100, do)
	} else {
		do = "It is full; " + do
	}
	return refuse(do, "%s holds %s of %s gal; %.2f gal more do not fit.", tankWords(name), t.Liquid.Volume.Text(), t.Capacity.Text(), in.Gallons())
}

func tankWords(name string) string {
	if len(name) == 1 {
		return "Compartment " + name
	}
	return "The tank of " + name
}

func spaced(letters []byte) string {
	var out []string
	for _, l := range letters {
		out = append(out, string(l))
	}
	return strings.Join(out, " and ")
}

func beyond(name string, v, have, band measure.Volume, do string) error {
	return &Problem{
		What: fmt.Sprintf("%s can give %s gal by the book, give or take %s gal; this takes %s gal.", name, have.Text(), band.Text(), v.Text()),
		Do:   do,
		Err:  errors.Join(ErrRefused, ErrReadGauge),
	}
}

func (s *state) admitSprayed(f *Sprayed) error {
	if err := s.needDay("log a spraying"); err != nil {
		return err
	}
	lawn := s.Lawn(f.Lawn)
	if lawn == nil {
		return s.noLawn(f.Lawn)
	}
	a := s.Applicator(f.Applicator)
	if a == nil {
		return refuse(s.applicatorsHint(), "There is no applicator %q.", f.Applicator)
	}
	if a.Type == Spreader {
		return refuse("Log it as a spreading, by weight, or name an applicator that sprays.", "%s spreads dry product and sprays no liquid.", a.Name)
	}
	for _, z := range f.Zones {
		if _, ok := lawn.Zone(z); !ok {
			return s.noZone(lawn, z)
		}
	}
	if err := unique("zone", f.Zones); err != nil {
		return err
	}
	switch f.By {
	case ByArea, ByGallons, ByGauge:
	default:
		return refuse("Write area, gallons or gauge.", "A spraying is measured by %q, which is none of the ways.", f.By)
	}
	if f.Area.V <= 0 || f.Area.V > LargestArea {
		return refuse("Give more than 0 sq ft, up to 10 square kilometres.", "The area sprayed is %s sq ft.", f.Area.V.Text())
	}
	if !f.Volume.Known {
		return refuse("Give the gallons.", "A spraying by gallons needs its volume.")
	}
	if err := positive("The volume sprayed", f.Volume.V); err != nil {
		return err
	}
	if err := admitTeaching(f.Teaching); err != nil {
		return err
	}
	t := s.plumbing.Tank(f.Applicator)
	if t == nil {
		return s.passes(a.Hose, f.Volume.V, f.Bypass)
	}
	if f.Bypass.Known && f.Bypass.V != 0 {
		return refuse("Leave the bypass out.", "%s lays from a tank of its own, so nothing goes through the bypass.", a.Name)
	}
	if band := s.Band(&t.Tank); f.Volume.V > t.Liquid.Volume+band {
		return beyond("The tank of "+f.Applicator, f.Volume.V, t.Liquid.Volume, band, "Fill it and log the fill first, or log what really went down.")
	}
	return nil
}

func (s *state) admitGauge(f *GaugeRead) error {
	c := s.plumbing.Compartment(f.Compartment)
	if c == nil {
		return s.noCompartment(f.Compartment)
	}
	if !f.Volume.Known {
		return refuse("Give the gallons, or the mark.", "The reading of %c has no volume.", f.Compartment)
	}
	if f.Volume.V < 0 || f.Volume.V > c.Capacity {
		return refuse(fmt.Sprintf("Give 0 to %s gal.", c.Capacity.Text()), "The gauge of %c cannot say %s gal.", f.Compartment, f.Volume.V.Text())
	}
	if f.GiveOrTake.Known && (f.GiveOrTake.V < 0 || f.GiveOrTake.V > c.Capacity) {
		return refuse(fmt.Sprintf("Give 0 to %s gal, or leave it out.", c.Capacity.Text()), "The reading of %c is to be right within %s gal.", f.Compartment, f.GiveOrTake.V.Text())
	}
	return admitTeaching(f.Teaching)
}

func (s *state) admitRinsed(f *Rinsed) error {
	c := s.plumbing.Compartment(f.Compartment)
	if c == nil {
		return s.noCompartment(f.Compartment)
	}
	if err := positive("The rinse water", f.Water); err != nil {
		return err
	}
	if err := s.fits(string(f.Compartment), &c.Tank, f.Water, 0); err != nil {
		return err
	}
	if f.To == "" {
		return nil
	}
	return s.reaches("compartment/"+string(f.Compartment), f.To, c.Liquid.Volume+f.Water-c.Heel)
}

func (s *state) admitDumped(f *Dumped) error {
	if f.Amount.Known {
		return s.admitHopperDump(f)
	}
	kind, _ := fluid.Place(f.From).Split()
	switch kind {
	case "compartment", "applicator", "hose", string(fluid.CellPlace), string(fluid.ReturnPlace):
	default:
		return refuse("Name compartment/a, applicator/NAME, hose/NAME, cell or return_line.", "%q is no place of the rig.", f.From)
	}
	held := s.held(fluid.Place(f.From))
	if held == 0 {
		return refuse("Name a place that holds some.", "%s holds nothing.", f.From)
	}
	if f.Volume.V <= 0 || f.Volume.V > held {
		return refuse("Give more than 0 and no more than it holds, or leave the volume out for all of it.", "%s holds %s gal; %s gal cannot run out of it.", f.From, held.Text(), f.Volume.V.Text())
	}
	return s.reaches(f.From, f.To, f.Volume.V)
}

// reaches refuses a place that is none, that is the same, or that has no room.
func (s *state) reaches(from, to string, v measure.Volume) error {
	kind, rest := fluid.Place(to).Split()
	if from == to {
		return refuse("Name another place.", "%s is where it comes from.", to)
	}
	switch kind {
	case "waste":
		return name("place for waste", rest)
	case "compartment", "applicator":
		t, letter := s.tank(rest)
		if t == nil || (letter != 0) != (kind == "compartment") {
			return refuse(s.placesHint(), "There is no %s.", to)
		}
		return s.fits(rest, t, v, 0)
	case "zone":
		l, z, _ := strings.Cut(rest, "/")
		lawn := s.Lawn(l)
		if lawn == nil {
			return s.noLawn(l)
		}
		if _, ok := lawn.Zone(z); !ok {
			return s.noZone(lawn, z)
		}
		return nil
	}
	return refuse("Name waste/NAME, compartment/a, applicator/NAME or zone/LAWN/ZONE.", "%q is no place that liquid can go to.", to)
}
