package store

import (
	"bufio"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"runtime"
	"strings"
	"testing"
)

// child is what the test binary does when it is started as a helper: job is a
// word and a path.
func child(job string) int {
	word, path, _ := strings.Cut(job, " ")
	if word == "full" {
		return childFull(path)
	}
	if job, ok := powerJobs[word]; ok && os.Getenv("STORE_RUN") == "power" {
		if err := job(path); err != nil {
			fmt.Fprintln(os.Stderr, err)
			return 8
		}
		return 0
	}
	s, err := Open(path, Options{})
	if err != nil {
		fmt.Printf("error %v\n", err)
		for i, k := range []error{ErrBusy, ErrReadOnly, ErrMissing} {
			if errors.Is(err, k) {
				return 10 + i
			}
		}
		return 2
	}
	switch word {
	case "open":
		fmt.Println("open")
		return 0
	case "hold":
		fmt.Println("open")
		_, _ = bufio.NewReader(os.Stdin).ReadString('\n') // until the parent ends it
		return 0
	case "append": // until killed
		fmt.Println("open")
		for i := 0; ; i++ {
			a, err := s.Append(fmt.Sprintf("%s-%d", os.Getenv("STORE_RUN"), i), childItems(os.Getenv("STORE_RUN"), i))
			if err != nil {
				fmt.Println("error", err)
				return 3
			}
			fmt.Println("ack", a.Action, a.First, a.Last)
			if i%7 == 3 {
				if err := s.PutSnapshot(a.Last, make([]byte, 1000*(i%20))); err != nil {
					fmt.Println("error", err)
					return 3
				}
			}
		}
	case "commits": // for counting syncs and failing them, which is done by thread
		runtime.LockOSThread()
		n := 0
		_, _ = fmt.Sscan(os.Getenv("STORE_RUN"), &n)
		for i := range n {
			it := benchItem(tenYears + i)
			_, err := s.Append(fmt.Sprint("c", i), []Item{it})
			fmt.Println("done", i, errors.Is(err, ErrUnsure), errors.Is(err, ErrSync), errors.Is(err, ErrLatched), err == nil)
			if err != nil {
				there, err := s.Recheck(fmt.Sprint("c", i))
				fmt.Println("recheck", there, err == nil)
			}
		}
		if err := s.Close(); err != nil {
			return 4
		}
		return 0
	}
	return 99
}

// childItems is what the appending child writes, so that the parent can tell.
func childItems(run string, i int) []Item {
	var items []Item
	for j := range i%4 + 1 {
		items = append(items, item(fmt.Sprint(run, " ", i, " ", j, strings.Repeat("x", i*37%900)), "run/"+run, fmt.Sprint("n/", i%50)))
	}
	return items
}

// childCommand starts the test binary as a helper; before are words to put in
// front of it, a tracer for instance.
func childCommand(t testing.TB, job, path, run string, before ...string) *exec.Cmd {
	t.Helper()
	exe, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	args := append(before, exe)
	cmd := exec.Command(args[0], args[1:]...)
	cmd.Env = append(os.Environ(), "STORE_CHILD="+job+" "+path, "STORE_RUN="+run)
	return cmd
}
