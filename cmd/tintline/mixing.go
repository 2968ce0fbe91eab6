package main

import (
	"strings"

	"github.com/spf13/cobra"

	"example.com/tintline/core"
	"example.com/tintline/core/measure"
	"example.com/tintline/core/yard"
)

// mixingFlags are what is said of a question; what is left out is taken from the book.
type mixingFlags struct {
	into, from, gal, sqft, each, dose, pack string
	thin                                    float64
	ask                                     yard.Ask
}

func (a *app) mixingCommand() *cobra.Command {
	var m mixingFlags
	cmd := &cobra.Command{
		Use:   "mixing KIND [--into LETTER] [--mix NAME] [--for APPLICATOR] [--gal N] ...",
		Short: "What to put in a compartment, from what the book says is in it",
		Long: `Works out a load, a top-up and the like from what stands in the compartments now, with the working. What is
left out is taken from the book as it most likely is: the compartment that has least, the mix that stands in
it, the applicator that this mix is made up for. Nothing is booked. The same without a book: reckon.

Kinds:
` + mixingKinds(),
		Example: `  tintline mixing topup --into b --gal 150
  tintline mixing load --into a --mix "warm weed" --for gun --sqft 98000 --json
  tintline mixing use-up --into c --thin 10`,
		Args: cobra.ArbitraryArgs,
		RunE: func(cmd *cobra.Command, args []string) error {
			if len(args) != 1 || yard.Find(args[0]) == nil {
				f := usage("mixing takes one kind, not %q.", strings.Join(args, " "))
				f.do = "Use one of: " + strings.Join(mixingWords(), ", ") + "."
				return f
			}
			m.ask.At = a.clock()
			return a.reading(func(k *keptBook) error { return a.mixing(k.book, args[0], cmd, &m) })
		},
		ValidArgs: mixingWords(),
	}
	f := cmd.Flags()
	f.StringVar(&m.into, "into", "", "the `LETTER` of the compartment that it is about")
	f.StringVar(&m.from, "from", "", "the `LETTER` of the one that is run into it (blend)")
	f.StringVar(&m.ask.Mix, "mix", "", "the `NAME` of a mix")
	f.StringVar(&m.ask.For, "for", "", "the `NAME` of an applicator")
	f.StringVar(&m.gal, "gal", "", "`GALLONS`: of the load; to fill to (topup, tint); of water (stretch, rinse); that are moved (blend) or left (use-up)")
	f.StringVar(&m.sqft, "sqft", "", "`AREA` that a load is for")
	f.Float64Var(&m.thin, "thin", 0, "`PARTS` of water to one of a left-over")
	f.StringVar(&m.ask.Name, "product", "", "the `NAME` of a product: of a jug, or the tint")
	f.StringVar(&m.pack, "package", "", "`AMOUNT` that a package holds; else as the product is entered")
	f.IntVar(&m.ask.Loads, "loads", 0, "`NUMBER` of equal loads that a jug is split into")
	f.StringVar(&m.each, "each", "", "`AMOUNT` of each load of a jug")
	f.StringVar(&m.dose, "dose", "", "`AMOUNT` of tint to the gallon")
	f.IntVar(&m.ask.Rinses, "rinses", 0, "`NUMBER` of rinses")
	completes(cmd, "into", a.names(compartmentLetters))
	completes(cmd, "from", a.names(compartmentLetters))
	completes(cmd, "for", a.names(applicatorNames))
	return cmd
}

func mixingWords() []string {
	var out []string
	for _, q := range yard.Questions() {
		out = append(out, q.Kind)
	}
	return out
}

func mixingKinds() string {
	var w strings.Builder
	for _, q := range yard.Questions() {
		w.WriteString("  " + q.Kind + strings.Repeat(" ", 9-len(q.Kind)) + q.Words + "\n")
	}
	return strings.TrimRight(w.String(), "\n")
}

func (a *app) mixing(b *core.Book, kind string, cmd *cobra.Command, m *mixingFlags) error {
	if err := m.read(b, cmd); err != nil {
		return err
	}
	got, err := yard.Find(kind).Ask(b, m.ask)
	if err != nil {
		return err
	}
	if a.flags.json {
		return a.printJSON(got.Document())
	}
	return a.print(got.Text())
}

// read reads the flags that are figures or letters.
func (m *mixingFlags) read(b *core.Book, cmd *cobra.Command) error {
	for _, l := range []struct {
		flag, value string
		to          *byte
	}{{"into", m.into, &m.ask.Into}, {"from", m.from, &m.ask.From}} {
		switch {
		case l.value == "":
		case len(l.value) != 1:
			return usage("--%s %q is not a compartment; give its letter.", l.flag, l.value)
		default:
			*l.to = strings.ToLower(l.value)[0]
		}
	}
	if err := m.counts(cmd); err != nil {
		return err
	}
	if cmd.Flags().Changed("gal") {
		v, err := measure.ReadVolume(m.gal, "gal")
		if err != nil {
			return err
		}
		m.ask.Volume = core.Known(v)
	}
	if cmd.Flags().Changed("sqft") {
		v, err := measure.ReadArea(m.sqft, "sqft")
		if err != nil {
			return err
		}
		m.ask.Area = core.Known(v)
	}
	if cmd.Flags().Changed("thin") {
		m.ask.Thin = core.Known(m.thin)
	}
	for _, f := range []struct {
		flag, value string
		to          *core.Maybe[measure.Amount]
	}{{"each", m.each, &m.ask.Each}, {"dose", m.dose, &m.ask.Dose}, {"package", m.pack, &m.ask.Pack}} {
		if !cmd.Flags().Changed(f.flag) {
			continue
		}
		v, err := yard.ReadAmount(f.value, m.ask.Name, b)
		if err != nil {
			return err
		}
		*f.to = core.Known(v)
	}
	return nil
}

// counts refuses what would otherwise be taken as left out, or leave a figure that was given unused.
func (m *mixingFlags) counts(cmd *cobra.Command) error {
	given := cmd.Flags().Changed
	switch {
	case given("loads") && m.ask.Loads < 1:
		return usage("--loads is %d; give 1 or more.", m.ask.Loads)
	case given("rinses") && m.ask.Rinses < 1:
		return usage("--rinses is %d; give 1 or more.", m.ask.Rinses)
	case given("thin") && !(m.thin >= 0 && m.thin <= 1000):
		return usage("--thin is %v; give 0 to 1,000 parts of water.", m.thin)
	case given("gal") && given("sqft"):
		return usage("--gal %s and --sqft %s are both given; give one of them.", m.gal, m.sqft)
	}
	return nil
}
