package main

import (
	"bytes"
	"crypto/sha256"
	"encoding/binary"
	"encoding/hex"
	"hash/crc32"
	"math/rand"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"go.etcd.io/bbolt"
)

const reading = `{"fact":"gauge_read","compartment":"a","volume_gal":100}` + "\n"

func namesIn(t testing.TB, dir string) string {
	t.Helper()
	list, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	var out []string
	for _, e := range list {
		out = append(out, e.Name())
	}
	return strings.Join(out, " ")
}

func mustBytes(t testing.TB, path string) []byte {
	t.Helper()
	b, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// TestReadingLeavesAnEarlierBookAsItIs: every command that only reads.
func TestReadingLeavesAnEarlierBookAsItIs(t *testing.T) {
	for _, name := range []string{"spine", "changeover"} {
		path := earlierBook(t, name)
		before := mustBytes(t, path)
		for _, args := range [][]string{
			{"status"},
			{"tally"},
			{"journal", "--date", "2026-05-28"},
			{"verify"},
			{"tally", "--from", "2026-04-01", "--to", "2026-06-01"},
			{"check", "--lawn", "Twin Gables", "--with", "gun"},
		} {
			if code, _, err := call(t, "", append(args, "--book", path)...); code != 0 && args[0] != "check" || strings.Contains(err, "damaged") {
				t.Errorf("%s: %v: code %d, %s", name, args, code, err)
			}
		}
		if !bytes.Equal(before, mustBytes(t, path)) || namesIn(t, filepath.Dir(path)) != "book.db" {
			t.Errorf("%s: reading changed it; there are %s", name, namesIn(t, filepath.Dir(path)))
		}
	}
}

// TestAnEarlierBookIsMadeReady: the first command that writes makes it ready, keeps the file as it was, and says so once.
func TestAnEarlierBookIsMadeReady(t *testing.T) {
	for _, name := range earlier {
		path := earlierBook(t, name)
		before, records, lines := mustBytes(t, path), recordBodies(t, path), export(t, path)
		code, out, err := call(t, reading, "enter", "-", "--book", path)
		want := "The book was made ready for this version; the file as it was is kept as " + path + ".format-1.\n"
		if code != 0 || strings.Count(out, "\n") != 1 || err != want {
			t.Fatalf("%s: code %d, %q, %q", name, code, out, err)
		}
		if !bytes.Equal(before, mustBytes(t, path+".format-1")) {
			t.Errorf("%s: the file that is kept is not the one that was", name)
		}
		if got := recordBodies(t, path); !strings.HasPrefix(got, records) {
			t.Errorf("%s: the entries are not the ones that were", name)
		}
		if got := export(t, path); !strings.HasPrefix(got, lines) {
			t.Errorf("%s: the export is not the one that was", name)
		}
		if code, v := verifyJSON(t, path); code != 0 || v.Rows != derivedFits || v.Snapshot != derivedFits {
			t.Errorf("%s: code %d, %+v", name, code, v)
		}
		if code, _, err := call(t, reading, "enter", "-", "--book", path); code != 0 || err != "" {
			t.Errorf("%s: the second time: code %d, %q", name, code, err)
		}
	}
}

func recordBodies(t *testing.T, path string) string {
	t.Helper()
	records, _ := recordsOf(t, path)
	var out strings.Builder
	for _, r := range records {
		out.WriteString(strconv.FormatUint(r.Number, 10) + " " + r.Action + " " + hex.EncodeToString(r.Body) + "\n")
	}
	return out.String()
}

// TestTheScreenSaysThatTheBookWasMadeReady, and so does an import.
func TestTheScreenSaysThatTheBookWasMadeReady(t *testing.T) {
	k, err := openBook(earlierBook(t, "grass"), false)
	if err != nil {
		t.Fatal(err)
	}
	defer func() { _ = k.Close() }()
	if said := strings.Join(k.attendant.says(), " "); !strings.Contains(said, "The book was made ready for this version") {
		t.Errorf("the screen hears %q", said)
	}
	path := earlierBook(t, "cab")
	code, out, stderr := call(t, "name,zone,grass,area_sqft\n1 New Lane,front,tall_fescue,4000\n", "import", "lawns", "-", "--book", path)
	if !strings.Contains(stderr, "The book was made ready for this version") {
		t.Errorf("import: code %d, %q, %q", code, out, stderr)
	}
}

// TestAnUpgradeGoesOnAfterAKill: what may be found beside the old file when an upgrade was killed.
func TestAnUpgradeGoesOnAfterAKill(t *testing.T) {
	half := func(b []byte) []byte { return b[:len(b)/2] }
	for name, left := range map[string]func(path string, was []byte) error{
		"half of the new file": func(path string, _ []byte) error {
			sum := sha256.Sum256([]byte(filepath.Base(path)))
			return os.WriteFile(filepath.Join(filepath.Dir(path), ".book-"+hex.EncodeToString(sum[:6])+".new"), []byte("half"), 0o600)
		},
		"both names on one file": func(path string, _ []byte) error { return os.Link(path, path+".format-1") },
		"a whole copy":           func(path string, was []byte) error { return os.WriteFile(path+".format-1", was, 0o600) },
	} {
		path := earlierBook(t, "cab")
		was := mustBytes(t, path)
		if err := left(path, was); err != nil {
			t.Fatal(err)
		}
		if _, err := upgrade(path); err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		if code, v := verifyJSON(t, path); code != 0 || v.Entries != 96 || v.Rows != derivedFits {
			t.Errorf("%s: code %d, %+v", name, code, v)
		}
		if got := namesIn(t, filepath.Dir(path)); got != "book.db book.db.format-1" || !bytes.Equal(was, mustBytes(t, path+".format-1")) {
			t.Errorf("%s: there are %s", name, got)
		}
	}

	// What somebody else keeps there, or a copy that was cut, is never taken for it.
	path := earlierBook(t, "cab")
	was := mustBytes(t, path)
	if err := os.WriteFile(path+".format-1", half(was), 0o600); err != nil {
		t.Fatal(err)
	}
	said, err := upgrade(path)
	if err != nil || !strings.HasSuffix(said, ".format-1.2.") || !bytes.Equal(mustBytes(t, path+".format-1"), half(was)) || !bytes.Equal(mustBytes(t, path+".format-1.2"), was) {
		t.Errorf("%q, %v", said, err)
	}
}

// TestAnUpgradeKilledAtAnyMoment kills the program itself while it makes a book ready, and starts it again.
func TestAnUpgradeKilledAtAnyMoment(t *testing.T) {
	kills := 4
	if os.Getenv("TINTLINE_LONG") != "" {
		kills = 200
	}
	if n, err := strconv.Atoi(os.Getenv("TINTLINE_KILLS")); err == nil {
		kills = n
	}
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	program := filepath.Join(t.TempDir(), "tintline") // the test binary is the program when it is called so
	if err := os.Symlink(self, program); err != nil {
		t.Skip(err)
	}
	chance := rand.New(rand.NewSource(time.Now().UnixNano())) //nolint:gosec // any moment will do
	made := 0                                                 // how many were killed once the new file had its name
	for i := range kills {
		path := earlierBook(t, earlier[i%len(earlier)])
		was, lines := mustBytes(t, path), export(t, path)
		cmd := exec.Command(program, "enter", "-", "--book", path)
		cmd.Stdin, cmd.Env = strings.NewReader(""), append(os.Environ(), "GORACE=")
		if err := cmd.Start(); err != nil {
			t.Fatal(err)
		}
		time.Sleep(time.Duration(chance.Int63n(int64(120 * time.Millisecond))))
		_ = cmd.Process.Kill()
		_ = cmd.Wait()
		if _, err := os.Lstat(path + ".format-1"); err == nil {
			made++
		}
		if got := export(t, path); got != lines {
			t.Fatal("after the kill the book says something else")
		}
		if code, _, err := call(t, "", "enter", "-", "--book", path); code != 0 {
			t.Fatalf("the next start: code %d, %s", code, err)
		}
		if code, v := verifyJSON(t, path); code != 0 || v.Rows != derivedFits {
			t.Fatalf("code %d, %+v", code, v)
		}
		if export(t, path) != lines || !bytes.Equal(mustBytes(t, path+".format-1"), was) {
			t.Fatal("the book, or the file that is kept, is not what it was")
		}
		for _, n := range strings.Fields(namesIn(t, filepath.Dir(path))) {
			if strings.HasPrefix(n, ".book-") || strings.HasSuffix(n, ".2") {
				t.Fatalf("%s is left over", n)
			}
		}
	}
	t.Logf("%d kills, %d of them after the book had been made ready", kills, made)
}

// TestADamagedEarlierBookStaysAsItIs: nothing is made of what is not whole.
func TestADamagedEarlierBookStaysAsItIs(t *testing.T) {
	path := earlierBook(t, "changeover")
	records, _ := recordsOf(t, path)
	was := mustBytes(t, path)
	was[bytes.Index(was, records[50].Body)+3] ^= 1
	if err := os.WriteFile(path, was, 0o600); err != nil {
		t.Fatal(err)
	}
	code, _, err := call(t, reading, "enter", "-", "--book", path)
	if code != exitDamaged || !strings.Contains(err, "damaged") {
		t.Errorf("code %d, %q", code, err)
	}
	if !bytes.Equal(was, mustBytes(t, path)) || namesIn(t, filepath.Dir(path)) != "book.db" {
		t.Errorf("it was changed; there are %s", namesIn(t, filepath.Dir(path)))
	}
}

// TestABookOfANewerFormatStaysAsItIs: exit code 7 from every command, and the file untouched.
func TestABookOfANewerFormatStaysAsItIs(t *testing.T) {
	path := workedBook(t)
	newerFormat(t, path)
	was, there := mustBytes(t, path), namesIn(t, filepath.Dir(path))
	for _, args := range [][]string{{"enter", "-"}, {"status"}, {"verify"}, {"journal"}} {
		code, out, err := call(t, reading, append(args, "--book", path)...)
		if code != exitNewer || out != "" || strings.Count(err, "\n") != 2 {
			t.Errorf("%v: code %d, %q, %q", args, code, out, err)
		}
	}
	if !bytes.Equal(was, mustBytes(t, path)) || namesIn(t, filepath.Dir(path)) != there {
		t.Errorf("it was changed; there are %s", namesIn(t, filepath.Dir(path)))
	}
}

// newerFormat gives a file a format of the future, sealed as every format is.
func newerFormat(t *testing.T, path string) {
	t.Helper()
	db, err := bbolt.Open(path, 0o600, nil)
	if err != nil {
		t.Fatal(err)
	}
	defer func() { _ = db.Close() }()
	err = db.Update(func(tx *bbolt.Tx) error {
		b := tx.Bucket([]byte("meta"))
		if err := b.Put([]byte("format"), binary.BigEndian.AppendUint32(nil, 99)); err != nil {
			return err
		}
		var s uint32
		table := crc32.MakeTable(crc32.Castagnoli)
		err := b.ForEach(func(k, v []byte) error {
			if string(k) != "seal" {
				for _, p := range [][]byte{k, v} {
					s = crc32.Update(s, table, binary.BigEndian.AppendUint32(nil, uint32(len(p))))
					s = crc32.Update(s, table, p)
				}
			}
			return nil
		})
		if err != nil {
			return err
		}
		return b.Put([]byte("seal"), binary.BigEndian.AppendUint32(nil, s))
	})
	if err != nil {
		t.Fatal(err)
	}
}
