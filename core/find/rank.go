package find

import (
	"strings"
	"unicode"
)

// rank says how well letters fit, the best least.
type rank int

const (
	whole rank = iota
	nameBegins
	nameWord
	belongsBegins
	belongsWord
	nameWithin
	belongsWithin
	inOrder
	none
)

// plain is a text in small letters with single spaces.
func plain(s string) string { return strings.Join(strings.Fields(strings.ToLower(s)), " ") }

func nameRank(name, want string) rank {
	switch {
	case name == want:
		return whole
	case strings.HasPrefix(name, want):
		return nameBegins
	case wordBegins(name, want):
		return nameWord
	case strings.Contains(name, want):
		return nameWithin
	case hasInOrder(name, want):
		return inOrder
	}
	return none
}

func belongsRank(text, want string) rank {
	switch {
	case strings.HasPrefix(text, want):
		return belongsBegins
	case wordBegins(text, want):
		return belongsWord
	case strings.Contains(text, want):
		return belongsWithin
	}
	return none
}

// wordBegins tells whether a word within the text begins so.
func wordBegins(text, want string) bool {
	for _, w := range wordsOf(text)[1:] {
		if strings.HasPrefix(w, want) {
			return true
		}
	}
	return false
}

// wordsOf is the text, and what is left of it from each later word on. A word begins after what is neither letter nor
// figure.
func wordsOf(text string) []string {
	out := []string{text}
	between := false
	for i, r := range text {
		in := unicode.IsLetter(r) || unicode.IsDigit(r)
		if in && between {
			out = append(out, text[i:])
		}
		between = !in
	}
	return out
}

// hasInOrder tells whether a word begins with the first letter and the others follow in their order, with more between
// them; spaces do not count.
func hasInOrder(text, want string) bool {
	for _, w := range wordsOf(text) {
		rest := []rune(strings.ReplaceAll(want, " ", ""))
		if !strings.HasPrefix(w, string(rest[:1])) {
			continue
		}
		for _, r := range w {
			if len(rest) > 0 && r == rest[0] {
				rest = rest[1:]
			}
		}
		if len(rest) == 0 {
			return true
		}
	}
	return false
}

// phoneRank compares digits alone, however the number is written.
func phoneRank(phone, want string) rank {
	digits := func(s string) string {
		return strings.Map(func(r rune) rune {
			if r >= '0' && r <= '9' {
				return r
			}
			return -1
		}, s)
	}
	if strings.Trim(want, "0123456789 -+().") != "" {
		return none
	}
	has, wants := digits(phone), digits(want)
	switch {
	case len(wants) < 3 || has == "":
		return none
	case strings.HasPrefix(has, wants):
		return belongsBegins
	case strings.Contains(has, wants):
		return belongsWithin
	}
	return none
}
