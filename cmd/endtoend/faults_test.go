//go:build unix

package endtoend

import (
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/creack/pty"
)

// kills is how often the program is killed: 200 times, or as often as TINTLINE_KILLS says.
func kills() int {
	n := 25
	if os.Getenv("TINTLINE_LONG") != "" {
		n = 200
	}
	_, _ = fmt.Sscan(os.Getenv("TINTLINE_KILLS"), &n)
	return n
}

// Killed between any two keys, the book holds every entry that the screen had confirmed.
func TestKilledBetweenKeys(t *testing.T) {
	book := filepath.Join(t.TempDir(), "book.db")
	must(t, "", "demo", "--make", book)
	dice := rand.New(rand.NewPCG(20260528, 1))
	confirmed := map[string]bool{}
	reading := 0
	for range kills() {
		c := start(t, small, nil, "--book", book)
		c.see("visit 4 of 15")
		for range 1 + dice.IntN(3) {
			reading++
			// each reading of c is its own, and near the one before: one far off is asked about
			text := fmt.Sprintf("%.1f", 75-float64(reading%700)/10)
			c.tap("oc " + text)
			c.enter()
			said := "gauge of c: " + text + " gal"
			if dice.IntN(3) > 0 {
				c.see("booked " + said)
				confirmed[text] = true
				continue
			}
			time.Sleep(time.Duration(dice.IntN(25)) * time.Millisecond)
			if strings.Contains(c.words(), "booked "+said) {
				confirmed[text] = true
			}
			break
		}
		c.kill()
	}
	missing := readingsMissing(t, book, confirmed)
	if len(missing) > 0 {
		t.Errorf("%d of %d confirmed readings are not in the book: %v", len(missing), len(confirmed), missing)
	}
	t.Logf("%d kills, %d readings confirmed, 0 missing", kills(), len(confirmed))
}

func readingsMissing(t *testing.T, book string, confirmed map[string]bool) (missing []string) {
	t.Helper()
	kept := map[string]bool{}
	for _, s := range strings.Split(strings.TrimSpace(must(t, "", "journal", "--json", "--book", book)), "\n") {
		var e struct {
			Fact   string `json:"fact"`
			Volume int64  `json:"volume_nl"`
		}
		if err := json.Unmarshal([]byte(s), &e); err != nil {
			t.Fatalf("%s: %v", s, err)
		}
		if e.Fact == "gauge_read" {
			kept[fmt.Sprintf("%.1f", float64(e.Volume)/3785411784)] = true
		}
	}
	for text := range confirmed {
		if !kept[text] {
			missing = append(missing, text)
		}
	}
	return missing
}

// A terminal that answers nothing gets its first screen, and is never asked for its background.
func TestSilentTerminal(t *testing.T) {
	c := start(t, small, nil, "demo")
	c.see("DEMO BOOK", "Enter")
	c.press("q")
	if code := c.ended(); code != 0 {
		t.Errorf("exit %d", code)
	}
	if strings.Contains(c.bytes(), "\x1b]11;?") || strings.Contains(c.bytes(), "\x1b[6n") {
		t.Error("the terminal was asked a question")
	}
}

// Torn, pasted and glued keys log nothing.
func TestNoiseLogsNothing(t *testing.T) {
	book := filepath.Join(t.TempDir(), "book.db")
	must(t, "", "demo", "--make", book)
	before := status(t, book)
	c := start(t, small, nil, "--book", book)
	c.see("visit 4 of 15")
	for _, noise := range []string{
		"\x1b[200~abyk\rq\x1b[201~", // pasted
		"\x1b[<0;5;18M", "\x1b[<0;5;", "9m", "\x1b[A", "\x1bOP", "\x1b[", "15~", "11;rgb:1111/2222/3333",
	} {
		c.press(noise)
		time.Sleep(80 * time.Millisecond)
	}
	c.see("visit 4 of 15", "DEMO BOOK")
	c.press("\x1b")
	time.Sleep(80 * time.Millisecond)
	c.press("q")
	c.ended()
	if after := status(t, book); after["entries"] != before["entries"] {
		t.Errorf("noise made entries: %v, then %v", before["entries"], after["entries"])
	}
}

func TestSecondCopyIsTold(t *testing.T) {
	book := filepath.Join(t.TempDir(), "book.db")
	must(t, "", "demo", "--make", book)
	c := start(t, small, nil, "--book", book)
	c.see("visit 4 of 15")
	for _, args := range [][]string{{"status"}, {"tally"}, {"enter", "-"}} {
		_, complaint, code := program(t, "", append(args, "--book", book)...)
		if code != 5 || !strings.Contains(complaint, "copy") {
			t.Errorf("%v: exit %d, %s", args, code, complaint)
		}
	}
	c.press("q")
	c.ended()
	must(t, "", "status", "--book", book)
}

func TestDemoLeavesTheBookAlone(t *testing.T) {
	book := filepath.Join(t.TempDir(), "own.db")
	c := start(t, small, []string{"TINTLINE_BOOK=" + book}, "demo")
	c.see("DEMO BOOK")
	c.enter()
	c.see("booked")
	c.press("q")
	c.ended()
	if _, err := os.Stat(book); err == nil {
		t.Error("the demo made the operator's book")
	}
}

// TestReadmeFirstCommand runs what the README says first, from the top of the tree, as a newcomer would.
func TestReadmeFirstCommand(t *testing.T) {
	if os.Getenv("TINTLINE_README") == "" {
		t.Skip("TINTLINE_README is not set: .ci/run sets it")
	}
	readme, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	const command = "go run ./cmd/tintline demo"
	if !strings.Contains(string(readme), command) || !strings.Contains(string(readme), "go test ./...") {
		t.Fatal("the README does not name its two commands")
	}
	fields := strings.Fields(command)
	c := &cab{t: t, cmd: exec.Command(fields[0], fields[1:]...), em: emulator(small), done: make(chan error, 1)}
	c.cmd.Dir = "../.."
	c.cmd.Env = append(os.Environ(), "TERM=xterm-256color", "CI=", "NO_COLOR=")
	c.tty, err = pty.StartWithSize(c.cmd, &pty.Winsize{Cols: small.cols, Rows: small.rows})
	if err != nil {
		t.Fatal(err)
	}
	go c.read()
	go c.drain()
	c.see("DEMO BOOK", "Enter")
	c.press("q")
	if code := c.ended(); code != 0 {
		t.Errorf("exit %d", code)
	}
}
