package main

import (
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"example.com/tintline/core/label"
	"example.com/tintline/core/sheet"
)

// largestFile bounds what a file to be imported may take of the memory.
const largestFile = 16 << 20

func (a *app) importCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "import rig|products|mixes|lawns FILE|-",
		Short: "Enter the rig, products, mixes or lawns from a CSV file",
		Long: `Enters a CSV file with a header row in one action, or nothing of it. Every bad cell is named by file, line and
column, with what is wrong, what is allowed and the nearest known name. tintline template prints a file to begin
with. What the book knows by the same name is replaced by what the file says, a product by its next version; what the
file has no column for stays as it was.
Import products before the mixes that name them. Where there is no book yet, the file begins one.`,
		Example: `  tintline template lawns > lawns.csv
  tintline import lawns lawns.csv --book truck.db
  tintline import products - --book truck.db --json < products.csv`,
		Args:              kindAndFile,
		ValidArgsFunction: completeKind,
		RunE: func(_ *cobra.Command, args []string) error {
			path, err := a.bookPath()
			if err != nil {
				return err
			}
			name, src, err := a.readFile(args[1])
			if err != nil {
				return err
			}
			k, err := openOrNew(path, a.adding())
			if err != nil {
				return err
			}
			a.warn(k)
			return errors.Join(a.importSheet(k, args[0], name, src), k.Close())
		},
	}
}

// completeKind completes the kind, and leaves the file that follows to the shell.
func completeKind(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
	if len(args) > 0 {
		return nil, cobra.ShellCompDirectiveDefault
	}
	return sheet.Kinds, cobra.ShellCompDirectiveNoFileComp
}

// oneKind wants a kind of sheet as the first word.
func oneKind(cmd *cobra.Command, kind string) error {
	if slices.Contains(sheet.Kinds, kind) {
		return nil
	}
	f := usage("%s takes no %q.", cmd.CommandPath(), kind)
	f.do = "Say one of " + strings.Join(sheet.Kinds, ", ") + "."
	if near := label.Nearest(kind, sheet.Kinds); near != "" {
		f.do = fmt.Sprintf("Say one of %s; the nearest is %s.", strings.Join(sheet.Kinds, ", "), near)
	}
	return f
}

func kindAndFile(cmd *cobra.Command, args []string) error {
	if len(args) > 0 {
		if err := oneKind(cmd, args[0]); err != nil {
			return err
		}
	}
	if len(args) != 2 {
		return usage("%s takes two words: a kind (%s), and a file or - for standard input.", cmd.CommandPath(), strings.Join(sheet.Kinds, ", "))
	}
	return nil
}

// readFile reads a whole file; "-" is standard input. The name is the one for sentences.
func (a *app) readFile(path string) (name string, src []byte, err error) {
	r, closer, err := a.openLines(path)
	if err != nil {
		return "", nil, err
	}
	src, err = io.ReadAll(io.LimitReader(r.in, largestFile+1))
	if err = errors.Join(err, closer.Close()); err != nil {
		return "", nil, &failure{what: r.name + " cannot be read: " + err.Error() + ".", do: "Check the path.", code: exitCannot, err: err}
	}
	if len(src) > largestFile {
		return "", nil, usage("%s is longer than %d MiB.", r.name, largestFile>>20)
	}
	return r.name, src, nil
}

// imported is the answer to an import.
type imported struct {
	Kind     string    `json:"kind"`
	File     string    `json:"file"`
	Rows     int       `json:"rows"`
	Entries  int       `json:"entries"`
	New      int       `json:"new"`
	Replaced int       `json:"replaced"`
	Seq      [2]uint64 `json:"seq"`
	Action   string    `json:"action"`
}

func (a *app) importSheet(k *keptBook, kind, name string, src []byte) error {
	s, err := sheet.Import(kind, name, src, k.book)
	if err != nil {
		return err
	}
	action, entries, err := k.log(a.clock(), s.Facts...)
	if err != nil {
		return err
	}
	out := imported{kind, name, s.Rows, len(entries), s.New, s.Replaced, [2]uint64{entries[0].Seq, entries[len(entries)-1].Seq}, action}
	if a.flags.json {
		return a.printJSON(out)
	}
	return a.print(importWords(out))
}

// importWords says what an import did, in a line.
func importWords(i imported) string {
	where := fmt.Sprintf("entry %d", i.Seq[0])
	if i.Entries > 1 {
		where = fmt.Sprintf("entries %d to %d", i.Seq[0], i.Seq[1])
	}
	rows := "1 row"
	if i.Rows != 1 {
		rows = fmt.Sprintf("%d rows", i.Rows)
	}
	return fmt.Sprintf("%s from %s (%s): %d new, %d replaced; %s.\n", i.Kind, i.File, rows, i.New, i.Replaced, where)
}

// troubleJSON is a trouble as the contract has problems, with its place.
type troubleJSON struct {
	Problem string  `json:"problem"`
	Do      string  `json:"do"`
	File    string  `json:"file"`
	Line    *int    `json:"line"`
	Column  *string `json:"column"`
	Allowed string  `json:"allowed"`
	Nearest *string `json:"nearest"`
}

// troublesJSON is the first trouble, and the others after it.
type troublesJSON struct {
	troubleJSON
	Others []troubleJSON `json:"others"`
}

func troubleObject(t *sheet.Trouble) troubleJSON {
	out := troubleJSON{File: t.File, Allowed: t.Allowed}
	out.Problem, out.Do = t.Sentences()
	if t.Line > 0 {
		out.Line = &t.Line
	}
	if t.Column != "" {
		out.Column = &t.Column
	}
	if t.Nearest != "" {
		out.Nearest = &t.Nearest
	}
	return out
}

func troublesObject(all sheet.Troubles) troublesJSON {
	out := troublesJSON{troubleJSON: troubleObject(&all[0]), Others: []troubleJSON{}}
	for i := range all[1:] {
		out.Others = append(out.Others, troubleObject(&all[1+i]))
	}
	return out
}

// troublesText is every trouble on a line of its own, and what is allowed once for each column.
func troublesText(all sheet.Troubles) (what, do string) {
	if len(all) == 1 {
		return all[0].Sentences()
	}
	var lines, order []string
	columns := map[string][]string{} // by what is allowed in them
	for i := range all {
		t := &all[i]
		line := t.Error()
		if t.Nearest != "" {
			line += " Nearest known: " + t.Nearest + "."
		}
		lines = append(lines, line)
		if t.Column == "" || t.Allowed == "" || slices.Contains(columns[t.Allowed], t.Column) {
			continue
		}
		if columns[t.Allowed] == nil {
			order = append(order, t.Allowed)
		}
		columns[t.Allowed] = append(columns[t.Allowed], t.Column)
	}
	for _, allowed := range order {
		lines = append(lines, fmt.Sprintf("Allowed in %s: %s.", strings.Join(columns[allowed], ", "), allowed))
	}
	do = fmt.Sprintf("Correct these %d places and import the file again; nothing of it was imported.", len(all))
	return strings.Join(lines, "\n"), do
}
