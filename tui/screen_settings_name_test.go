package tui

import (
	"testing"

	"example.com/tintline/core"
)

// Each row of the settings can be told from every other by what its column of 20 cells shows, of which the last may be the sign of a cut.
func TestSettingsAreToldApart(t *testing.T) {
	seen := map[string]string{}
	for _, r := range core.Settings() {
		name := settingName(r)
		if cells(name) > 20 {
			name = name[:19]
		}
		if other, twice := seen[name]; twice {
			t.Errorf("%s and %s are both shown as %q", other, r.Name, name)
		}
		seen[name] = r.Name
	}
}
