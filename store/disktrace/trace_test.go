//go:build linux && (amd64 || arm64)

package disktrace

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"syscall"
	"testing"
)

func TestMain(m *testing.M) {
	if job := os.Getenv("DISKTRACE_CHILD"); job != "" {
		os.Exit(child(job))
	}
	os.Exit(m.Run())
}

func child(job string) int {
	var err error
	try := func(e error) {
		if e != nil && err == nil {
			err = e
		}
	}
	switch job {
	case "steps":
		f, e := os.OpenFile("a", os.O_RDWR|os.O_CREATE|os.O_EXCL, 0o600)
		try(e)
		_, e = f.WriteAt([]byte("hello"), 3)
		try(e)
		_, e = f.Seek(0, io.SeekEnd)
		try(e)
		_, e = f.WriteString(" there")
		try(e)
		try(f.Truncate(12))
		fmt.Println("written")
		try(f.Sync())
		g, e := os.Create("b")
		try(e)
		_, e = f.Seek(0, io.SeekStart)
		try(e)
		_, e = io.Copy(g, f)
		try(e)
		h, e := os.OpenFile("log", os.O_WRONLY|os.O_APPEND, 0o600)
		try(e)
		_, e = h.WriteString("more\n")
		try(e)
		try(os.Link("a", "c"))
		try(os.Rename("b", "a"))
		try(os.Remove("log"))
		d, e := os.Open(".")
		try(e)
		try(d.Sync())
	case "threads":
		var wg sync.WaitGroup
		for i := range 8 {
			wg.Go(func() {
				f, e := os.Create(fmt.Sprint("t", i))
				try(e)
				for range 20 {
					_, e := f.WriteString("x")
					try(e)
				}
				try(f.Sync())
			})
		}
		wg.Wait()
	case "again": // as another program in the same place
		try(os.Setenv("DISKTRACE_CHILD", "steps"))
		try(syscall.Exec(os.Args[0], os.Args, os.Environ()))
	case "map":
		f, e := os.OpenFile("log", os.O_RDWR, 0o600)
		try(e)
		_, e = syscall.Mmap(int(f.Fd()), 0, 4, syscall.PROT_READ|syscall.PROT_WRITE, syscall.MAP_SHARED)
		try(e)
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		return 3
	}
	return 0
}

func run(t *testing.T, job string, fault func(int, Op) Fault) (*Log, string) {
	t.Helper()
	exe, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	dir := t.TempDir()
	if err := os.WriteFile(filepath.Join(dir, "log"), []byte("old\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	r := Run{Path: exe, Args: []string{exe}, Env: append(os.Environ(), "DISKTRACE_CHILD="+job), Dir: dir, Fault: fault}
	if job == "map" {
		log, err := r.Trace()
		if err != nil && !errors.Is(err, ErrNoTrace) {
			t.Fatal(err)
		}
		return log, dir
	}
	return r.Must(t), dir
}

func words(l *Log) string {
	var b strings.Builder
	for _, op := range l.Ops {
		fmt.Fprintf(&b, "%v %d %s>%s %d %d %q\n", op.Kind, op.File, op.Name, op.To, op.At, op.Size, op.Data)
	}
	return b.String()
}

// folder reads a folder as it is.
func folder(t *testing.T, dir string) map[string][]byte {
	t.Helper()
	out := map[string][]byte{}
	list, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range list {
		b, err := os.ReadFile(filepath.Join(dir, e.Name()))
		if err != nil {
			t.Fatal(err)
		}
		out[e.Name()] = b
	}
	return out
}

func same(a, b map[string][]byte) bool {
	if len(a) != len(b) {
		return false
	}
	for k, v := range a {
		w, ok := b[k]
		if !ok || !bytes.Equal(v, w) {
			return false
		}
	}
	return true
}

func TestEachStepIsRecorded(t *testing.T) {
	l, dir := run(t, "steps", nil)
	want := `create 2 a> 0 0 ""
write 2 > 3 0 "hello"
write 2 > 8 0 " there"
truncate 2 > 0 12 ""
say 0 > 0 0 "written\n"
sync 2 a> 0 0 ""
create 3 b> 0 0 ""
write 3 > 0 0 "\x00\x00\x00hello the"
write 1 > 4 0 "more\n"
link 2 a>c 0 0 ""
rename 3 b>a 0 0 ""
unlink 1 log> 0 0 ""
sync of the folder 0 .> 0 0 ""
`
	if got := words(l); got != want || l.Exit != 0 {
		t.Errorf("exit %d, recorded\n%swant\n%s", l.Exit, got, want)
	}
	if !same(l.After(), folder(t, dir)) {
		t.Errorf("the record makes %q, the folder holds %q", l.After(), folder(t, dir))
	}
}

func TestAllThreadsAreFollowed(t *testing.T) {
	l, dir := run(t, "threads", nil)
	if l.Exit != 0 || l.Count(Write) != 160 || l.Count(Sync) != 8 || !same(l.After(), folder(t, dir)) {
		t.Errorf("exit %d, %d writes, %d syncs", l.Exit, l.Count(Write), l.Count(Sync))
	}
}

func TestAProgramThatBecomesAnotherIsFollowed(t *testing.T) {
	l, dir := run(t, "again", nil)
	if l.Exit != 0 || l.Count(Write) != 4 || !same(l.After(), folder(t, dir)) {
		t.Errorf("exit %d, recorded\n%s", l.Exit, words(l))
	}
}

func TestAMapForWritingIsNoted(t *testing.T) {
	if l, _ := run(t, "map", nil); l != nil && l.Count(Mapped) != 1 {
		t.Errorf("recorded %s", words(l))
	}
}

// Each step is failed in turn, and ended at in turn: it does nothing, and no step
// after it is reached when the program has ended.
func TestEachStepCanFail(t *testing.T) {
	whole, _ := run(t, "steps", nil)
	for n := 1; n <= whole.Steps; n++ {
		l, dir := run(t, "steps", func(i int, _ Op) Fault {
			if i == n {
				return Fault{Errno: uintptr(syscall.EIO)}
			}
			return Fault{}
		})
		// a failed copy inside the kernel is done by hand
		byHand := n == 7 || n == 8
		if !byHand && (l.Exit != 3 || !strings.Contains(l.Text(Complained), "input/output error")) {
			t.Errorf("step %d: exit %d, %q", n, l.Exit, l.Text(Complained))
		}
		if !same(l.After(), folder(t, dir)) {
			t.Errorf("step %d: the record makes %q, the folder holds %q", n, l.After(), folder(t, dir))
		}
		l, dir = run(t, "steps", func(i int, _ Op) Fault { return Fault{Kill: i == n} })
		if l.Exit != -1 || l.Steps != n || !same(l.After(), folder(t, dir)) {
			t.Errorf("ended at step %d: exit %d, %d steps, %q", n, l.Exit, l.Steps, folder(t, dir))
		}
	}
}
