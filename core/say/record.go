package say

import "example.com/tintline/core"

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
