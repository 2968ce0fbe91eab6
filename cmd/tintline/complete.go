package main

import (
	"slices"

	"github.com/spf13/cobra"

	"example.com/tintline/core"
)

// Shell completion: the commands and flags come from cobra, the names from the book. A book that cannot be read
// completes nothing; it is no time to say why.

// names completes with what a book holds.
func (a *app) names(list func(b *core.Book) []string) func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
	return func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
		if a.settle() != nil {
			return nil, cobra.ShellCompDirectiveNoFileComp
		}
		var out []string
		_ = a.reading(func(k *keptBook) error {
			out = list(k.book)
			return nil
		})
		return out, cobra.ShellCompDirectiveNoFileComp
	}
}

// completes gives a flag the names that it may take.
func completes(cmd *cobra.Command, flag string, f func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective)) {
	if err := cmd.RegisterFlagCompletionFunc(flag, f); err != nil {
		panic(err) // the flag is declared a line above
	}
}

func lawnNames(b *core.Book) []string {
	var out []string
	for _, l := range b.Lawns() {
		out = append(out, l.LawnName)
	}
	return out
}

func zoneNames(b *core.Book) []string {
	var out []string
	for _, l := range b.Lawns() {
		for _, n := range l.ZoneNames() {
			if !slices.Contains(out, n) {
				out = append(out, n)
			}
		}
	}
	return out
}

func compartmentLetters(b *core.Book) []string {
	var out []string
	for _, c := range b.Plumbing().Compartments {
		out = append(out, string(rune(c.Letter)))
	}
	return out
}

func applicatorNames(b *core.Book) []string {
	var out []string
	if b.Rig() != nil {
		for _, p := range b.Rig().Applicators {
			out = append(out, p.Name)
		}
	}
	return out
}
