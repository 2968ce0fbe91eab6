package main

import (
	"fmt"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

// up is the letter that feeds the pump, 0 if none does.
func (w *writer) up() byte {
	if s := w.book.Plumbing().LineUp.Supply; len(s) > 0 {
		return s[0]
	}
	return 0
}

var mixOf = map[byte]string{warmLetter: mixWarm, coolLetter: mixCool, anyLetter: mixAny}

// visit is one call: the changeover, the finding gone on with, what is laid, and what else is written down until
// there are ten entries a visit.
func (w *writer) visit(name string, n int) {
	if w.err != nil {
		return
	}
	w.wait(5)
	if w.chance(45) {
		w.log(&core.VisitSkipped{Lawn: name, Reason: "gate locked"})
		return
	}
	lawn := w.book.Lawn(name)
	letter := w.liquidFor(lawn)
	w.refill(letter, lawn)
	w.changeOver(letter)
	w.log(&core.VisitBegun{Lawn: name})
	w.wait(2)
	if n%4 == 0 {
		w.weather()
	}
	if w.chance(30) {
		w.log(&core.Overridden{
			Rule: "weather", Lawn: name, Reason: "gusts only, low pressure tip", Weight: "ask",
			Said: "Wind 10 mph, 9 allowed by the label of one product in the tank.",
		})
	}
	w.lay(lawn, letter)
	w.more(lawn)
	w.log(&core.VisitDone{Lawn: name})
}

func (w *writer) liquidFor(l *core.Lawn) byte {
	switch {
	case w.turned+2 < w.changeovers && w.chance(12):
		return anyLetter
	case isWarm(l.Zones[0].Grass):
		return warmLetter
	}
	return coolLetter
}

// refill puts in more where a lawn would take the tank below its last gallons.
func (w *writer) refill(letter byte, l *core.Lawn) {
	c := w.book.Plumbing().Compartment(letter)
	need := measure.Gallons(l.Area().SquareFeet()/1000*1.5 + 22)
	if c.Liquid.Volume-c.Heel > need {
		return
	}
	room := measure.Gallons(float64(int((c.Room() - c.Capacity/10).Gallons())))
	w.wait(15)
	w.log(&core.Loaded{Into: string(rune(letter)), Volume: room, Mix: mixOf[letter], For: "gun"})
}

// changeOver turns the valves and pushes the hose charge out.
func (w *writer) changeOver(letter byte) {
	old := w.up()
	if old == letter {
		return
	}
	w.turned++
	w.log(&core.LinedUp{Supply: []byte{letter}, Return: letter})
	w.wait(1)
	push := &core.PushedBack{Volume: measure.Gallons(w.between(2.2, 3.4, 0.1))}
	switch {
	case w.chance(10):
		push.To = "waste/pail"
	case w.chance(3):
		push.Into = old
	default:
		push.Into = letter
	}
	facts := []core.Fact{push}
	if letter == coolLetter || old == coolLetter {
		first := w.between(40, 46, 1)
		facts = append(facts, &core.TintSeen{Seconds: core.Known(first), HalfSeconds: core.Known(first + w.between(2, 5, 1)), FullSeconds: core.Known(first + w.between(10, 16, 1))})
	}
	w.log(facts...)
}

// lay puts something on each zone: with the gun, a large one with the ride-on, and dry product in spring.
func (w *writer) lay(l *core.Lawn, letter byte) {
	for _, z := range l.Zones {
		w.wait(3)
		if z.Area > measure.SquareFeet(6500) && letter == warmLetter {
			w.rideOn(l, z)
			continue
		}
		w.log(&core.Sprayed{Lawn: l.LawnName, Zones: []string{z.Name}, Applicator: "gun"})
		if w.chance(200) {
			w.correct(l, z)
		}
	}
	if w.chance(25) {
		spot := core.Sprayed{Lawn: l.LawnName, Zones: []string{l.Zones[0].Name}, Applicator: "backpack", By: core.ByGallons}
		spot.Volume, spot.Area = core.Known(measure.Gallons(0.2)), core.Known(measure.SquareFeet(200))
		w.loadTank("backpack", mixAny, 3)
		w.log(&spot)
	}
	if month := w.at.Time().Month(); month < 4 && w.chance(3) {
		w.spread(l)
	}
}

func (w *writer) rideOn(l *core.Lawn, z core.Zone) {
	need := measure.Gallons(z.Area.SquareFeet()/1000*0.3 + 1)
	if t := w.book.Plumbing().Tank("ride-on"); t.Liquid.Volume < need {
		w.log(&core.Filled{Applicator: "ride-on", Volume: measure.Gallons(6)})
		w.wait(2)
	}
	w.log(&core.Sprayed{Lawn: l.LawnName, Zones: []string{z.Name}, Applicator: "ride-on"})
}

// correct strikes the spraying just logged, and puts what the meter said in its place.
func (w *writer) correct(l *core.Lawn, z core.Zone) {
	w.wait(1)
	right := &core.Sprayed{Lawn: l.LawnName, Zones: []string{z.Name}, Applicator: "gun", By: core.ByGallons}
	right.Volume = core.Known(measure.Gallons(z.Area.SquareFeet() / 1000 * w.between(1.4, 1.6, 0.02)))
	w.log(&core.Struck{Of: int64(w.book.Seq()), Reason: "slip", Instead: right})
}

func (w *writer) spread(l *core.Lawn) {
	for _, z := range l.Zones {
		need := measure.Pounds(z.Area.SquareFeet()/1000*3 + 1)
		var have measure.Mass
		for i := range w.book.Plumbing().Hoppers {
			have += w.book.Plumbing().Hoppers[i].Mass()
		}
		if have < need {
			w.log(&core.Loaded{Into: "spreader", Mix: mixDry, Parts: []core.LoadPart{{Product: w.book.Mix(mixDry).Parts[0].Product, Amount: measure.DryAmount(measure.Pounds(50))}}})
		}
		w.wait(4)
		w.log(&core.Spread{Lawn: l.LawnName, Zones: []string{z.Name}, Applicator: "spreader"})
	}
}

func (w *writer) weather() {
	w.log(&core.Weather{
		Wind: core.Known(measure.MPH(w.between(1, 10, 1))), WindFrom: "SSW", Temp: core.Known(w.between(48, 92, 1)),
		Humidity: core.Known(w.between(35, 95, 1)), RainFree: core.Known(w.between(6, 40, 1)), Inversion: "no",
	})
}

// more writes down what comes on, at least until the book has ten entries for each visit.
func (w *writer) more(l *core.Lawn) {
	const aVisit = 10
	for some := w.r.IntN(2); w.err == nil && (some > 0 || w.book.Seq()+1 < uint64(aVisit*(w.calls+1))); some-- {
		w.wait(1)
		switch w.r.IntN(8) {
		case 0, 1:
			w.weather()
		case 2, 3:
			w.gauge()
		case 4:
			w.log(&core.GrowthSeen{Lawn: l.LawnName, Zones: []string{l.Zones[0].Name}, Growth: "growing"})
		case 5:
			w.log(&core.Ran{Seconds: core.Known(w.between(20, 90, 5)), Pump: core.PumpOn})
		default:
			w.log(&core.Noted{Lawn: l.LawnName, Text: fmt.Sprintf("Edge by the walk is thin, look again in %d weeks.", 2+w.r.IntN(6))})
		}
	}
}

// gauge reads what feeds the pump, within about a gallon of what is booked.
func (w *writer) gauge() {
	c := w.book.Plumbing().Compartment(w.up())
	v := c.Liquid.Volume + measure.Gallons(w.between(-1, 1, 0.5))
	v = max(min(v, c.Capacity), 0)
	w.log(&core.GaugeRead{Compartment: c.Letter, Volume: core.Known(v)})
}
