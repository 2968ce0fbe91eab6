package main

import (
	"bufio"
	"bytes"
	"fmt"
	"time"

	"github.com/spf13/cobra"

	"example.com/tintline/core"
	"example.com/tintline/core/say"
	"example.com/tintline/store"
)

func (a *app) journalCommand() *cobra.Command {
	var since uint64
	var date string
	cmd := &cobra.Command{
		Use:   "journal [--since SEQ] [--date D]",
		Short: "All entries, in order",
		Long: `Prints the entries in order, one a line; struck ones are marked. With --json the lines are exact and
complete: tintline replay makes the same book from them.`,
		Example: `  tintline journal --book truck.db --date 2026-05-28
  tintline journal --book truck.db --json > truck.jsonl
  tintline journal --since 1200 --json`,
		Args: noArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			if _, err := time.Parse(time.DateOnly, date); cmd.Flags().Changed("date") && err != nil {
				return usage("--date %q is not a date; write it as in 2026-05-28.", date)
			}
			s := strikes{}
			return a.reading(func(k *keptBook) error { return a.journal(k, s, since, date) }, s)
		},
	}
	cmd.Flags().Uint64Var(&since, "since", 0, "begin with entry number `SEQ`")
	cmd.Flags().StringVar(&date, "date", "", "only the entries of one `DAY`, as in 2026-05-28")
	return cmd
}

// strikes gathers which entry struck which, over the whole journal: the strike comes after what it strikes.
type strikes map[uint64]uint64

// Before has nothing to see.
func (strikes) Before(*core.Book, core.Entry) {}

// After notes the first strike of each entry; a later one strikes what stands in its place.
func (s strikes) After(_ *core.Book, e core.Entry) {
	f, ok := e.What.(*core.Struck)
	if !ok {
		return
	}
	for _, n := range append([]int64{f.Of}, f.Also...) {
		if _, twice := s[uint64(n)]; !twice {
			s[uint64(n)] = e.Seq
		}
	}
}

func (a *app) journal(k *keptBook, s strikes, since uint64, date string) error {
	out := bufio.NewWriterSize(a.stdout, 1<<16)
	key := core.DayKey(date)
	err := k.file.Each(max(since, 1), func(r store.Record) error {
		if date != "" && !hasKey(r.Keys, key) {
			return nil
		}
		e, err := core.Decode(r.Number, r.Action, r.Body)
		if err != nil {
			return k.unreadable(err)
		}
		if a.flags.json {
			_, err = out.Write(append(core.EncodeLine(e, s[e.Seq]), '\n'))
		} else {
			_, err = out.WriteString(entryLine(e, s[e.Seq]))
		}
		return err
	})
	if err != nil {
		return err
	}
	return out.Flush()
}

func hasKey(keys [][]byte, key []byte) bool {
	for _, k := range keys {
		if bytes.Equal(k, key) {
			return true
		}
	}
	return false
}

// entryLine is an entry as people read it.
func entryLine(e core.Entry, struckBy uint64) string {
	mark := ""
	if struckBy != 0 {
		mark = fmt.Sprintf("[struck by %d] ", struckBy)
	}
	return fmt.Sprintf("%6d  %s %5s  %s%s\n", e.Seq, e.At.Date(), e.At.Clock(), mark, say.Fact(e.What))
}
