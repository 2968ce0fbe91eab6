package theme

// sun is black on white with few, dark colours: what can be read behind a windscreen at noon.
func sun() [count]look {
	var (
		white  = ink{"#FFFFFF", "231", "15"}
		black  = ink{"#000000", "16", "0"}
		grey   = ink{"#3A3A3A", "237", "0"}
		red    = ink{"#9B0000", "88", "1"}
		brown  = ink{"#7A4B00", "94", "0"}
		green  = ink{"#005F1E", "22", "0"} // among sixteen none is dark enough on white
		blue   = ink{"#00339B", "19", "4"}
		violet = ink{"#5F0087", "54", "5"}
		yellow = ink{"#FFD75F", "221", "11"}
	)
	return [count]look{
		Base:    {fg: black, bg: white},
		Dim:     {fg: grey, bg: white},
		Strong:  {fg: black, bg: white, bold: true},
		Rule:    {fg: grey, bg: white},
		Head:    {fg: black, bg: white, bold: true},
		Demo:    {fg: black, bg: yellow, bold: true},
		Stop:    {fg: white, bg: red, bold: true},
		Ask:     {fg: black, bg: yellow, bold: true},
		Note:    {fg: blue, bg: white, bold: true},
		Next:    {fg: green, bg: white, bold: true},
		Act:     {fg: white, bg: black, bold: true},
		ActStop: {fg: white, bg: red, bold: true},
		ActOff:  {fg: black, bg: white, underline: true},
		Waiting: {fg: black, bg: yellow, bold: true},
		Booked:  {fg: green, bg: white},
		Refused: {fg: red, bg: white, bold: true},
		Key:     {fg: black, bg: white, bold: true, underline: true},
		Field:   {fg: black, bg: white, bold: true, underline: true},
		Cursor:  {fg: white, bg: black},
		Nozzle:  {fg: white, bg: black, bold: true},
		Water:   {fg: blue, bg: white},
		Tank:    {fg: black, bg: white},
		CompA:   {fg: brown, bg: white, bold: true},
		CompB:   {fg: blue, bg: white, bold: true},
		CompC:   {fg: red, bg: white, bold: true},
		CompD:   {fg: green, bg: white, bold: true},
		CompE:   {fg: violet, bg: white, bold: true},
		CompF:   {fg: grey, bg: white},
	}
}
