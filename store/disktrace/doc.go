// Package disktrace is for tests: it records what a program does to the files of
// one folder, and what it says on its standard output, in order. From such a
// record it makes the files that a power cut may leave at any moment.
//
// The record is taken with ptrace, of all threads (trace.go, Linux on amd64 and
// arm64). The same hold lets a call fail, or ends the program before it. A
// program that writes through a shared map cannot be recorded so; such a map is
// noted as Mapped, and a test should not allow it.
package disktrace

import "errors"

// ErrNoTrace is the answer where programs cannot be traced.
var ErrNoTrace = errors.New("programs cannot be traced here")

// Kind is what one step of a program was.
type Kind uint8

// The steps that are recorded.
const (
	Create     Kind = iota // Name: a new, empty file
	Write                  // Data at At
	Truncate               // to Size
	Allocate               // room up to Size
	Sync                   // of a file: fsync, fdatasync
	SyncFolder             // of the folder Name
	Rename                 // Name becomes To
	Link                   // Name is also To
	Unlink                 // Name is no more
	Mapped                 // the file was mapped for shared writing
	Said                   // Data on standard output
	Complained             // Data on standard error
)

var kindNames = [...]string{
	"create", "write", "truncate", "allocate", "sync", "sync of the folder",
	"rename", "link", "unlink", "map for writing", "say", "complain",
}

func (k Kind) String() string { return kindNames[k] }

// Changes tells whether a step needs the disk.
func (k Kind) Changes() bool { return k < Mapped }

// Op is one step that succeeded. Names are relative to the folder.
type Op struct {
	Kind     Kind
	File     int // which file, whatever its names; 0 for none
	Name, To string
	At, Size int64
	Data     []byte
	// Since is how many steps had ended when this one began: a sync covers those.
	Since int
}

// Log is what a program did.
type Log struct {
	Start map[string][]byte // the folder before it
	IDs   map[string]int    // of the files of Start
	Ops   []Op
	Steps int // how many steps were begun that need the disk, those that failed too
	Exit  int // exit code, -1 if it was ended by a signal
	// Faults is how many calls were made to fail.
	Faults int
}

// Fault is what is done to a step instead of letting it through.
type Fault struct {
	Errno uintptr // the error that the program gets; nothing else is done
	Kill  bool    // the program ends here, as by kill -9
}

// Run is a program to be traced.
type Run struct {
	Path  string   // of the program
	Args  []string // with its name first
	Env   []string
	Dir   string // the folder that is watched, and the working folder
	Stdin []byte
	// Fault, if there is one, is asked before each step that needs the disk; n
	// counts them from 1. Of a write the data are there, of a name both names.
	Fault func(n int, op Op) Fault
}

// Text is all that the program said on its standard output, or complained.
func (l *Log) Text(k Kind) string {
	var b []byte
	for _, op := range l.Ops {
		if op.Kind == k {
			b = append(b, op.Data...)
		}
	}
	return string(b)
}

// Count is how many steps of a kind there were.
func (l *Log) Count(k Kind) (n int) {
	for _, op := range l.Ops {
		if op.Kind == k {
			n++
		}
	}
	return n
}
