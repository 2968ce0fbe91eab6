package check

import (
	"example.com/tintline/core"
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
)

// Weight says how heavy a finding is.
type Weight uint8

// The weights. A stop would injure the turf, break the label or waste the load; an ask is confirmed with a
// key of its own; a note is shown.
const (
	None Weight = iota
	Note
	Ask
	Stop
)

func (w Weight) String() string { return [...]string{"none", "note", "ask", "stop"}[w] }

// Where a limit comes from.
const (
	GroundLabel     = "label"
	GroundTrial     = "trial"
	GroundExtension = "extension"
	GroundRecalled  = "recalled"
	GroundSetting   = "setting" // of the program, or the operator's own note
	GroundPractice  = "common_practice"
)

// What part of the rig a finding is about.
const (
	PartHose        = "hose"
	PartCell        = "cell"
	PartCompartment = "compartment"
	PartApplicator  = "applicator"
	PartRig         = "rig"
	PartZone        = "zone"
	PartDay         = "day"
)

// Finding is what a check says, with its figures, where the limit comes from, and what to do.
type Finding struct {
	Rule    string
	Weight  Weight
	About   string // which of the things that the rule looks at, where it looks at several: a reason opens one of them
	Dry     bool   // it is about what is spread, not about liquid
	Part    string
	Product string
	// Products are all of which the same is said, Product first; none where it is that one alone.
	Products []string
	Active   string
	Grass    string
	// Zones are those that it is about, in order; none where it is about the lawn, the rig or the day as a whole.
	Zones []string
	// Area is what the liquid in question would cover.
	Area measure.Area
	// TimesMix is the strongest dose (for one that is too weak, the weakest) as a multiple of the mix that is
	// meant; Multiple as one of the label's most, or of the mix where the label entry has no highest rate;
	// ShareOfLabel as a share of the label's lowest rate.
	TimesMix     core.Maybe[float64]
	Multiple     core.Maybe[float64]
	ShareOfLabel core.Maybe[float64]
	Limit        core.Maybe[float64]
	Figured      core.Maybe[float64]
	Unit         string
	Ground       string
	Source       string
	Says         string // one or two sentences with figures
	Do           string // what to do, first
	// Cure is the act that answers it without a reason: ActWeather, ActGrowth; empty: none does.
	Cure     string
	PushBack core.Maybe[measure.Volume]
	// Reason is why the operator goes on in spite of it, on these zones; empty if he does not.
	Reason string
	// Also is what else the rule says of the same product and zones, as heavy or lighter, each as it was found. Says has
	// its sentences too, because a reason for the one goes for the other.
	Also []Finding
	lead *Finding // the one that leads, as it was found; nil where nothing is merged
	// volume is that of the liquid in question, while findings are put together.
	volume measure.Volume
	sticks bool // it is residue after which more than a rinse is asked for
	silent bool // its label entry is silent on a grass that another compartment is right for
}

// All lists what was merged into the finding, each as it was found, the one that leads first.
func (f *Finding) All() []Finding { return append([]Finding{f.alone()}, f.Also...) }

func (f *Finding) alone() Finding {
	if f.lead == nil {
		return *f
	}
	return *f.lead
}

// Unlawful is the sentence that goes with a reason where the stop is the label's, or the law's of the place; empty where
// it is not.
func (f *Finding) Unlawful() string {
	for _, one := range f.All() {
		if one.Weight == Stop && (one.Ground == GroundLabel || f.Rule == "dates" || one.Source == registerSource) {
			return "A reason does not make it lawful."
		}
	}
	return ""
}

// Intent is what the operator is about to do.
type Intent struct {
	Lawn  string
	Zones []string // empty: all of the lawn, in order
	From  byte     // 0: the line-up as it is
	With  string   // the applicator; empty: the first that hangs on a hose
	// Volume is what is meant to go down; unknown: area times delivery rate.
	Volume core.Maybe[measure.Volume]
	// Area is what of the zones together is meant; unknown: what is due there, or all of them.
	Area core.Maybe[measure.Area]
	At   core.Moment
	// Only is OnlySpray or OnlySpread where an applicator can do both and is to do one.
	Only string
	// Product and Amount are the dry product that is meant to be spread; left out they are what the hopper holds, and
	// area times rate.
	Product string
	Amount  core.Maybe[measure.Mass]
	// Way is the way that the mixed tail of a changeover is to go (WayNew and the others); empty, or one that cannot be gone:
	// the cheapest.
	Way string
}

// Plan is what the intent comes to.
type Plan struct {
	Volume  measure.Volume
	Area    measure.Area
	Zones   []string
	From    byte // the compartment drawn from; 0: several, none, or the applicator's own tank
	With    string
	Stays   core.Maybe[measure.Volume] // left in the compartment or the tank afterwards
	Seconds core.Maybe[float64]
	// The dry part: what is spread, how much, what is left in the hopper afterwards and what has to come from the bag.
	Product     string // or the mix in the hopper; empty: nothing is spread
	Amount      core.Maybe[measure.Amount]
	HopperStays core.Maybe[measure.Mass]
	FromBag     core.Maybe[measure.Mass]
}

// Report is the verdict with all that led to it.
type Report struct {
	Verdict  Weight // the heaviest finding that the operator does not go on in spite of
	Findings []Finding
	Plan     Plan
	// NotChecked names limits that are blank, so that silence is not taken for leave.
	NotChecked []string
	// Quiet is how many rules were asked and found nothing.
	Quiet int
}

// The acts that the screen can propose.
const (
	ActOpenDay  = "open_day"
	ActArrived  = "arrived"
	ActWeather  = "weather"
	ActGrowth   = "growth" // to say how the grass of GrowthOf grows
	ActConfirm  = "confirm"
	ActLineUp   = "line_up"
	ActPushBack = "push_back"
	ActSpray    = "spray"
	ActSpread   = "spread"
	ActLeave    = "leave"
	ActHold     = "hold"
	ActCloseDay = "close_day"
	ActNone     = "none"
)

// Proposal is the act that comes next: one key does it. Facts are what it logs; empty where a figure or a
// decision of the operator is needed first.
type Proposal struct {
	Act   string
	Words string // "push back 2.64 gal into b"
	Facts []core.Fact
	Why   string // what stands in the way, for ActNone and ActConfirm
	// Else may be done instead, by a key of its own.
	Else      []core.Fact
	ElseWords string
	// Unchanged: for ActWeather, that the last observation may be logged anew as it stands.
	Unchanged bool
	// LineUp is the line-up that ActLineUp sets.
	LineUp fluid.LineUp
	// GrowthOf are the zones of which ActGrowth asks how they grow.
	GrowthOf []string
}
