package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"example.com/tintline/core"
	"example.com/tintline/core/check"
	"example.com/tintline/core/glance"
	"example.com/tintline/core/measure"
)

func (a *app) checkCommand() *cobra.Command {
	var lawn, from, with, gal, product, lb, only string
	var zones []string
	cmd := &cobra.Command{
		Use:   "check --lawn N --zone N [--zone N ...] --from LETTER --with APPLICATOR [--gal N] [--lb N]",
		Short: "What would happen if the trigger were pulled now",
		Long: `Judges what would leave the nozzle, in the order in which it would leave: what is still in the hose
first. Without --zone it is the whole lawn, without --from the valves stay as they are, without --with it is
the first applicator on a hose. A spreader is judged by what its hopper holds, or by --product and --lb; a
ride-on with liquid and dry product by both, unless --only says spray or spread. Exit 0: nothing above a
note; 3: an ask; 4: a stop. The label and local rules decide; a blank limit is not checked and is named.`,
		Example: `  tintline check --lawn "418 Alder" --zone front --zone back --from a --with gun
  tintline check --lawn "77 Fir" --with ride-on --gal 2.5 --json
  tintline check --lawn "77 Fir" --with spreader --product "lawn food" --lb 15`,
		Args: noArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			in := check.Intent{Lawn: lawn, Zones: zones, With: with, At: a.clock(), Only: only, Product: product}
			if lawn == "" {
				return usage("check needs --lawn, the name of a lawn in the book.")
			}
			if err := readIntent(&in, cmd, from, gal, lb); err != nil {
				return err
			}
			return a.reading(func(k *keptBook) error { return a.check(k.book, in) })
		},
	}
	f := cmd.Flags()
	f.StringVar(&lawn, "lawn", "", "the `NAME` of the lawn")
	f.StringArrayVar(&zones, "zone", nil, "the `NAME` of a zone, in the order of spraying; may be given again")
	f.StringVar(&from, "from", "", "the `LETTER` of the compartment to draw from")
	f.StringVar(&with, "with", "", "the `NAME` of the applicator")
	f.StringVar(&product, "product", "", "the `NAME` of the dry product to spread; else what the hopper holds")
	f.StringVar(&lb, "lb", "", "`POUNDS` of it that are meant to go down; else area times rate")
	f.StringVar(&only, "only", "", "`WHAT` an applicator with tank and hopper is to do: spray or spread")
	f.StringVar(&gal, "gal", "", "`GALLONS` that are meant to go down; else area times delivery rate")
	completes(cmd, "lawn", a.names(lawnNames))
	completes(cmd, "zone", a.names(zoneNames))
	completes(cmd, "from", a.names(compartmentLetters))
	completes(cmd, "with", a.names(applicatorNames))
	return cmd
}

// readIntent reads the flags that are figures or letters.
func readIntent(in *check.Intent, cmd *cobra.Command, from, gal, lb string) error {
	if from != "" {
		if len(from) != 1 {
			return usage("--from %q is not a compartment; give its letter.", from)
		}
		in.From = strings.ToLower(from)[0]
	}
	if cmd.Flags().Changed("gal") {
		v, err := measure.ReadVolume(gal, "gal")
		if err != nil {
			return err
		}
		in.Volume = core.Known(v)
	}
	if cmd.Flags().Changed("lb") {
		m, err := measure.ReadMass(lb, "lb")
		if err != nil {
			return err
		}
		in.Amount = core.Known(m)
	}
	if in.Only != "" && in.Only != check.OnlySpray && in.Only != check.OnlySpread {
		return usage("--only %q is neither spray nor spread.", in.Only)
	}
	return nil
}

func (a *app) check(b *core.Book, in check.Intent) error {
	r, err := check.Before(b, in)
	if err != nil {
		return err
	}
	if a.flags.json {
		err = a.printJSON(checkDocument(b, in, r))
	} else {
		err = a.print(checkText(r, glance.ToClean(b, in)))
	}
	switch {
	case err != nil:
		return err
	case r.Verdict == check.Stop:
		return &failure{code: exitStop}
	case r.Verdict == check.Ask:
		return &failure{code: exitAsk}
	}
	return nil
}

// checkText is the report as people read it: what to do first.
func checkText(r check.Report, c *glance.Changeover) string {
	var w strings.Builder
	for i := range r.Findings {
		findingText(&w, &r.Findings[i])
	}
	fmt.Fprintf(&w, "verdict     %s; %d of the rules found nothing\n", r.Verdict, r.Quiet)
	fmt.Fprintf(&w, "plan        %s on %s sq ft of %s with %s", planned(r.Plan), r.Plan.Area.Text(), strings.Join(r.Plan.Zones, " + "), r.Plan.With)
	if r.Plan.Stays.Known {
		fmt.Fprintf(&w, "; %s gal stay", r.Plan.Stays.V.Text())
	}
	if r.Plan.HopperStays.Known {
		fmt.Fprintf(&w, "; %s stay in the hopper", measure.DryAmount(r.Plan.HopperStays.V).Text())
	}
	if r.Plan.Seconds.Known {
		fmt.Fprintf(&w, "; %s s", measure.SecondsText(r.Plan.Seconds.V))
	}
	w.WriteString("\n")
	w.WriteString(c.Text())
	for _, n := range r.NotChecked {
		fmt.Fprintf(&w, "not checked %s\n", n)
	}
	w.WriteString("The label and local rules decide.\n")
	return w.String()
}

// findingText is a finding with all that was merged into it: what to do, what it says, figures, zones, ground and source.
func findingText(w *strings.Builder, f *check.Finding) {
	before := ""
	for i, one := range f.All() {
		head := fmt.Sprintf("%-4s  %s  ", strings.ToUpper(one.Weight.String()), f.Rule)
		if i > 0 {
			head = "      also " + one.Weight.String() + ": "
		}
		do := one.Do
		if do == "" {
			do = one.Says
		}
		fmt.Fprintf(w, "%s%s\n", head, do)
		indent := "      "
		if i > 0 {
			indent += "  "
		}
		line := func(words, s string) {
			if s != "" {
				fmt.Fprintf(w, "%s%s%s\n", indent, words, s)
			}
		}
		if one.Do != "" {
			line("", one.Says)
		}
		line("", one.FigureWords())
		line("zones: ", strings.Join(one.Zones, " + "))
		if len(one.Products) > 1 {
			line("products: ", strings.Join(one.Products, ", "))
		}
		if ground := one.SourceWords(); ground != before {
			line("ground: ", ground)
			before = ground
		}
		if one.Reason == "" {
			continue
		}
		because := strings.TrimPrefix(strings.Join(one.Zones, " + ")+", "+one.Reason, ", ")
		if u := one.Unlawful(); u != "" {
			because += ". " + u
		}
		line("gone on with, because: ", because)
	}
}

// planned says what would go down: liquid, dry product, or both.
func planned(p check.Plan) string {
	var parts []string
	if p.Volume > 0 {
		parts = append(parts, p.Volume.Text()+" gal")
	}
	switch {
	case p.Amount.Known:
		parts = append(parts, p.Amount.V.Text()+" of "+p.Product)
	case p.Product != "":
		parts = append(parts, "an unknown weight of "+p.Product)
	}
	return strings.Join(parts, " and ")
}

// checkDocument arranges a report for JSON; the heaviest finding comes first.
func checkDocument(b *core.Book, in check.Intent, r check.Report) checkAnswer {
	out := checkAnswer{Verdict: r.Verdict.String(), Findings: []findingRow{}, NotChecked: append([]string{}, r.NotChecked...)}
	out.Plan.Gal = r.Plan.Volume.Gallons()
	out.Changeover = glance.ToClean(b, in)
	out.Plan.Stays, out.Plan.Seconds = gallons(r.Plan.Stays), number(r.Plan.Seconds)
	out.Plan.Product, out.Plan.HopperStays, out.Plan.FromBag = text(r.Plan.Product), pounds(r.Plan.HopperStays), pounds(r.Plan.FromBag)
	if r.Plan.Amount.Known {
		lb := measure.Mass(r.Plan.Amount.V.N).Pounds()
		out.Plan.Amount = &lb
	}
	for i := range r.Findings {
		row := rowOf(b, in, &r.Findings[i])
		for _, also := range r.Findings[i].Also {
			row.Also = append(row.Also, rowOf(b, in, &also))
		}
		out.Findings = append(out.Findings, row)
	}
	return out
}

// rowOf is a finding as it was found, or merged, without what was merged into it.
func rowOf(b *core.Book, in check.Intent, f *check.Finding) findingRow {
	row := findingRow{
		Rule: f.Rule, Weight: f.Weight.String(), Part: f.Part, Product: text(f.Product), Products: append([]string{}, f.Products...),
		Active: text(f.Active), Grass: text(f.Grass), Zones: append([]string{}, f.Zones...), About: text(f.About),
		Area: f.Area.SquareFeet(), Multiple: number(f.Multiple), ShareOfLabel: number(f.ShareOfLabel),
		Limit: number(f.Limit), Figured: number(f.Figured), Unit: text(f.Unit), Ground: f.Ground, Source: text(f.Source),
		Says: f.Says, Do: f.Do, Reason: text(f.Reason), Also: []findingRow{},
	}
	if len(row.Products) == 0 && f.Product != "" {
		row.Products = []string{f.Product}
	}
	if len(f.Zones) == 1 {
		row.Zone = text(f.Zones[0])
	}
	if f.PushBack.Known {
		row.PushBack = pushBack(b, in, f.PushBack.V)
	}
	return row
}

// pushBack is the push-back of a finding, into the compartment that the changeover names.
func pushBack(b *core.Book, in check.Intent, v measure.Volume) *glance.PushBack {
	gal := v.Gallons()
	c := glance.ToClean(b, in)
	if c == nil || c.PushBack == nil {
		return &glance.PushBack{Gal: gal}
	}
	out := *c.PushBack
	if out.Gal != gal {
		out.Gal, out.S = gal, nil
	}
	return &out
}
