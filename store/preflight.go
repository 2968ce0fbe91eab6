package store

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"
)

// preflight looks at a file with plain reads before it is mapped, since a map of
// a file that is too short kills the process. It returns a warning when one head
// is bad.
func preflight(path string, f *os.File) (warning string, err error) {
	st, err := f.Stat()
	if err != nil {
		return "", blame(path, "opened", err)
	}
	size := st.Size()
	switch {
	case st.IsDir():
		return "", foreign(path, "it is a folder")
	case !st.Mode().IsRegular():
		return "", foreign(path, "it is not an ordinary file")
	case size == 0:
		return "", &Trouble{
			What: fmt.Sprintf("The file %s is empty: it has 0 bytes.", path),
			Do:   "Restore the last backup, or remove the empty file and make a new book.",
			Kind: ErrEmpty,
		}
	case size < minPages*pageSize:
		return "", tooSmall(path, f, size)
	}
	m, errs, err := readMetas(f)
	if err != nil {
		return "", (&view{path: path}).bad(err)
	}
	newest, warning, err := choose(path, m, errs)
	if err != nil {
		return "", err
	}
	if want := int64(newest.pages) * pageSize; newest.pages < minPages || want/pageSize != int64(newest.pages) {
		return "", damaged(path, "its head counts %d pages", newest.pages)
	} else if size < want {
		return "", short(path, size, want)
	}
	if newest.root < 2 || newest.root >= newest.pages {
		return "", damaged(path, "its head points outside the file")
	}
	if _, _, err := loadFreelist(f, newest); err != nil {
		return "", (&view{path: path}).bad(err)
	}
	return warning, nil
}

// tooSmall tells the beginning of one of our files from something else.
func tooSmall(path string, f *os.File, size int64) error {
	start := make([]byte, pageHeader+4)
	order.PutUint16(start[8:], 4)
	order.PutUint32(start[pageHeader:], magic)
	got := make([]byte, min(size, int64(len(start))))
	if _, err := f.ReadAt(got, 0); err != nil && !errors.Is(err, io.EOF) {
		return (&view{path: path}).bad(err)
	}
	if !bytes.Equal(got, start[:len(got)]) {
		return foreign(path, "it begins with something else")
	}
	return short(path, size, minPages*pageSize)
}

// choose takes the head that bbolt will take.
func choose(path string, m [2]metaPage, errs [2]error) (newest metaPage, warning string, err error) {
	const lost = "One of the two heads of %s is damaged; the last action before the damage may be missing."
	switch {
	case errs[0] == nil && errs[1] == nil:
		newest, other := m[0], m[1]
		if other.txid > newest.txid {
			newest, other = other, newest
		}
		if newest.txid-other.txid != 1 { // they are written in turn
			warning = fmt.Sprintf(lost, path)
		}
		return newest, warning, nil
	case errs[0] == nil, errs[1] == nil:
		newest = m[0]
		if errs[0] != nil {
			newest = m[1]
		}
		return newest, fmt.Sprintf(lost, path), nil
	case errs[0] == errMagic && errs[1] == errMagic:
		return newest, "", foreign(path, "it begins with something else")
	case errs[0] == errVersion && errs[1] == errVersion:
		if v := m[0].txid; v > layoutVersion {
			return newest, "", newer(path, "page layout", uint32(v), layoutVersion)
		}
		return newest, "", foreign(path, "its pages are laid out in another way")
	}
	return newest, "", damaged(path, "both of its heads are unreadable")
}
