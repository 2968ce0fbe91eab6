package disktrace

import (
	"errors"
	"os"
	"runtime"
	"testing"
)

// Must is Trace for a test. Where programs could be traced and are not allowed to
// be, the test fails, unless TINTLINE_NO_PTRACE says that this is known.
func (r Run) Must(t testing.TB) *Log {
	t.Helper()
	log, err := r.Trace()
	if errors.Is(err, ErrNoTrace) {
		if runtime.GOOS != "linux" || runtime.GOARCH != "amd64" && runtime.GOARCH != "arm64" {
			t.Skip("left out: programs are traced on Linux only, on amd64 and arm64")
		}
		if os.Getenv("TINTLINE_NO_PTRACE") != "" {
			t.Skip("left out, as TINTLINE_NO_PTRACE says:", err)
		}
		t.Fatalf("%v: power cuts and failing disks are NOT tested on this machine; set TINTLINE_NO_PTRACE=1 to leave them out", err)
	}
	if err != nil {
		t.Fatal(err)
	}
	if log.Count(Mapped) > 0 {
		t.Error("a file was mapped for writing: such writes are not recorded")
	}
	return log
}
