package printed

import "strings"

// wrap breaks one line of text at its blanks into lines of at most width places; a word that is longer is broken where it must be.
// There is at least one line.
func wrap(s string, width int) []string {
	width = max(width, 2) // the widest letter
	if places(s) <= width {
		return []string{s}
	}
	var out []string
	line, used := "", 0
	for _, word := range strings.Split(s, " ") {
		w := places(word)
		switch {
		case line == "" && used == 0:
		case used+1+w <= width:
			line, used = line+" ", used+1
		default:
			out, line, used = append(out, line), "", 0
		}
		for w > width {
			head, rest := cut(word, width)
			out, word = append(out, head), rest
			w = places(word)
		}
		line, used = line+word, used+w
	}
	return append(out, line)
}

// cut takes as many letters off the beginning as fit, up to a hyphen among them if there is one; marks that go on a letter stay with it.
func cut(s string, width int) (head, rest string) {
	used, hyphen := 0, 0
	for i, r := range s {
		if used += placesOf(r); used > width {
			if hyphen > 0 {
				i = hyphen
			}
			return s[:i], s[i:]
		}
		if r == '-' {
			hyphen = i + 1
		}
	}
	return s, ""
}
