package tally

import (
	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

// Tally is what went down on one day, or on several added up.
type Tally struct {
	From, To     string // dates, empty before the first day
	Compartments []Compartment
	Mixes        []Mix
	Products     []Product
	Lawns        []Lawn
	Tanks        []Tank
	Hoppers      []Hopper
	With         []WorkedWith // by applicator, in the order of first use
	In           []WorkedIn   // by hour of the clock, earliest first
	Volume       measure.Volume
	Mass         measure.Mass // of what was spread
	Area         measure.Area // treated, with either
	Sprayed      measure.Area // of it with liquid
	Seconds      int64        // from opened to closed, all days together
}

// Close takes the sums of the book's day, open or last. The figures stand until the next day is opened: call
// it just before that, or at the end. An open day lasts until now, where that is known and of the same date,
// else until its last entry: nobody works through the night because a day was left open.
func Close(b *core.Book, now core.Maybe[core.Moment]) Tally {
	d := b.Day()
	t := Tally{From: d.Date, To: d.Date, Seconds: seconds(d, now)}
	t.takeFlows(b)
	t.takeTanks(b)
	areas := Treated(d)
	for i := range d.Laid {
		l := &d.Laid[i]
		t.Volume += l.Volume
		t.Mass += dryMass(l)
		t.Area += areas[i]
		if !l.Dry {
			t.Sprayed += l.Area
		}
		t.takeOrigins(b, l)
		t.takeMixes(b, l)
		t.takeProducts(b, l)
		t.takeLawn(b, l, areas[i])
		t.takeApplicator(l)
		t.TakeWork(l.Applicator, l.At, Worked{l.Volume, dryMass(l), areas[i]})
	}
	return t
}

// seconds is how long the day lasted, never less than nothing: a clock may have been set back.
func seconds(d *core.Day, now core.Maybe[core.Moment]) int64 {
	end := d.Closed
	if d.Open {
		if end = d.Last; now.Known && now.V.Date() == d.Date {
			end = now.V
		}
	}
	return max(end.Unix-d.Opened.Unix, 0)
}

// Add adds up days, earliest first.
func Add(days ...Tally) Tally {
	var t Tally
	for i := range days {
		t.AddDay(&days[i])
	}
	return t
}

// AddDay adds one more day, later than those that are in it. It keeps nothing of the day's own lists.
func (t *Tally) AddDay(day *Tally) {
	if t.From == "" {
		t.From = day.From
	}
	t.To = day.To
	t.addCompartments(day.Compartments)
	for _, m := range day.Mixes {
		at := t.mix(m.Mix)
		at.Volume += m.Volume
		at.Area += m.Area
	}
	t.Products = addProducts(t.Products, day.Products)
	t.addLawns(day.Lawns)
	t.addTanks(day.Tanks)
	t.addHoppers(day.Hoppers)
	for _, w := range day.With {
		t.takeWith(w)
	}
	for _, w := range day.In {
		t.takeIn(w)
	}
	t.Volume += day.Volume
	t.Mass += day.Mass
	t.Area += day.Area
	t.Sprayed += day.Sprayed
	t.Seconds += day.Seconds
}
