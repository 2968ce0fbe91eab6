package store

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"testing"
)

func TestCreateOverwritesNothing(t *testing.T) {
	dir := quickDir(t)
	path := filepath.Join(dir, "f")
	for _, contents := range []string{"", "letters"} {
		if err := os.WriteFile(path, []byte(contents), 0o600); err != nil {
			t.Fatal(err)
		}
		_, err := Create(path, "x", Options{})
		wantKind(t, err, ErrExists)
		if b, _ := os.ReadFile(path); string(b) != contents {
			t.Errorf("contents are now %q", b)
		}
	}
	_ = os.Remove(path)
	if err := os.Symlink("nowhere", path); err == nil {
		_, err := Create(path, "x", Options{})
		wantKind(t, err, ErrExists)
	}
	_, err := Create(filepath.Join(dir, "no", "folder"), "x", Options{})
	wantKind(t, err, ErrMissing)
	noLeftovers(t, dir, "f")
}

func TestCreateLosesTheRaceForItsName(t *testing.T) {
	path := newPath(t)
	err := CreateWith(path, "x", Options{}, func(func(string, []Item) error) error {
		return os.WriteFile(path, []byte("someone else's"), 0o600)
	})
	wantKind(t, err, ErrExists)
	if b, _ := os.ReadFile(path); string(b) != "someone else's" {
		t.Errorf("contents are now %q", b)
	}
	noLeftovers(t, filepath.Dir(path), filepath.Base(path))
}

func TestRenameWithoutLinks(t *testing.T) {
	dir := quickDir(t)
	a, b := filepath.Join(dir, "a"), filepath.Join(dir, "b")
	if err := os.WriteFile(a, []byte("new"), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := rename(a, b); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(a, []byte("newer"), 0o600); err != nil {
		t.Fatal(err)
	}
	wantKind(t, rename(a, b), ErrExists)
	if err := rename(filepath.Join(dir, "none"), filepath.Join(dir, "c")); err == nil {
		t.Error("renamed what is not there")
	}
	noLeftovers(t, dir, "a", "b")
}

func TestCreateWithIsAllOrNothing(t *testing.T) {
	dir := quickDir(t)
	path := filepath.Join(dir, "f")
	mine := errors.New("line 3 is wrong")
	for name, fill := range map[string]func(func(string, []Item) error) error{
		"caller's error": func(add func(string, []Item) error) error {
			for i := range 60_000 { // beyond the first commit
				if err := add(fmt.Sprint(i), []Item{item("x")}); err != nil {
					return err
				}
			}
			return mine
		},
		"action twice": func(add func(string, []Item) error) error {
			return errors.Join(add("a", []Item{item("x")}), add("a", []Item{item("y")}))
		},
		"error passed over": func(add func(string, []Item) error) error {
			_ = add("", []Item{item("x")})
			_ = add("fine", []Item{item("x")})
			return nil
		},
	} {
		err := CreateWith(path, "x", Options{}, fill)
		if name == "caller's error" && !errors.Is(err, mine) || name != "caller's error" && !errors.Is(err, ErrInput) {
			t.Errorf("%s: %v", name, err)
		}
		noLeftovers(t, dir)
	}
	func() {
		defer func() {
			if recover() != "mine" {
				t.Error("a panic of the caller was swallowed")
			}
		}()
		_ = CreateWith(path, "x", Options{}, func(func(string, []Item) error) error { panic("mine") })
	}()
	noLeftovers(t, dir)
}

func TestCreateWithEqualsAppending(t *testing.T) {
	s := made(t)
	path := newPath(t)
	items := func(i int) []Item {
		its := make([]Item, i%5+1)
		for j := range its {
			its[j] = item(fmt.Sprint("body ", i, j), fmt.Sprint("k", i%30), fmt.Sprint("t", i))
		}
		return its
	}
	const actions = 800
	for i := range actions {
		put(t, s, fmt.Sprint("a", i), items(i)...)
	}
	if err := CreateWith(path, "x", Options{}, func(add func(string, []Item) error) error {
		for i := range actions {
			if err := add(fmt.Sprint("a", i), items(i)); err != nil {
				return err
			}
		}
		return nil
	}); err != nil {
		t.Fatal(err)
	}
	r := opened(t, path, Options{})
	if !same(mustRead(t, s), mustRead(t, r)) {
		t.Error("contents differ")
	}
	if a := put(t, r, "a5", item("again")); !a.Repeated {
		t.Error("an action of the making is not recognised")
	}
	put(t, r, "new", item("more"))
}
