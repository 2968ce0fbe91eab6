package theme

// plain has no colour at all, only bold, reverse, underline and faint: for NO_COLOR and for terminals whose
// colours cannot be trusted.
func plain() [count]look {
	return [count]look{
		Dim:     {faint: true},
		Strong:  {bold: true},
		Rule:    {faint: true},
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
