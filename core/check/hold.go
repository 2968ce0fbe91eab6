package check

import (
	"fmt"
	"strings"

	"example.com/tintline/core"
)

// The causes of a hold that an observation of the weather ends.
const (
	HoldWind = "wind"
	HoldRain = "rain"
)

// HoldFor tells whether the last observation is a reason to put the day on hold, and for what: wind over the stop, or
// rain too soon. An old observation says nothing.
func HoldFor(b *core.Book, at core.Moment) (cause string, yes bool) {
	w := b.Weather()
	if w == nil || !b.Day().Open || b.Day().Hold != nil {
		return "", false
	}
	if age := at.MinutesSince(w.At); age < 0 || age > b.Setting(core.WeatherOldMin) {
		return "", false
	}
	switch {
	case w.Wind.Known && w.Wind.V.MPH() > b.Setting(core.WindStopMPH):
		return HoldWind, true
	case w.RainFree.Known && w.RainFree.V < b.Setting(core.RainFreeMinH):
		return HoldRain, true
	}
	return "", false
}

// onHold is "on hold for wind since 10:12".
func onHold(h *core.Hold) string {
	return fmt.Sprintf("on hold for %s since %s", h.Cause, h.Since.Clock())
}

// proposeHold is what comes while the day is on hold: to wait; to go on once the weather has been looked at and allows
// it, or where the hold has nothing to do with the weather.
func proposeHold(b *core.Book) Proposal {
	h := b.Day().Hold
	p := Proposal{Act: ActHold, Words: onHold(h)}
	cause := strings.ToLower(h.Cause)
	wind, rain := strings.Contains(cause, HoldWind), strings.Contains(cause, HoldRain)
	if !wind && !rain {
		p.Words, p.Why = "go on with the day", "It is "+onHold(h)+"."
		p.Facts = []core.Fact{&core.Resumed{}}
		return p
	}
	w := b.Weather()
	if !lookedSince(b) {
		w = nil
	}
	var ends, now []string
	allowed := true
	if wind {
		stop := b.Setting(core.WindStopMPH)
		ends = append(ends, "wind of "+mph(stop)+" mph or less")
		if allowed = w != nil && w.Wind.Known && w.Wind.V.MPH() <= stop; allowed {
			now = append(now, "wind "+mph(w.Wind.V.MPH())+" mph")
		}
	}
	if rain {
		least := b.Setting(core.RainFreeMinH)
		ends = append(ends, fmt.Sprintf("%g h or more without rain", least))
		if dry := w != nil && w.RainFree.Known && w.RainFree.V >= least; dry {
			now = append(now, fmt.Sprintf("no rain for %g h", w.RainFree.V))
		} else {
			allowed = false
		}
	}
	if !allowed {
		p.Why = "An observation of " + strings.Join(ends, " and ") + " ends it."
		p.Else, p.ElseWords = []core.Fact{&core.Resumed{Reason: "without a new observation"}}, "go on with the day"
		return p
	}
	said := strings.Join(now, ", ")
	p.Words, p.Why = "go on: "+said, "The day was "+onHold(h)+"."
	p.Facts = []core.Fact{&core.Resumed{Reason: said}}
	return p
}

// lookedSince tells whether the weather was looked at since the day was put on hold.
func lookedSince(b *core.Book) bool {
	since := b.Since()
	for i := len(since) - 1; i >= 0; i-- {
		switch since[i].What.(type) {
		case *core.Weather:
			return true
		case *core.Held:
			return false
		}
	}
	return false
}

// held is the one thing that the weather rule says while the day is on hold.
func held(h *core.Hold) Finding {
	return Finding{
		Weight: Stop, Part: PartDay, Ground: GroundPractice, Source: "the hold that was logged at " + h.Since.Clock(),
		Says: "The day is " + onHold(h) + ".", Do: "Go on with the day first, or wait.",
	}
}
