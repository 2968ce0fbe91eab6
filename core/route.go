package core

// planned lists the lawns that are still to do, in order.
func (d *Day) planned() []string {
	var out []string
	for _, v := range d.Visits {
		if v.State == Planned {
			out = append(out, v.Lawn)
		}
	}
	return out
}

// PutIn is the route with a lawn put in behind another that is planned; at the end, if that one is not.
func (d *Day) PutIn(lawn, behind string) *Routed {
	list := d.planned()
	at := len(list)
	for i, l := range list {
		if l == behind {
			at = i + 1
		}
	}
	out := append([]string(nil), list[:at]...)
	return &Routed{append(append(out, lawn), list[at:]...)}
}

// Moved is the route with a lawn one place earlier or later; nil if it cannot be moved that way.
func (d *Day) Moved(lawn string, earlier bool) *Routed {
	list := d.planned()
	by := 1
	if earlier {
		by = -1
	}
	for i, l := range list {
		if to := i + by; l == lawn && to >= 0 && to < len(list) {
			list[i], list[to] = list[to], list[i]
			return &Routed{list}
		}
	}
	return nil
}

// TakenOut is the route without a lawn.
func (d *Day) TakenOut(lawn string) *Routed {
	out := &Routed{}
	for _, l := range d.planned() {
		if l != lawn {
			out.Lawns = append(out.Lawns, l)
		}
	}
	return out
}
