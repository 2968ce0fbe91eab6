package tui

import (
	"fmt"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/core"
	"example.com/tintline/tui/theme"
)

// keeping is what is being done to the file of the book beside the screen, one thing at a time, and what came of it.
type keeping struct {
	doing      string  // empty: nothing
	share      float64 // of it that is done; 0: not known
	shares     <-chan float64
	kept       *Kept
	said       string
	tone       theme.Token
	verified   Verified
	verifiedAt time.Time
	due        bool // a copy became due meanwhile
}

// The messages of the keeping.
type (
	keptAnswer struct {
		kept     *Kept
		said     string
		err      error
		verified *Verified
		daily    bool
	}
	copyDue   struct{}
	keptShare struct {
		share float64
		from  <-chan float64
	}
)

func (k *keeping) progress() string {
	if k.share <= 0 {
		return ""
	}
	return fmt.Sprintf("%.0f %%", 100*k.share)
}

// keep does one thing to the file beside the screen, and then looks how it stands.
func (m *Model) keep(doing string, do func(k Keeper) keptAnswer) tea.Cmd {
	if m.keeper == nil || m.keeping.doing != "" {
		return nil
	}
	keeper := m.keeper
	m.keeping.doing, m.keeping.share = doing, 0
	return guarded(func() tea.Msg {
		a := do(keeper)
		if kept, err := keeper.Kept(); err == nil {
			a.kept = &kept
		} else if a.err == nil {
			a.err = err
		}
		return a
	})
}

// askKept asks how the book is kept.
func (m *Model) askKept() tea.Cmd {
	return m.keep("looking", func(Keeper) keptAnswer { return keptAnswer{} })
}

// keepDaily makes the copy of the day if one is due.
func (m *Model) keepDaily() tea.Cmd {
	if m.keeping.doing != "" {
		m.keeping.due = true
		return nil
	}
	return m.keep("copying", func(k Keeper) keptAnswer {
		said, err := k.Daily()
		return keptAnswer{said: said, err: err, daily: true}
	})
}

func (m *Model) copyNow() tea.Cmd {
	return m.keep("copying", func(k Keeper) keptAnswer {
		said, err := k.Copy()
		return keptAnswer{said: said, err: err}
	})
}

// verifyBook reads the whole book through and hears now and then how far it is.
func (m *Model) verifyBook() tea.Cmd {
	shares := make(chan float64, 1)
	cmd := m.keep("reading it through", func(k Keeper) keptAnswer {
		defer close(shares)
		v, err := k.Verify(func(share float64) {
			select {
			case shares <- share:
			default: // the screen has not taken the last one yet
			}
		})
		return keptAnswer{err: err, verified: &v}
	})
	if cmd == nil {
		return nil
	}
	m.keeping.shares = shares
	return tea.Batch(cmd, listen(shares))
}

// listen waits for the next share.
func listen(from <-chan float64) tea.Cmd {
	return guarded(func() tea.Msg {
		if share, more := <-from; more {
			return keptShare{share, from}
		}
		return nil
	})
}

func (m *Model) onShare(s keptShare) tea.Cmd {
	if s.from == m.keeping.shares {
		m.keeping.share = s.share
	}
	return listen(s.from)
}

// onKept takes what came of it. What went wrong with a copy that nobody asked for is said on the cab screen too.
func (m *Model) onKept(a keptAnswer) tea.Cmd {
	k := &m.keeping
	k.doing, k.share, k.shares = "", 0, nil
	if a.kept != nil {
		k.kept = a.kept
	}
	switch {
	case a.err != nil:
		what, do := sentences(a.err)
		k.said, k.tone = what+" "+do, theme.Stop
		if a.daily {
			m.status = status{kind: saysStop, what: what, do: do}
		}
	case a.verified != nil:
		k.verified, k.verifiedAt = *a.verified, m.at
		k.said, k.tone = "It was read through: all is as it was written.", theme.Booked
		if !a.verified.OK {
			k.said, k.tone = "It was read through: not all is as it was written. See below.", theme.Stop
		}
	case a.said != "":
		k.said, k.tone = a.said, theme.Booked
		if a.daily && m.status.kind == saysNothing {
			m.status = status{kind: saysChosen, what: a.said}
		}
	}
	if k.due {
		k.due = false
		return m.keepDaily()
	}
	return nil
}

// closesDay tells whether an action ended a day.
func closesDay(entries []core.Entry) bool {
	for _, e := range entries {
		if _, closed := e.What.(*core.DayClosed); closed {
			return true
		}
	}
	return false
}
