package store

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"time"
)

// makeCopy lets fill write a file under a name of its own, checks it as the disk
// has it and gives it the name to, over what stands there if that is allowed.
// source tells, if it can, whether a fault of the copy is one of the source.
func makeCopy(path, to string, over bool, source func() error, fill func(*os.File) error) error {
	if err := mayName(path, to, over); err != nil {
		return err
	}
	temp := temporary(to)
	out, err := os.OpenFile(temp, os.O_RDWR|os.O_CREATE|os.O_EXCL, 0o600)
	if err != nil {
		return uncopied(to, err)
	}
	named := false
	defer func() {
		if !named {
			_ = os.Remove(temp)
		}
	}()
	if err = fill(out); err == nil {
		if err = out.Sync(); err == nil {
			dropCache(out)
		} else {
			err = errors.Join(errTarget, err)
		}
	}
	if err2 := out.Close(); err == nil && err2 != nil {
		err = errors.Join(errTarget, err2)
	}
	if err != nil {
		if errors.Is(err, errTarget) {
			return uncopied(to, err)
		}
		return err
	}
	if err = checkCopy(path, temp, to, source); err != nil {
		return err
	}
	if over {
		if err = sameBook(temp, to); err == nil {
			err = replace(temp, to)
		}
	} else {
		err = publish(temp, to)
	}
	named = err == nil
	return uncopied(to, err)
}

// mayName tells whether the copy may have its name.
func mayName(path, to string, over bool) error {
	st, err := os.Stat(to)
	if errors.Is(err, fs.ErrNotExist) {
		if _, err = os.Lstat(to); err == nil {
			return exists(to, nil) // a link to nothing
		}
		return nil
	}
	if err != nil {
		return uncopied(to, err)
	}
	if from, err := os.Stat(path); err == nil && os.SameFile(from, st) {
		return refused("The copy would take the place of the book %s itself.", path)
	}
	if !over || !st.Mode().IsRegular() {
		return exists(to, nil)
	}
	return nil
}

// checkCopy reads the finished copy through.
func checkCopy(path, temp, to string, source func() error) error {
	s, err := Open(temp, Options{ReadOnly: true})
	if err == nil {
		err = errors.Join(s.Check(), s.Close())
	}
	if err == nil {
		return nil
	}
	if source != nil {
		if err := source(); err != nil {
			return err
		}
		return uncopied(to, fmt.Errorf("the disk does not give back what was written to it (%w)", bare(err)))
	}
	// The source cannot be checked while another has it. It stood still while it
	// was read, so what is wrong with its pages here is wrong with them there.
	var t *Trouble
	if errors.As(err, &t) {
		t.What = strings.ReplaceAll(t.What, temp, path)
	}
	return err
}

// sameBook refuses to put a copy in the place of one of another book. What cannot
// be read any more, or is not there, is no reason.
func sameBook(temp, to string) error {
	was, err := Open(to, Options{ReadOnly: true})
	for _, kind := range []error{ErrMissing, ErrDamaged, ErrShort, ErrEmpty} {
		if errors.Is(err, kind) {
			return nil
		}
	}
	if err != nil {
		return err
	}
	defer func() { _ = was.Close() }()
	is, err := Open(temp, Options{ReadOnly: true})
	if err != nil {
		return err
	}
	defer func() { _ = is.Close() }()
	if is.Meta().BookID == was.Meta().BookID {
		return nil
	}
	return &Trouble{
		What: fmt.Sprintf("The file %s is a copy of another book.", to),
		Do:   "Move it to another place, then make the copy again.",
		Kind: ErrExists,
	}
}

// replace gives the file its name in one step; what stood there goes with it.
func replace(temp, to string) error {
	if err := os.Rename(temp, to); err != nil {
		return err
	}
	if err := syncFolder(filepath.Dir(to)); err != nil {
		return &Trouble{
			What:  fmt.Sprintf("The copy %s is whole, but the disk does not confirm its name: %v.", to, cause(err)),
			Do:    "Check the disk, then make the copy again; the book itself is whole.",
			Kind:  ErrSync,
			Cause: err,
		}
	}
	return nil
}

// uncopied puts trouble with the new file into words.
func uncopied(to string, err error) error {
	if err == nil {
		return nil
	}
	var t *Trouble
	if errors.As(err, &t) && !errors.Is(err, errTarget) {
		return err
	}
	kind := kindOf(err)
	t = &Trouble{Kind: kind, Cause: err, Do: "Choose another place for it; nothing was changed."}
	switch kind {
	case ErrFull:
		t.What = fmt.Sprintf("The copy %s could not be made: the disk is full.", to)
		t.Do = "Make room on the disk, or choose another place for the copy; the book itself is whole."
	case ErrReadOnly:
		t.What = fmt.Sprintf("The copy %s could not be made: the folder or disk does not allow it.", to)
	case ErrMissing: // which is said of a book, not of a place for a copy
		t.What, t.Kind = fmt.Sprintf("The copy %s could not be made: there is no such folder.", to), ErrIO
	default:
		t.What = fmt.Sprintf("The copy %s could not be made: %v.", to, cause(err))
	}
	return t
}

// cause is the last of the errors that were joined, without operation and path.
func cause(err error) error {
	var p *fs.PathError
	if errors.As(err, &p) {
		return p.Err
	}
	var l *os.LinkError
	if errors.As(err, &l) {
		return l.Err
	}
	return err
}

// SweepUnfinished removes what a program that was killed left of files it was
// making in a folder, if nobody has touched them since before.
func SweepUnfinished(dir string, before time.Time) {
	list, err := os.ReadDir(dir)
	if err != nil {
		return // it is a courtesy
	}
	for _, e := range list {
		hex, ok1 := strings.CutPrefix(e.Name(), ".book-")
		hex, ok2 := strings.CutSuffix(hex, ".new")
		if !ok1 || !ok2 || len(hex) != 12 || strings.Trim(hex, "0123456789abcdef") != "" {
			continue
		}
		if st, err := e.Info(); err == nil && st.Mode().IsRegular() && st.ModTime().Before(before) {
			_ = os.Remove(filepath.Join(dir, e.Name()))
		}
	}
}
