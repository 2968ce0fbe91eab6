package main

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"strings"
	"testing"
)

// TestOwnGoroutinesRecover: a panic in a goroutine that nobody recovers ends the program with the terminal raw. Each one
// that we start begins with a deferred recover of its own.
func TestOwnGoroutinesRecover(t *testing.T) {
	found := 0
	for _, room := range []string{"core", "store", "tui", "cmd/tintline"} {
		err := filepath.WalkDir(filepath.Join("..", "..", filepath.FromSlash(room)), func(path string, d fs.DirEntry, err error) error {
			if err == nil && d.Name() == "disktrace" {
				return fs.SkipDir // tests alone are built with it
			}
			if err != nil || d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
				return err
			}
			set := token.NewFileSet()
			f, err := parser.ParseFile(set, path, nil, 0)
			if err != nil {
				return err
			}
			ast.Inspect(f, func(n ast.Node) bool {
				if g, ok := n.(*ast.GoStmt); ok {
					if found++; !recovers(g) {
						t.Errorf("%s: this goroutine does not begin with a deferred recover", set.Position(g.Pos()))
					}
				}
				return true
			})
			return nil
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	t.Logf("%d goroutines of our own", found)
}

// recovers tells whether a goroutine is a function literal whose first statement defers a recover, or a function of that
// name.
func recovers(g *ast.GoStmt) bool {
	lit, ok := g.Call.Fun.(*ast.FuncLit)
	if !ok || len(lit.Body.List) == 0 {
		return false
	}
	d, ok := lit.Body.List[0].(*ast.DeferStmt)
	if !ok {
		return false
	}
	if id, ok := d.Call.Fun.(*ast.Ident); ok && id.Name == "recover" {
		return false // called by defer itself it recovers nothing
	}
	has := false
	ast.Inspect(d, func(n ast.Node) bool {
		if id, ok := n.(*ast.Ident); ok && strings.HasPrefix(id.Name, "recover") {
			has = true
		}
		return true
	})
	return has
}

// TestRecoversIsSeen makes sure that the test above can fail.
func TestRecoversIsSeen(t *testing.T) {
	for src, want := range map[string]bool{
		"go f()":                                                false,
		"go func() { f() }()":                                   false,
		"go func() { f(); defer recover() }()":                  false,
		"go func() { defer close(c); f() }()":                   false,
		"go func() { defer func() { _ = recover() }(); f() }()": true,
		"go func() { defer recovered(c); f() }()":               true,
	} {
		f, err := parser.ParseFile(token.NewFileSet(), "x.go", "package x\nfunc g() { "+src+" }", 0)
		if err != nil {
			t.Fatal(err)
		}
		ast.Inspect(f, func(n ast.Node) bool {
			if g, ok := n.(*ast.GoStmt); ok && recovers(g) != want {
				t.Errorf("%s: %v", src, !want)
			}
			return true
		})
	}
}
