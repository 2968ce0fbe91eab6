package sheet

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
	"example.com/tintline/core/measure"
)

// written is a file being written by a test, in exact units.
type written struct {
	kind string
	rows []map[string]string
}

func (w *written) csv(t *rapid.T) []byte {
	var headers []string
	for _, c := range Columns(w.kind) {
		headers = append(headers, c.Name)
	}
	headers = rapid.Permutation(headers).Draw(t, "headers") // the order of the columns is the writer's
	var out bytes.Buffer
	c := csv.NewWriter(&out)
	_ = c.Write(headers)
	for _, r := range w.rows {
		var cells []string
		for _, h := range headers {
			cells = append(cells, r[h])
		}
		_ = c.Write(cells)
	}
	c.Flush()
	return out.Bytes()
}

func nl(v measure.Volume) string { return fmt.Sprintf("%d nl", v) }

func fixed(f float64) string { return strconv.FormatFloat(f, 'f', -1, 64) }

// drawn makes values that a book admits.
type drawn struct{ *rapid.T }

func (d drawn) name(what string) string {
	return rapid.StringMatching(`[A-Za-z0-9ñé"',;.#&][A-Za-z0-9ñé"',;.#& -]{0,20}[a-z"',;]`).Draw(d.T, what)
}

func (d drawn) text(what string) string {
	return rapid.OneOf(rapid.Just(""), rapid.Just("12 Sample Way, \"the\" back/rear; gate"), rapid.StringMatching(`[a-z,;"/]{1,30}`)).Draw(d.T, what)
}

func (d drawn) list(what string) []string {
	return rapid.SliceOfN(rapid.StringMatching(`[a-z,"/=]{1,12}`), 0, 3).Draw(d.T, what)
}

func (d drawn) int(what string, low, high int64) int64 {
	return rapid.Int64Range(low, high).Draw(d.T, what)
}

func (d drawn) yes(what string) bool { return rapid.Bool().Draw(d.T, what) }

// rate is in base units, such as a file may hold to the last digit.
func (d drawn) rate(k measure.Kind) (measure.Rate, string) {
	v := float64(d.int("rate", 2, 1<<49)) / (1 << 30)
	unit := "nl per mm2"
	if k == measure.Dry {
		unit = "ng/mm2"
	}
	return measure.Rate{V: v, Kind: k}, fixed(v) + " " + unit
}

func (d drawn) grasses() []string {
	var all []string
	for _, g := range label.Grasses() {
		all = append(all, g.Name)
	}
	return rapid.SliceOfNDistinct(rapid.SampledFrom(append(all, label.AllTurf)), 0, 4, rapid.ID[string]).Draw(d.T, "grasses")
}

// same fails unless a file is read as the facts that it was written from.
func same(t *rapid.T, w *written, want []core.Fact, b *core.Book) {
	src := w.csv(t)
	got, err := Read(w.kind, "f", src, b)
	if err != nil {
		t.Fatalf("%s\n%v", src, err)
	}
	if !bytes.Equal(stored(got), stored(want)) {
		t.Fatalf("%s\nread as %+v\nnot %+v", src, got, want)
	}
}

func TestProductsComeBack(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		d, w := drawn{rt}, &written{kind: Products}
		var want []core.Fact
		for _, n := range distinct(d, "products") {
			f := &core.Product{ProductName: n}
			e := &f.Label
			if d.yes("dry") {
				e.Form = measure.Dry
			}
			e.Kind, e.Registration, e.Grasses = d.text("kind"), d.text("registration"), d.grasses()
			r := map[string]string{"name": n, "form": e.Form.String(), "kind": e.Kind, "registration": e.Registration, "grasses": strings.Join(e.Grasses, "; ")}
			var actives []string
			for range d.int("actives", 0, 3) {
				a := label.Active{Name: rapid.SampledFrom([]string{"iron", "2,4-D", "mesotrione", "potassium salt of 2-(x)"}).Draw(rt, "active")}
				if slices.ContainsFunc(e.Actives, func(o label.Active) bool { return o.Name == a.Name }) {
					continue
				}
				content, typed := float64(d.int("content", 1, 2000))/100, a.Name
				if !label.KnownActive(typed) {
					typed = "own: " + typed
				}
				switch d.int("unit", 0, 2) {
				case 0:
					a.PoundsPerGallon = content
					actives = append(actives, typed+" "+fixed(content)+" lb/gal")
				case 1:
					a.PercentByWeight = content
					actives = append(actives, typed+" "+fixed(content)+"%")
				default:
					actives = append(actives, typed)
				}
				e.Actives = append(e.Actives, a)
			}
			r["actives"] = strings.Join(actives, ";")
			if e.HasRateLow = d.yes("low"); e.HasRateLow {
				e.RateLow, r["rate_low"] = d.rate(e.Form)
			}
			if e.HasRateHigh = d.yes("high"); e.HasRateHigh {
				e.RateHigh, r["rate_high"] = d.rate(e.Form)
				if e.HasRateLow && e.RateLow.V > e.RateHigh.V {
					e.RateLow, e.RateHigh = e.RateHigh, e.RateLow
					r["rate_low"], r["rate_high"] = r["rate_high"], r["rate_low"]
				}
			}
			if e.HasWindMax = d.yes("wind"); e.HasWindMax {
				e.WindMax = measure.Speed(d.int("wind", 0, int64(core.StrongestWind)))
				r["wind_max_mph"] = fmt.Sprintf("%d um/s", e.WindMax)
			}
			w.rows, want = append(w.rows, r), append(want, f)
		}
		same(rt, w, want, nil)
	})
}

func distinct(d drawn, what string) []string {
	return rapid.SliceOfNDistinct(rapid.Custom(func(t *rapid.T) string { return drawn{t}.name(what) }), 1, 4, rapid.ID[string]).Draw(d.T, what)
}

// Rows of several lawns may stand in any order; the first row of each says its place.
func TestLawnsComeBack(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		d, w := drawn{rt}, &written{kind: Lawns}
		var want []core.Fact
		var queues [][]map[string]string
		for _, n := range distinct(d, "lawns") {
			f := &core.Lawn{LawnName: n, Customer: d.text("customer"), Address: d.text("address"), Phone: d.text("phone"), Gate: d.text("gate"), Dog: d.text("dog"), Notes: d.text("notes"), KnownSince: d.date("known since"), WindowFrom: d.clock("from", "08:00"), WindowTo: d.clock("to", "17:45"), ZIP: d.text("zip"), Town: d.text("town"), County: d.text("county"), CustomerAddress: d.text("customer address")}
			if d.yes("priced") {
				f.Price = core.Known(measure.Money(d.int("visit price", 0, int64(core.HighestPrice))))
			}
			if d.yes("placed") {
				f.Latitude, f.Longitude = core.Known(float64(d.int("latitude", -9e5, 9e5))/1e4), core.Known(float64(d.int("longitude", -18e5, 18e5))/1e4)
			}
			if d.yes("own round") {
				f.RoundDays = core.Known(float64(d.int("round days", core.FewestRoundDays, core.MostRoundDays)))
			}
			var rows []map[string]string
			for _, z := range distinct(d, "zones") {
				zone := core.Zone{Name: z, Grass: rapid.SampledFrom(label.Grasses()).Draw(rt, "grass").Name, Area: measure.Area(d.int("area", 1, int64(core.LargestArea))), Hazards: d.list("hazards")}
				r := map[string]string{"lawn": n, "zone": z, "grass": label.GrassWords(zone.Grass), "area_sqft": fmt.Sprintf("%d mm2", zone.Area), "hazards": strings.Join(zone.Hazards, ";")}
				if d.yes("price") {
					zone.Price = core.Known(measure.Money(d.int("price", 0, int64(core.HighestPrice))))
					r["price_usd"] = fmt.Sprintf("%d cents", zone.Price.V)
				}
				if d.yes("mix") {
					zone.Mix = d.name("mix")
					r["mix"] = zone.Mix
				}
				d.stands(&zone, r)
				zone.SoilTest = d.date("soil test")
				r["soil_test"] = zone.SoilTest
				if len(rows) == 0 || d.yes("again") {
					r["customer"], r["address"], r["phone"] = f.Customer, f.Address, f.Phone
					r["gate"], r["dog"], r["notes"], r["known_since"] = f.Gate, f.Dog, f.Notes, f.KnownSince
					r["window_from"], r["window_to"] = f.WindowFrom, f.WindowTo
					if f.Price.Known {
						r["visit_price_usd"] = fmt.Sprintf("%d cents", f.Price.V)
					}
					r["zip"], r["town"], r["county"], r["customer_address"] = f.ZIP, f.Town, f.County, f.CustomerAddress
					if f.RoundDays.Known {
						r["round_days"] = strconv.FormatFloat(f.RoundDays.V, 'f', -1, 64)
					}
					if f.Latitude.Known {
						r["latitude"], r["longitude"] = strconv.FormatFloat(f.Latitude.V, 'f', -1, 64), strconv.FormatFloat(f.Longitude.V, 'f', -1, 64)
					}
				}
				f.Zones, rows = append(f.Zones, zone), append(rows, r)
			}
			want, queues = append(want, f), append(queues, rows[1:])
			w.rows = append(w.rows, rows[0])
		}
		for i := range queues {
			w.rows = append(w.rows, queues[len(queues)-1-i]...)
		}
		same(rt, w, want, nil)
	})
}

func TestMixesComeBack(t *testing.T) {
	b := filledBook(t)
	for _, h := range b.Products() { // whatever rate is drawn
		p := *h.Now()
		p.Label.HasRateHigh, p.Label.Most, p.Label.Rates = false, core.Maybe[measure.Rate]{}, nil
		enter(t, b, []core.Fact{&p})
	}
	rapid.Check(t, func(rt *rapid.T) {
		d, w := drawn{rt}, &written{kind: Mixes}
		var want []core.Fact
		bases := []string{"example iron mix"}
		for _, n := range distinct(d, "mixes") {
			f := &core.Mix{MixName: n}
			for _, h := range b.Products()[d.int("from", 0, 2):] {
				rate, typed := d.rate(h.Now().Label.Form)
				f.Parts = append(f.Parts, core.MixPart{Product: h.Name, Rate: rate, Target: d.text("target")})
				w.rows = append(w.rows, map[string]string{"mix": n, "product": h.Name, "rate": typed, "target": f.Parts[len(f.Parts)-1].Target})
			}
			if d.yes("for") {
				f.For = rapid.SampledFrom(core.MixVisits()[:2]).Draw(rt, "for")
				w.rows[len(w.rows)-1]["for"] = f.For
			}
			if d.yes("base") {
				f.Base = rapid.SampledFrom(bases).Draw(rt, "base")
				w.rows[len(w.rows)-1]["base"] = f.Base
			}
			bases = append(bases, n)
			want = append(want, f)
		}
		same(rt, w, want, b)
	})
}

func TestRigComesBack(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		d, w := drawn{rt}, &written{kind: Rig}
		volume := func(what string, low int64) measure.Volume {
			return measure.Volume(d.int(what, low, int64(core.LargestVolume)))
		}
		f := &core.Rig{RigName: d.name("rig"), Cell: volume("cell", 0) / 4, ReturnLine: volume("return", 0)}
		w.rows = append(w.rows, map[string]string{"part": "rig", "name": f.RigName, "cell_gal": nl(f.Cell), "return_line_gal": nl(f.ReturnLine)})
		d.plumbing(f, w.rows[0])
		for i := range d.int("compartments", 2, 6) {
			c := core.RigCompartment{Letter: byte('a' + i), Name: d.name("compartment"), Colour: d.text("colour"), Capacity: volume("capacity", 1)}
			c.Heel = measure.Volume(d.int("heel", 0, int64(c.Capacity)-1))
			var chart []string
			for _, mark := range []string{"low", "1/2", "full"}[:min(d.int("marks", 0, 3), int64(c.Capacity))] {
				c.Marks = append(c.Marks, core.GaugeMark{Mark: mark, Volume: measure.Volume(len(c.Marks))})
				chart = append(chart, fmt.Sprintf("%s = %d nl", mark, len(c.Marks)-1))
			}
			r := map[string]string{"gauge_marks_gal": strings.Join(chart, ";"), "part": "Compartment", "letter": strings.ToUpper(string(rune(c.Letter))), "name": c.Name, "colour": c.Colour, "capacity_gal": nl(c.Capacity), "heel_gal": nl(c.Heel)}
			d.kept(&c, r)
			f.Compartments, w.rows = append(f.Compartments, c), append(w.rows, r)
		}
		hoses := distinct(d, "hoses")
		for _, n := range hoses {
			h := core.RigHose{Name: n, Volume: volume("hose", 1)}
			r := map[string]string{"part": "hose", "name": n, "volume_gal": nl(h.Volume)}
			if d.yes("bore") {
				h.Bore = core.Known(measure.Length(d.int("bore", 1, int64(core.WidestBore))))
				r["inside_diameter_in"] = fmt.Sprintf("%d um", h.Bore.V)
			}
			d.weighed(&h, r)
			f.Hoses, w.rows = append(f.Hoses, h), append(w.rows, r)
		}
		for _, n := range distinct(d, "applicators") {
			a := core.Applicator{Name: n, Type: rapid.SampledFrom([]string{core.Gun, core.RideOn, core.Backpack, core.Spreader}).Draw(rt, "kind"), Tank: volume("tank", 0)}
			r := map[string]string{"part": "applicator", "name": n, "kind": strings.ReplaceAll(a.Type, "_", "-"), "tank_gal": nl(a.Tank)}
			a.Delivery, r["delivery_gal_per_1000_sqft"] = d.rate(measure.Liquid)
			if d.yes("flow") {
				a.Flow = core.Known(measure.Flow(float64(d.int("flow", 1, 1<<40)) / 1024))
				r["flow_gpm"] = fixed(float64(a.Flow.V)) + " nl/s"
			}
			if d.yes("hose") {
				a.Hose = rapid.SampledFrom(hoses).Draw(rt, "hose")
				r["hose"] = a.Hose
			}
			if a.Type == core.Spreader || a.Type == core.RideOn {
				a.Hopper = measure.Mass(d.int("hopper", 0, int64(core.LargestHopper)))
				r["hopper_lb"] = fmt.Sprintf("%d ng", a.Hopper)
			}
			a.PSI = d.psi("needs", r, "needs_psi")
			w.rows = append(w.rows, r)
			for i := range d.int("tips", 0, 2) {
				tip := core.Tip{Name: fmt.Sprintf("tip %d", i)}
				r := map[string]string{"part": "tip", "applicator": n, "name": tip.Name}
				if a.Type == core.Spreader {
					tip.Delivery, r["delivery_lb_per_1000_sqft"] = d.rate(measure.Dry)
				} else {
					tip.Delivery, r["delivery_gal_per_1000_sqft"] = d.rate(measure.Liquid)
				}
				if d.yes("pressure") {
					tip.PSI = core.Known(float64(d.int("pressure", 1, 10000)) / 10)
					r["pressure_psi"] = fixed(tip.PSI.V) + " PSI"
				}
				a.Tips, w.rows = append(a.Tips, tip), append(w.rows, r)
			}
			f.Applicators = append(f.Applicators, a)
		}
		for _, n := range distinct(d, "line-ups") {
			l := core.NamedLineUp{Name: n}
			r := map[string]string{"part": "line up", "name": n}
			if d.yes("open") {
				l.Supply, l.Return, l.Valves = []byte("ba"), 'b', map[string]string{"suction": "left", "return": "a=b"}
				r["supply"], r["return"], r["valves"] = "b; A", "B", "suction = left;return=a=b"
			}
			f.LineUps, w.rows = append(f.LineUps, l), append(w.rows, r)
		}
		free := w.rows[:1+len(f.Compartments)] // letters give their order, whatever that of the rows
		copy(free, rapid.Permutation(free).Draw(rt, "rows"))
		same(rt, w, []core.Fact{f}, nil)
	})
}
