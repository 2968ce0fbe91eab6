package core

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

const modulePath = "example.com/tintline"

// TestCoreStandsAlone: core and its rooms reach only the standard library and one another, and nothing with
// effects.
func TestCoreStandsAlone(t *testing.T) {
	out, err := exec.Command("go", "list", "-deps", "-f", "{{if not .Standard}}{{.ImportPath}}: {{join .Imports \" \"}}{{end}}", "./...").Output()
	if err != nil {
		t.Fatal(err)
	}
	effects := []string{"os", "net", "log", "math/rand", "math/rand/v2", "crypto/rand", "sync", "context", "os/exec", "syscall", "unsafe", "runtime", "embed/fs", "io/fs", "path/filepath"}
	for _, line := range strings.Split(strings.TrimSpace(string(out)), "\n") {
		if line == "" {
			continue
		}
		pkg, imports, _ := strings.Cut(line, ": ")
		if pkg != modulePath+"/core" && !strings.HasPrefix(pkg, modulePath+"/core/") {
			t.Errorf("core reaches %s: only the standard library and core itself may stand here", pkg)
		}
		for _, i := range strings.Fields(imports) {
			if slices.Contains(effects, i) || strings.HasPrefix(i, "net/") || strings.HasPrefix(i, "log/") || strings.HasPrefix(i, "sync/") {
				t.Errorf("%s imports %s: core knows no clock, file, chance, lock or log", pkg, i)
			}
		}
	}
}

// below says which rooms of core may import which: what is measured, then the liquid, then the label, then
// the book, then what asks it.
var below = map[string][]string{
	"core/measure":    {},
	"core/hydraulics": {"core/measure"},
	"core/fluid":      {"core/measure"},
	"core/label":      {"core/measure", "core/fluid"},
	"core/batch":      {"core/measure", "core/fluid", "core/hydraulics", "core/label"},
	"core/calib":      {"core/measure", "core/fluid", "core/hydraulics", "core/label"},
	"core/reckon":     {"core/measure", "core/fluid", "core/hydraulics", "core/label", "core/batch", "core/calib"},
	"core":            {"core/measure", "core/fluid", "core/hydraulics", "core/label", "core/batch", "core/calib", "core/worth"},
	"core/printed":    {},
	"core/worth":      {"core/measure"},
	"core/tally":      {"core/measure", "core/fluid", "core/label", "core", "core/printed", "core/worth"},
	"core/past":       {"core/measure", "core/fluid", "core/label", "core", "core/tally"},
	"core/notice":     {"core", "core/label", "core/check", "core/tally", "core/printed"},
}

func TestRoomsLookDownOnly(t *testing.T) {
	out, err := exec.Command("go", "list", "-f", "{{.ImportPath}} {{join .Imports \" \"}}", "./...").Output()
	if err != nil {
		t.Fatal(err)
	}
	for _, line := range strings.Split(strings.TrimSpace(string(out)), "\n") {
		f := strings.Fields(line)
		room := strings.TrimPrefix(f[0], modulePath+"/")
		may, ruled := below[room]
		for _, i := range f[1:] {
			if i, ours := strings.CutPrefix(i, modulePath+"/"); ours && ruled && !slices.Contains(may, i) {
				t.Errorf("%s imports %s", room, i)
			}
		}
	}
}

// source is a file of core that is no test.
type source struct {
	path  string
	text  string
	tree  *ast.File
	files *token.FileSet
}

func sources(t *testing.T) []source {
	t.Helper()
	var out []source
	err := filepath.WalkDir(".", func(path string, d os.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return err
		}
		text, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		files := token.NewFileSet()
		tree, err := parser.ParseFile(files, path, text, parser.ParseComments)
		out = append(out, source{path, string(text), tree, files})
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return out
}

func TestNoClockNoGoroutineNoForeignExponential(t *testing.T) {
	for _, s := range sources(t) {
		ast.Inspect(s.tree, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.GoStmt, *ast.SelectStmt, *ast.SendStmt:
				t.Errorf("%s: goroutines and channels do not stand in core", s.files.Position(n.Pos()))
			case *ast.SelectorExpr:
				name := fmt.Sprintf("%v.%s", n.X, n.Sel.Name)
				if slices.Contains([]string{"time.Now", "time.Since", "time.Until", "time.After", "time.Sleep", "time.Local", "time.NewTimer", "time.NewTicker"}, name) {
					t.Errorf("%s: %s; the time comes in by hand", s.files.Position(n.Pos()), name)
				}
				booked := filepath.Dir(s.path) == "." || filepath.Dir(s.path) == "fluid"
				if booked && slices.Contains([]string{"math.Exp", "math.Expm1", "math.Log", "math.Log1p", "math.Log2", "math.Log10", "math.Pow", "math.FMA", "math.Sin", "math.Cos"}, name) {
					t.Errorf("%s: %s differs in its last bits between processors; what is booked goes through fluid's decay", s.files.Position(n.Pos()), name)
				}
			}
			return true
		})
	}
}

// TestNoSumOverAMap: the order of a map is chance, and a sum of floats is not the same in every order. It
// looks at every range over what is declared as a map in the same function, or outside of any, by name.
func TestNoSumOverAMap(t *testing.T) {
	isMap := func(e ast.Expr) bool {
		switch e := e.(type) {
		case *ast.MapType:
			return true
		case *ast.CompositeLit:
			_, yes := e.Type.(*ast.MapType)
			return yes
		case *ast.CallExpr:
			if len(e.Args) > 0 {
				if _, yes := e.Args[0].(*ast.MapType); yes {
					return fmt.Sprint(e.Fun) == "make"
				}
			}
		case *ast.Ident:
			return e.Name == "Accounts"
		}
		return false
	}
	// mapsIn are the names under which n declares maps.
	mapsIn := func(n ast.Node, into map[string]bool) {
		note := func(yes bool, names ...*ast.Ident) {
			for _, name := range names {
				into[name.Name] = into[name.Name] || yes
			}
		}
		ast.Inspect(n, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.Field:
				note(isMap(n.Type), n.Names...)
			case *ast.ValueSpec:
				note(n.Type != nil && isMap(n.Type) || len(n.Values) > 0 && isMap(n.Values[0]), n.Names...)
			case *ast.AssignStmt:
				for i, r := range n.Rhs {
					if name, ok := n.Lhs[min(i, len(n.Lhs)-1)].(*ast.Ident); ok {
						note(isMap(r), name)
					}
				}
			}
			return true
		})
	}
	all, wide := sources(t), map[string]bool{}
	for _, s := range all {
		for _, d := range s.tree.Decls {
			if _, fn := d.(*ast.FuncDecl); !fn {
				mapsIn(d, wide)
			}
		}
	}
	ranges := 0
	for _, s := range all {
		for _, d := range s.tree.Decls {
			fn, ok := d.(*ast.FuncDecl)
			if !ok {
				continue
			}
			local := map[string]bool{}
			mapsIn(fn, local)
			ast.Inspect(fn, func(n ast.Node) bool {
				r, ok := n.(*ast.RangeStmt)
				if !ok {
					return true
				}
				name := lastName(r.X)
				if yes, here := local[name]; !yes && (here || !wide[name]) {
					return true
				}
				ranges++
				ast.Inspect(r.Body, func(n ast.Node) bool {
					if a, ok := n.(*ast.AssignStmt); ok && (a.Tok == token.ADD_ASSIGN || a.Tok == token.SUB_ASSIGN) {
						t.Errorf("%s: a sum inside a range over %s, which is a map", s.files.Position(a.Pos()), name)
					}
					return true
				})
				return true
			})
		}
	}
	if ranges == 0 {
		t.Error("no range over a map was found: this test looks at nothing")
	}
}

func lastName(e ast.Expr) string {
	switch e := e.(type) {
	case *ast.Ident:
		return e.Name
	case *ast.SelectorExpr:
		return e.Sel.Name
	case *ast.StarExpr:
		return lastName(e.X)
	case *ast.ParenExpr:
		return lastName(e.X)
	}
	return ""
}

// TestProductsAreGuarded: a product of floats that is added or subtracted in the same expression may be fused
// on some processors and not on others; float64(a*b) forbids it. It reads the rooms whose figures are booked.
func TestProductsAreGuarded(t *testing.T) {
	for _, s := range sources(t) {
		if dir := filepath.Dir(s.path); dir != "." && dir != "fluid" {
			continue
		}
		ast.Inspect(s.tree, func(n ast.Node) bool {
			sum, ok := n.(*ast.BinaryExpr)
			if !ok || sum.Op != token.ADD && sum.Op != token.SUB {
				return true
			}
			for _, side := range []ast.Expr{sum.X, sum.Y} {
				for {
					p, ok := side.(*ast.ParenExpr)
					if !ok {
						break
					}
					side = p.X
				}
				if m, ok := side.(*ast.BinaryExpr); ok && m.Op == token.MUL && mentionsFloat(m) {
					t.Errorf("%s: a product inside a sum; write float64(a*b)", s.files.Position(m.Pos()))
				}
			}
			return true
		})
	}
}

// mentionsFloat is a guess by text: a conversion to float64, or a fraction.
func mentionsFloat(e ast.Expr) bool {
	found := false
	ast.Inspect(e, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.Ident:
			found = found || n.Name == "float64"
		case *ast.BasicLit:
			found = found || n.Kind == token.FLOAT
		}
		return true
	})
	return found
}

func TestFilesAndFunctionsAreShort(t *testing.T) {
	for _, s := range sources(t) {
		first, _, _ := strings.Cut(s.text, "package ")
		if n := strings.Count(s.text, "\n"); n > 350 && !strings.Contains(first, "long because") {
			t.Errorf("%s has %d lines; over 350 it needs a reason in its first comment", s.path, n)
		}
		for _, d := range s.tree.Decls {
			fn, ok := d.(*ast.FuncDecl)
			if !ok {
				continue
			}
			if n := s.files.Position(fn.End()).Line - s.files.Position(fn.Pos()).Line + 1; n > 60 {
				t.Errorf("%s: %s has %d lines; over 60 it is split", s.files.Position(fn.Pos()), fn.Name.Name, n)
			}
		}
	}
}

func TestEmbeddedTables(t *testing.T) {
	if len(Settings()) == 0 {
		t.Error("there are no settings")
	}
	for _, s := range Settings() {
		if s.Name == "" || (s.Unit == "" && len(s.Options) < 2 && !s.Text) || s.Words == "" || s.Source == "" || !(s.Low <= s.Default && s.Default <= s.High) {
			t.Errorf("setting %+v lacks a word, a source or a sound default", s)
		}
	}
}
