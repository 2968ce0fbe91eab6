package main

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"example.com/tintline/core"
	"example.com/tintline/core/say"
	"example.com/tintline/core/setup"
	"example.com/tintline/store"
)

func (a *app) setupCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "setup [WHAT [NAME]]",
		Short: "Set the book up by answering questions, one a line",
		Long: `Asks for what the screen's forms ask for, in plain lines that a screen reader can read: without a word, for what the
book still needs before its first day (rig, product, mix, lawn, day); with one, for that thing: ` + strings.Join(setup.Names, ", ") + `.
NAME says which: the lawn of a zone, the part of the rig that is changed, an applicator and a slash for a tip of it.

An empty line takes the answer that stands in brackets; - leaves a field blank; ? says what may be answered. What is
wrong is said and asked again. Each form is one action; where the answers end before it does, nothing of it is entered.`,
		Example: `  tintline setup --book truck.db
  tintline setup lawn
  tintline setup hose reel`,
		Args: formAndName,
		ValidArgsFunction: func(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
			if len(args) > 0 {
				return nil, cobra.ShellCompDirectiveNoFileComp
			}
			return setup.Names, cobra.ShellCompDirectiveNoFileComp
		},
		RunE: func(_ *cobra.Command, args []string) error {
			path, err := a.bookPath()
			if err != nil {
				return err
			}
			k, err := openOrNew(path, a.adding())
			if err != nil {
				return err
			}
			a.warn(k)
			p := &prompts{app: a, k: k, in: bufio.NewReader(a.stdin), out: a.stdout}
			if a.flags.json {
				p.out = a.stderr // standard output holds the answers of the program and nothing else
			}
			return errors.Join(p.run(args), k.Close())
		},
	}
}

func formAndName(cmd *cobra.Command, args []string) error {
	switch {
	case len(args) > 2:
		return usage("%s takes at most two words, not %d.", cmd.CommandPath(), len(args))
	case len(args) > 0 && !slices.Contains(setup.Names, args[0]):
		f := usage("There is nothing called %q to set up.", args[0])
		f.do = "Say one of " + strings.Join(setup.Names, ", ") + "."
		return f
	}
	return nil
}

// prompts asks the fields of forms one by one, line by line.
type prompts struct {
	*app
	k   *keptBook
	in  *bufio.Reader
	out io.Writer
}

func (p *prompts) say(format string, args ...any) { _, _ = fmt.Fprintf(p.out, format+"\n", args...) }

func (p *prompts) run(args []string) error {
	p.say("An empty line takes the answer in brackets; - leaves a field blank; ? says what may be answered.")
	if len(args) > 0 {
		about := ""
		if len(args) > 1 {
			about = args[1]
		}
		return p.form(args[0], about)
	}
	for name := setup.Next(p.k.book); name != ""; name = setup.Next(p.k.book) {
		if err := p.form(name, ""); err != nil {
			return err
		}
	}
	p.say("The book is set up. tintline opens the screen; tintline status, check, enter and tally do the same by command.")
	return nil
}

// form asks one form and enters what it says.
func (p *prompts) form(name, about string) error {
	f, ok := setup.For(name, about, p.k.book)
	if !ok || name == setup.Rig && p.k.book.Rig() != nil {
		return cannotAsk(name, about, p.k.book)
	}
	said := f.Start()
	for i, page := range f.Pages {
		f.Arrive(i, said)
		p.say("\n%s, part %d of %d: %s", f.Title, i+1, len(f.Pages), page.Title)
		for j := range page.Fields {
			if err := p.ask(&page.Fields[j], said); err != nil {
				return err
			}
		}
	}
	for {
		facts, err := f.Facts(p.k.book, p.clock(), said)
		if err == nil {
			return p.enter(facts)
		}
		var w *setup.Wrong
		if !errors.As(err, &w) || w.Field == "" {
			return err
		}
		p.say("%s %s", w.What, w.Do)
		d, _ := f.Field(w.Field)
		if err := p.ask(d, said); err != nil {
			return err
		}
	}
}

func cannotAsk(name, about string, b *core.Book) error {
	f := usage("Nothing can be asked about %s %s now.", name, about)
	f.what = strings.ReplaceAll(f.what, "  ", " ")
	f.do = "Check the name, and that the book has what it belongs to."
	if name == setup.Rig && b.Rig() != nil {
		f.what = "The book has a rig already."
		f.do = "Change its parts: tintline setup pump, compartment a, hose NAME, applicator NAME, tip APPLICATOR/NAME."
	}
	return f
}

// ask asks one field until its answer can be taken.
func (p *prompts) ask(d *setup.Field, said setup.Answers) error {
	p.say("%s", d.Help)
	if d.Source != "" {
		p.say("The answer in brackets is usual and was not measured on your rig: %s.", d.Source)
	}
	for i, o := range options(d) {
		p.say("  %d  %s", i+1, o.Words)
	}
	for {
		line, err := p.line(d, said[d.Key])
		if err != nil {
			return err
		}
		switch line {
		case "":
		case "?":
			p.say("It takes %s.", d.Allowed)
			continue
		case "-":
			said[d.Key] = ""
		default:
			said[d.Key] = chosenBy(d, line)
		}
		err = d.Check(said)
		if err == nil {
			return nil
		}
		what, do := err.Error(), ""
		var w *setup.Wrong
		if errors.As(err, &w) {
			what, do = w.Sentences()
		}
		p.say("%s %s", what, do)
	}
}

// line reads the answer to a field.
func (p *prompts) line(d *setup.Field, stands string) (string, error) {
	words := d.Words
	if len(d.Options) > 0 {
		words += " (a number"
		if d.Many {
			words += ", or several with spaces between them"
		}
		words += ")"
	}
	stands = standing(d, stands)
	if stands != "" {
		words += " [" + stands + "]"
	}
	_, _ = fmt.Fprintf(p.out, "%s: ", words)
	line, err := p.in.ReadString('\n')
	if err != nil && strings.TrimSpace(line) == "" {
		p.say("")
		return "", &failure{
			what: fmt.Sprintf("The answers ended at %q.", d.Words),
			do:   "Run it again; of this form nothing was entered, the forms before it are in the book.", code: exitCannot, err: err,
		}
	}
	return strings.TrimSpace(line), nil
}

// standing is the answer that stands in brackets, in the words of its options.
func standing(d *setup.Field, said string) string {
	if len(d.Options) == 0 || said == "" {
		return said
	}
	var out []string
	for _, v := range d.Chosen(said) {
		for _, o := range options(d) {
			if o.Value == v {
				out = append(out, o.Words)
			}
		}
	}
	return strings.Join(out, setup.Joint)
}

// options are those that are an answer; leaving a field blank has a sign of its own.
func options(d *setup.Field) []setup.Option {
	var out []setup.Option
	for _, o := range d.Options {
		if o.Value != "" {
			out = append(out, o)
		}
	}
	return out
}

// chosenBy turns the numbers of options into the options; other words stay as they are.
func chosenBy(d *setup.Field, line string) string {
	if len(d.Options) == 0 {
		return line
	}
	words := []string{line}
	if d.Many {
		words = strings.Fields(strings.ReplaceAll(line, ",", " "))
	}
	for i, w := range words {
		if n, err := strconv.Atoi(w); err == nil && n >= 1 && n <= len(options(d)) {
			words[i] = options(d)[n-1].Value
			continue
		}
		for _, o := range d.Options {
			if strings.EqualFold(w, o.Words) {
				words[i] = o.Value
			}
		}
	}
	return strings.Join(words, setup.Joint)
}

// enter writes the facts of one form and says what was booked.
func (p *prompts) enter(facts []core.Fact) error {
	if len(facts) == 0 {
		p.say("Nothing was changed.")
		return nil
	}
	action, entries, err := p.k.log(p.clock(), facts...)
	if err != nil {
		return err
	}
	for _, e := range entries {
		p.say("Booked: %s.", strings.TrimSuffix(say.Fact(e.What), "."))
		if p.flags.json {
			if err := p.printJSON(entered{e.Seq, action}); err != nil {
				return err
			}
		}
	}
	return nil
}

// needsSetup tells whether there is no book at a path, or one that has no rig.
func needsSetup(path string) bool {
	k, err := openBook(path, true)
	if err != nil {
		return errors.Is(err, store.ErrMissing)
	}
	defer func() { _ = k.Close() }()
	return k.book.Rig() == nil
}
