package core

// GrowthSeen: the state of growth of these zones was looked at. It changes their lawn's entry in force.
type GrowthSeen struct {
	Lawn   string
	Zones  []string // empty: all of the lawn
	Growth string   // one of label.Growths
	Since  string   // the date since which; empty: the date of the entry
}

// Kind of the fact.
func (*GrowthSeen) Kind() Kind { return kindGrowthSeen }

// Name of the fact.
func (*GrowthSeen) Name() string { return "growth_seen" }

func (f *GrowthSeen) fields(w walker) {
	w.text(1, "lawn", &f.Lawn)
	w.texts(2, "zones", &f.Zones)
	w.text(3, "growth", &f.Growth)
	w.text(4, "since", &f.Since)
}

// Cautioned is the operator's own stricter note: a product, or an active, is to be thought of twice on a grass, a lawn or
// a zone. It adds to what label and reference say and clears nothing. A later one of the same scope takes its place.
type Cautioned struct {
	Product string // one of Product and Active; empty both: any
	Active  string
	Grass   string
	Lawn    string
	Zone    string
	Weight  string // stop, ask or note; none takes it back
	Says    string
}

// Kind of the fact.
func (*Cautioned) Kind() Kind { return kindCautioned }

// Name of the fact.
func (*Cautioned) Name() string { return "cautioned" }

func (f *Cautioned) fields(w walker) {
	w.text(1, "product", &f.Product)
	w.text(2, "active", &f.Active)
	w.text(3, "grass", &f.Grass)
	w.text(4, "lawn", &f.Lawn)
	w.text(5, "zone", &f.Zone)
	w.text(6, "weight", &f.Weight)
	w.text(7, "says", &f.Says)
}
