//go:build unix

package endtoend

import (
	"bytes"
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
)

// TestReadOnly: another user may read the book and its folder and not write there. Who would write is told in one sentence
// and what to do, under exit 8, the screen too; who reads is answered. The file stays as it is.
func TestReadOnly(t *testing.T) {
	who := &syscall.SysProcAttr{Setsid: true, Setctty: true}
	plain := &syscall.SysProcAttr{}
	if os.Getuid() == 0 {
		nobody := &syscall.Credential{Uid: 65534, Gid: 65534, NoSetGroups: true}
		who.Credential, plain.Credential = nobody, nobody
	}
	dir, err := os.MkdirTemp("", "tintline-ro-")
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		_ = os.Chmod(dir, 0o755)
		_ = os.RemoveAll(dir)
	})
	exe, book := filepath.Join(dir, "tintline"), filepath.Join(dir, "book.db")
	b, err := os.ReadFile(binary)
	if err = errors.Join(err, os.WriteFile(exe, b, 0o755)); err != nil {
		t.Fatal(err)
	}
	must(t, "", "demo", "--make", book)
	lawns := filepath.Join(dir, "lawns.csv")
	if err := errors.Join(os.WriteFile(lawns, []byte("lawn,zone,grass,area_sqft\nx,y,tall fescue,5000\n"), 0o444), os.Chmod(book, 0o444), os.Chmod(dir, 0o555)); err != nil {
		t.Fatal(err)
	}
	was, err := os.ReadFile(book)
	if err != nil {
		t.Fatal(err)
	}
	run := func(args ...string) (out, said string, code int) {
		c := exec.Command(exe, args...)
		c.Env, c.SysProcAttr = environment(t), plain
		c.Stdin = strings.NewReader(`{"fact":"setting","name":"theme","value":"sun"}` + "\n")
		var o, e bytes.Buffer
		c.Stdout, c.Stderr = &o, &e
		var exit *exec.ExitError
		if err := c.Run(); err != nil && !errors.As(err, &exit) {
			t.Skip("the program cannot be run as another user here: ", err)
		}
		return o.String(), e.String(), c.ProcessState.ExitCode()
	}
	for _, args := range [][]string{{"status"}, {"journal"}, {"tally"}, {"verify"}} {
		if out, said, code := run(append(args, "--book", book)...); code != 0 || out == "" {
			t.Errorf("%v: exit %d, %s", args, code, said)
		}
	}
	fresh := filepath.Join(dir, "new.db")
	for _, args := range [][]string{
		{"enter", "-", "--book", book},
		{"import", "lawns", lawns, "--book", book},
		{"setup", "lawn", "--book", book},
		{"enter", "-", "--book", fresh},
		{"replay", "-", "--book", fresh},
		{"demo", "--make", fresh},
		{"backup", filepath.Join(dir, "copy.db"), "--book", book},
	} {
		_, said, code := run(args...)
		if lines := strings.Split(strings.TrimSpace(said), "\n"); code != 8 || len(lines) != 2 {
			t.Errorf("%v: exit %d, %q", args, code, said)
		}
	}
	cmd := exec.Command(exe, "--book", book)
	cmd.Env = environment(t)
	c := onAs(t, small, cmd, who)
	if code := c.ended(); code != 8 {
		t.Errorf("the screen: exit %d, %q", code, c.bytes())
	}
	c.see("does not allow it")
	c.asItWas()
	if now, err := os.ReadFile(book); err != nil || !bytes.Equal(now, was) {
		t.Errorf("the book was changed (%v)", err)
	}
	if list, _ := os.ReadDir(dir); len(list) != 3 {
		t.Errorf("the folder holds %v", list)
	}
}
