package tui

import (
	"math/rand"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
)

// TestMashingForms leans on the keys in an empty book and on the page of the rig: the screen stays square, nothing breaks,
// and only whole forms are logged.
func TestMashingForms(t *testing.T) {
	keys := []string{
		"enter", "enter", "enter", "pgdown", "pgdown", "pgup", "up", "down", "left", "right", "right", " ", "esc", "a", "b", "1", "2", "3", "0", ".",
		"/", "x", "t", "é", "漢", "[", "<0;1", "200 100", "iron", "g", "r", "?",
	}
	from := []string{"empty_book", "rig", "form_product", "form_grasses", "form_lawn_grass", "form_day", "form_mix", "form_lawn_of_many", "form_label", "form_ticks", "form_recipe", "rig_line_up", "gauge_tank", "rig_plumbing", "pressure_weight"}
	for seed := int64(1); seed <= 30; seed++ {
		r := rand.New(rand.NewSource(seed))
		c := situation(t, from[int(seed)%len(from)])
		c.disk.entries = nil
		start := c.book().Seq()
		for range 150 {
			c.wait(time.Duration(r.Intn(1200)) * time.Millisecond)
			switch r.Intn(12) {
			case 0:
				c.size([]int{0, 40, 60, 80, 120}[r.Intn(5)], []int{0, 10, 16, 24, 40}[r.Intn(5)])
			case 1:
				c.send(tea.MouseMsg{X: r.Intn(80), Y: r.Intn(24), Action: tea.MouseActionPress, Button: tea.MouseButtonLeft})
			case 2:
				c.slow = !c.slow
				c.catchUp()
			case 3:
				c.send([]tea.KeyMsg{{Type: tea.KeyBackspace}, {Type: tea.KeyTab}, {Type: tea.KeyShiftTab}, {Type: tea.KeyHome}, {Type: tea.KeyCtrlK}, {Type: tea.KeyDelete}}[r.Intn(6)])
			default:
				c.send(stroke(keys[r.Intn(len(keys))]))
			}
		}
		c.slow = false
		c.catchUp()
		if got, want := len(c.disk.entries), int(c.book().Seq()-start); got != want {
			t.Errorf("seed %d: %d entries on the disk, %d in the book", seed, got, want)
		}
		if err := c.model().Trouble(); err != nil {
			t.Errorf("seed %d: %v", seed, err)
		}
	}
}
