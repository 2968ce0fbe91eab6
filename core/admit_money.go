package core

import (
	"strings"

	"example.com/tintline/core/measure"
)

// What an investment can be at most.
const (
	longestUse      = 50.0  // years
	highestInterest = 100.0 // per cent a year
	mostSaved       = 480.0 // minutes at a lawn
)

// priced refuses a price that is no price.
func priced(what string, m Maybe[measure.Money]) error {
	if m.Known && (m.V < 0 || m.V > HighestPrice) {
		return refuse("Give 0 to 100,000 dollars.", "%s is %s.", what, m.V.Text())
	}
	return nil
}

func (s *state) admitPaid(f *Paid) error {
	switch {
	case !containsText(PaidKinds, f.What):
		return refuse("Say one of "+strings.Join(PaidKinds, ", ")+".", "%q is nothing that money is paid for.", f.What)
	case !f.Amount.Known || f.Amount.V == 0:
		return refuse("Say how much, such as 62.40.", "How much was paid for %s is not said.", f.What)
	case f.Fuel.Known && f.What != PaidFuel:
		return refuse("Leave the gallons out, or say that it was fuel.", "Gallons are given for %s.", f.What)
	}
	if err := priced("What was paid", f.Amount); err != nil {
		return err
	}
	if f.Fuel.Known {
		if err := positive("The fuel", f.Fuel.V); err != nil {
			return err
		}
	}
	if f.Of != "" && s.Investment(f.Of) == nil {
		return refuse(s.investmentsHint(), "There is no investment %q in the book.", f.Of)
	}
	return admitDate(f.Date)
}

func (s *state) investmentsHint() string {
	if len(s.invested) == 0 {
		return "Enter it first, or leave it out; the book has none yet."
	}
	var names []string
	for i := range s.invested {
		names = append(names, s.invested[i].Thing)
	}
	return "The book has " + strings.Join(names, ", ") + "."
}

func (s *state) admitInvested(f *Invested) error {
	if err := name("investment", f.Thing); err != nil {
		return err
	}
	if !f.Cost.Known {
		return refuse("Say it, such as 9,500.", "What %s cost is not said.", f.Thing)
	}
	for _, m := range []struct {
		what string
		v    Maybe[measure.Money]
	}{{"The cost of " + f.Thing, f.Cost}, {"The salvage of " + f.Thing, f.Salvage}, {"What " + f.Thing + " was sold for", f.SoldFor}} {
		if m.v.Known && (m.v.V < 0 || m.v.V > HighestCost) {
			return refuse("Give 0 to 1,000,000 dollars.", "%s is %s.", m.what, m.v.V.Text())
		}
	}
	if f.Date == "" {
		return refuse("Write it as in 2026-05-28.", "When %s was bought is not said.", f.Thing)
	}
	for _, d := range []string{f.Date, f.Retired} {
		if err := admitDate(d); err != nil {
			return err
		}
	}
	switch {
	case f.Retired != "" && f.Retired < f.Date:
		return refuse("Give a later date.", "%s would be retired on %s, before it was bought on %s.", f.Thing, f.Retired, f.Date)
	case f.SoldFor.Known && f.Retired == "":
		return refuse("Say on which date.", "%s was sold, but not when.", f.Thing)
	case f.Salvage.V > f.Cost.V:
		return refuse("Give at most what it cost.", "The salvage of %s, %s, is more than it cost, %s.", f.Thing, f.Salvage.V.Text(), f.Cost.V.Text())
	case f.Years.Known && !(f.Years.V > 0 && f.Years.V <= longestUse):
		return refuse("Give more than 0, up to 50 years.", "%s is to be in use for %g years.", f.Thing, f.Years.V)
	case f.Interest.Known && !(f.Interest.V >= 0 && f.Interest.V <= highestInterest):
		return refuse("Give 0 to 100 per cent a year.", "The interest on %s is %g per cent.", f.Thing, f.Interest.V)
	}
	return s.admitEarns(f)
}

func (s *state) admitEarns(f *Invested) error {
	switch {
	case f.Earns != "" && !containsText(EarnsKinds, f.Earns):
		return refuse("Say one of "+strings.Join(EarnsKinds, ", ")+".", "%q is no way in which %s earns.", f.Earns, f.Thing)
	case (f.Earns == EarnsApplicator || f.Earns == EarnsMinutes) && f.Applicator == "":
		return refuse(s.applicatorsHint(), "With which applicator %s works is not said.", f.Thing)
	case f.Applicator != "" && s.Applicator(f.Applicator) == nil:
		return refuse(s.applicatorsHint(), "There is no applicator %q.", f.Applicator)
	case f.Earns == EarnsMinutes && !f.Minutes.Known:
		return refuse("Say how many, such as 4.", "How many minutes %s saves at a lawn is not said.", f.Thing)
	case f.Minutes.Known && !(f.Minutes.V >= 0 && f.Minutes.V <= mostSaved):
		return refuse("Give 0 to 480 minutes.", "%s saves %g minutes at a lawn.", f.Thing, f.Minutes.V)
	}
	return nil
}

// admitTariff admits the prices of a lawn.
func admitTariff(f *Lawn) error {
	for _, m := range []struct {
		what string
		v    Maybe[measure.Money]
	}{{"The price of a visit at ", f.Price}, {"The least price at ", f.PriceMinimum}, {"The price for 1,000 sq ft at ", f.PricePer1000}} {
		if err := priced(m.what+f.LawnName, m.v); err != nil {
			return err
		}
	}
	if f.PriceIncluded.Known && (f.PriceIncluded.V < 0 || f.PriceIncluded.V > LargestArea) {
		return refuse("Give 0 or more, up to 10 square kilometres.", "The area included at %s is %.6g sq ft.", f.LawnName, f.PriceIncluded.V.SquareFeet())
	}
	return nil
}
