package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"example.com/tintline/core"
	"example.com/tintline/core/past"
	"example.com/tintline/core/printed"
	"example.com/tintline/core/tally"
)

func (a *app) recordsCommand() *cobra.Command {
	var q past.Query
	var date, as, state string
	cmd := &cobra.Command{
		Use:   "records [--date D | --from D --to D] [--lawn N] [--product P] [--state S] [--as FORM]",
		Short: "The application record: what went where, of what, by whom, in which weather",
		Long: `Lists the application record, a row for each product on each zone in each visit, and names what the rule of a state asks for and a
row does not hold. Without dates it is the open day, else the last one. The state is the setting of that name unless --state gives
another. CSV has all fields, with the units in the head, in UTF-8 without a mark (a spreadsheet asks for it at import); a cell that it would
take for a formula begins with an apostrophe. HTML is one file to print, each day on pages of its own.
The product label, the law and local rules decide; the list says when the text of a rule was read.`,
		Example: `  tintline records
  tintline records --from 2026-05-01 --to 2026-05-31 --as csv > may.csv
  tintline records --lawn "77 Fir Lane" --from 2025-01-01 --as html > lawn.html
  tintline records --product "Example Warm" --date 2026-05-28 --state OH`,
		Args: noArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			if err := dates(cmd, date, &q.From, &q.To); err != nil {
				return err
			}
			form, err := a.handedOut(as)
			if err != nil {
				return err
			}
			if state != "" && len(tally.ProfilesOf(state)) == 0 {
				return usage("No rule of %q was read; those that were are of %s.", state, strings.Join(statesRead(), ", "))
			}
			return a.reading(func(k *keptBook) error { return a.records(k, q, state, form) })
		},
	}
	f := cmd.Flags()
	f.StringVar(&date, "date", "", "one `DAY`, as in 2026-05-28")
	f.StringVar(&q.From, "from", "", "first `DAY` of several")
	f.StringVar(&q.To, "to", "", "last `DAY` of several")
	f.StringVar(&q.Lawn, "lawn", "", "only of one `LAWN`")
	f.StringVar(&q.Product, "product", "", "only of one `PRODUCT`")
	f.StringVar(&state, "state", "", "hold it against the rule of a `STATE`")
	asFlag(cmd, &as)
	completes(cmd, "state", cobra.FixedCompletions(statesRead(), cobra.ShellCompDirectiveNoFileComp))
	return cmd
}

// statesRead are the states of which a rule was read.
func statesRead() []string {
	for _, s := range core.Settings() {
		if s.Name == core.State {
			return s.Options[1:]
		}
	}
	return nil
}

func (a *app) records(k *keptBook, q past.Query, state, form string) error {
	d := k.book.Day()
	if q.From == "" && q.To == "" {
		if q.Lawn == "" && q.Product == "" {
			q.From, q.To = d.Date, d.Date
		}
		if d.Date == "" {
			return &failure{what: "The book " + k.path + " has no day yet.", do: "Open a day first.", code: exitCannot}
		}
	}
	var list []tally.Record
	err := a.pastDays(k, func(read past.Reader) (err error) {
		list, err = past.Records(k.book, read, q)
		return err
	})
	if err != nil {
		return err
	}
	if len(list) == 0 {
		if q.Lawn != "" && k.book.Lawn(q.Lawn) == nil {
			return usage("There is no lawn %q in the book, and none of that name was treated in those days.", q.Lawn)
		}
		if q.Product != "" && k.book.Product(q.Product) == nil {
			return usage("There is no product %q in the book.", q.Product)
		}
	}
	if state == "" {
		state, _ = k.book.SettingText(core.State)
	}
	if form == asJSON {
		return a.recordsJSON(k, list, state)
	}
	if len(list) == 0 {
		return &failure{what: fmt.Sprintf("Nothing of that was laid in what was asked for; the last day in the book %s is %s.", k.path, d.Date), do: "Ask for other days, another lawn or another product.", code: exitCannot}
	}
	if form == asCSV {
		return a.printTable(tally.RecordTable(list))
	}
	return a.printDocument(tally.RecordDocument(list, state), form)
}

func (a *app) recordsJSON(k *keptBook, list []tally.Record, state string) error {
	rows := []map[string]any{}
	for i := range list {
		rows = append(rows, list[i].Document(state))
	}
	rules := []map[string]any{}
	for _, p := range tally.ProfilesOf(state) {
		rules = append(rules, map[string]any{
			"jurisdiction": p.Jurisdiction, "citation": p.Citation, "kept_years": p.KeptYears, "source_date": p.SourceDate, "source": p.Address,
		})
	}
	return a.printJSON(map[string]any{"records": rows, "rules": rules})
}

// The forms in which something is handed out.
const (
	asText = "text"
	asHTML = "html"
	asCSV  = "csv"
	asJSON = "json"
)

func asFlag(cmd *cobra.Command, as *string) {
	cmd.Flags().StringVar(as, "as", "", "the `FORM`: text, html, csv or json")
	completes(cmd, "as", cobra.FixedCompletions([]string{asText, asHTML, asCSV, asJSON}, cobra.ShellCompDirectiveNoFileComp))
}

// handedOut is the form asked for; --json says json.
func (a *app) handedOut(as string) (string, error) {
	switch {
	case as == "" && a.flags.json:
		return asJSON, nil
	case as == "":
		return asText, nil
	case as != asText && as != asHTML && as != asCSV && as != asJSON:
		return "", usage("--as %q is none of text, html, csv and json.", as)
	case a.flags.json && as != asJSON:
		return "", usage("--json and --as %s ask for two forms.", as)
	}
	return as, nil
}

// handout is what is handed out: as it stands in JSON, or printed.
type handout interface{ Printed() printed.Document }

// handOut prints what a book gives in the form asked for.
func (a *app) handOut(as string, of func(*core.Book) handout) error {
	form, err := a.handedOut(as)
	if err != nil {
		return err
	}
	return a.reading(func(k *keptBook) error {
		h := of(k.book)
		if form == asJSON {
			return a.printJSON(h)
		}
		return a.printDocument(h.Printed(), form)
	})
}

// printDocument prints what is handed out as text, as one HTML file, or its tables as one CSV.
func (a *app) printDocument(d printed.Document, form string) error {
	switch form {
	case asHTML:
		page, err := d.HTML()
		if err != nil {
			return err
		}
		return a.print(page)
	case asCSV:
		text, err := d.CSV()
		if err != nil {
			return err
		}
		return a.print(text)
	}
	return a.print(d.Text())
}

func (a *app) printTable(t printed.Table) error {
	text, err := t.CSV()
	if err != nil {
		return err
	}
	return a.print(text)
}
