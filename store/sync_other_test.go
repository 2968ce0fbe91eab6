//go:build !linux

package store

import "os"

func dataSync(f *os.File) error { return f.Sync() }
