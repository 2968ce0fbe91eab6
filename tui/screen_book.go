package tui

import (
	"fmt"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/core"
	"example.com/tintline/tui/theme"
)

// bookPage shows how the book's file is kept: its copies, the lines beside it, and what reading it through has shown.
func bookPage() *pageSpec {
	const p = pageBook
	idle := func(m *Model) bool { return m.keeper != nil && m.keeping.doing == "" }
	return &pageSpec{
		page: p, title: "The book and its copies",
		enter: (*Model).askKept,
		show:  (*Model).showBook, pick: func(m *Model, _ string) tea.Cmd { return m.copyNow() },
		keys: []binding{
			pageKey(p, "v", "read through", "read the whole book through: is every entry as it was written", (*Model).verifyBook, idle),
			pageKey(p, "h", "settings", "", func(m *Model) tea.Cmd { return m.goTo(pageSettings) }, nil),
		},
	}
}

const (
	copyRow   = "copy/"
	bookLabel = 14
)

func (m *Model) showBook() sheet {
	if m.keeper == nil {
		return sheet{rows: m.wrapped(theme.Base, "Nothing is kept yet: the first entry makes the file.")}
	}
	k := m.keeping
	out := sheet{
		offer: "copy the book now", small: "the copy stands beside it, is checked, and takes the place of an earlier one of today",
	}
	if k.doing != "" {
		out.offer, out.small = "", ""
		out.about = m.told(theme.Waiting, k.doing+" ... "+k.progress())
	} else if k.said != "" {
		out.about = m.told(k.tone, k.said)
	}
	put := func(label, words string) {
		out.rows = append(out.rows, m.behind("", span{theme.Strong, label}, bookLabel, theme.Base, words)...)
	}
	b := k.kept
	if b == nil {
		return out
	}
	out.rows = m.verifiedRows()
	put("file", b.Path)
	put("holds", fmt.Sprintf("%s entries, %s, format %d", thousands(b.Entries), megabytes(b.Bytes), b.Format))
	if b.Made != "" {
		put("made", fmt.Sprintf("%s by %s", b.Made[:min(len(b.Made), len("2026-05-28"))], b.Program))
	}
	for _, n := range b.Notes {
		put("note", n)
	}
	out.rows = append(out.rows, blankRow(), sectionRow("copies beside it"))
	out.rows = append(out.rows, m.copyRows(b)...)
	return out
}

// verifiedRows are what reading the book through has shown.
func (m *Model) verifiedRows() []row {
	k := &m.keeping
	if len(k.verified.Says) == 0 {
		return nil
	}
	t := theme.Base
	if !k.verified.OK {
		t = theme.Stop
	}
	out := []row{sectionRow("read through at " + core.At(k.verifiedAt).Time().Format("15:04"))}
	for _, s := range k.verified.Says {
		out = append(out, m.wrapped(t, s)...)
	}
	return append(out, blankRow())
}

// copyRows are the copies, newest first, and what has come since.
func (m *Model) copyRows(b *Kept) []row {
	var out []row
	if len(b.Copies) == 0 {
		out = append(out, m.wrapped(theme.Note, "There is none yet.")...)
	}
	for _, c := range b.Copies {
		out = append(out, row{id: copyRow + c.Date, line: line{left: []span{
			m.cell(theme.Strong, c.Date, bookLabel), m.cellRight(theme.Base, megabytes(c.Bytes), bookLabel), {theme.Base, " " + m.g.clean(c.Name)},
		}}})
	}
	since := "Nothing was booked since."
	switch {
	case b.Lines == 1:
		since = "One entry since stands in the lines beside it as well."
	case b.Lines > 1:
		since = fmt.Sprintf("%d entries since stand in the lines beside it as well.", b.Lines)
	}
	out = append(out, m.wrapped(theme.Dim, since)...)
	days := "No copies are made by themselves: the setting copies kept days is 0."
	if b.Days > 0 {
		days = fmt.Sprintf("One is made at each day's close; those of the last %d days are kept. A copy on another card or stick: tintline backup FILE. Back to a copy: tintline restore FILE.", b.Days)
	}
	return append(out, m.wrapped(theme.Dim, days)...)
}

// megabytes is a size on the disk.
func megabytes(n int64) string {
	const kb, mb = 1 << 10, 1 << 20
	if n < mb {
		return fmt.Sprintf("%d kB", (n+kb-1)/kb)
	}
	return fmt.Sprintf("%.1f MB", float64(n)/mb)
}

// thousands groups the digits of a count.
func thousands(n uint64) string {
	if n < 1000 {
		return fmt.Sprint(n)
	}
	return thousands(n/1000) + fmt.Sprintf(",%03d", n%1000)
}
