package main

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"strconv"
	"strings"
	"testing"
)

// TestHelpListsExitCodes compares the table in the help with the constants that the program ends with.
func TestHelpListsExitCodes(t *testing.T) {
	f, err := parser.ParseFile(token.NewFileSet(), "failure.go", nil, 0)
	if err != nil {
		t.Fatal(err)
	}
	codes := map[int]string{0: "done"}
	ast.Inspect(f, func(n ast.Node) bool {
		v, ok := n.(*ast.ValueSpec)
		if !ok || !strings.HasPrefix(v.Names[0].Name, "exit") || len(v.Values) != 1 {
			return true
		}
		lit, ok := v.Values[0].(*ast.BasicLit)
		if !ok {
			t.Fatalf("%s is not a plain number", v.Names[0].Name)
		}
		n1, err := strconv.Atoi(lit.Value)
		if err != nil || codes[n1] != "" {
			t.Fatalf("%s is %s: %v %s", v.Names[0].Name, lit.Value, err, codes[n1])
		}
		codes[n1] = v.Names[0].Name
		return true
	})
	if len(codes) < 9 {
		t.Fatalf("the constants were not found: %v", codes)
	}
	code, help, _ := call(t, "", "--help")
	_, table, found := strings.Cut(help, "\nExit codes:\n")
	if code != 0 || !found {
		t.Fatalf("the help has no exit codes:\n%s", help)
	}
	table, _, _ = strings.Cut(table, "\n\n")
	lines := strings.Split(table, "\n")
	if len(lines) != len(codes) {
		t.Errorf("%d lines for %d codes:\n%s", len(lines), len(codes), table)
	}
	for i, line := range lines {
		digit, words, _ := strings.Cut(strings.TrimSpace(line), "  ")
		if digit != strconv.Itoa(i) || codes[i] == "" || len(words) < 4 || len(line) > 80 {
			t.Errorf("line %d is %q; the constant is %q", i, line, codes[i])
		}
	}
	if t.Failed() {
		fmt.Println(help)
	}
}
