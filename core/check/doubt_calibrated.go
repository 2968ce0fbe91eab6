package check

import (
	"fmt"
	"math"

	"example.com/tintline/core"
	"example.com/tintline/core/calib"
)

// doubtCalibrated asks about a test that says something quite different from the rate meant: more often a course or a
// swath was typed wrong than that a gun gives half as much again.
func doubtCalibrated(b *core.Book, f *core.Calibrated) (words, do string, doubtful bool) {
	d, ok := calib.DriftOf(f.Delivery.V, f.Meant.V, b.CatchLimits())
	if !ok || f.Accepted != core.Yes || 100*math.Abs(d.Share) <= b.Setting(core.DoubtRatePct) {
		return "", "", false
	}
	return fmt.Sprintf("The test of %s comes to %s, %s than the %s meant.", f.Applicator, calib.RateText(d.Measured), d.Words(), calib.RateText(d.Meant)),
		"Look at course, swath and catch; book it if they are right.", true
}
