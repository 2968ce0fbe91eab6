package setup

import (
	"errors"
	"strings"
	"testing"

	"example.com/tintline/core"
)

func TestReadPair(t *testing.T) {
	b := fullRig(t)
	hose := b.Rig().Hoses[0].Name
	for _, said := range []string{"2.5 110 60", "2.5 gpm 110 psi 60 psi", "2.5, 110, 60", "2.5 gpm, 110 at 60"} {
		r, err := ReadPair(b, hose, said)
		if err != nil {
			t.Errorf("%q: %v", said, err)
			continue
		}
		h := r.Hoses[0]
		if d := h.PairFlow.V.GPM() - 2.5; d > 1e-9 || d < -1e-9 || h.PairPump != core.Known(110.0) || h.PairGun != core.Known(60.0) {
			t.Errorf("%q: %+v", said, h)
		}
	}
	if b.Rig().Hoses[0].PairFlow.Known {
		t.Error("the book's rig was changed")
	}
	r, err := ReadPair(b, hose, "none")
	if err != nil || r.Hoses[0].PairFlow.Known {
		t.Errorf("%v %+v", err, r)
	}
	for said, want := range map[string]string{
		"": "0 of 3", "2.5": "1 of 3", "2.5 60 110": "take nothing", "2.5 60 60": "take nothing", "0 110 60": "", "2.5 1e9 60": "", "-1 110 60": "", "2.5 gal 110 60": "", "x y z": "",
	} {
		_, err := ReadPair(b, hose, said)
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v", said, err)
		}
		if p := (*core.Problem)(nil); errors.As(err, &p) {
			t.Errorf("%q: a field's fault is no Problem: %v", said, err)
		}
	}
	if _, err := ReadPair(b, "nobody", "2.5 110 60"); err == nil {
		t.Error("a hose that the rig has not")
	}
}
