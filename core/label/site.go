package label

import (
	_ "embed"
	"encoding/csv"
	"strings"
)

// SiteActive is what is known of an active, or of a group of them, beside a kind of site.
type SiteActive struct {
	Site   string // one of SiteKinds
	What   string // an active of the reference, or an open code of a mode of action: "HRAC 4"
	Words  string
	Basis  string // BasisTrial, BasisExtension, BasisRecalled
	Source string
}

//go:embed site_actives.csv
var siteActivesCSV string

//go:embed site_words.csv
var siteWordsCSV string

var (
	siteActives = readSiteActives(siteActivesCSV)
	siteWords   = readSiteWords(siteWordsCSV)
)

func readCSV(name, text string) [][]string {
	rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil {
		panic("core/label/" + name + ": " + err.Error()) // embedded: a broken table is a broken build, held by a test
	}
	return rows[1:]
}

func readSiteActives(text string) []SiteActive {
	var out []SiteActive
	for _, r := range readCSV("site_actives.csv", text) {
		out = append(out, SiteActive{r[0], r[1], r[2], r[3], r[4]})
	}
	return out
}

func readSiteWords(text string) map[string]string {
	out := map[string]string{}
	for _, r := range readCSV("site_words.csv", text) {
		out[r[0]] = r[1]
	}
	return out
}

// Beside is what is known of an active beside a kind of site: the row of the active itself before that of its group.
func Beside(site, active string) (SiteActive, bool) {
	name, group := active, ""
	if info, ok := FindActive(active); ok {
		name, group = info.Name, info.Group
	}
	var ofGroup *SiteActive
	for i := range siteActives {
		switch a := &siteActives[i]; {
		case a.Site != site:
		case plainWord(a.What) == plainWord(name):
			return *a, true
		case group != "" && a.What == group:
			ofGroup = a
		}
	}
	if ofGroup == nil {
		return SiteActive{}, false
	}
	return *ofGroup, true
}

// SiteOf is the kind of site that a hazard in free words is about: "open drain" is water. False where it is about none.
func SiteOf(hazard string) (kind string, ok bool) {
	for _, w := range strings.Split(plainWord(hazard), "_") {
		for _, form := range []string{w, strings.TrimSuffix(w, "s"), strings.TrimSuffix(w, "ies") + "y"} {
			if kind, ok = siteWords[form]; ok {
				return kind, true
			}
		}
	}
	return "", false
}
