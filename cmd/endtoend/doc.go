// Package endtoend drives the built program as its user does: through a pseudo-terminal, its bytes fed to a
// terminal emulator. It holds tests only.
package endtoend
