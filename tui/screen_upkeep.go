package tui

import (
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/core"
	"example.com/tintline/core/upkeep"
	"example.com/tintline/tui/theme"
)

// The kinds of row on the page of upkeep.
const (
	taskRow  = "task/"
	paperRow = "paper/"
	tickRow  = "tick/"
	startRow = "start"
)

// upkeepPage shows what is due on the rig, the papers and the check lists.
func upkeepPage() *pageSpec {
	const p = pageUpkeep
	free := func(m *Model) bool { return !m.busy() }
	return &pageSpec{
		page: p, under: pageEvening, key: "u", title: "Upkeep", words: "what is due on the rig, papers, winter and spring",
		show: (*Model).showUpkeep, pick: (*Model).pickUpkeep,
		keys: []binding{
			opening(pageKey(p, "n", "task", "set up or change a task: oil every 50 engine hours; grease every 7 days; hose each autumn", (*Model).openTask, free)),
			opening(pageKey(p, "p", "paper", "a licence, certificate or insurance: licence 2027-03-31 number 00000-7", (*Model).openPaper, free)),
			opening(pageKey(p, "i", "meters", "what the meters say: odometer 48213 engine 812 pump 344", func(m *Model) tea.Cmd { m.openMeters(); return nil }, free)),
			pageKey(p, "k", "retire", "take the task or the paper chosen away", (*Model).retireUpkeep, func(m *Model) bool {
				id := m.chosen()
				return !m.busy() && (strings.HasPrefix(id, taskRow) || strings.HasPrefix(id, paperRow))
			}),
			opening(pageKey(p, "w", "glycol", "what antifreeze comes to: 25 % 4 gal into 1.5 gal of water", (*Model).openGlycol, nil)),
		},
	}
}

func (m *Model) showUpkeep() sheet {
	at := core.At(m.at)
	out := sheet{}
	items := upkeep.Due(m.book, at)
	if len(items) == 0 {
		out.rows = append(out.rows, m.wrapped(theme.Base, "No task is set up yet.")...)
	}
	if len(upkeep.StartFacts(m.book)) > 0 && len(items) == 0 {
		out.rows = append(out.rows, row{id: startRow, line: text(theme.Strong, "take over the tasks to start with")})
	}
	for i := range items {
		out.rows = append(out.rows, m.taskRow(&items[i]))
	}
	out.rows = append(out.rows, sectionRow("papers"))
	papers := upkeep.Papers(m.book, at.Date())
	for _, p := range papers {
		t := theme.Base
		if p.State != upkeep.Later {
			t = theme.Ask
		}
		out.rows = append(out.rows, row{id: paperRow + p.PaperName, line: line{left: []span{m.cell(theme.Strong, m.g.clean(p.PaperName), m.w/3), {t, " " + m.g.clean(p.Says)}}}})
	}
	if len(papers) == 0 {
		out.rows = append(out.rows, m.wrapped(theme.Dim, "None is entered: licence, certificates and insurance are not looked at.")...)
	}
	for _, name := range upkeep.Lists() {
		out.rows = append(out.rows, sectionRow("check list: "+name))
		for _, i := range upkeep.List(m.book, name, at.Date()) {
			mark := "[ ] "
			if i.Done {
				mark = "[x] "
			}
			out.rows = append(out.rows, row{id: tickRow + name + "/" + i.Item, line: text(theme.Base, m.g.fit(mark+m.g.clean(i.Item), m.w-tableMarks))})
		}
	}
	out.rows = append(out.rows, m.wrapped(theme.Dim, upkeep.ManualCaution)...)
	out.offer, out.small = m.upkeepOffer(m.chosenAmong(out.rows))
	return out
}

func (m *Model) taskRow(it *upkeep.Item) row {
	state, t := "   ", theme.Base
	switch it.State {
	case upkeep.DueNow:
		state, t = "DUE", theme.Stop
	case upkeep.Soon:
		state, t = "...", theme.Ask
	case upkeep.Unknown:
		state = "?  "
	}
	return row{id: taskRow + it.Task.TaskName, line: line{left: []span{
		{t, state + " "}, m.cell(theme.Strong, m.g.clean(it.Task.TaskName), m.w*3/10), {theme.Base, " " + m.g.clean(it.Says)}, {theme.Dim, "  " + m.g.clean(it.Every)},
	}}}
}

func (m *Model) upkeepOffer(id string) (offer, small string) {
	kind, name, _ := strings.Cut(id, "/")
	switch kind + "/" {
	case taskRow:
		if u := m.book.Upkeep(name); u != nil {
			return "log it done: " + name, u.What.Words
		}
	case paperRow:
		return "enter its new last day", ""
	case tickRow:
		return "tick it, or take the tick away", ""
	}
	if id == startRow {
		return "take them over", "values to start with; change them as your manuals say"
	}
	return "", ""
}

func (m *Model) pickUpkeep(id string) tea.Cmd {
	if m.busy() {
		return nil
	}
	kind, name, _ := strings.Cut(id, "/")
	switch kind + "/" {
	case taskRow:
		m.openDone(name)
	case paperRow:
		return m.openPaper()
	case tickRow:
		list, item, _ := strings.Cut(name, "/")
		return m.enter(m.checkTick(list, item))
	}
	if id == startRow {
		return m.enter(upkeep.StartFacts(m.book)...)
	}
	return nil
}

func (m *Model) checkTick(list, item string) core.Fact {
	date := core.At(m.at).Date()
	f := &core.Ticked{List: core.CheckList(upkeep.ListName(list, date)), Item: item}
	for _, i := range upkeep.List(m.book, list, date) {
		if i.Item == item && i.Done {
			f.Undo = "yes"
		}
	}
	return f
}
