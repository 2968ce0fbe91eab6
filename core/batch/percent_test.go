package batch

import "testing"

func TestPercentIsNeverAPowerOfTen(t *testing.T) {
	for share, want := range map[float64]string{0.00994: "0.99 %", 0.994: "99 %", 0.9949: "99 %", 0.9957: "100 %", 1: "100 %", 1.256: "126 %"} {
		if got := percent(share); got != want {
			t.Errorf("percent(%v) = %q, want %q", share, got, want)
		}
	}
}
