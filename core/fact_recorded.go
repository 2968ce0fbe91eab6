package core

// Recorded fills a field of the application record of the open day: of the whole day, or of one lawn, zone or product where those
// are named. What is filled later takes the place of what was before it; what is filled more narrowly rules.
type Recorded struct {
	Field, Value        string
	Lawn, Zone, Product string
}

// Kind of the fact.
func (*Recorded) Kind() Kind { return kindRecorded }

// Name of the fact.
func (*Recorded) Name() string { return "recorded" }

func (f *Recorded) fields(w walker) {
	w.text(1, "field", &f.Field)
	w.text(2, "value", &f.Value)
	w.text(3, "lawn", &f.Lawn)
	w.text(4, "zone", &f.Zone)
	w.text(5, "product", &f.Product)
}

// Fits tells whether it is about what was laid of a product on a zone.
func (f *Recorded) Fits(lawn, zone, product string) bool {
	return (f.Lawn == "" || f.Lawn == lawn) && (f.Zone == "" || f.Zone == zone) && (f.Product == "" || f.Product == product)
}

// Narrow is how narrowly it is told what it is about.
func (f *Recorded) Narrow() int {
	n := 0
	for _, s := range []string{f.Lawn, f.Zone, f.Product} {
		if s != "" {
			n++
		}
	}
	return n
}

func (s *state) admitRecorded(f *Recorded) error {
	if err := s.needDay("fill the record"); err != nil {
		return err
	}
	field, known := RecordFieldOf(f.Field)
	if !known || field.Key != f.Field {
		return refuse("Use one of "+fillable()+".", "The record has no field %q.", f.Field)
	}
	if !field.Fill {
		return refuse("Strike or put right the entry it comes from.", "The field %s follows from what was logged.", field.Title)
	}
	if _, err := field.Read(f.Value); err != nil {
		return err
	}
	if f.Product != "" && s.Product(f.Product) == nil {
		return s.noProduct(f.Product)
	}
	if f.Lawn == "" {
		if f.Zone != "" {
			return refuse("Name the lawn too.", "A zone, %s, is named without its lawn.", f.Zone)
		}
		return nil
	}
	lawn := s.Lawn(f.Lawn)
	if lawn == nil {
		return s.noLawn(f.Lawn)
	}
	if _, ok := lawn.Zone(f.Zone); !ok && f.Zone != "" {
		return s.noZone(lawn, f.Zone)
	}
	return nil
}

// resolveRecorded writes the field by its key and the value as it is kept.
func resolveRecorded(f *Recorded) Fact {
	c := *f
	if field, known := RecordFieldOf(f.Field); known {
		c.Field = field.Key
		if v, err := field.Read(f.Value); err == nil {
			c.Value = v
		}
	}
	return &c
}
