package store

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
)

// ReplaceWith puts a new file, whole and checked, in the place of the one at path,
// which keeps its contents under the name keepAs. old is that file, open for
// reading, of whatever format; nil if there is none or it cannot be read. Nobody
// else has the file at path meanwhile.
//
// Nothing is overwritten: if keepAs is taken, that is an error (ErrExists). With any
// error the file at path is as it was. A power cut leaves the old or the new one at
// path, and the old one at keepAs before the new one is at path.
//
// Of a link the file that it leads to is replaced, and the link stays.
func ReplaceWith(path, keepAs, id string, o Options, fill func(old *Store, appendTo func(action string, items []Item) error) error) error {
	path = followed(path)
	if _, err := os.Lstat(keepAs); err == nil {
		return exists(keepAs, nil)
	} else if !errors.Is(err, fs.ErrNotExist) {
		return blame(keepAs, "made", err)
	}
	old, release, err := hold(path, o)
	if err != nil {
		return err
	}
	locked := release != nil
	if locked {
		defer release()
	}
	fillNew := func(appendTo func(string, []Item) error) error {
		if fill == nil {
			return nil
		}
		return fill(old, appendTo)
	}
	return makeNew(path, temporaryOf(path, locked), id, o, fillNew, func(temp, path string) error {
		if _, err := os.Lstat(path); errors.Is(err, fs.ErrNotExist) {
			return publish(temp, path)
		}
		return swap(temp, path, keepAs)
	})
}

// followed is where a link leads, if it leads to a file.
func followed(path string) string {
	if st, err := os.Lstat(path); err != nil || st.Mode()&fs.ModeSymlink == 0 {
		return path
	}
	if to, err := filepath.EvalSymlinks(path); err == nil {
		return to
	}
	return path
}

// temporaryOf is where the file that will replace another is built. Whoever holds
// the lock of the file at path is alone with that name: what stands there already
// was left by a program that was killed.
func temporaryOf(path string, locked bool) string {
	if !locked {
		return temporary(path)
	}
	sum := sha256.Sum256([]byte(filepath.Base(path)))
	temp := filepath.Join(filepath.Dir(path), ".book-"+hex.EncodeToString(sum[:6])+".new")
	_ = os.Remove(temp)
	return temp
}

// hold keeps everybody else from the file at path, which may be missing (then there
// is nothing to release) or damaged.
func hold(path string, o Options) (old *Store, release func(), err error) {
	s, err := open(path, o, true)
	if err == nil {
		return s, func() { _ = s.Close() }, nil
	}
	switch {
	case errors.Is(err, ErrMissing):
		return nil, nil, nil
	case errors.Is(err, ErrDamaged), errors.Is(err, ErrShort), errors.Is(err, ErrEmpty),
		errors.Is(err, ErrForeign), errors.Is(err, ErrNewer):
	default:
		return nil, nil, err
	}
	if st, err := os.Stat(path); err == nil && !st.Mode().IsRegular() {
		return nil, nil, foreign(path, "it is not an ordinary file")
	}
	f, err := openLocked(path, os.O_RDWR, 0, false, o.wait())
	if errors.Is(err, errInUse) {
		return nil, nil, busy(path, err)
	}
	if err != nil {
		return nil, nil, blame(path, "opened", err)
	}
	return nil, func() { _ = f.Close() }, nil
}

// swap gives the file at path a second name, on the disk, before the new one takes
// the first.
func swap(temp, path, keepAs string) error {
	err := os.Link(path, keepAs)
	switch {
	case err == nil:
	case errors.Is(err, fs.ErrExist):
		return exists(keepAs, err)
	default: // a file system without links
		if err = copyNew(path, keepAs); err != nil {
			return blame(keepAs, "made", err)
		}
	}
	if err = syncFolder(filepath.Dir(keepAs)); err == nil {
		err = os.Rename(temp, path)
	}
	if err != nil {
		_ = os.Remove(keepAs) // made a moment ago, by us
		return blame(path, "replaced", err)
	}
	if err = syncFolder(filepath.Dir(path)); err != nil {
		// Nobody knows which of the two a power cut would leave: back to the old.
		return blame(path, "replaced", errors.Join(err, os.Rename(keepAs, path)))
	}
	return nil
}

// copyNew copies a file to a name that nobody has, and syncs it.
func copyNew(from, to string) (err error) {
	in, err := os.Open(from)
	if err != nil {
		return err
	}
	defer func() { _ = in.Close() }()
	out, err := os.OpenFile(to, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o600)
	if errors.Is(err, fs.ErrExist) {
		return exists(to, err)
	}
	if err != nil {
		return err
	}
	_, err = io.Copy(out, in)
	if err = errors.Join(err, out.Sync(), out.Close()); err != nil {
		_ = os.Remove(to)
	}
	return err
}
