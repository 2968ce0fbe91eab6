package store

import (
	"errors"
	"fmt"
	"strings"
)

// powerJobs are what a child does while it is recorded, on the file at path. It
// says what it has confirmed. What it writes is the same at each run.
var powerJobs = map[string]func(path string) error{
	"append": powerAppend,
	"go-on":  powerGoOn,
	"create": powerCreate,
	"create-with": func(path string) error {
		return said("made", CreateWith(path, "new", Options{}, func(appendTo func(string, []Item) error) error {
			return powerFill(nil, appendTo)
		}))
	},
	"replace": func(path string) error {
		return said("made", ReplaceWith(path, path+".kept", "new", Options{}, powerFill))
	},
	"copy": func(path string) error { return said("made", Backup(path, path+".copy")) },
	"copy-over": func(path string) error {
		s, err := Open(path, Options{})
		if err == nil {
			err = said("made", s.BackupOver(path+".copy"))
		}
		return err
	},
}

func said(word string, err error) error {
	if err == nil {
		fmt.Println(word)
	}
	return err
}

// powerItems are the items of action i: some small, some of many entries.
func powerItems(i int) []Item {
	n := i%3 + 1
	if i%10 == 7 {
		n = 40
	}
	var list []Item
	for j := range n {
		it := item(fmt.Sprint(i, " ", j, strings.Repeat("x", i*211%700)), fmt.Sprint("lawn/", i%5), fmt.Sprint("k", j))
		if i%4 == 2 {
			it.Rows = []Row{
				{[]byte(fmt.Sprint("sums/", i%8)), []byte(fmt.Sprint("sum ", i, j, strings.Repeat("s", 150)))},
				{[]byte(fmt.Sprint("laid/", i)), []byte(strings.Repeat("l", 40*i))},
			}
		}
		list = append(list, it)
	}
	return list
}

const powerActions = 24

func powerAppend(path string) error {
	s, err := Open(path, Options{})
	if err != nil {
		return err
	}
	for i := range powerActions {
		a, err := s.Append(fmt.Sprint("act-", i), powerItems(i))
		if err != nil {
			return err
		}
		fmt.Println("done", i)
		switch {
		case i == 13:
			err = s.DropSnapshot()
		case i%5 == 3:
			if err = s.PutSnapshot(a.Last, []byte(strings.Repeat("z", 400*i))); err == nil {
				fmt.Println("snapshot", a.Last)
			}
		}
		if err != nil {
			return err
		}
	}
	return s.Close()
}

func powerCreate(path string) error {
	s, err := Create(path, "new", Options{})
	if err == nil {
		err = said("made", s.Close())
	}
	return err
}

// powerFill appends what the old file holds and some more.
func powerFill(old *Store, appendTo func(string, []Item) error) error {
	var group []Item
	var action string
	if old != nil {
		flush := func() error {
			if len(group) == 0 {
				return nil
			}
			err := appendTo(action, group)
			group = nil
			return err
		}
		if err := old.Each(1, func(r Record) error {
			if r.Action != action {
				if err := flush(); err != nil {
					return err
				}
				action = r.Action
			}
			group = append(group, Item{Body: []byte(string(r.Body)), Keys: r.Keys})
			return nil
		}); err != nil {
			return err
		}
		if err := flush(); err != nil {
			return err
		}
	}
	for i := range 6 {
		if err := appendTo(fmt.Sprint("act-", i), powerItems(i)); err != nil {
			return err
		}
	}
	return nil
}

// goOnActions is how many actions powerGoOn does.
const goOnActions = 6

// powerGoOn does what an operator does: whatever fails is tried again until it is
// done. It says how each attempt ended.
func powerGoOn(path string) error {
	s, err := Open(path, Options{})
	if err != nil {
		return err
	}
	for i := range goOnActions {
		name := fmt.Sprint("act-", i)
		if err := insist(s, name, func() error { _, err := s.Append(name, powerItems(i)); return err }); err != nil {
			return err
		}
		fmt.Println("done", i)
		if i == 2 {
			last, err := s.Last()
			if err != nil {
				return err
			}
			if err := insist(s, "", func() error { return s.PutSnapshot(last, []byte("snapshot")) }); err != nil {
				return err
			}
		}
	}
	return s.Close()
}

// insist tries until f is done. After an error the file is looked at again, and
// what is found there must be what the error had said.
func insist(s *Store, action string, f func() error) error {
	for range 20 {
		err := f()
		if err == nil {
			return nil
		}
		fmt.Println("failed:", err)
		if complaint := inWords(err); complaint != nil {
			return complaint
		}
		unsure := errors.Is(err, ErrUnsure)
		for range 20 {
			var there bool
			if there, err = s.Recheck(action); err == nil {
				if there && !unsure {
					return errors.New("said not to be saved, and it is there")
				}
				break
			}
			fmt.Println("recheck failed:", err)
			if complaint := inWords(err); complaint != nil {
				return complaint
			}
		}
	}
	return errors.New("never done")
}

// inWords: an error has one sentence and says what to do.
func inWords(err error) error {
	var tr *Trouble
	if !errors.As(err, &tr) || strings.Count(tr.What+tr.Do, "\n") > 0 || !strings.HasSuffix(tr.What, ".") || !strings.HasSuffix(tr.Do, ".") {
		return fmt.Errorf("not in words: %w", err)
	}
	return nil
}
