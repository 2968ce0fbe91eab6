package core

import (
	"fmt"
	"math"
	"unicode"
	"unicode/utf8"

	"example.com/tintline/core/measure"
)

// plain refuses what could be held in memory but not be stored, or not be shown: texts that are not UTF-8,
// that hold control characters or that are endless, figures that are no numbers, kinds that are none. It
// walks the one list of fields, so that no fact can forget it.
func plain(f Fact) error {
	c := &plainCheck{}
	f.fields(walker{c})
	return c.err
}

// plainCheck is the codec that writes nothing.
type plainCheck struct{ err error }

func (c *plainCheck) refuse(do, format string, args ...any) {
	if c.err == nil {
		c.err = refuse(do, format, args...)
	}
}

func (c *plainCheck) one(key, s string) {
	if !utf8.ValidString(s) {
		c.refuse("Type it again.", "The text under %s is not UTF-8.", key)
		return
	}
	if n := utf8.RuneCountInString(s); n > LongestText {
		c.refuse(fmt.Sprintf("Shorten it to %d.", LongestText), "The text under %s has %d letters.", key, n)
	}
	for _, r := range s {
		// What was said on the screen may have had several lines.
		if unicode.IsControl(r) && (r != '\n' || key != "said") {
			c.refuse("Write it on one line, in plain letters.", "The text under %s holds a control character (%U).", key, r)
			return
		}
	}
}

func (c *plainCheck) text(_ int, key string, p *string)   { c.one(key, *p) }
func (c *plainCheck) scalar(_ int, key string, p *string) { c.one(key, *p) }

func (c *plainCheck) texts(_ int, key string, p *[]string) {
	for _, s := range *p {
		c.one(key, s)
	}
}

func (c *plainCheck) letter(_ int, key string, p *byte) {
	if *p != 0 {
		c.letters(0, key, &[]byte{*p})
	}
}

func (c *plainCheck) letters(_ int, key string, p *[]byte) {
	for _, b := range *p {
		if b <= ' ' || b > '~' {
			c.refuse("Write a letter, a to f.", "The letter under %s is %q.", key, string(rune(b)))
		}
	}
}

func (c *plainCheck) words(_ int, key string, p *map[string]string) {
	for _, k := range sortedKeys(*p) {
		c.one(key, k)
		c.one(key, (*p)[k])
	}
}

func (c *plainCheck) integer(int, string, *int64)                 {}
func (c *plainCheck) integers(int, string, *[]int64)              {}
func (c *plainCheck) quantity(int, string, string, *int64, *bool) {}

func (c *plainCheck) real(_ int, key string, p *float64, _ *bool) {
	if math.IsNaN(*p) || math.IsInf(*p, 0) {
		c.refuse("Give a number.", "The figure under %s is %g.", key, *p)
	}
	if *p == 0 && math.Signbit(*p) { // it would be shown as -0
		c.refuse("Leave out the minus.", "The figure under %s is -0.", key)
	}
}

func (c *plainCheck) flow(n int, stem string, p *float64, known *bool) { c.real(n, stem, p, known) }

func (c *plainCheck) form(_ int, key string, p *measure.Kind) {
	if *p > measure.Dry {
		c.refuse("Write liquid or dry.", "The %s is neither liquid nor dry.", key)
	}
}

func (c *plainCheck) amount(n int, stem string, p *measure.Amount) { c.form(n, stem, &p.Kind) }

func (c *plainCheck) rate(n int, stem string, p *measure.Rate, known *bool) {
	c.form(n, stem, &p.Kind)
	c.real(n, stem, &p.V, known)
}

func (c *plainCheck) fact(_ int, _ string, p *Fact) {
	if *p != nil {
		(*p).fields(walker{c})
	}
}

func (c *plainCheck) list(_ int, _ string, count int, _ func(int), each func(walker, int)) {
	for i := range count {
		each(walker{c}, i)
	}
}
