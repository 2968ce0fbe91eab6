package setup

import (
	"fmt"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
	"example.com/tintline/core/sheet"
)

// The forms of the parts of a rig. What they are about is the part's name, empty for one more of it; a tip is named
// by its applicator, a slash and its name.
const (
	Pump        = "pump" // name, cell and return line
	Compartment = "compartment"
	Hose        = "hose"
	Applicator  = "applicator"
	Tip         = "tip"
)

// The keys of the parts' fields.
const (
	keyName     = "name"
	keyColour   = "colour"
	keyCapacity = "capacity"
	keyMarks    = "marks"
	keyKind     = "kind"
	keyOn       = "on"
	keyLays     = "lays"
	keyFlow     = "flow"
	keyTank     = "tank"
	keyPSI      = "psi"
)

// partForm is a form about one part; false where the rig has it not.
func partForm(name, about string, b *core.Book) (Form, bool) {
	r := b.Rig()
	if r == nil {
		return Form{}, false
	}
	switch name {
	case Pump:
		return pumpForm(r), true
	case Plumbing:
		return plumbingForm(r), true
	case Compartment:
		return compartmentForm(r, about), true
	case Hose:
		return hoseForm(r, about), true
	case LineUp:
		return lineUpForm(r, about), true
	case Gauge:
		return gaugeForm(r, about)
	case Cross:
		return crossForm(r), true
	case Reel:
		return reelForm(r, about)
	case Applicator:
		return applicatorForm(r, about), true
	case Tip:
		on, tip, _ := strings.Cut(about, "/")
		i := applicatorAt(r, on)
		if i < 0 {
			return Form{}, false
		}
		return tipForm(r, i, tip), true
	}
	return Form{}, false
}

// ofRig is a form of one page whose fact is the rig with a change; where nothing changes there is none.
func ofRig(name, title, page string, fields []Field, change func(r *core.Rig, a Answers) error) Form {
	return Form{
		Name: name, Title: title, Pages: []Page{{Title: page, Fields: fields}},
		facts: func(b *core.Book, _ core.Moment, a Answers) ([]core.Fact, error) {
			r := rigCopy(b.Rig())
			if err := change(r, a); err != nil || reflect.DeepEqual(r, b.Rig()) {
				return nil, err
			}
			return []core.Fact{r}, nil
		},
	}
}

// rigCopy is a rig whose parts can be changed.
func rigCopy(r *core.Rig) *core.Rig {
	c := *r
	c.Compartments, c.Hoses = slices.Clone(r.Compartments), slices.Clone(r.Hoses)
	c.Applicators, c.LineUps = slices.Clone(r.Applicators), slices.Clone(r.LineUps)
	return &c
}

func applicatorAt(r *core.Rig, name string) int {
	return slices.IndexFunc(r.Applicators, func(a core.Applicator) bool { return a.Name == name })
}

// gallons is a volume as it would be typed.
func gallons(v measure.Volume) string {
	s := strings.ReplaceAll(v.Text(), ",", "")
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	return s
}

// take reads a volume, unless the field still says what it began with: what is shown is rounded.
func take(a Answers, key, start string, v *measure.Volume) error {
	if a[key] == start {
		return nil
	}
	if a[key] == "" {
		*v = 0
		return nil
	}
	got, err := measure.ReadVolume(a[key], "gal")
	*v = got
	return err
}

func pumpForm(r *core.Rig) Form {
	cellWas, lineWas := gallons(r.Cell), gallons(r.ReturnLine)
	fields := tankFields()
	cellField, lineField, nameField := fields[2], fields[3], fields[5]
	cellField.Start, lineField.Start, nameField.Start = cellWas, lineWas, r.RigName
	cellField.Source, lineField.Source = "", ""
	return ofRig(Pump, "Change the rig", "pump and return line", []Field{cellField, lineField, nameField}, func(r *core.Rig, a Answers) error {
		r.RigName = a[keyRig]
		if err := take(a, keyCell, cellWas, &r.Cell); err != nil {
			return err
		}
		return take(a, keyReturn, lineWas, &r.ReturnLine)
	})
}

// Colours are the words that the screen has a colour for.
var Colours = []string{"yellow", "blue", "red", "green", "purple", "white"}

func compartmentForm(r *core.Rig, letter string) Form {
	at := len(r.Compartments)
	c := core.RigCompartment{Letter: byte('a' + at)}
	title := "Add a compartment"
	if letter != "" {
		for i := range r.Compartments {
			if string(rune(r.Compartments[i].Letter)) == letter {
				at, c = i, r.Compartments[i]
				title = "Change compartment " + letter
			}
		}
	}
	colours := []Option{{"", "of its letter"}}
	for _, w := range Colours {
		colours = append(colours, Option{w, w})
	}
	if c.Colour != "" && !slices.Contains(Colours, c.Colour) {
		colours = append(colours, Option{c.Colour, c.Colour})
	}
	capacityWas, heelWas := gallons(c.Capacity), gallons(c.Heel)
	if c.Capacity == 0 {
		capacityWas = ""
	}
	fields := []Field{
		{
			Key: keyCapacity, Words: "capacity, gal", Start: capacityWas, need: always, check: cell(sheet.Rig, "capacity_gal"),
			Help: "What it holds when it is full.", Allowed: allowed(sheet.Rig, "capacity_gal"),
		}, {
			Key: keyHeel, Words: "heel, gal", Start: heelWas, need: always, check: cell(sheet.Rig, "heel_gal"),
			Help: "What the suction cannot draw from it.", Allowed: allowed(sheet.Rig, "heel_gal"),
		}, {
			Key: keyName, Words: "name", Start: c.Name, check: cell(sheet.Lawns, "customer"),
			Help: "What you call it; its letter stands before it.", Allowed: allowed(sheet.Lawns, "customer"),
		}, {
			Key: keyColour, Words: "colour", Start: c.Colour, Options: colours, Help: "In which it is drawn.", Allowed: "one of the list",
		}, {
			Key: keyMarks, Words: "marks of its gauge", Start: marksText(c.Marks), check: func(_ Answers, said string) error { _, err := readMarks(said); return err },
			Help: "Each mark and the gallons at it, lowest first: E 0; 1/2 80; F 160.", Allowed: "marks with their gallons, semicolons between them",
		},
	}
	return ofRig(Compartment, title, "tank", fields, func(r *core.Rig, a Answers) error {
		c := c
		if err := take(a, keyCapacity, capacityWas, &c.Capacity); err != nil {
			return err
		}
		if err := take(a, keyHeel, heelWas, &c.Heel); err != nil {
			return err
		}
		c.Name, c.Colour = a[keyName], a[keyColour]
		if a[keyMarks] != marksText(c.Marks) {
			marks, err := readMarks(a[keyMarks])
			if err != nil {
				return err
			}
			c.Marks = marks
		}
		r.Compartments = placed(r.Compartments, at, c)
		return nil
	})
}

// placed puts a part in its place, or behind the others.
func placed[T any](list []T, at int, part T) []T {
	if at == len(list) {
		return append(list, part)
	}
	list[at] = part
	return list
}

func marksText(marks []core.GaugeMark) string {
	var out []string
	for _, m := range marks {
		out = append(out, m.Mark+" "+gallons(m.Volume))
	}
	return strings.Join(out, Joint)
}

// readMarks reads "E 0; 1/2 80; F 160".
func readMarks(said string) ([]core.GaugeMark, error) {
	var out []core.GaugeMark
	for _, s := range strings.Split(said, ";") {
		words := strings.Fields(s)
		switch len(words) {
		case 0:
			continue
		case 1:
			return nil, &Wrong{What: fmt.Sprintf("%q has not both a mark and its gallons.", strings.TrimSpace(s)), Do: "Type both, with semicolons between them: E 0; 1/2 80; F 160."}
		}
		v, err := measure.ReadVolume(strings.Join(words[1:], " "), "gal")
		if err != nil {
			return nil, err
		}
		out = append(out, core.GaugeMark{Mark: words[0], Volume: v})
	}
	return out, nil
}

func hoseForm(r *core.Rig, name string) Form {
	h, at, title := core.RigHose{Name: name}, len(r.Hoses), "Add a hose"
	size := tankFields()[4]
	size.Start, size.Source = "", ""
	fields := []Field{size}
	if i := slices.IndexFunc(r.Hoses, func(h core.RigHose) bool { return h.Name == name }); i >= 0 {
		h, at, title = r.Hoses[i], i, "Change the hose "+name
		fields[0].Start = HoseText(h)
	} else {
		fields = append(fields, Field{
			Key: keyName, Words: "name of the hose", need: always, check: cell(sheet.Rig, "hose"), Help: "What you call it, such as short reel.", Allowed: allowed(sheet.Rig, "hose"),
		})
	}
	was := fields[0].Start
	return ofRig(Hose, title, "bore and length", fields, func(r *core.Rig, a Answers) error {
		h := h
		if h.Name == "" {
			h.Name = a[keyName]
		}
		if a[keyHose] != was {
			bore, length, volume, err := hose(a[keyHose])
			if err != nil {
				return err
			}
			if h, err = hoseOf(h.Name, bore, length, volume); err != nil {
				return err
			}
		}
		r.Hoses = placed(r.Hoses, at, h)
		return nil
	})
}

func hoseOf(name, bore, length, volume string) (core.RigHose, error) {
	h := core.RigHose{Name: name}
	if volume != "" {
		v, err := measure.ReadVolume(volume, "gal")
		h.Volume = v
		if err != nil || bore == "" {
			return h, err
		}
	}
	in, err := measure.ReadLength(bore, "in")
	if err != nil {
		return h, err
	}
	ft, err := measure.ReadLength(length, "ft")
	h.Bore, h.Length = core.Known(in), core.Known(ft)
	return h, err
}

// HoseText is a hose's size as it would be typed: a volume where bore and length do not make it up.
func HoseText(h core.RigHose) string {
	if h.Bore.Known && h.Length.Known && (h.Volume == 0 || h.Volume == fluid.BoreVolume(h.Bore.V, h.Length.V)) {
		return boreText(h.Bore.V) + " x " + figure(h.Length.V.Feet())
	}
	return gallons(h.Volume) + " gal"
}

// boreText is a bore as hoses are sold, "3/8", where it is one of their sizes.
func boreText(bore measure.Length) string {
	const parts = 16
	for n, d := int64(1), int64(parts); n < parts; n++ {
		if int64(bore)*d == n*int64(measure.Inch) {
			for n%2 == 0 {
				n, d = n/2, d/2
			}
			return fmt.Sprintf("%d/%d", n, d)
		}
	}
	return figure(bore.Inches())
}

func figure(f float64) string { return strconv.FormatFloat(f, 'g', 5, 64) }
