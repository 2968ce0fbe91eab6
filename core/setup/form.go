package setup

import (
	"errors"
	"fmt"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/sheet"
)

// The forms.
const (
	Rig     = "rig"
	Product = "product"
	Label   = "label"
	Mix     = "mix"
	Recipe  = "recipe"
	Lawn    = "lawn"
	Zone    = "zone"
	Day     = "day"
)

// Form is what is asked for one thing. Its facts are one action.
type Form struct {
	Name  string
	Title string
	Pages []Page
	facts func(b *core.Book, at core.Moment, a Answers) ([]core.Fact, error)
}

// Page is what is asked at one time.
type Page struct {
	Title  string
	Short  string // one word for it, where what was entered is shown
	Fields []Field
}

// Field asks for one thing: a text, or one or several of its options.
type Field struct {
	Key     string
	Words   string // what is asked, short enough to stand before the answer
	Help    string // what it means
	Allowed string // what may be answered
	Start   string // the answer that stands there to begin with
	Source  string // where Start comes from; empty: it is no measurement
	Options []Option
	Many    bool // any number of the options
	Long    bool // the options are many: a page of their own, looked through by letters
	need    func(a Answers) bool
	check   func(a Answers, said string) error
	// fill is what the answers to other fields let stand here, worked out when the page is turned to.
	fill   func(a Answers) Filled
	filled string // what it let stand there last
}

// Filled is what stands in a field because of the answers to others: proposed, to be confirmed. Options are as before,
// those that are proposed marked; Help says where that comes from.
type Filled struct {
	Answer  string
	Options []Option
	Help    string
}

// Arrive is to be called when a page is turned to. What other answers let stand in its fields stands there, unless
// something else was answered.
func (f *Form) Arrive(page int, a Answers) {
	for i := range f.Pages[page].Fields {
		d := &f.Pages[page].Fields[i]
		if d.fill == nil {
			continue
		}
		now := d.fill(a)
		if a[d.Key] == d.filled {
			a[d.Key] = now.Answer
		}
		d.filled, d.Options, d.Help = now.Answer, now.Options, now.Help
	}
}

// Option is an answer that can be chosen. The one without a value stands for no answer yet.
type Option struct{ Value, Words string }

// Answers are what was said, by the keys of the fields. Several options are joined by Joint.
type Answers map[string]string

// Joint stands between the options of one answer.
const Joint = "; "

// Wrong says which field keeps an answer from being taken, and why.
type Wrong struct {
	Field string // empty: none in particular
	What  string // one sentence
	Do    string // one sentence
	Err   error
}

func (w *Wrong) Error() string { return w.What }
func (w *Wrong) Unwrap() error { return w.Err }

// Sentences are what is wrong and what to do about it.
func (w *Wrong) Sentences() (what, do string) { return w.What, w.Do }

// Start are the answers that stand in a form to begin with.
func (f *Form) Start() Answers {
	a := Answers{}
	for _, p := range f.Pages {
		for _, d := range p.Fields {
			a[d.Key] = d.Start
		}
	}
	return a
}

// Withdraw takes back what was only proposed: it is proposed anew when its page is turned to.
func (f *Form) Withdraw(a Answers) {
	for p := range f.Pages {
		for i := range f.Pages[p].Fields {
			if d := &f.Pages[p].Fields[i]; d.fill != nil && a[d.Key] == d.filled {
				a[d.Key] = d.Start
			}
		}
	}
}

// Field finds a field by its key, with its page; nil if there is none.
func (f *Form) Field(key string) (d *Field, page int) {
	for p := range f.Pages {
		for i := range f.Pages[p].Fields {
			if f.Pages[p].Fields[i].Key == key {
				return &f.Pages[p].Fields[i], p
			}
		}
	}
	return nil, 0
}

// Check says what is wrong with the answer to one field, nil if nothing is.
func (d *Field) Check(a Answers) error {
	said := strings.TrimSpace(a[d.Key])
	var err error
	switch {
	case said == "" && (d.need == nil || !d.need(a)):
		return nil
	case said == "" && len(d.Options) > 0:
		err = &Wrong{What: fmt.Sprintf("Nothing is chosen for %q.", d.Words), Do: allowedWords("Choose", d.Allowed)}
	case said == "":
		err = &Wrong{What: fmt.Sprintf("Nothing is typed for %q.", d.Words), Do: allowedWords("Type", d.Allowed)}
	case len(d.Options) > 0:
		err = d.chosen(said)
	}
	if err == nil && d.check != nil && said != "" {
		err = d.check(a, said)
	}
	return d.wrong(err)
}

// chosen refuses what is none of the options.
func (d *Field) chosen(said string) error {
	for _, v := range d.Chosen(said) {
		known := false
		for _, o := range d.Options {
			known = known || o.Value == v
		}
		if !known {
			return &Wrong{What: fmt.Sprintf("%q cannot be chosen here.", v), Do: allowedWords("Choose", d.Allowed)}
		}
	}
	return nil
}

// Chosen parts an answer into the options that it names.
func (d *Field) Chosen(said string) []string {
	if !d.Many {
		return []string{said}
	}
	var out []string
	for _, v := range strings.Split(said, Joint) {
		if v != "" {
			out = append(out, v)
		}
	}
	return out
}

func allowedWords(verb, allowed string) string { return verb + " " + allowed + "." }

// wrong makes an error one about this field, in two sentences; what is allowed is said where the error does not.
func (d *Field) wrong(err error) error {
	if err == nil {
		return nil
	}
	w := &Wrong{Field: d.Key, What: err.Error(), Err: err}
	var own *Wrong
	var trouble *sheet.Trouble
	var all sheet.Troubles
	var p *core.Problem
	switch {
	case errors.As(err, &own):
		w.What, w.Do, w.Err = own.What, own.Do, own.Err
	case errors.As(err, &all) && len(all) > 0:
		_, w.Do = all.Sentences()
	case errors.As(err, &trouble):
		_, w.Do = trouble.Sentences()
	case errors.As(err, &p):
		w.Do = p.Do
	}
	if w.Do == "" {
		w.Do = allowedWords("Type", d.Allowed)
	}
	return w
}

// CheckPage says what is wrong first on a page.
func (f *Form) CheckPage(page int, a Answers) error {
	for i := range f.Pages[page].Fields {
		if err := f.Pages[page].Fields[i].Check(a); err != nil {
			return err
		}
	}
	return nil
}

// Facts are what the answers say; none where they change nothing. The book admits them, together.
func (f *Form) Facts(b *core.Book, at core.Moment, a Answers) ([]core.Fact, error) {
	said := Answers{}
	for k, v := range a {
		said[k] = strings.TrimSpace(v)
	}
	for p := range f.Pages {
		if err := f.CheckPage(p, said); err != nil {
			return nil, err
		}
	}
	facts, err := f.facts(b, at, said)
	if err == nil {
		_, err = b.Prepare("", at, facts...)
	}
	return facts, err
}

// always is the need of a field that each form must have answered.
func always(Answers) bool { return true }

// filled is the need of a field that goes with another one.
func filled(key string) func(Answers) bool {
	return func(a Answers) bool { return strings.TrimSpace(a[key]) != "" }
}

// cell checks an answer as a column of a file is checked.
func cell(kind, column string) func(Answers, string) error {
	return func(_ Answers, said string) error { return sheet.Check(kind, column, said) }
}

// allowed is what a column of a file takes.
func allowed(kind, column string) string {
	for _, c := range sheet.Columns(kind) {
		if c.Name == column {
			return c.Allowed
		}
	}
	return ""
}
