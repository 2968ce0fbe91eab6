package check

import (
	"strings"
	"testing"

	"example.com/tintline/core"
)

func days(n int64) core.Moment {
	at := clock
	at.Unix += n * 24 * 3600
	return at
}

func TestWhenACatchTestIsDue(t *testing.T) {
	note := strings.Replace(gunLays("1.8"), `"yes"`, `"no"`, 1)
	tests := []struct {
		name, lines string
		at          core.Moment
		says        []string
		source      string
	}{
		{"none was ever taken", "", days(300), nil, "said on its page alone"},
		{"as meant, a week old", gunLays("1.6"), days(7), nil, "weekly"},
		{"as meant, older", gunLays("1.6"), days(8), []string{"gun: the last catch test is 8 days old; 7 are meant."}, "weekly"},
		{"by the setting", gunLays("1.6") + `{"fact":"setting","name":"calibrate_days","value":"30"}`, days(8), nil, "setting"},
		{"within 5 per cent", gunLays("1.67"), days(1), nil, "4.4 per cent"},
		{"drifted", gunLays("1.7"), days(1), []string{"gun: it lays 6.3 per cent more than meant by its last test; 5 per cent are allowed."}, "1.7 of 1.6"},
		{"drifted and not accepted", note, days(1), []string{"gun: it lays 12.5 per cent more than meant by its last test; 5 per cent are allowed."}, "1.8 of 1.6"},
		{"old and drifted", gunLays("1.7"), days(20), []string{"20 days old", "6.3 per cent more"}, "both"},
	}
	for _, tt := range tests {
		got := CalibrationDue(play(t, loadedLines+tt.lines), tt.at)
		if len(got) != len(tt.says) {
			t.Errorf("%s: %q", tt.name, got)
			continue
		}
		for i, says := range tt.says {
			if !strings.Contains(got[i], says) {
				t.Errorf("%s: %q, want %q (%s)", tt.name, got[i], says, tt.source)
			}
		}
	}
}

func TestCalibrationsOfARig(t *testing.T) {
	b := play(t, loadedLines+gunLays("1.7"))
	all := Calibrations(b, days(2))
	if len(all) < 1 || all[0].Applicator != "gun" || !all[0].ByTest || all[0].Days.V != 2 || all[0].Since != clock || len(all[0].Tests) != 1 {
		t.Fatalf("%+v", all)
	}
	if got := all[0].Meant.V.GalPer1000(); got < 1.5999 || got > 1.6001 {
		t.Errorf("meant %g", got)
	}
	for _, c := range all[1:] {
		if c.ByTest || !c.Never || len(c.Due) != 0 {
			t.Errorf("%+v", c)
		}
	}
	if none := Calibrations(core.NewBook(1), clock); none == nil || len(none) != 0 {
		t.Errorf("%+v", none)
	}
}

func TestTryATest(t *testing.T) {
	b := play(t, loadedLines)
	l, err := core.DecodeLine([]byte(gunLays("1.7")))
	if err != nil {
		t.Fatal(err)
	}
	f := l.Fact.(*core.Calibrated)
	f.PSI = core.Known(40.)
	before := b.StateDigest()
	got, err := Try(b, clock, f)
	if err != nil || b.StateDigest() != before {
		t.Fatal(err)
	}
	working := strings.Join(got.Working(), "\n")
	for _, says := range []string{
		"Runs of 77, 78 and 79 s", "1.7 gal on 1,000 sq ft = 1.7 gal per 1,000 sq ft", "1.7 gal per 1,000 sq ft against 1.6 gal per 1,000 sq ft meant: 6.3 per cent more.",
		"past 5 per cent", "puts 6.3 per cent more product on every lawn", "35.43 psi instead of 40",
	} {
		if !strings.Contains(working, says) {
			t.Errorf("no %q in\n%s", says, working)
		}
	}
	if !got.Back.Possible || got.Drift.V.Weight != "off" {
		t.Errorf("%+v", got.Back)
	}
}
