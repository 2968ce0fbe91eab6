package hydraulics

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"example.com/tintline/core/measure"
)

// printed is a row of a table: its figures by column, each with half a unit of its last printed digit.
type printed map[string]struct{ value, half float64 }

func readPrinted(t *testing.T, file string) []printed {
	t.Helper()
	f, err := os.Open("../../testdata/hydraulics/" + file)
	if err != nil {
		t.Fatal(err)
	}
	defer func() { _ = f.Close() }()
	r := csv.NewReader(f)
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var out []printed
	for _, row := range rows[1:] {
		p := printed{}
		for i, text := range row {
			v, err := strconv.ParseFloat(text, 64)
			if err != nil {
				t.Fatalf("%s: %v", file, err)
			}
			_, digits, _ := strings.Cut(text, ".")
			p[rows[0][i]] = struct{ value, half float64 }{v, 0.5*math.Pow(10, -float64(len(digits))) + 1e-9}
		}
		out = append(out, p)
	}
	return out
}

// compare holds each figure against the column of its name.
func (p printed) compare(t *testing.T, where string, got answer) {
	t.Helper()
	for key, v := range got {
		want, ok := p[key]
		if !ok {
			t.Errorf("%s: the table has no %s", where, key)
		}
		if math.Abs(v-want.value) > want.half {
			t.Errorf("%s: %s is %.6g, the table prints %g", where, key, v, want.value)
		}
	}
}

func (p printed) run(cell Gallons) Run {
	bore, length := measure.Inches(p["bore_in"].value), measure.Feet(p["length_ft"].value)
	return Run{
		Hose: HoseVolume(bore, length), Bore: bore, Length: length, Cell: cell,
		Gun: measure.GPM(p["flow_gpm"].value), C: Temperature,
	}
}

func TestFlushOfAHoseAsPrinted(t *testing.T) {
	rows := readPrinted(t, "flush_hose.csv")
	if len(rows) != 33 {
		t.Errorf("%d rows", len(rows))
	}
	for i, p := range rows {
		r := p.run(0)
		o := r.Outlet(1)
		pipe := PipeOf(r.Bore, r.Length)
		// From 1 to 99 per cent, as a length of hose.
		length := 2 * quantile(0.99) * float64(o.Sigma/o.Hose) * r.Length.Feet()
		p.compare(t, "row "+strconv.Itoa(i+1), answer{
			"reynolds": r.Reynolds(), "hose_gal": float64(o.Hose), "plug_s": o.Hose.Seconds(r.Gun), "sigma_gal": float64(o.Sigma),
			"extra_90_gal": float64(o.At(0.9) - o.Hose), "extra_99_gal": float64(o.At(0.99) - o.Hose), "extra_999_gal": float64(o.At(0.999) - o.Hose),
			"total_90_gal": float64(o.At(0.9)), "total_99_gal": float64(o.At(0.99)), "total_999_gal": float64(o.At(0.999)),
			"interface_wen_fan_ft": length, "interface_austin_palfrey_ft": pipe.AustinPalfrey(r.Reynolds()) / foot,
		})
	}
}

func TestFlushOfACellAsPrinted(t *testing.T) {
	rows := readPrinted(t, "flush_cell.csv")
	if len(rows) != 14 {
		t.Errorf("%d rows", len(rows))
	}
	for i, p := range rows {
		o := p.run(Gallons(p["cell_gal"].value)).Outlet(1)
		p.compare(t, "row "+strconv.Itoa(i+1), answer{
			"extra_90_gal": float64(o.At(0.9) - o.Hose), "extra_95_gal": float64(o.At(0.95) - o.Hose),
			"extra_99_gal": float64(o.At(0.99) - o.Hose), "extra_999_gal": float64(o.At(0.999) - o.Hose),
			"total_90_gal": float64(o.At(0.9)), "total_99_gal": float64(o.At(0.99)),
		})
	}
}

func TestLossAsPrinted(t *testing.T) {
	rows := readPrinted(t, "loss.csv")
	if len(rows) != 18 {
		t.Errorf("%d rows", len(rows))
	}
	for i, p := range rows {
		bore, length, q := measure.Inches(p["bore_in"].value), measure.Feet(100), measure.GPM(p["flow_gpm"].value)
		// The law's constant is quoted with three or four digits, and the printed figures took another last one: a thousandth.
		hazen := p["hazen_williams_psi"]
		hazen.half += hazen.value / 1000
		p["hazen_williams_psi"] = hazen
		hw := PipeOf(bore, length).Loss(q, 0, WaterAt(Temperature), Law{C: HazenWilliams, Factor: 1})
		p.compare(t, "row "+strconv.Itoa(i+1), answer{
			"darcy_psi": Loss(q, bore, length, 0, Temperature, 1).PSI(), "hazen_williams_psi": hw.PSI(),
			"with_factor_psi": Loss(q, bore, length, 0, Temperature, HoseFactor).PSI(),
		})
	}
}

func TestDispersionAsPrinted(t *testing.T) {
	rows := readPrinted(t, "dispersion.csv")
	if len(rows) != 7 {
		t.Errorf("%d rows", len(rows))
	}
	for _, p := range rows {
		re := p["reynolds"].value
		p.compare(t, "Re "+strconv.Itoa(int(re)), answer{
			"friction": Colebrook(re, 0), "taylor": Taylor(re), "epa": EPA(re), "wen_fan": WenFan(re), "hart": Hart(re),
		})
	}
}

// Every row of a table has its source, and a range holds what it is a range of.
func TestTablesHaveSources(t *testing.T) {
	for _, c := range Constants() {
		if c.Name == "" || c.Unit == "" || c.Source == "" || !(c.Value > 0) {
			t.Errorf("constant %+v lacks something", c)
		}
	}
	for _, b := range Bores() {
		if nominal := b.Inches * 25.4; b.Source == "" || !(b.Low <= b.SteadyLow && b.SteadyLow < nominal && nominal < b.Steadier && b.Steadier <= b.High) {
			t.Errorf("bore %+v", b)
		}
		// The prior is that of the range, rounded to a per cent.
		if d := math.Abs(b.Rectangular() - b.Prior); d > 0.005 {
			t.Errorf("bore %g: the range gives %.4f, the prior is %.2f", b.Inches, b.Rectangular(), b.Prior)
		}
	}
	for _, f := range Fittings() {
		if f.Name == "" || f.Words == "" || f.Source == "" || !(f.K > 0) {
			t.Errorf("fitting %+v lacks something", f)
		}
	}
	for _, w := range waterTable {
		if w.source == "" {
			t.Errorf("water of %g C has no source", w.c)
		}
	}
}
