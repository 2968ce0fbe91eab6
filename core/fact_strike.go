package core

// Struck takes an entry out of the sum; Also takes others with it. Instead puts a corrected fact in the
// place of the struck one.
type Struck struct {
	Of      int64
	Also    []int64
	Reason  string
	Instead Fact
}

// Kind of the fact.
func (*Struck) Kind() Kind { return kindStruck }

// Name of the fact.
func (*Struck) Name() string { return "struck" }

func (f *Struck) fields(w walker) {
	w.integer(1, "of", &f.Of)
	w.integers(2, "also", &f.Also)
	w.text(3, "reason", &f.Reason)
	w.fact(4, "instead", &f.Instead)
}
