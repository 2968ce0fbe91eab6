package main

import (
	"encoding/json"
	"errors"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/rogpeppe/go-internal/testscript"

	"example.com/tintline/core"
	"example.com/tintline/store"
)

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"tintline": main})
}

// TestScripts runs the stories of the command line.
func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir: filepath.Join("..", "..", "testdata", "script"),
		Setup: func(env *testscript.Env) error {
			env.Setenv("TINTLINE_AT", "2026-05-28T12:00:00-05:00")
			env.Setenv("HOME", env.WorkDir)
			books, err := filepath.Abs("../../testdata/books")
			env.Setenv("BOOKS", books)
			return err
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			"code": code, "jsonq": jsonq, "hold": hold, "cut": cut, "newer": newer, "forge": forge, "blot": blot,
		},
	})
}

// code runs the program and wants an exit code: code N [stdin=FILE] args...
func code(ts *testscript.TestScript, neg bool, args []string) {
	want, err := strconv.Atoi(args[0])
	ts.Check(err)
	err = ts.Exec("tintline", args[1:]...)
	got := 0
	if err != nil {
		// The error of Exec names the exit status and nothing else.
		if _, rest, ok := strings.Cut(err.Error(), "exit status "); ok {
			got, _ = strconv.Atoi(strings.TrimSpace(rest))
		}
	}
	if (got == want) == neg {
		ts.Fatalf("tintline %s: exit code %d (%v)", strings.Join(args[1:], " "), got, err)
	}
}

// jsonq looks into an object: jsonq FILE path want. A path is keys and numbers with points; len is the length
// of a list. A wanted number is compared to a millionth, else the JSON text. The file may be stdout, stderr,
// or one of its lines: stdout:3.
func jsonq(ts *testscript.TestScript, neg bool, args []string) {
	name, line, one := strings.Cut(args[0], ":")
	text := ts.ReadFile(name)
	if one {
		n, err := strconv.Atoi(line)
		ts.Check(err)
		text = strings.Split(text, "\n")[n-1]
	}
	dec := json.NewDecoder(strings.NewReader(text))
	dec.UseNumber()
	var v any
	ts.Check(dec.Decode(&v))
	if dec.More() && !one {
		ts.Fatalf("%s holds more than one object", args[0])
	}
	for _, step := range strings.Split(args[1], ".") {
		if step == "" {
			continue
		}
		v = into(ts, v, step, args[1])
	}
	got, err := json.Marshal(v)
	ts.Check(err)
	want := strings.Join(args[2:], " ")
	same := string(got) == want
	if f, err := strconv.ParseFloat(want, 64); err == nil {
		g, bad := strconv.ParseFloat(string(got), 64)
		same = bad == nil && math.Abs(f-g) <= 1e-6*max(1, math.Abs(f))
	}
	if same == neg {
		ts.Fatalf("%s %s is %s", args[0], args[1], got)
	}
}

func into(ts *testscript.TestScript, v any, step, path string) any {
	switch at := v.(type) {
	case map[string]any:
		if step == "len" {
			return len(at)
		}
		inner, ok := at[step]
		if !ok {
			ts.Fatalf("%s: there is no %q", path, step)
		}
		return inner
	case []any:
		if step == "len" {
			return len(at)
		}
		n, err := strconv.Atoi(step)
		if err != nil || n >= len(at) {
			ts.Fatalf("%s: there is no %s in a list of %d", path, step, len(at))
		}
		return at[n]
	}
	ts.Fatalf("%s: %v has no %s", path, v, step)
	return nil
}

// hold keeps a book open, as another copy of the program would.
func hold(ts *testscript.TestScript, _ bool, args []string) {
	s, err := store.Open(ts.MkAbs(args[0]), store.Options{Wait: time.Second})
	ts.Check(err)
	ts.Defer(func() { _ = s.Close() })
}

// cut shortens a file to so many bytes.
func cut(ts *testscript.TestScript, _ bool, args []string) {
	n, err := strconv.ParseInt(args[1], 10, 64)
	ts.Check(err)
	ts.Check(os.Truncate(ts.MkAbs(args[0]), n))
}

// blot overwrites bytes of a file with zeros: blot FILE from count.
func blot(ts *testscript.TestScript, _ bool, args []string) {
	from, err1 := strconv.ParseInt(args[1], 10, 64)
	n, err2 := strconv.Atoi(args[2])
	f, err3 := os.OpenFile(ts.MkAbs(args[0]), os.O_WRONLY, 0)
	ts.Check(errors.Join(err1, err2, err3))
	_, err := f.WriteAt(make([]byte, n), from)
	ts.Check(errors.Join(err, f.Close()))
}

// newer makes a book whose only entry has a form that this version does not know.
func newer(ts *testscript.TestScript, _ bool, args []string) {
	body := append([]byte{200}, make([]byte, 40)...)
	ts.Check(makeRaw(ts.MkAbs(args[0]), body))
}

// forge makes a book whose only entry carries a digest that does not follow.
func forge(ts *testscript.TestScript, _ bool, args []string) {
	e := core.Entry{Seq: 1, At: core.Moment{Unix: 1}, Truck: 1, What: &core.VisitBegun{Lawn: "12 Elm"}}
	ts.Check(makeRaw(ts.MkAbs(args[0]), e.Encode()))
}

func makeRaw(path string, body []byte) error {
	return store.CreateWith(path, "test", store.Options{}, func(add func(string, []store.Item) error) error {
		return add("one", []store.Item{{Body: body}})
	})
}
