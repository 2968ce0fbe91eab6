package theme

// night is light text on black, for a cab without light; nothing is brighter than it must be.
func night() [count]look {
	var (
		black  = ink{"#000000", "16", "0"}
		text   = ink{"#D0D0D0", "252", "7"}
		grey   = ink{"#9A9A9A", "247", "7"}
		white  = ink{"#FFFFFF", "231", "15"}
		red    = ink{"#FF6B5E", "203", "9"}
		amber  = ink{"#FFC14D", "215", "11"}
		green  = ink{"#7FD88F", "114", "10"}
		blue   = ink{"#6FB7FF", "75", "12"}
		violet = ink{"#D79BFF", "177", "13"}
		cyan   = ink{"#6FD6D6", "80", "14"}
		deep   = ink{"#1F4F2B", "22", "4"} // white on green cannot be read in every set of sixteen
		blood  = ink{"#8A1F17", "88", "1"}
	)
	return [count]look{
		Base:    {fg: text, bg: black},
		Dim:     {fg: grey, bg: black},
		Strong:  {fg: white, bg: black, bold: true},
		Rule:    {fg: grey, bg: black},
		Head:    {fg: white, bg: black, bold: true},
		Demo:    {fg: black, bg: amber, bold: true},
		Stop:    {fg: white, bg: blood, bold: true},
		Ask:     {fg: black, bg: amber, bold: true},
		Note:    {fg: cyan, bg: black, bold: true},
		Next:    {fg: green, bg: black, bold: true},
		Act:     {fg: white, bg: deep, bold: true},
		ActStop: {fg: white, bg: blood, bold: true},
		ActOff:  {fg: text, bg: black, reverse: true},
		Waiting: {fg: amber, bg: black, bold: true},
		Booked:  {fg: green, bg: black},
		Refused: {fg: red, bg: black, bold: true},
		Key:     {fg: white, bg: black, bold: true, underline: true},
		Field:   {fg: white, bg: black, bold: true, underline: true},
		Cursor:  {fg: white, bg: black, reverse: true},
		Nozzle:  {fg: black, bg: white, bold: true},
		Water:   {fg: cyan, bg: black},
		Tank:    {fg: text, bg: black},
		CompA:   {fg: amber, bg: black},
		CompB:   {fg: blue, bg: black},
		CompC:   {fg: red, bg: black},
		CompD:   {fg: green, bg: black},
		CompE:   {fg: violet, bg: black},
		CompF:   {fg: white, bg: black},
	}
}
