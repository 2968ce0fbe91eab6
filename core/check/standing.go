package check

import (
	"fmt"
	"strings"

	"example.com/tintline/core"
)

// What rule standing looks at.
const (
	aboutAgitation = "agitation"    // of the compartment lined up
	aboutUnmoved   = "no agitation" // of the others
	aboutNight     = "standing"
)

const (
	settleSource = "formulations: extension sheets on mixing order; minutes: "
	nightSource  = "Texas A&M extension: spray at once or within a few hours, never leave it overnight in solution; hours: "
)

// standingRule: what settles in a compartment that nothing moves, and what stood over night or for hours. All of it are
// notes: the label says how long a mix may stand.
func standingRule(s *situation) []Finding {
	if s.tank != nil {
		return nil
	}
	var out []Finding
	var others []Agitation
	for _, a := range Agitated(s.b, s.in.At) {
		switch {
		case !a.Unmoved:
		case strings.IndexByte(string(s.up.Supply), a.Letter) >= 0:
			out = append(out, s.settled(a)...)
		case a.Letter != s.up.Return || a.How != core.Jet:
			others = append(others, a)
		}
	}
	return append(append(out, s.unmoved(others)...), s.night()...)
}

func (s *situation) settleNote(about string) Finding {
	return Finding{
		Weight: Note, About: about, Part: PartCompartment, Unit: "min", Limit: core.Known(s.b.Setting(core.SettleMin)),
		Ground: GroundSetting, Source: settleSource + s.b.SettingSource(core.SettleMin),
	}
}

// settled is about a compartment that is drawn from now. Where neither jet nor paddle moves it, it is said once.
func (s *situation) settled(a Agitation) []Finding {
	f := s.settleNote(aboutAgitation)
	f.Figured = a.Minutes
	f.Says = fmt.Sprintf("Compartment %c was last agitated at %s, %s ago, and %s settles.", a.Letter, when(a.At.V, s.in.At), span(a.Minutes.V), a.words(s.b))
	switch {
	case a.How == core.Jet:
		f.Do = fmt.Sprintf("Run the pump with the return to %c for %.0f min first.", a.Letter, s.b.Setting(core.StirMin))
	case a.How == core.Paddle:
		f.Do = fmt.Sprintf("Let the paddle of %c turn for %.0f min first.", a.Letter, s.b.Setting(core.StirMin))
	case s.saidSince(later(a.At.V, s.b.Setting(core.SettleMin))):
		return nil
	default:
		f.Do = fmt.Sprintf("Stir %c at the lid first: it has neither jet nor paddle.", a.Letter)
	}
	return []Finding{f}
}

// unmoved is about the compartments that are not drawn from: a jet works only where the return goes. It is said once for
// each time that one stands.
func (s *situation) unmoved(all []Agitation) []Finding {
	f := s.settleNote(aboutUnmoved)
	var at, jets, lids []string
	for _, a := range all {
		if s.saidSince(later(a.At.V, s.b.Setting(core.SettleMin))) {
			continue
		}
		letter := string(a.Letter)
		at = append(at, letter+" since "+when(a.At.V, s.in.At))
		if a.How == core.Jet {
			jets = append(jets, letter)
		} else {
			lids = append(lids, letter)
		}
		f.Figured = core.Known(max(f.Figured.Or(0), a.Minutes.V))
	}
	if len(at) == 0 {
		return nil
	}
	f.Says = fmt.Sprintf("What settles stands unagitated in %s.", list(at))
	if len(jets) > 0 {
		f.Says += " A jet works only where the return goes."
		f.Do = fmt.Sprintf("Before you draw from %s, run the return to it for %.0f min.", strings.Join(jets, " or "), s.b.Setting(core.StirMin))
	}
	if len(lids) > 0 {
		f.Do = joinNew(f.Do, fmt.Sprintf("Before you draw from %s, stir it at the lid.", strings.Join(lids, " or ")))
	}
	return []Finding{f}
}

// night is about what stood: of the hose in use, cell and return line until something moves there, of the compartments at
// the first lawn of the day.
func (s *situation) night() []Finding {
	var stood []Stood
	for _, st := range StoodSince(s.b, s.in.At) {
		switch {
		case st.Part == PartHose && s.hoseName() != st.Name:
		case st.Part == PartCompartment && (st.Since.Date() >= s.in.At.Date() || s.saidSince(core.Moment{})):
		default:
			stood = append(stood, st)
		}
	}
	if len(stood) == 0 {
		return nil
	}
	hours := 0.0
	for _, st := range stood {
		hours = max(hours, st.Hours)
	}
	return []Finding{{
		Weight: Note, About: aboutNight, Part: PartRig, Unit: "h", Figured: core.Known(hours), Limit: core.Known(s.b.Setting(core.StandingH)),
		Ground: GroundExtension, Source: nightSource + s.b.SettingSource(core.StandingH),
		Says: sayStood(stood, s.in.At), Do: "See on the labels how long a mix may stand.",
	}}
}

// hoseName is the hose of the applicator.
func (s *situation) hoseName() string {
	if h := s.b.Plumbing().Hose(s.with.Hose); h != nil {
		return h.Name
	}
	return ""
}

// span is a time for the eye.
func span(minutes float64) string {
	if minutes < 120 {
		return fmt.Sprintf("%.0f min", minutes)
	}
	return fmt.Sprintf("%.0f h", minutes/60)
}
