package main

import (
	"io"
	"os"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// TestBeginningOfPasteIsNotTorn: however a stream is torn by the pieces it comes in, no piece that is handed on ends in
// the middle of what begins a paste, and nothing is lost.
func TestBeginningOfPasteIsNotTorn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		parts := rapid.SliceOfN(rapid.SampledFrom([]string{"\x1b[200~", "oc 70\r", "\x1b[201~", "\x1b[<35;10;10M", "\x1b", "\x1b[20", "n", "\x1b[A"}), 1, 60).Draw(t, "parts")
		stream := strings.Join(parts, "")
		r, w, err := os.Pipe()
		if err != nil {
			t.Fatal(err)
		}
		defer func() { _ = r.Close() }()
		in := &whole{File: r}
		buf := make([]byte, rapid.IntRange(8, 64).Draw(t, "read"))
		var got strings.Builder
		alone := map[int]bool{}
		for rest := stream; rest != ""; {
			piece := rest[:rapid.IntRange(1, min(len(rest), len(buf))).Draw(t, "piece")]
			rest = rest[len(piece):]
			if _, err := w.WriteString(piece); err != nil {
				t.Fatal(err)
			}
			n, err := in.Read(buf)
			if err != nil {
				t.Fatal(err)
			}
			got.Write(buf[:n])
			for at := range stream {
				if got.Len() == at+1 {
					alone[at] = true // an Escape that came by itself is a key
				}
				if strings.HasPrefix(stream[at:], "\x1b[200~") && !alone[at] && got.Len() > at && got.Len() < at+6 {
					t.Fatalf("%q was handed on", buf[:n])
				}
			}
		}
		_ = w.Close()
		for {
			n, err := in.Read(buf)
			got.Write(buf[:n])
			if err == io.EOF {
				break
			}
		}
		if got.String() != stream {
			t.Fatalf("%q came as %q", stream, got.String())
		}
	})
}
