package yard

import (
	"example.com/tintline/core"
	"example.com/tintline/core/measure"
)

// SheetDoc is a load sheet as a document for a script.
type SheetDoc struct {
	Into        string         `json:"into"`
	Tank        string         `json:"tank"`
	Mix         *string        `json:"mix"`
	For         *string        `json:"for"`
	Volume      float64        `json:"volume_gal"`
	Water       float64        `json:"water_gal"`
	Standing    float64        `json:"standing_gal"`
	Place       *string        `json:"place"`
	MeterBefore *float64       `json:"meter_before_gal"`
	MeterAfter  *float64       `json:"meter_after_gal"`
	Metered     *float64       `json:"metered_gal"`
	MeterOff    *float64       `json:"meter_off_pct"`
	MeterWrong  bool           `json:"meter_wrong"`
	Verdict     string         `json:"verdict"`
	Findings    []SheetFinding `json:"findings"`
	Lines       []SheetDocLine `json:"lines"`
	Done        int            `json:"done"`
	Next        *string        `json:"next"`
	Working     []string       `json:"working"`
}

// SheetFinding is what is said of the load.
type SheetFinding struct {
	Rule     string   `json:"rule"`
	Weight   string   `json:"weight"`
	About    *string  `json:"about"`
	Products []string `json:"products"`
	Says     string   `json:"says"`
	Do       string   `json:"do"`
	Ground   string   `json:"ground"`
	Source   *string  `json:"source"`
}

// SheetDocLine is a line of it. The amount is null where nothing is measured out.
type SheetDocLine struct {
	Item    string        `json:"item"`
	Says    string        `json:"says"`
	Amount  *float64      `json:"amount"`
	Unit    *string       `json:"unit"`
	Done    bool          `json:"done"`
	Asks    *string       `json:"asks"`
	Details []SheetDetail `json:"details"`
}

// SheetDetail is what is to be heeded at a line.
type SheetDetail struct {
	Says   string `json:"says"`
	Source string `json:"source"`
}

// Doc is the sheet as a document.
func (s *LoadSheet) Doc() SheetDoc {
	d := SheetDoc{
		Into: s.Plan.Into, Tank: s.Tank, Mix: some(s.Plan.Mix), For: some(s.Plan.For), Volume: s.Plan.Volume.Gallons(), Water: s.Water.Gallons(),
		Standing: s.Standing.Gallons(), Place: some(s.Plan.Place), MeterBefore: galOf(s.Plan.MeterBefore), MeterAfter: galOf(s.Plan.MeterAfter),
		Metered: galOf(s.Metered), MeterWrong: s.MeterWrong, Verdict: s.Verdict.String(), Findings: []SheetFinding{}, Lines: []SheetDocLine{}, Working: []string{},
	}
	d.MeterOff = s.MeterOff.Pointer()
	for _, f := range s.Findings {
		row := SheetFinding{f.Rule, f.Weight.String(), some(f.About), append([]string{}, f.Products...), f.Says, f.Do, f.Ground, some(f.Source)}
		if len(row.Products) == 0 && f.Product != "" {
			row.Products = append(row.Products, f.Product)
		}
		d.Findings = append(d.Findings, row)
	}
	for _, l := range s.Lines {
		row := SheetDocLine{Item: l.Item, Says: l.Says, Done: l.Done, Asks: some(l.Asks), Details: []SheetDetail{}}
		if l.Amount.N != 0 {
			row.Amount, row.Unit = amountOf(l)
		}
		for _, x := range l.Details {
			row.Details = append(row.Details, SheetDetail(x))
		}
		d.Lines = append(d.Lines, row)
	}
	if n := s.Next(""); n != nil {
		d.Next = &n.Item
	}
	d.Done, _ = s.DoneOf()
	for _, w := range s.Working {
		d.Working = append(d.Working, w.Says)
	}
	return d
}

func amountOf(l SheetLine) (amount *float64, unit *string) {
	u := "fl_oz"
	switch {
	case l.Item == core.WaterItem || l.Item == core.StepRest:
		u = "gal"
	case l.Amount.Kind == measure.Dry:
		u = "oz"
	}
	a, _ := l.Amount.In(u) // the units are in the table
	return &a, &u
}

func some(s string) *string {
	if s == "" {
		return nil
	}
	return &s
}

func galOf(m core.Maybe[measure.Volume]) *float64 {
	if !m.Known {
		return nil
	}
	g := m.V.Gallons()
	return &g
}
