package core

// Kind numbers the kinds of fact in the stored form. A number is never used again for something else.
type Kind uint16

// Fact is what an entry says happened. The set is closed: only this package adds to it.
type Fact interface {
	// Kind is the number in the stored form.
	Kind() Kind
	// Name is the name in the journal, "lined_up".
	Name() string
	// fields lists each field once: number, key, pointer. All codecs walk this list.
	fields(w walker)
}

const (
	kindRig Kind = iota + 1
	kindProduct
	kindMix
	kindLawn
	kindDayOpened
	kindDayClosed
	kindLoaded
	kindLinedUp
	kindPushedBack
	kindTintSeen
	kindFilled
	kindVisitBegun
	kindVisitSkipped
	kindVisitDone
	kindSprayed
	kindGaugeRead
	kindWeather
	kindOverridden
	kindSetting
	kindRinsed
	kindDumped
	kindStruck
	kindRouted
	kindCarriedOver
	kindHeld
	kindResumed
	kindNoted
	kindLoadPlanned
	kindTicked
	kindFitted
	kindSpread
	kindGrowthSeen
	kindCautioned
	kindRan
	kindCleaned
	kindMarked
	kindCalibrated
	kindTruedUp
	kindJarTested
	kindStocked
	kindPlanned
	kindRecorded
	kindAmended
	kindMetered
	kindSigned
	kindTold
	kindNeighbour
	kindPaid
	kindInvested
	kindTask
	kindUpkept
	kindPaper

	kindLast = kindPaper
)

// newFact makes an empty fact of each kind: the one list of all of them.
var newFact = map[Kind]func() Fact{
	kindRig:          func() Fact { return &Rig{} },
	kindProduct:      func() Fact { return &Product{} },
	kindMix:          func() Fact { return &Mix{} },
	kindLawn:         func() Fact { return &Lawn{} },
	kindDayOpened:    func() Fact { return &DayOpened{} },
	kindDayClosed:    func() Fact { return &DayClosed{} },
	kindLoaded:       func() Fact { return &Loaded{} },
	kindLinedUp:      func() Fact { return &LinedUp{} },
	kindPushedBack:   func() Fact { return &PushedBack{} },
	kindTintSeen:     func() Fact { return &TintSeen{} },
	kindFilled:       func() Fact { return &Filled{} },
	kindVisitBegun:   func() Fact { return &VisitBegun{} },
	kindVisitSkipped: func() Fact { return &VisitSkipped{} },
	kindVisitDone:    func() Fact { return &VisitDone{} },
	kindSprayed:      func() Fact { return &Sprayed{} },
	kindGaugeRead:    func() Fact { return &GaugeRead{} },
	kindWeather:      func() Fact { return &Weather{} },
	kindOverridden:   func() Fact { return &Overridden{} },
	kindSetting:      func() Fact { return &Setting{} },
	kindRinsed:       func() Fact { return &Rinsed{} },
	kindDumped:       func() Fact { return &Dumped{} },
	kindStruck:       func() Fact { return &Struck{} },
	kindRouted:       func() Fact { return &Routed{} },
	kindCarriedOver:  func() Fact { return &CarriedOver{} },
	kindHeld:         func() Fact { return &Held{} },
	kindResumed:      func() Fact { return &Resumed{} },
	kindNoted:        func() Fact { return &Noted{} },
	kindLoadPlanned:  func() Fact { return &LoadPlanned{} },
	kindTicked:       func() Fact { return &Ticked{} },
	kindFitted:       func() Fact { return &Fitted{} },
	kindSpread:       func() Fact { return &Spread{} },
	kindGrowthSeen:   func() Fact { return &GrowthSeen{} },
	kindCautioned:    func() Fact { return &Cautioned{} },
	kindRan:          func() Fact { return &Ran{} },
	kindCleaned:      func() Fact { return &Cleaned{} },
	kindMarked:       func() Fact { return &Marked{} },
	kindJarTested:    func() Fact { return &JarTested{} },
	kindPlanned:      func() Fact { return &DayPlanned{} },
	kindCalibrated:   func() Fact { return &Calibrated{} },
	kindStocked:      func() Fact { return &Stocked{} },
	kindTruedUp:      func() Fact { return &TruedUp{} },
	kindRecorded:     func() Fact { return &Recorded{} },
	kindMetered:      func() Fact { return &Metered{} },
	kindAmended:      func() Fact { return &Amended{} },
	kindTask:         func() Fact { return &Task{} },
	kindUpkept:       func() Fact { return &Upkept{} },
	kindPaper:        func() Fact { return &Paper{} },
	kindSigned:       func() Fact { return &Signed{} },
	kindTold:         func() Fact { return &Told{} },
	kindNeighbour:    func() Fact { return &Neighbour{} },
	kindPaid:         func() Fact { return &Paid{} },
	kindInvested:     func() Fact { return &Invested{} },
}

// kinds lists the numbers of all facts in order. A number that was set aside and has no fact is left out.
func kinds() []Kind {
	var out []Kind
	for k := kindRig; k <= kindLast; k++ {
		if newFact[k] != nil {
			out = append(out, k)
		}
	}
	return out
}

// FactNames lists the names of all facts in order of their kinds.
func FactNames() []string {
	var out []string
	for _, k := range kinds() {
		out = append(out, newFact[k]().Name())
	}
	return out
}

// NewFact makes an empty fact by its name, nil if there is none.
func NewFact(name string) Fact {
	for _, k := range kinds() {
		if f := newFact[k](); f.Name() == name {
			return f
		}
	}
	return nil
}
