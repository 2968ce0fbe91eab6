package main

import (
	"os"
	"path/filepath"
	"runtime"
)

// bookPath is the book's file: the flag, else the environment, else the user's data folder.
func (a *app) bookPath() (string, error) {
	if a.flags.book != "" {
		return a.flags.book, nil
	}
	if p := a.getenv("TINTLINE_BOOK"); p != "" {
		return p, nil
	}
	dir, err := a.dataFolder()
	if err != nil {
		return "", &failure{
			what: "There is no data folder for the book: " + err.Error() + ".",
			do:   "Say where the book is with --book FILE.", code: exitCannot, err: err,
		}
	}
	return filepath.Join(dir, "tintline", "book.db"), nil
}

func (a *app) dataFolder() (string, error) {
	if dir := a.getenv("XDG_DATA_HOME"); filepath.IsAbs(dir) {
		return dir, nil
	}
	switch runtime.GOOS {
	case "windows", "darwin", "ios", "plan9":
		return os.UserConfigDir()
	}
	home, err := os.UserHomeDir()
	if err != nil {
		return "", err
	}
	return filepath.Join(home, ".local", "share"), nil
}

// makeFolder makes the folder that a new book is to stand in.
func makeFolder(path string) error {
	dir := filepath.Dir(path)
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return &failure{
			what: "The folder " + dir + " cannot be made: " + err.Error() + ".",
			do:   "Choose another place with --book FILE.", code: exitWrite, err: err,
		}
	}
	return nil
}
