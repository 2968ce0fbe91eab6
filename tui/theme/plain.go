package theme

// plain has no colour at all, only bold, reverse and underline: for NO_COLOR and for terminals whose colours
// cannot be trusted. Nothing is faint: that is hard to read in the sun.
func plain() [count]look {
	return [count]look{
		Strong:  {bold: true},
		Head:    {bold: true},
		Demo:    {bold: true, reverse: true},
		Stop:    {bold: true, reverse: true},
		Ask:     {bold: true, underline: true},
		Note:    {bold: true},
		Next:    {bold: true},
		Act:     {bold: true, reverse: true},
		ActStop: {bold: true, reverse: true},
		Waiting: {bold: true, underline: true},
		Refused: {bold: true},
		Key:     {bold: true, underline: true},
		Field:   {bold: true, underline: true},
		Cursor:  {reverse: true},
		Nozzle:  {bold: true, reverse: true},
		CompA:   {bold: true},
	}
}
