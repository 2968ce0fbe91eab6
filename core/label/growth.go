package label

// The states of growth of a zone.
const (
	Dormant    = "dormant"
	GreeningUp = "greening_up"
	Growing    = "growing"
	Stressed   = "stressed" // drought, heat, disease
	Sodded     = "sodded"   // new sod, plugs or sprigs, since the date
	Seeded     = "seeded"   // since the date
)

// Growths lists the states of growth in the order in which they are offered.
func Growths() []string { return []string{Growing, GreeningUp, Dormant, Stressed, Sodded, Seeded} }

// GrowthWords is how a state of growth is written on the screen.
func GrowthWords(growth string) string {
	switch growth {
	case "":
		return "growth not said"
	case GreeningUp:
		return "greening up"
	case Sodded:
		return "newly sodded"
	case Seeded:
		return "newly seeded"
	}
	return growth
}

// The kinds of site in or beside a zone.
const (
	SiteWater   = "water"   // pond, stream, drain
	SiteWell    = "well"    //
	SiteEdible  = "edible"  // a bed of food plants
	SiteRoots   = "roots"   // roots of trees or shrubs under the turf
	SiteBloom   = "bloom"   // flowers that bees visit
	SiteSeeding = "seeding" // seed is to be sown on the date
)

// SiteKinds lists the kinds of site.
func SiteKinds() []string {
	return []string{SiteWater, SiteWell, SiteEdible, SiteRoots, SiteBloom, SiteSeeding}
}

// SiteWords is how a kind of site is written on the screen.
func SiteWords(kind string) string {
	switch kind {
	case SiteEdible:
		return "edible bed"
	case SiteRoots:
		return "tree roots"
	case SiteBloom:
		return "bloom and bees"
	case SiteSeeding:
		return "seeding planned"
	}
	return kind
}
