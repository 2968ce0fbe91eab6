package hydraulics

import (
	"math"

	"example.com/tintline/core/measure"
)

// Metres is a length in metres, SquareMetres an area.
type (
	Metres       float64
	SquareMetres float64
)

// Path is what liquid runs through by gravity from one free surface to the other. An Orifice is given by its Area and
// discharge coefficient Cd, a pipe by its Bore, Length and the sum of the Loss coefficients of its fittings, entrance and
// exit among them.
type Path struct {
	Bore, Length Metres
	Loss         float64
	Orifice      SquareMetres
	Cd           float64
	Roughness    Metres  // 0: that of plastic
	Viscosity    float64 // m2/s; 0: that of water at 20 C
	Gravity      float64 // m/s2; 0: the standard one
}

func (p Path) gravity() float64 {
	if p.Gravity > 0 {
		return p.Gravity
	}
	return gravity
}

// area is the cross-section of the path.
func (p Path) area() float64 {
	if p.Orifice > 0 {
		return float64(p.Orifice)
	}
	return math.Pi / 4 * float64(p.Bore) * float64(p.Bore)
}

// loss is the loss coefficient of the whole path at a velocity: the fittings, and the friction of the pipe by Churchill's
// factor. Of an orifice it is 1/Cd^2.
func (p Path) loss(velocity float64) float64 {
	if p.Orifice > 0 {
		return 1 / (p.Cd * p.Cd)
	}
	if p.Length <= 0 {
		return p.Loss
	}
	rough, nu := float64(p.Roughness), p.Viscosity
	if rough <= 0 {
		rough = roughness
	}
	if nu <= 0 {
		nu = WaterAt(Temperature).Viscosity
	}
	re := velocity * float64(p.Bore) / nu
	if !(re > 0) {
		re = 1e-9 // the friction of a flow that is about to stop
	}
	return p.Loss + float64(Churchill(re, rough/float64(p.Bore))*float64(p.Length)/float64(p.Bore))
}

// velocityAt is how fast it runs under a head, with the friction that belongs to that velocity: found by setting one into
// the other until they agree.
func (p Path) velocityAt(head float64) (velocity, loss float64) {
	if !(head > 0) {
		return 0, p.loss(0)
	}
	g := p.gravity()
	velocity = math.Sqrt(2 * g * head)
	for range 200 {
		loss = p.loss(velocity)
		next := math.Sqrt(2 * g * head / max(loss, 1e-12))
		if math.Abs(next-velocity) <= 1e-13*next {
			return next, loss
		}
		// Half way: the laminar friction would swing otherwise.
		velocity = (velocity + next) / 2
	}
	return velocity, loss
}

// Levelling is what runs by gravity between two compartments whose suctions both stand open, the pump at rest. The
// energy balance between the free surfaces gives the flow; with the loss coefficient of the start throughout it has a
// closed form (Torricelli; the root of the difference falls evenly).
type Levelling struct {
	Area1, Area2 SquareMetres // plan areas of the two
	Drop         Metres       // how much higher the first stands
	Path         Path
}

// LevellingAt is Levelling with what follows from it.
type LevellingAt struct {
	Flow    measure.Flow // at the start
	Loss    float64      // the loss coefficient that was found for it
	Seconds float64      // until both stand level
	Total   Gallons      // what has run over by then
}

// reduced is the area by which the drop falls: A1 A2/(A1+A2).
func (l Levelling) reduced() float64 {
	a, b := float64(l.Area1), float64(l.Area2)
	return a * b / (a + b)
}

// Start is the flow at the start, the time until both stand level, and what has run over by then. ok is false for areas, a
// drop or a path that are not above 0.
func (l Levelling) Start() (s LevellingAt, ok bool) {
	if !(l.Area1 > 0) || !(l.Area2 > 0) || !(l.Drop > 0) || !l.Path.given() {
		return LevellingAt{}, false
	}
	v, loss := l.Path.velocityAt(float64(l.Drop))
	flow := v * l.Path.area() // m3/s
	total := l.reduced() * float64(l.Drop)
	return LevellingAt{
		Flow: measure.Flow(flow * nanolitres), Loss: loss,
		Seconds: 2 * total / flow, Total: Gallons(total * nanolitres / float64(measure.USGallon)),
	}, true
}

func (p Path) given() bool {
	if p.Orifice > 0 {
		return p.Cd > 0
	}
	return p.Bore > 0 && p.Loss >= 0 && p.Length >= 0 && (p.Loss > 0 || p.Length > 0)
}

// nanolitres in a cubic metre.
const nanolitres = 1e12

// Moved is what has run over after so many seconds: total (1 - (1 - t/T)^2).
func (s LevellingAt) Moved(seconds float64) Gallons {
	if !(seconds > 0) || !(s.Seconds > 0) {
		return 0
	}
	left := 1 - min(seconds/s.Seconds, 1)
	return s.Total * Gallons(1-float64(left*left))
}

// Until is how long it takes until the difference has fallen to a share of what it was at the start, in seconds.
func (s LevellingAt) Until(share float64) float64 {
	return s.Seconds * (1 - math.Sqrt(min(max(share, 0), 1)))
}

// Drain is how many seconds a tank takes to fall from one level to a lower one through an opening at its bottom (or that
// of a tank which does not rise): 2 A (sqrt h0 - sqrt h1) over area, Cd and sqrt 2g (Torricelli).
func Drain(tank SquareMetres, p Path, from, to Metres) float64 {
	v, _ := p.velocityAt(float64(from))
	if !(v > 0) {
		return math.Inf(1)
	}
	whole := 2 * float64(tank) * float64(from) / (v * p.area())
	return whole * (1 - math.Sqrt(max(float64(to), 0)/float64(from)))
}

// Branches is the state in which the pump draws from two compartments through a path each. Path1 leads from the one that
// stands higher by Drop.
type Branches struct {
	Path1, Path2 Path
	Drop         Metres
	Pump         measure.Flow
}

// Flows is what runs out of each: h1 - K1 Q1|Q1|/(2 g a^2) = h2 - K2 Q2|Q2|/(2 g a^2) with Q1 + Q2 that of the pump
// (energy balance). The second is negative where liquid is pushed into the lower one while the pump runs.
func (b Branches) Flows() (higher, lower measure.Flow) {
	pump := float64(b.Pump) / nanolitres
	head := func(p Path, q float64) float64 {
		v := q / p.area()
		return p.loss(math.Abs(v)) * v * math.Abs(v) / (2 * p.gravity())
	}
	// What the drop alone drives through the first path is the most that can run there beside the pump's own.
	v, _ := b.Path1.velocityAt(float64(b.Drop))
	low, high := 0.0, pump+float64(v*b.Path1.area())
	for range 200 {
		mid := (low + high) / 2
		if float64(b.Drop)-head(b.Path1, mid)+head(b.Path2, pump-mid) > 0 {
			low = mid
		} else {
			high = mid
		}
	}
	q := (low + high) / 2
	return measure.Flow(q * nanolitres), measure.Flow((pump - q) * nanolitres)
}

// PushesBelow is the pump's flow below which liquid is pushed into the lower compartment: what the drop alone drives through
// the higher one's path.
func (b Branches) PushesBelow() measure.Flow {
	v, _ := b.Path1.velocityAt(float64(b.Drop))
	return measure.Flow(v * b.Path1.area() * nanolitres)
}
