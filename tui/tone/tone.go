// Package tone fixes the tone of the background before anything asks the terminal for it.
//
// bubbletea asks when it is initialised and waits up to five seconds for an answer that some terminals never
// give. Go initialises packages that are ready in the order of their import paths; this one imports lipgloss
// alone and its path sorts before bubbletea's, so it comes first and the question is never sent. A blank import
// in main is all that it needs.
package tone

import "github.com/charmbracelet/lipgloss"

func init() { lipgloss.SetHasDarkBackground(true) }
