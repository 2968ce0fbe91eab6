package notice

import (
	_ "embed"
	"encoding/csv"
	"strconv"
	"strings"

	"example.com/tintline/core"
)

// SignRule is what a state's rule says of signs on a lawn, as far as it was read.
type SignRule struct {
	State    string
	Size     string
	Says     string // the gist of the text; empty: not readable
	Up       string // when they are put up
	Hours    core.Maybe[float64]
	NextDay  bool   // not taken down before the next day
	Words    string // how long, as the rule has it
	Source   string
	Mark     string // read, part, second
	BeforeIt bool   // they are up before the treatment begins
}

// Rule is what a state's rule asks to be told, to the customer or to neighbours.
type Rule struct {
	State, Whom, Owed, Words            string
	HoursLeast, HoursMost, Window, Feet core.Maybe[float64]
	Calls                               int64
	Source, Mark                        string
}

// When a customer is owed something, and why a neighbour.
const (
	OwedVisit = "visit" // at each visit
)

var (
	//go:embed signs.csv
	signsCSV string
	//go:embed rules.csv
	rulesCSV string

	signRules = readSigns(signsCSV)
	rules     = readRules(rulesCSV)
)

func table(text string) [][]string {
	rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil {
		panic("core/notice: " + err.Error()) // embedded: a broken table is a broken build, held by a test
	}
	return rows[1:]
}

func figure(s string) core.Maybe[float64] {
	if s == "" {
		return core.Maybe[float64]{}
	}
	f, err := strconv.ParseFloat(s, 64)
	if err != nil {
		panic("core/notice: " + err.Error()) // as above
	}
	return core.Known(f)
}

func readSigns(text string) []SignRule {
	var out []SignRule
	for _, r := range table(text) {
		out = append(out, SignRule{
			State: r[0], Size: r[1], Says: r[2], Up: r[3], Hours: figure(r[4]), NextDay: r[5] == "yes", Words: r[6], Source: r[7], Mark: r[8],
			BeforeIt: r[3] == "before" || r[3] == "at the start",
		})
	}
	return out
}

func readRules(text string) []Rule {
	var out []Rule
	for _, r := range table(text) {
		out = append(out, Rule{
			State: r[0], Whom: r[1], Owed: r[2], Words: r[3], HoursLeast: figure(r[4]), HoursMost: figure(r[5]), Window: figure(r[6]),
			Feet: figure(r[7]), Calls: int64(figure(r[8]).V), Source: r[9], Mark: r[10],
		})
	}
	return out
}

// SignRules lists the rules on signs that were read.
func SignRules() []SignRule { return append([]SignRule(nil), signRules...) }

// Rules lists the rules on notices that were read.
func Rules() []Rule { return append([]Rule(nil), rules...) }

// stateOf is the state whose rules hold for a book, by its two letters; empty: none was set.
func stateOf(b *core.Book) string {
	if s, set := b.SettingText(core.NoticeState); set && s != core.AsState {
		return s
	}
	s, _ := b.SettingText(core.State)
	s, _, _ = strings.Cut(s, " ")
	if s == "none" {
		return ""
	}
	return s
}

// SignRuleOf is what was read of a state's signs, nil if nothing was. That is no proof that there is no rule.
func SignRuleOf(state string) *SignRule {
	for i := range signRules {
		if signRules[i].State == state {
			return &signRules[i]
		}
	}
	return nil
}

// RuleOf is what a state's rule asks to be told to somebody, nil if none was read.
func RuleOf(state, whom string) *Rule {
	for i := range rules {
		if rules[i].State == state && rules[i].Whom == whom {
			return &rules[i]
		}
	}
	return nil
}
