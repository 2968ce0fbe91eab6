//go:build linux

package main

import (
	_ "embed"
	"flag"
	"fmt"
	"io"
	"os"
	"os/exec"
	"runtime"
	"slices"
	"strconv"
	"strings"
	"time"

	"golang.org/x/sys/unix"
)

// reasons stand below the table: why what is not met is not met.
//
//go:embed reasons.md
var reasons string

func more(command string, args []string, out io.Writer) error {
	switch command {
	case "ratios":
		return ratiosCommand(args, out)
	case "sql":
		return sqlCommand(args, out)
	case "append":
		if len(args) == 2 {
			n, err := strconv.Atoi(args[1])
			if err != nil {
				return err
			}
			return appends(args[0], n)
		}
	}
	return fmt.Errorf("there is no command %q.\n%s", command, usage)
}

func ratiosCommand(args []string, out io.Writer) error {
	f := flag.NewFlagSet("ratios", flag.ContinueOnError)
	t := &bed{}
	f.IntVar(&t.rounds, "rounds", 11, "rounds of each pair")
	f.IntVar(&t.keys, "keys", 120, "keys to press in each program")
	f.StringVar(&t.only, "only", "", "only these parts, with commas between: start, keys, actions, syncs, sums, replay, memory, sizes")
	file, err := oneFile(f, args)
	if err != nil {
		return err
	}
	if t.dir, err = os.MkdirTemp("", "bench-"); err != nil {
		return err
	}
	defer os.RemoveAll(t.dir)
	if err := t.make(file); err != nil {
		return err
	}
	table := t.measure()
	if _, err := fmt.Fprintf(out, "# Ratios\n\nMade by `go run ./cmd/bench ratios FILE`. Each ratio is that of ours to theirs within one round, the order turned round each time:\nmedian and quartiles of %d rounds. \"Ready\" is the whole process of `tintline tally`, \"first screen\" until a pseudo-terminal has it.\n\n%s\n", t.rounds, t.machine()); err != nil {
		return err
	}
	if err := printTable(out, table); err != nil {
		return err
	}
	_, err = io.WriteString(out, "\n"+reasons)
	return err
}

func (t *bed) measure() []line {
	var out []line
	for _, step := range []struct {
		name string
		f    func() ([]line, error)
	}{
		{"start", t.starts},
		{"keys", t.keyPresses},
		{"actions", t.actions},
		{"syncs", func() ([]line, error) { l, err := t.counts(); return []line{l}, err }},
		{"sums", t.sums},
		{"replay", t.replay},
		{"memory", t.memories},
		{"sizes", t.sizes},
	} {
		if t.only != "" && !slices.Contains(strings.Split(t.only, ","), step.name) {
			continue
		}
		fmt.Fprintln(os.Stderr, "measuring:", step.name)
		lines, err := step.f()
		if err != nil { // the other parts are worth having
			fmt.Fprintf(os.Stderr, "%s: %v\n", step.name, err)
			lines = append(lines, line{what: step.name, ours: "broken off", met: "not measured"})
		}
		out = append(out, lines...)
	}
	return out
}

// machine says on what was measured, and how busy it was.
func (t *bed) machine() string {
	model := "unknown"
	if b, err := os.ReadFile("/proc/cpuinfo"); err == nil {
		if _, m, ok := strings.Cut(string(b), "model name\t: "); ok {
			model, _, _ = strings.Cut(m, "\n")
		}
	}
	var u unix.Utsname
	_ = unix.Uname(&u)
	disk := "unknown"
	if b, err := exec.Command("stat", "-f", "-c", "%T", t.dir).Output(); err == nil {
		disk = strings.TrimSpace(string(b))
	}
	load, _ := os.ReadFile("/proc/loadavg")
	var b strings.Builder
	for _, l := range [][2]string{
		{"processor", fmt.Sprintf("%s, %d cores", model, runtime.NumCPU())},
		{"kernel", unix.ByteSliceToString(u.Release[:])},
		{"file system", disk},
		{"go", runtime.Version()},
		{"date", time.Now().UTC().Format(time.DateOnly)},
		{"load at the end", strings.TrimSpace(string(load))},
		{"book", fmt.Sprintf("%d entries, %s to %s, %.1f MB of entries", t.entries, t.first, t.last, float64(t.bodies)/1e6)},
	} {
		fmt.Fprintf(&b, "* %s: %s\n", l[0], l[1])
	}
	return b.String()
}
