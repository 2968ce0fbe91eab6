package core

import "testing"

// TestSettings: a number and a choice are set, taken back, and refused outside what is allowed.
func TestSettings(t *testing.T) {
	b := NewBook(1)
	was := b.StateDigest()
	set := func(name, value string) error {
		es, err := b.Prepare("x", Moment{}, &Setting{name, value})
		if err != nil {
			return err
		}
		return b.Apply(es[0])
	}
	for _, r := range []struct {
		name, value, text string
		set               bool
		ok                bool
	}{
		{Theme, "sun", "sun", true, true},
		{Theme, "blue", "sun", true, false},
		{Theme, "", "sun", true, false},
		{Theme, DefaultSetting, "", false, true},
		{WindAskMPH, "7.5", "7.5", true, true},
		{WindAskMPH, "41", "7.5", true, false},
		{WindAskMPH, "", "7.5", true, false},
		{WindAskMPH, DefaultSetting, "", false, true},
	} {
		if err := set(r.name, r.value); (err == nil) != r.ok {
			t.Errorf("%s to %q: %v", r.name, r.value, err)
		}
		if got, ok := b.SettingText(r.name); got != r.text || ok != r.set {
			t.Errorf("%s after %q is %q, set %v", r.name, r.value, got, ok)
		}
	}
	if v := b.Setting(WindAskMPH); v != 8 {
		t.Errorf("back at the default it is %g", v)
	}
	if b.StateDigest() != was {
		t.Error("a setting that was taken back leaves a trace in what the book says")
	}
}

func TestSettingRowsSayWhatIsAllowed(t *testing.T) {
	for _, r := range Settings() {
		if r.Allowed() == "" || (r.DefaultText() == "") != r.Text {
			t.Errorf("%+v", r)
		}
		if r.Text {
			continue
		}
		if err := admitSetting(&Setting{r.Name, r.DefaultText()}); err != nil {
			t.Errorf("the default of %s is refused: %v", r.Name, err)
		}
	}
}

// TestSettingValue: a value comes to what the book will say once it is set, and what is no number to the default.
func TestSettingValue(t *testing.T) {
	b := NewBook(1)
	for _, value := range []string{"3", "0", "2.5", DefaultSetting} {
		es, err := b.Prepare("set "+value, Moment{Unix: 1}, &Setting{SettingName: CopiesKeptDays, Value: value})
		if err == nil {
			err = b.Apply(es[0])
		}
		if err != nil {
			t.Fatal(err)
		}
		if got := SettingValue(CopiesKeptDays, value); got != b.Setting(CopiesKeptDays) {
			t.Errorf("%s comes to %g, in the book to %g", value, got, b.Setting(CopiesKeptDays))
		}
	}
	if b.Setting(CopiesKeptDays) != 14 {
		t.Errorf("the default is %g", b.Setting(CopiesKeptDays))
	}
}
