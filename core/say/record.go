package say

import (
	"fmt"
	"strings"

	"example.com/tintline/core"
)

func recorded(f *core.Recorded) string {
	title := f.Field
	if field, known := core.RecordFieldOf(f.Field); known {
		title = field.Title
	}
	of := "of the day"
	switch {
	case f.Lawn != "" && f.Zone != "":
		of = "of " + f.Lawn + ", " + f.Zone
	case f.Lawn != "":
		of = "of " + f.Lawn
	}
	if f.Product != "" {
		of += " for " + f.Product
	}
	return "record " + of + ": " + title + " " + f.Value
}

func amended(f *core.Amended) string {
	var out []string
	for _, c := range f.Changes {
		title := c.Field
		if field, known := core.RecordFieldOf(c.Field); known {
			title = field.Title
		}
		was := c.Was
		if was == "" {
			was = "nothing"
		}
		out = append(out, fmt.Sprintf("%s %s instead of %s", title, c.Is, was))
	}
	for _, m := range f.More {
		if m.Amount.N < 0 {
			less := m.Amount
			less.N = -less.N
			out = append(out, less.Text()+" less of "+m.Product)
		} else if m.Amount.N > 0 {
			out = append(out, m.Amount.Text()+" more of "+m.Product)
		}
	}
	return fmt.Sprintf("amended the record of %s, %s, %s, %s: %s; by %s: %s", f.Date, f.Lawn, f.Zone, f.Product, strings.Join(out, ", "), f.Who, f.Why)
}
