package tui

import (
	"fmt"
	"math/rand"
	"os"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/tintline/core"
	demodata "example.com/tintline/testdata/demo"
)

// masher leans on the keys of a screen and looks after each stroke at what must hold whatever is pressed. A seed gives
// the same strokes again.
type masher struct {
	*cab
	r      *rand.Rand
	timers []tea.Msg // that the model waits for
	first  core.Book // the book as the screen found it
	fails  bool      // the disk has failed: nothing more may come of keys
	did    []string  // the strokes so far
	seen   map[string]bool
}

// mashStarts are the books that a masher begins with.
var mashStarts = []func(t testing.TB) *cab{
	func(t testing.TB) *cab { return climbIn(t, morning) },
	func(t testing.TB) *cab { return climbIn(t, fullDay+spreading(t)) },
	func(t testing.TB) *cab { return climbIn(t, atAlderWithFood(t)) },
	func(t testing.TB) *cab { return climbIn(t, noBook) },
	func(t testing.TB) *cab { return climbIn(t, "") },
	func(t testing.TB) *cab { return inRig(t, rigOf(6, 3)) },
	func(t testing.TB) *cab {
		c := climbIn(t, noBook)
		c.old = enterLines(t, c.opts.Book, startTime.Add(-time.Hour), demodata.Journal)
		c.reopen()
		return c
	},
	func(t testing.TB) *cab { return climbIn(t, atAlder) },
	func(t testing.TB) *cab {
		return climbIn(t, plumbed(t)+pushing+"\n"+`{"fact":"lined_up","supply":["a","b"],"return":"c"}`)
	},
}

// mashTexts are typed into lines and fields, and pressed where there are none.
var mashTexts = []string{
	"b 62", "11.5", "11.5 gal", "62 s", "front 6.2", "6 SW 64", "14 W 90 20% 0h", "gauge 151 140", "1", "2", "3", "R. Example", "0", "-5",
	"999999999999999", "1e300", "nan", "２", "🙂🙂", "e\u0301", "\u202eabc", "草地", "mark 9", "9:35", "2026-06-01", "31.12.", "5 ride-on",
	"25 lb Example Food spreader", "50 lb", "tint 48 s", "2.6 b", "418 Alder Court", "fir", "exa", "45 s", "off 2 min", "on 999 h", "2 gal pail", "next", "8 at 55 gal", "obround 27 x 44 x 60 in, mark every 4 in", "2.5 gpm 110 60", "41 qt", "  ", "", "a b c", "12 Fir Lane; 9 Oak Street",
	"tall_fescue", "00000-9", "front 10 lb", strings.Repeat("long ", 70), "yes", "enter", "calm", "3.5", "40", "100 sqft", "bermuda, zoysia",
}

var mashKeys = []string{
	"enter", "enter", "enter", "y", "y", "esc", "esc", "up", "down", "down", "pgup", "pgdown", "left", "right", " ", "backspace", "shift+tab", "tab",
	"?", "[", ".", "S", "W", "M", "Q", "0", "1", "2", "3", "6", "9", "ab", "yy", "nk", "<0;1", "enter ", "\x00", "é", "草", "\u202e",
}

// climb gives the masher a screen of its own on the book as it is.
func (k *masher) climb() {
	m := k.model()
	m.after = func(_ time.Duration, msg tea.Msg) tea.Cmd {
		k.timers = append(k.timers, msg)
		return nil
	}
	k.m, k.quit = m, false
}

// reopen opens a new screen on the same book, as after a restart.
func (c *cab) reopen() {
	m := New(c.opts)
	m.after = func(time.Duration, tea.Msg) tea.Cmd { return nil }
	c.m, c.quit = m, false
	c.size(80, 24)
}

// mash presses so many times.
func mash(t testing.TB, seed int64, times int, seen map[string]bool) {
	t.Helper()
	k := &masher{cab: mashStarts[int(seed)%len(mashStarts)](t), r: rand.New(rand.NewSource(seed)), seen: seen}
	k.first = *k.book().Clone()
	k.climb()
	defer func() {
		if e := recover(); e != nil || t.Failed() {
			t.Logf("seed %d: %v, after %s", seed, e, strings.Join(k.did[max(len(k.did)-25, 0):], " · "))
			if e != nil {
				panic(e)
			}
		}
	}()
	m := k.model()
	k.cab.send(stroke("g"))
	for range 1 + k.r.Intn(2) {
		k.send(stroke(k.oneOf(menuLetters(&m))))
	}
	for range times {
		k.wait(time.Duration(k.r.Intn(1200)) * time.Millisecond)
		k.step()
		k.holds(seed)
		if k.quit || k.model().page == pageTrouble && k.r.Intn(4) == 0 {
			k.restart()
		}
	}
	k.slow = false
	k.catchUp()
	k.holds(seed)
	k.sameFromTheDisk(seed)
}

func menuLetters(m *Model) []string {
	var out []string
	for _, s := range m.specs {
		if s.key != "" {
			out = append(out, s.key)
		}
	}
	return out
}

func (k *masher) oneOf(list []string) string { return list[k.r.Intn(len(list))] }

// restart ends the program, whether it wanted to or not, and starts it again on what the disk has.
func (k *masher) restart() {
	k.did = append(k.did, "RESTART")
	k.disk.err, k.fails, k.slow, k.held, k.timers = nil, false, false, nil, nil
	b := k.first.Clone()
	for _, e := range k.disk.entries {
		if err := b.Apply(e); err != nil {
			k.t.Fatal(err)
		}
	}
	k.opts.Book = b
	k.reopen()
	k.climb()
}

// step is one thing that happens in a cab.
func (k *masher) step() {
	m := k.model()
	switch n := k.r.Intn(40); {
	case n == 0:
		w, h := []int{0, 1, 39, 40, 50, 60, 80, 120, 300}[k.r.Intn(9)], []int{0, 1, 15, 16, 20, 24, 40, 100}[k.r.Intn(8)]
		k.note(fmt.Sprintf("%dx%d", w, h))
		k.size(w, h)
	case n == 1:
		k.note("80x24")
		k.size(80, 24)
	case n == 2 && !k.fails:
		k.slow = !k.slow
		k.note(fmt.Sprint("slow ", k.slow))
		k.catchUp()
	case n == 3 && k.r.Intn(20) == 0:
		k.note("disk fails")
		k.disk.err, k.fails = errDisk, true
	case n == 4:
		d := []time.Duration{-3 * time.Hour, -time.Second, time.Hour, 26 * time.Hour, time.Minute}[k.r.Intn(5)]
		k.note(d.String())
		k.wait(d)
	case n < 9:
		k.fire()
	case n < 13 && len(m.scene.spots) > 0:
		s := m.scene.spots[k.r.Intn(len(m.scene.spots))]
		k.tapped(s.x+k.r.Intn(s.w), s.y+k.r.Intn(s.h))
	case n < 15:
		k.tapped(k.r.Intn(max(m.w, 1)), k.r.Intn(max(m.h, 1)))
	case n < 17:
		k.lean(k.oneOf([]string{"enter", "y", " ", "down"}))
	case n < 25 && m.typing():
		k.types(k.oneOf(mashTexts))
	case n < 33:
		k.key(k.enabled())
	case n < 35:
		k.key(string(rune('a' + k.r.Intn(26))))
	case n == 35:
		k.types(k.oneOf(mashTexts))
	case n == 36: // the pages lie two lists deep
		for _, s := range []string{"g", k.oneOf([]string{"n", "y"}), string(rune('a' + k.r.Intn(26)))} {
			k.key(s)
		}
	default:
		k.key(k.oneOf(mashKeys))
	}
}

func (k *masher) note(s string) { k.did = append(k.did, s) }

// fire lets a timer of the model run out.
func (k *masher) fire() {
	if len(k.timers) == 0 {
		return
	}
	i := k.r.Intn(len(k.timers))
	msg := k.timers[i]
	k.timers = append(k.timers[:i:i], k.timers[i+1:]...)
	k.note(fmt.Sprintf("%T", msg))
	k.send(msg)
}

func (k *masher) tapped(x, y int) {
	k.note(fmt.Sprintf("tap %d,%d", x, y))
	k.send(tea.MouseMsg{X: x, Y: y, Action: tea.MouseActionPress, Button: tea.MouseButtonLeft})
}

// enabled is a key that works now.
func (k *masher) enabled() string {
	m := k.model()
	var out []string
	for _, b := range m.keys {
		if b.Enabled() && b.act != actSuspend && (b.act != actQuit || k.r.Intn(20) == 0) {
			out = append(out, b.Keys()[0])
		}
	}
	if len(out) == 0 {
		return "esc"
	}
	return k.oneOf(out)
}

// types types a text, letter by letter, in one read or pasted, and enters it most times.
func (k *masher) types(s string) {
	k.note(fmt.Sprintf("%q", s))
	switch n := k.r.Intn(3); {
	case n == 0 || s == "": // a read is never empty, a paste can be
		for _, r := range s {
			k.wait(30 * time.Millisecond).send(stroke(string(r)))
		}
	case n == 1:
		k.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(s)})
	}
	if k.r.Intn(3) == 0 {
		k.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(s), Paste: true})
	}
	if k.r.Intn(4) > 0 {
		k.wait(time.Duration(k.r.Intn(900)) * time.Millisecond)
		k.key("enter")
	}
}

// key presses a key. Enter never answers a question that only y answers.
func (k *masher) key(s string) {
	k.note(s)
	before, asked := len(k.disk.entries)+len(k.held), k.model().ask.open() && !k.model().open
	k.send(stroke(s))
	if s == "enter" && asked && len(k.disk.entries)+len(k.held) != before {
		k.t.Fatalf("Enter answered a question\n%s", k.screen())
	}
}

// lean holds a key down: it counts once, whatever it does.
func (k *masher) lean(s string) {
	k.note("lean on " + s)
	k.wait(2 * time.Second)
	before := k.actions()
	k.send(stroke(s))
	k.wait(500 * time.Millisecond)
	for range 2 + k.r.Intn(20) {
		k.send(stroke(s))
		k.wait(33 * time.Millisecond)
	}
	if n := k.actions() - before; n > 1 {
		k.t.Fatalf("%s held down logged %d times\n%s", s, n, k.screen())
	}
}

// actions counts what was logged together, on the disk and on the way to it.
func (k *masher) actions() int {
	n, last := len(k.held), ""
	for _, e := range k.disk.entries {
		if e.Action != last {
			n, last = n+1, e.Action
		}
	}
	return n
}

// holds looks at what must be true after each stroke.
func (k *masher) holds(seed int64) {
	k.t.Helper()
	m := k.model()
	if m.w >= leastWidth && m.h >= leastHeight {
		k.seen[fmt.Sprint("page ", m.page)] = true
		if m.form != nil {
			k.seen["form "+m.form.def.Name] = true
		}
	}
	if wrong := spotsApart(m); wrong != "" {
		k.t.Fatalf("seed %d: %s\n%s", seed, wrong, k.screen())
	}
	if sum := k.book().Plumbing().Sum(); sum.Volume != 0 || len(sum.Holds) != 0 {
		k.t.Fatalf("seed %d: the places sum to %v", seed, sum)
	}
	if got, want := len(k.disk.entries), int(k.book().Seq()-k.first.Seq()); got != want {
		k.t.Fatalf("seed %d: %d entries on the disk, %d in the book", seed, got, want)
	}
	if err := m.Trouble(); err != nil && (!k.fails || !strings.Contains(err.Error(), errDisk.Error())) {
		if m.trouble != nil {
			k.t.Fatalf("seed %d: %v", seed, err)
		}
	}
	if m.status.kind == saysBooked && !k.slow {
		k.confirmed(seed, m.status.what)
	}
}

// TestMashing leans on the keys: whatever is pressed, typed, pasted, tapped or resized, on pages and in forms,
// the screen stays square (the driver looks each time), no liquid comes from nowhere, what the screen logged is what
// the book says, and what it confirmed is there.
func TestMashing(t *testing.T) {
	from, to, times := int64(0), int64(24), 120
	_, _ = fmt.Sscan(os.Getenv("TINTLINE_MASH"), &from, &to, &times) // more of them, by hand
	seen := map[string]bool{}
	for seed := from; seed < to; seed++ {
		mash(t, seed, times, seen)
	}
	opened := 0
	for p := range pages {
		if seen[fmt.Sprint("page ", p)] {
			opened++
		}
	}
	if opened < int(pages)/2 {
		t.Errorf("only %d of %d pages were opened: the keys are too poor", opened, int(pages))
	}
	if os.Getenv("TINTLINE_MASH") != "" {
		t.Log(seen)
	}
}
