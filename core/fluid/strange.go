package fluid

import "example.com/tintline/core/measure"

// The running sum of strangers tells how much of a compartment's liquid is not its own: it was pushed back, came through
// the return or levelled over from another compartment, or stood in this one before its last load. It is an account
// beside the ledger, for display, kept to the nanolitre downward; the ledger's own figures are the products.

// meet counts what comes in with an origin that is not the tank's own. Liquid of no compartment (first water) is none.
func (t *Tank) meet(l Liquid) {
	for _, f := range l.From {
		if f.Key != t.Origin && f.Key != NoTank && f.N > 0 {
			t.Strange, t.StrangeIn = t.Strange.with(f), t.StrangeIn.with(f)
		}
	}
}

// part leaves each stranger its share of what stays in the tank.
func (t *Tank) part(stays measure.Volume) {
	if len(t.Strange) > 0 && stays < t.Liquid.Volume {
		t.Strange = t.Strange.share(max(stays, 0), t.Liquid.Volume, measure.MulDiv)
	}
}

// Rename gives the tank's liquid another origin from now on: it was loaded. Into an empty tank that begins a new batch:
// what is left of the one before counts as a stranger if it is another one, and the sum of what came begins anew.
func (t *Tank) Rename(origin int32, empty bool) {
	if empty {
		if left := int64(t.Liquid.Volume) - t.Strange.Sum(); left > 0 && t.Origin != origin && t.Origin != NoTank {
			t.Strange = t.Strange.Plus(Parts{{t.Origin, left}})
		}
		t.StrangeIn = t.Strange
	}
	if own := t.Strange.Of(origin); own != 0 { // it has become this tank's own
		t.Strange = t.Strange.Minus(Parts{{origin, own}})
	}
	if own := t.StrangeIn.Of(origin); own != 0 {
		t.StrangeIn = t.StrangeIn.Minus(Parts{{origin, own}})
	}
	t.Origin = origin
}
