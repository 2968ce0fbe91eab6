package store

import (
	"errors"
	"fmt"
	"io/fs"
	"strings"
	"syscall"
)

const doRestore = "Leave the file as it is and restore the last backup beside it."

func damaged(path, format string, a ...any) *Trouble {
	return &Trouble{
		What: fmt.Sprintf("The book %s is damaged: %s.", path, fmt.Sprintf(format, a...)),
		Do:   doRestore,
		Kind: ErrDamaged,
	}
}

func short(path string, size, want int64) *Trouble {
	return &Trouble{
		What: fmt.Sprintf("The book %s is cut short: it has %d bytes and needs %d.", path, size, want),
		Do:   doRestore,
		Kind: ErrShort,
	}
}

func foreign(path, why string) *Trouble {
	return &Trouble{
		What: fmt.Sprintf("The file %s is not a book: %s.", path, why),
		Do:   "Give the path of a book, or make a new one under another name.",
		Kind: ErrForeign,
	}
}

func newer(path, what string, has, reads uint32) *Trouble {
	return &Trouble{
		What: fmt.Sprintf("The book %s has %s %d and this program reads up to %d.", path, what, has, reads),
		Do:   "Open it with the newer program that wrote it.",
		Kind: ErrNewer,
	}
}

func older(path string, has uint32) *Trouble {
	return &Trouble{
		What: fmt.Sprintf("The book %s has format %d and this program writes format %d.", path, has, Format),
		Do:   "Write it anew in the present format and keep the old file beside it; until then it can be read.",
		Kind: ErrOlder,
	}
}

func missing(path string, cause error) *Trouble {
	return &Trouble{
		What:  fmt.Sprintf("There is no book at %s.", path),
		Do:    "Check the path, or make a new book there.",
		Kind:  ErrMissing,
		Cause: cause,
	}
}

func exists(path string, cause error) *Trouble {
	return &Trouble{
		What:  fmt.Sprintf("There is already a file at %s.", path),
		Do:    "Choose another name; nothing was overwritten.",
		Kind:  ErrExists,
		Cause: cause,
	}
}

func busy(path string, cause error) *Trouble {
	return &Trouble{
		What:  fmt.Sprintf("The book %s is open in another copy.", path),
		Do:    "Close the other copy, or try again when it has ended.",
		Kind:  ErrBusy,
		Cause: cause,
	}
}

func gone(path, why string, cause error) *Trouble {
	return &Trouble{
		What:  fmt.Sprintf("The book %s %s while it was open.", path, why),
		Do:    "Put the file back in its place, or close the program and restore the last backup.",
		Kind:  ErrGone,
		Cause: cause,
	}
}

func refused(format string, a ...any) *Trouble {
	return &Trouble{
		What: fmt.Sprintf(format, a...),
		Do:   "Nothing was written; change the request.",
		Kind: ErrInput,
	}
}

func closed(path string) *Trouble {
	return &Trouble{
		What:  fmt.Sprintf("The book %s has been closed.", path),
		Do:    "Open it again.",
		Kind:  ErrClosed,
		Cause: fs.ErrClosed,
	}
}

func shut(path string) *Trouble {
	return &Trouble{
		What: fmt.Sprintf("The book %s was closed for an examination and is not open again.", path),
		Do:   "Let the program look at it again, or close the program and open the book anew.",
		Kind: ErrClosed,
	}
}

// blame turns an error of the system into trouble with the file at path, met
// while doing (a verb: "opened", "written"). Trouble passes through unchanged.
func blame(path, doing string, err error) error {
	if err == nil {
		return nil
	}
	var t *Trouble
	if errors.As(err, &t) {
		return err
	}
	kind := kindOf(err)
	t = &Trouble{Kind: kind, Cause: err, Do: "Check the disk, then try again."}
	switch kind {
	case ErrFull:
		t.What = fmt.Sprintf("The book %s could not be %s: the disk is full.", path, doing)
		t.Do = "Make room on the disk, then try again."
	case ErrReadOnly:
		t.What = fmt.Sprintf("The book %s could not be %s: the file, folder or disk does not allow it.", path, doing)
		t.Do = "Give yourself the right to read and write there, or copy the book to a place where you have it."
	case ErrMissing:
		t.What = fmt.Sprintf("The book %s could not be %s: there is no such file or folder.", path, doing)
		t.Do = "Check the path."
	default:
		t.What = fmt.Sprintf("The book %s could not be %s: %v.", path, doing, bare(err))
	}
	return t
}

// bare drops the operation and path that the system's error repeats.
func bare(err error) error {
	var p *fs.PathError
	if errors.As(err, &p) {
		return p.Err
	}
	return err
}

func kindOf(err error) error {
	switch {
	case isFull(err):
		return ErrFull
	case errors.Is(err, fs.ErrPermission), errors.Is(err, syscall.EROFS):
		return ErrReadOnly
	case errors.Is(err, fs.ErrNotExist):
		return ErrMissing
	case errors.Is(err, fs.ErrExist):
		return ErrExists
	}
	return ErrIO
}

// isFull also looks at the text, because bbolt wraps some errors without
// keeping them.
func isFull(err error) bool {
	for _, e := range fullErrnos {
		if errors.Is(err, e) || strings.Contains(err.Error(), e.Error()) {
			return true
		}
	}
	return false
}
