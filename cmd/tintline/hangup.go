package main

import (
	"os"
	"os/signal"
	"syscall"

	tea "github.com/charmbracelet/bubbletea"
)

// onHangUp ends the screen in order when the terminal is closed, or when somebody says that it was: by itself the signal
// ends the program on the spot and leaves a terminal that is still there raw.
func onHangUp(p *tea.Program) (stop func()) {
	hung, over := make(chan os.Signal, 1), make(chan struct{})
	signal.Notify(hung, syscall.SIGHUP)
	go func() {
		defer func() { _ = recover() }()
		select {
		case <-hung:
			p.Quit()
		case <-over:
		}
	}()
	return func() {
		signal.Stop(hung)
		close(over)
	}
}
