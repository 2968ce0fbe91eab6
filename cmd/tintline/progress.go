package main

import (
	"fmt"
	"io"
	"os"
	"runtime/debug"
	"time"

	"github.com/charmbracelet/x/term"
)

// progressAfter is how long work takes before its progress is shown, and progressEach how often it is.
const (
	progressAfter = 400 * time.Millisecond
	progressEach  = 100 * time.Millisecond
)

// progress shows on a terminal which share of long work is done, on one line that is wiped out at the end. Where nobody
// looks on, and for work that is soon done, it shows nothing.
type progress struct {
	w     io.Writer
	now   func() time.Time
	doing string
	begun time.Time
	shown time.Time
}

// progressOn shows on w what is being done, if w is a terminal.
func progressOn(w io.Writer, now func() time.Time, doing string) *progress {
	f, ok := w.(*os.File)
	if !ok || !term.IsTerminal(f.Fd()) {
		w = nil
	}
	return &progress{w: w, now: now, doing: doing, begun: now()}
}

// Share tells which share is done, 0 to 1.
func (p *progress) Share(share float64) {
	if p == nil || p.w == nil {
		return
	}
	now := p.now()
	if now.Sub(p.begun) < progressAfter || now.Sub(p.shown) < progressEach {
		return
	}
	p.shown = now
	_, _ = fmt.Fprintf(p.w, "\r%s: %3.0f %%", p.doing, 100*share)
}

// End wipes the line out.
func (p *progress) End() {
	if p != nil && p.w != nil && !p.shown.IsZero() {
		_, _ = fmt.Fprintf(p.w, "\r%*s\r", len(p.doing)+7, "")
	}
}

// atLength lets the collector come by more seldom as long as a whole journal is added up, until the answer is called:
// nearly all that this leaves behind is garbage, and collecting it took a third of the time.
func atLength() (end func()) {
	const percent = 400
	before := debug.SetGCPercent(percent)
	return func() { debug.SetGCPercent(before) }
}
