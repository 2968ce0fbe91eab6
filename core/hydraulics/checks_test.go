package hydraulics

import (
	"bufio"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"testing"
)

// check is a row of testdata/hydraulics/checks.jsonl: what somebody published, or what was computed apart from this
// program, with its source and how near one must come.
type check struct {
	ID       string         `json:"id"`
	Topic    string         `json:"topic"`
	Source   string         `json:"source"`
	How      string         `json:"how_obtained"`
	Inputs   inputs         `json:"inputs"`
	Expected map[string]any `json:"expected"`
	TolAbs   float64        `json:"tol_abs"`
	TolRel   float64        `json:"tol_rel"`
}

// inputs are those of a row, by key.
type inputs map[string]any

// f is a number; 0 for one that is not there.
func (in inputs) f(key string) float64 {
	n, _ := in[key].(float64)
	return n
}

// list is a list of numbers.
func (in inputs) list(key string) []float64 {
	var out []float64
	all, _ := in[key].([]any)
	for _, v := range all {
		out = append(out, v.(float64))
	}
	return out
}

// text is a word.
func (in inputs) text(key string) string {
	s, _ := in[key].(string)
	return s
}

// answer is what this package says of a row; a list stands as key[0], key[1] and so on.
type answer map[string]float64

// topics says which function answers which topic. A file of tests claims its own in an init.
var topics = map[string]func(in inputs) answer{}

func claim(topic string, f func(in inputs) answer) {
	if topics[topic] != nil {
		panic(topic + " is claimed twice")
	}
	topics[topic] = f
}

func readChecks(t *testing.T) []check {
	t.Helper()
	f, err := os.Open("../../testdata/hydraulics/checks.jsonl")
	if err != nil {
		t.Fatal(err)
	}
	defer func() { _ = f.Close() }()
	var out []check
	lines := bufio.NewScanner(f)
	for lines.Scan() {
		var c check
		if err := json.Unmarshal(lines.Bytes(), &c); err != nil {
			t.Fatalf("line %d: %v", len(out)+1, err)
		}
		if c.ID == "" || c.Source == "" || c.Topic == "" || len(c.Expected) == 0 {
			t.Fatalf("line %d lacks an id, a source, a topic or a figure", len(out)+1)
		}
		out = append(out, c)
	}
	if err := lines.Err(); err != nil {
		t.Fatal(err)
	}
	return out
}

// group is published for what somebody printed, computed for what was reckoned apart from this program.
func (c check) group() string {
	if c.How == "published" {
		return "published"
	}
	return "computed"
}

// wanted are the expected figures, lists spread.
func (c check) wanted() answer {
	out := answer{}
	for k, v := range c.Expected {
		switch v := v.(type) {
		case float64:
			out[k] = v
		case []any:
			for i, n := range v {
				out[fmt.Sprintf("%s[%d]", k, i)] = n.(float64)
			}
		}
	}
	return out
}

// within says whether a figure is near enough by either tolerance; a row without any must be met to 1e-9.
func (c check) within(got, want float64) bool {
	d := math.Abs(got - want)
	if c.TolAbs == 0 && c.TolRel == 0 {
		return d <= 1e-9*math.Abs(want)
	}
	return d <= c.TolAbs || d <= c.TolRel*math.Abs(want)
}

func TestCheckValues(t *testing.T) {
	figures := 0
	for _, c := range readChecks(t) {
		f := topics[c.Topic]
		if f == nil {
			continue
		}
		t.Run(c.group()+"/"+c.ID, func(t *testing.T) {
			got := f(c.Inputs)
			for key, want := range c.wanted() {
				figures++
				if v, ok := got[key]; !ok || !c.within(v, want) {
					t.Errorf("%s is %.12g (%t), not %.12g (%s)", key, v, ok, want, c.Source)
				}
			}
		})
	}
	t.Logf("%d figures", figures)
	if figures < 100 {
		t.Errorf("only %d figures were checked", figures)
	}
}

// Each row of the file is answered by this package, and no topic is claimed for nothing.
func TestEveryCheckIsClaimed(t *testing.T) {
	used := map[string]bool{}
	for _, c := range readChecks(t) {
		used[c.Topic] = true
		if topics[c.Topic] == nil {
			t.Errorf("%s: nobody answers %q", c.ID, c.Topic)
		}
	}
	for topic := range topics {
		if !used[topic] {
			t.Errorf("no row has the topic %q", topic)
		}
	}
}
