package main

import (
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"example.com/tintline/core"
	"example.com/tintline/core/past"
	"example.com/tintline/core/printed"
	"example.com/tintline/core/season"
)

// seasonAsked is which season is asked for, and how it is arranged.
type seasonAsked struct {
	lawn, product, year, by string
	arranged                bool // the way was named
}

func (a *app) seasonCommand() *cobra.Command {
	var q seasonAsked
	var as string
	cmd := &cobra.Command{
		Use:   "season [--lawn N | --product P | --by WAY] [--year Y] [--as FORM]",
		Short: "What went down this year, what is left of the limits, and what is due next",
		Long: `Says what went down in a year and what is due, the lawn that is due first on top. Of one lawn it is a sheet of one page: product by
product on each zone with the last date, the next one and what the label still allows, nitrogen against the table of the region.
By product it is what went down, was bought, is in stock and is to be ordered; by grass and round gallons and area; by plots
bars of gallons and area by day, of rates by applicator and of nitrogen by month. CSV has a row for each product on each zone
unless --by names another way.
A lawn is due a round after it was last treated: the setting round_days, or the lawn's own.`,
		Example: `  tintline season
  tintline season --lawn "77 Fir Lane" --as html > season.html
  tintline season --by plots
  tintline season --product "Example Warm" --year 2025
  tintline season --as csv > season.csv`,
		Args: noArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			form, err := a.handedOut(as)
			if err != nil {
				return err
			}
			q.arranged = cmd.Flags().Changed("by")
			if err := q.check(); err != nil {
				return err
			}
			return a.reading(func(k *keptBook) error { return a.season(k, q, form) })
		},
	}
	f := cmd.Flags()
	f.StringVar(&q.lawn, "lawn", "", "the sheet of one `LAWN`")
	f.StringVar(&q.product, "product", "", "where one `PRODUCT` went")
	f.StringVar(&q.year, "year", "", "the calendar `YEAR`, as in 2026")
	f.StringVar(&q.by, "by", season.ByDue, "the `WAY`: "+strings.Join(season.Ways(), ", "))
	asFlag(cmd, &as)
	completes(cmd, "by", cobra.FixedCompletions(season.Ways(), cobra.ShellCompDirectiveNoFileComp))
	return cmd
}

func (q *seasonAsked) check() error {
	switch {
	case q.lawn != "" && q.product != "":
		return usage("--lawn and --product ask for two things.")
	case (q.lawn != "" || q.product != "") && q.arranged:
		return usage("--by arranges all lawns; leave --lawn and --product out.")
	case !slices.Contains(season.Ways(), q.by):
		return usage("--by %q is none of %s.", q.by, strings.Join(season.Ways(), ", "))
	case q.year != "" && (len(q.year) != 4 || strings.Trim(q.year, "0123456789") != ""):
		return usage("--year %q is no year; write it as in 2026.", q.year)
	}
	return nil
}

// seasonDate is the date of the open day, else of the clock, else of the last day.
func (a *app) seasonDate(b *core.Book) string {
	d := b.Day()
	if !d.Open && a.at.Known {
		return max(a.at.V.Date(), d.Date)
	}
	return d.Date
}

func (a *app) season(k *keptBook, q seasonAsked, form string) error {
	if q.product != "" && k.book.Product(q.product) == nil {
		return usage("There is no product %q in the book.", q.product)
	}
	at := a.seasonDate(k.book)
	if at == "" {
		return &failure{what: "The book " + k.path + " has no day yet.", do: "Open a day first.", code: exitCannot}
	}
	var s *season.Season
	err := a.pastDays(k, func(read past.Reader) (err error) {
		if q.lawn != "" {
			s, err = season.OfLawn(k.book, read, q.year, at, q.lawn)
		} else {
			s, err = season.Of(k.book, read, q.year, at)
		}
		return err
	})
	if err != nil {
		return err
	}
	d := s.Document(q.by)
	if q.lawn != "" {
		if d, err = s.Sheet(q.lawn); err != nil {
			return err
		}
	}
	if q.product != "" {
		d.Title = "Season " + s.Year + ": " + q.product
		d.Parts = []printed.Part{{Table: s.OfProduct(q.product)}}
		if len(d.Parts[0].Table.Rows) == 0 {
			d.Parts = []printed.Part{{Lines: []string{"It went nowhere in " + s.Year + ", as far as the book has it."}}}
		}
	}
	switch form {
	case asJSON:
		return a.printJSON(s.JSON())
	case asCSV:
		if !q.arranged {
			q.by = season.ByLawn
		}
		return a.printTable(s.CSV(q.by, q.product))
	}
	return a.printDocument(d, form)
}
