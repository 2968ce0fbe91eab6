package label

import (
	"slices"
	"testing"
)

// TestTraceClasses: the class by which residue is judged follows from the group; where a group says nothing, from the
// class. indaziflam stands with the strictest until it is shown otherwise, quinclorac apart from the other auxins.
func TestTraceClasses(t *testing.T) {
	for _, a := range Actives() {
		want := byte('C')
		switch {
		case !a.Herbicide() || a.Group == "none":
			want = 'F'
		case a.Group == "HRAC 2" || a.Group == "HRAC 27" || a.Name == "indaziflam":
			want = 'A'
		case a.Class == ClassNonselective:
			want = 'B'
		case a.Group == "HRAC 4" && a.Name != "quinclorac":
			want = 'D'
		}
		if a.Trace != want {
			t.Errorf("%s, %s, %s: class %c, not %c", a.Name, a.Class, a.Group, a.Trace, want)
		}
	}
	for name, want := range map[string]byte{
		"metsulfuron": 'A', "mesotrione": 'A', "indaziflam": 'A', "imazapyr": 'A', "glyphosate": 'B', "glufosinate": 'B', "diquat": 'B',
		"quinclorac": 'C', "atrazine": 'C', "MSMA": 'C', "prodiamine": 'C', "isoxaben": 'C', "2,4-D": 'D', "triclopyr": 'D', "iron HEDTA": 'F', "iron": 'F', "tracer dye": 'F',
	} {
		if a, ok := FindActive(name); !ok || a.Trace != want {
			t.Errorf("%s: class %c", name, a.Trace)
		}
	}
}

// TestGroupsThatAPageBacks: the codes that were read, each with its page; all others say that they are recalled.
func TestGroupsThatAPageBacks(t *testing.T) {
	read := map[string][2]string{
		"bentazon": {"HRAC 6", "PNW-NUT"}, "chlorsulfuron": {"HRAC 2", "PNW-NUT"}, "2,4-D": {"HRAC 4", "PNW-SEED"}, "dithiopyr": {"HRAC 3", "LBL-DITH-G"},
		"propiconazole": {"FRAC 3", "GCM-FRAC18"}, "oxadiazon": {"HRAC 14", "UC-MOA"}, "sulfentrazone": {"HRAC 14", "UC-MOA"},
		"carfentrazone-ethyl": {"HRAC 14", "UC-MOA"}, "dicamba": {"HRAC 4", "WEEDSCI-SOA"}, "mecoprop-p": {"HRAC 4", "WEEDSCI-SOA"},
		"triclopyr": {"HRAC 4", "WEEDSCI-SOA"}, "azoxystrobin": {"FRAC 11", "WSU-CODES"}, "chlorantraniliprole": {"IRAC 28", "WSU-CODES"},
	}
	for _, a := range Actives() {
		want, backed := read[a.Name]
		if backed && (a.Group != want[0] || a.Source != want[1]) || !backed && a.Source != "memory" {
			t.Errorf("%s: %s by %s", a.Name, a.Group, a.Source)
		}
		delete(read, a.Name)
	}
	if len(read) > 0 {
		t.Errorf("not in the table: %v", read)
	}
}

func TestClassesInWords(t *testing.T) {
	var seen []string
	for _, a := range Actives() {
		if w := ClassWords(a.Class); w == "" || slices.Contains([]byte(w), '_') {
			t.Errorf("%s is %q", a.Class, w)
		}
		if !slices.Contains(seen, a.Class) {
			seen = append(seen, a.Class)
		}
	}
	if len(seen) != 10 {
		t.Errorf("%d classes", len(seen))
	}
}
