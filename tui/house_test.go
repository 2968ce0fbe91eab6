package tui

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// TestHouse holds the rules of the room: who may be imported, how long a file and a function may be, and that no colour and no
// style is made outside theme.
func TestHouse(t *testing.T) {
	const longest, longestFunc = 350, 60
	allowed := []string{
		"example.com/tintline/core", "example.com/tintline/tui/theme",
		"github.com/charmbracelet/bubbletea", "github.com/charmbracelet/bubbles/", "github.com/charmbracelet/lipgloss",
		"github.com/muesli/termenv",
	}
	standard := " errors fmt io sort strconv strings time unicode "
	for _, dir := range []string{".", "theme", "tone"} {
		files, err := filepath.Glob(filepath.Join(dir, "*.go"))
		if err != nil || len(files) == 0 {
			t.Fatalf("%s: %v", dir, err)
		}
		for _, name := range files {
			text, err := os.ReadFile(name)
			if err != nil {
				t.Fatal(err)
			}
			if n := strings.Count(string(text), "\n"); n > longest {
				t.Errorf("%s has %d lines", name, n)
			}
			if strings.HasSuffix(name, "_test.go") {
				continue
			}
			if strings.Contains(strings.ToLower(string(text)), "\"safe") || strings.Contains(string(text), " safe") {
				t.Errorf("%s says that something is safe", name)
			}
			if dir == "." && (strings.Contains(string(text), "NewStyle(") || strings.Contains(string(text), "lipgloss.Color")) {
				t.Errorf("%s makes a style", name)
			}
			set := token.NewFileSet()
			f, err := parser.ParseFile(set, name, text, 0)
			if err != nil {
				t.Fatal(err)
			}
			for _, d := range f.Decls {
				if n := set.Position(d.End()).Line - set.Position(d.Pos()).Line + 1; n > longestFunc {
					if fn, ok := d.(*ast.FuncDecl); ok {
						t.Errorf("%s: %s has %d lines", name, fn.Name.Name, n)
					}
				}
			}
			for _, i := range f.Imports {
				path, _ := strconv.Unquote(i.Path.Value)
				ok := strings.Contains(standard, " "+path+" ")
				for _, a := range allowed {
					ok = ok || strings.HasPrefix(path, a)
				}
				if name == "form.go" && path == "github.com/charmbracelet/huh" {
					ok = true // nowhere else
				}
				if !ok || (dir == "tone" && path != "github.com/charmbracelet/lipgloss") {
					t.Errorf("%s imports %s", name, path)
				}
			}
		}
	}
}
