package fluid

import "example.com/tintline/core/measure"

// ApplicatorTank is the tank of a ride-on machine or a backpack.
type ApplicatorTank struct {
	Name string
	Tank
}

// LineUp is the set of valve positions: which compartments feed the pump and where the return goes.
// Return 0 means nowhere.
type LineUp struct {
	Supply []byte
	Return byte
}

// Plumbing is the rig's liquid, the dry product in its hoppers, and what has left it.
type Plumbing struct {
	Compartments []Compartment
	Cell         Cell
	Return       ReturnLine
	Hoses        []Hose
	Tanks        []ApplicatorTank
	Hoppers      []Hopper
	LineUp       LineUp
	Outside      Accounts
}

// Clone returns a copy that shares nothing that is changed in place.
func (p *Plumbing) Clone() *Plumbing {
	q := *p
	q.Compartments = append([]Compartment(nil), p.Compartments...)
	q.Return.Charge = append([]Liquid(nil), p.Return.Charge...)
	q.Hoses = append([]Hose(nil), p.Hoses...)
	for i := range q.Hoses {
		q.Hoses[i].Charge = append([]Parcel(nil), p.Hoses[i].Charge...)
	}
	q.Tanks = append([]ApplicatorTank(nil), p.Tanks...)
	q.Hoppers = append([]Hopper(nil), p.Hoppers...)
	q.LineUp.Supply = append([]byte(nil), p.LineUp.Supply...)
	q.Outside = make(Accounts, len(p.Outside))
	for k, v := range p.Outside {
		q.Outside[k] = v
	}
	return &q
}

// Sketch is Clone without the accounts outside: enough to ask what would leave the nozzle, and cheap
// however long the book is. What it books outside is thrown away with it.
func (p *Plumbing) Sketch() *Plumbing {
	q := *p
	q.Outside = nil
	c := q.Clone()
	c.Outside = Accounts{}
	return c
}

// Compartment finds a compartment by its letter, nil if there is none.
func (p *Plumbing) Compartment(letter byte) *Compartment {
	for i := range p.Compartments {
		if p.Compartments[i].Letter == letter {
			return &p.Compartments[i]
		}
	}
	return nil
}

// Hose finds a hose by its name; the empty name is the first one. Nil if there is none.
func (p *Plumbing) Hose(name string) *Hose {
	for i := range p.Hoses {
		if name == "" || p.Hoses[i].Name == name {
			return &p.Hoses[i]
		}
	}
	return nil
}

// Tank finds an applicator's own tank, nil if it has none.
func (p *Plumbing) Tank(applicator string) *ApplicatorTank {
	for i := range p.Tanks {
		if p.Tanks[i].Name == applicator {
			return &p.Tanks[i]
		}
	}
	return nil
}

// SupplyDrawable is what the pump can get with the valves as they stand.
func (p *Plumbing) SupplyDrawable() measure.Volume {
	var v measure.Volume
	for _, l := range p.LineUp.Supply {
		if c := p.Compartment(l); c != nil {
			v += c.Drawable()
		}
	}
	return v
}

// Accounts lists every place, inside and outside, in a fixed order. All columns sum to zero.
func (p *Plumbing) Accounts() []Account {
	out := p.Inside()
	for _, pl := range p.Outside.Places() {
		l := p.Outside[pl]
		out = append(out, Account{pl, l.Volume, l.Holds})
	}
	return out
}

// Inside lists the places of the rig, in a fixed order.
func (p *Plumbing) Inside() []Account {
	var out []Account
	add := func(pl Place, l Liquid) { out = append(out, Account{pl, l.Volume, l.Holds}) }
	for i := range p.Compartments {
		add(CompartmentPlace(p.Compartments[i].Letter), p.Compartments[i].Liquid)
	}
	add(CellPlace, p.Cell.Liquid)
	add(ReturnPlace, p.Return.Liquid)
	for i := range p.Hoses {
		add(HosePlace(p.Hoses[i].Name), p.Hoses[i].Liquid())
	}
	for i := range p.Tanks {
		l := p.Tanks[i].Liquid
		if h := p.Hopper(p.Tanks[i].Name); h != nil {
			l.Holds = l.Holds.Plus(h.Holds)
		}
		add(ApplicatorPlace(p.Tanks[i].Name), l)
	}
	for i := range p.Hoppers {
		if p.Tank(p.Hoppers[i].Name) == nil {
			add(ApplicatorPlace(p.Hoppers[i].Name), Liquid{Holds: p.Hoppers[i].Holds})
		}
	}
	return out
}

// Sum adds up all places: nothing, if the book is right.
func (p *Plumbing) Sum() Liquid {
	var l Liquid
	for _, a := range p.Accounts() {
		l.Volume += a.Volume
		l.Holds = l.Holds.Plus(a.Products)
	}
	return l
}
