//go:build !linux || !(amd64 || arm64)

package store

import "os"

// dropCache is a courtesy that this system does not offer.
func dropCache(*os.File) {}
