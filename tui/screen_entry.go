package tui

import (
	"fmt"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/say"
	"example.com/tintline/tui/theme"
)

// looked is the entry that its page shows.
type looked struct{ logged }

// entryPage shows one entry whole.
func entryPage() *pageSpec {
	return &pageSpec{page: pageEntry, title: "One entry of the journal", show: (*Model).showEntry}
}

func (m *Model) showEntry() sheet {
	e := m.looked
	var rows []row
	add := func(t theme.Token, s string) { rows = append(rows, m.wrapped(t, s)...) }
	add(theme.Strong, fmt.Sprintf("Entry %d, %s", e.Seq, e.At.Time().Format("Mon 2 Jan 2006 15:04:05")))
	if w, ok := m.written(e.Seq); ok {
		e.struckBy = w.StruckBy
	}
	if e.struckBy != 0 {
		add(theme.Ask, fmt.Sprintf("struck by entry %d: it is not in the sum", e.struckBy))
	}
	rows = append(rows, blankRow())
	add(theme.Base, sentence(say.Fact(e.What)))
	if f, ok := e.What.(*core.Overridden); ok && f.Said != "" {
		add(theme.Base, "The finding, as it was shown: "+f.Said)
	}
	rows = append(rows, blankRow())
	add(theme.Dim, "As it stands in the journal, in nanolitres, nanograms and square millimetres:")
	kept := string(core.EncodeLine(e.Entry, e.struckBy))
	add(theme.Dim, strings.NewReplacer(`,"`, `, "`, `,{`, `, {`).Replace(kept))
	return sheet{rows: rows}
}
