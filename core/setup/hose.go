package setup

import (
	"fmt"
	"strings"

	"example.com/tintline/core/fluid"
	"example.com/tintline/core/measure"
	"example.com/tintline/core/sheet"
)

// hose reads bore by length, several of them with + between where they are coupled, or a volume.
func hose(said string) (bore, length, volume string, err error) {
	low := strings.ToLower(strings.ReplaceAll(said, "\u00d7", "x"))
	if strings.ContainsRune(low, '+') {
		return coupled(said, strings.Split(low, "+"))
	}
	if i := strings.IndexByte(low, 'x'); i > 0 {
		bore, length = strings.TrimSpace(low[:i]), strings.TrimSpace(low[i+1:])
		if bore == "" || length == "" {
			err = &Wrong{What: fmt.Sprintf("%q has not both a bore and a length.", said), Do: "Type them as 3/8 x 300: inches by feet."}
		}
		return bore, length, "", err
	}
	if n, err := measure.ParseNumber(said); err == nil && n > 0 {
		return "", "", "", &Wrong{
			What: fmt.Sprintf("%s gal in the hose, or a bore of %s in?", said, said),
			Do:   fmt.Sprintf("Type %s gal, or the bore with the length behind it, such as %s x 300.", said, said),
		}
	}
	return "", "", said, nil
}

// coupled is one hose of several lengths. Their volumes add. Of one bore it is a hose as long as all together. Of several
// it keeps the narrowest for all its length, beside its true volume: the pressure that it takes is then on the high side.
func coupled(said string, parts []string) (bore, length, volume string, err error) {
	var narrow, all measure.Length
	var holds measure.Volume
	same := true
	for _, p := range parts {
		d, l, _ := strings.Cut(p, "x")
		d, l = strings.TrimSpace(d), strings.TrimSpace(l)
		if d == "" || l == "" {
			return "", "", "", &Wrong{What: fmt.Sprintf("%q in %q has not both a bore and a length.", strings.TrimSpace(p), said), Do: "Type each length with its bore: 3/8 x 200 + 1/2 x 100."}
		}
		if err := checkBoreAndLength(d, l); err != nil {
			return "", "", "", err
		}
		in, err := measure.ReadLength(d, "in")
		if err != nil {
			return "", "", "", err
		}
		ft, err := measure.ReadLength(l, "ft")
		if err != nil {
			return "", "", "", err
		}
		same = same && (narrow == 0 || in == narrow)
		if narrow == 0 || in < narrow {
			narrow, bore = in, d
		}
		all += ft
		holds += fluid.BoreVolume(in, ft)
	}
	length = fmt.Sprintf("%d um", all)
	if !same {
		volume = fmt.Sprintf("%d nl", holds)
	}
	return bore, length, volume, nil
}

func checkBoreAndLength(bore, length string) error {
	if err := sheet.Check(sheet.Rig, "inside_diameter_in", bore); err != nil {
		return err
	}
	return sheet.Check(sheet.Rig, "length_ft", length)
}

func checkHose(_ Answers, said string) error {
	bore, length, volume, err := hose(said)
	if err != nil {
		return err
	}
	if bore != "" {
		if err := checkBoreAndLength(bore, length); err != nil {
			return err
		}
	}
	if volume != "" {
		return sheet.Check(sheet.Rig, "volume_gal", volume)
	}
	return nil
}
