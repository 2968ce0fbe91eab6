package tui

import (
	tea "github.com/charmbracelet/bubbletea"
)

type page int

const (
	pageCab page = iota
	pageStart
	pageMenu
	pageVisits
	pageLawn
	pageProducts
	pageProduct
	pageMixes
	pageMix
	pageLoads
	pageLoad
	pageLineUp
	pagePlumbing
	pagePressure
	pageGauge
	pageTaught
	pageMarks
	pageWeather
	pageTally
	pageJournal
	pageBook
	pageEntry
	pageRig
	pageSettings
	pageHelp
	pageFind
	pageGrasses
	pageGround
	pageChange
	pageFindings
	pageTrouble
	pageMorning
	pageEvening
	pagePlan
	pageMixLoad
	pageMixTopUp
	pageMixDilute
	pageMixStretch
	pageMixBlend
	pageMixJug
	pageMixUseUp
	pageMixTint
	pageMixRinse
	pageCalibrate
	pageStock
	pageTrueUp
	pageClosing
	pageRecords
	pageRecord
	pageNotices
	pageSeason
	pageMoney
	pageUpkeep
	pageCard
	pageNotice
	pageSeasonLawn
	pages
)

// pageSpec is what a page is: where it stands in the list, what it shows, what Enter does there. One page, one file
// (screen_*.go).
type pageSpec struct {
	page  page
	key   string // in the list of pages; empty: it is not listed
	under page   // the page in whose list it stands; 0: the list of all pages
	title string
	words string                            // what it is for, in the list
	show  func(m *Model) sheet              // asks core and puts the answer into rows
	pick  func(m *Model, id string) tea.Cmd // Enter on the row chosen; nil: Enter does nothing here
	enter func(m *Model) tea.Cmd            // as the page opens; may be nil
	asks  func(m *Model) tea.Cmd            // what is read beside the screen, as it opens and once something was logged; may be nil
	types bool                              // it opens with a line of text
	keys  []binding                         // its own, made with pageKey
}

// sheet is what a page shows.
type sheet struct {
	about []line // below the title, as far as there is room: what the page says at a glance
	rows  []row
	offer string              // what Enter does with the row chosen
	small string              // smaller, below it
	body  func(r rect) []line // in the place of rows
	head  []line              // stands over the rows, however they are moved
	below []row               // stands under them, as far as there is room
	more  string              // the key that shows all that is below
}

// row is a line that can be chosen. One without an id is text between. A tap chooses it, and does what Enter does
// there too where that only leads on and logs nothing (now).
type row struct {
	id string
	line
	now bool
}

// newPages lists the pages of the program.
func newPages() []*pageSpec {
	return lists(append([]*pageSpec{
		startPage(), menuPage(), findPage(),
		visitsPage(), lawnPage(), grassesPage(), groundPage(),
		productsPage(), productPage(), mixesPage(), mixPage(),
		morningPage(), planPage(), stockPage(), trueUpPage(),
		eveningPage(), recordsPage(), recordPage(), closingPage(), cardPage(), upkeepPage(), moneyPage(),
		noticesPage(), noticePage(),
		seasonPage(), seasonLawnPage(),
		loadsPage(), loadPage(), lineUpPage(), plumbingPage(), pressurePage(), gaugePage(), taughtPage(), marksPage(),
		calibratePage(), weatherPage(), tallyPage(),
		journalPage(), entryPage(), bookPage(),
		changePage(), findingsPage(), rigPage(), settingsPage(), helpPage(),
	}, mixingPages()...))
}

// spec is what the page that is open is; nil for the cab screen and for trouble.
func (m *Model) spec() *pageSpec {
	p := m.page
	if p == pageCab && m.book.Rig() == nil {
		p = pageStart
	}
	return m.specOf(p)
}

func (m *Model) specOf(p page) *pageSpec {
	for _, s := range m.specs {
		if s.page == p {
			return s
		}
	}
	return nil
}

// goTo opens a page; Esc comes back from it.
func (m *Model) goTo(p page) tea.Cmd {
	m.back = append(m.back[:len(m.back):len(m.back)], cameFrom{m.page, m.pulled, m.subject})
	m.page, m.status = p, status{}
	if s := m.spec(); s != nil && s.enter != nil {
		return tea.Batch(s.enter(m), m.asks())
	}
	return m.asks()
}

// asks reads beside the screen what the page that is open needs.
func (m *Model) asks() tea.Cmd {
	if s := m.spec(); s != nil && s.asks != nil {
		return s.asks(m)
	}
	return nil
}

// cameFrom is a page that Esc goes back to, as it was.
type cameFrom struct {
	page    page
	pulled  pulled
	subject subject
}

// subject is what the pages that show one of many show.
type subject struct {
	product, mix, tank, lawn, applicator, record string
	cell                                         cellAt // of a table of grasses
}

// goBack goes to the page before. The list of pages and the search only lead on: one does not come back to them.
func (m *Model) goBack() {
	m.page = pageCab
	for n := len(m.back); n > 0; n = len(m.back) {
		b := m.back[n-1]
		m.back = m.back[:n-1]
		if b.page != pageMenu && b.page != pageFind {
			m.page, m.pulled, m.subject = b.page, b.pulled, b.subject
			return
		}
	}
}

// onPage tells whether the keys of a page work now.
func (m *Model) onPage(p page) bool {
	s := m.spec()
	return s != nil && s.page == p && m.free()
}

// free tells whether neither a line nor a question has the keys.
func (m *Model) free() bool {
	return m.page != pageTrouble && m.fits() && !m.typing() && !m.ask.open() && !m.quitting
}

// pageKey is a key of one page.
func pageKey(p page, k, label, long string, run func(m *Model) tea.Cmd, on func(m *Model) bool) binding {
	b := one(actRun, k, label, long, func(m *Model) bool { return m.onPage(p) && (on == nil || on(m)) })
	b.page, b.run = p, run
	return b
}

// picks lists the ids that can be chosen on the page now.
func (m *Model) picks() []string {
	var out []string
	for _, r := range m.sheet.rows {
		if r.id != "" {
			out = append(out, r.id)
		}
	}
	return out
}

// chosenAmong is the id of the row that would be chosen among these.
func (m *Model) chosenAmong(rows []row) string {
	first := ""
	for _, r := range rows {
		switch {
		case r.id == "":
		case r.id == m.on[m.spec().page].chosen:
			return r.id
		case first == "":
			first = r.id
		}
	}
	return first
}

// chosenAt is the place of the chosen id in a list, the first if it is gone.
func (m *Model) chosenAt(ids []string) int {
	for i, id := range ids {
		if id == m.on[m.spec().page].chosen {
			return i
		}
	}
	return 0
}

// chosen is the id of the row chosen, empty if there is none.
func (m *Model) chosen() string {
	ids := m.picks()
	if len(ids) == 0 {
		return ""
	}
	return ids[m.chosenAt(ids)]
}

// pickRow is Enter on a page.
func (m *Model) pickRow() tea.Cmd {
	s, id := m.spec(), m.chosen()
	if s == nil || s.pick == nil || (id == "" && m.sheet.offer == "") {
		return nil
	}
	return s.pick(m, id)
}

// canPick tells whether Enter does something on the page.
func (m *Model) canPick() bool {
	s := m.spec()
	return s != nil && s.pick != nil && m.free() && m.sheet.offer != ""
}

// show asks anew what the page says.
func (m *Model) show() {
	m.sheet = sheet{}
	if s := m.spec(); s != nil && m.fits() {
		m.sheet = s.show(m)
	}
}
