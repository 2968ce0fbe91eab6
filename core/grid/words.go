package grid

import (
	"fmt"
	"strings"

	"example.com/tintline/core/label"
)

// Keys explains the letters that stand in the grid, the heaviest first.
func (g *Grid) Keys() []label.LeaveKey {
	var out []label.LeaveKey
	products, actives := false, false
	for i := range g.Columns {
		products = products || g.Columns[i].Product != ""
		actives = actives || g.Columns[i].Product == ""
	}
	if products {
		out = append(out, label.LeaveKeys()...)
	}
	if !actives {
		return out
	}
	if !products {
		return ActiveKeys()
	}
	return append(out, label.LeaveKey{Letter: "T", Word: "tolerant", Words: "of an active: a source that was read calls the grass tolerant"})
}

// Head breaks a name into lines of at most so many letters, by words; what does not fit ends in "..".
func Head(name string, w, lines int) []string {
	out := wrap(name, w)
	if len(out) > lines {
		last := out[lines-1] + ".."
		for width(last) > w {
			cut := strings.LastIndex(strings.TrimSuffix(last, ".."), " ")
			if cut < 0 {
				r := []rune(last)
				last = string(r[:w-2]) + ".."
				break
			}
			last = last[:cut] + ".."
		}
		out = append(out[:lines-1], last)
	}
	return out
}

// wrap breaks text into lines by words; a word that is longer than a line is broken.
func wrap(s string, w int) []string {
	var out []string
	line := ""
	for _, word := range strings.Fields(s) {
		for width(word) > w {
			if line != "" {
				out, line = append(out, line), ""
			}
			r := []rune(word)
			out, word = append(out, string(r[:w])), string(r[w:])
		}
		switch {
		case line == "":
			line = word
		case width(line)+1+width(word) <= w:
			line += " " + word
		default:
			out, line = append(out, line), word
		}
	}
	if line != "" {
		out = append(out, line)
	}
	return out
}

// printWrapped prints text within the paper, further lines indented.
func printWrapped(w *strings.Builder, s string, indent int) {
	for i, l := range wrap(s, paper-indent) {
		if i > 0 {
			l = strings.Repeat(" ", indent) + l
		}
		w.WriteString(l + "\n")
	}
}

// printIndented prints all lines indented.
func printIndented(w *strings.Builder, s string, indent int) {
	for _, l := range wrap(s, paper-indent) {
		w.WriteString(strings.Repeat(" ", indent) + l + "\n")
	}
}

func grassWords(name string) string { return label.GrassWords(name) }

func count(n int, what string, a Asked) string {
	if n != 1 {
		what += "s"
	}
	words := fmt.Sprintf("%d %s", n, what)
	if a.Active != "" {
		words += " on " + a.Active
	}
	if a.Grass != "" {
		words += " on " + grassWords(a.Grass)
	}
	return words
}
