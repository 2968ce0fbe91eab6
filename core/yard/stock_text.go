package yard

import (
	"strings"

	"example.com/tintline/core/batch"
)

// Text is the stock as people read it: findings, then product by product, with what the planned loads take of it.
func (s *Shelf) Text() string {
	var w strings.Builder
	for _, f := range s.Findings {
		w.WriteString(strings.ToUpper(f.Weight.String()) + "  " + f.Says + "\n      " + f.Do + "\n")
	}
	if len(s.Findings) > 0 {
		w.WriteString("\n")
	}
	if len(s.Products) == 0 {
		return "The book has no product yet.\n"
	}
	for i := range s.Products {
		p := &s.Products[i]
		w.WriteString(p.Product + ": " + p.HaveWords() + "\n")
		for _, l := range p.Lines() {
			w.WriteString("  " + l + "\n")
		}
	}
	if s.Cost.Total > 0 {
		w.WriteString("\nwhat is planned costs " + s.Cost.Total.Text())
		if n := len(s.Cost.Unpriced); n > 0 {
			w.WriteString(", without " + strings.Join(s.Cost.Unpriced, ", ") + " (no price is entered)")
		}
		w.WriteString("\n")
	}
	if len(s.Steps) > 0 {
		w.WriteString("\nworking\n")
		for _, l := range s.Steps {
			w.WriteString("  " + l.Says + "\n")
		}
	}
	return w.String()
}

// HaveWords is what is in stock: "3.75 gal: 1 full of 2.5 gal, 1.25 gal in an open one".
func (s *Stocked) HaveWords() string {
	switch {
	case !s.Have.Known:
		return "not counted yet"
	case s.Have.V.N < 0:
		return s.Have.V.Text() + ": more was put in than was there"
	case s.Package.N > 0 && s.Have.V.N > 0:
		return s.Have.V.Text() + ": " + batch.Shelf(s.Have.V, s.Package)
	}
	return s.Have.V.Text()
}

// Lines are what else there is to say of the stock of a product, what to do first.
func (s *Stocked) Lines() []string {
	var out []string
	if s.Order.Known {
		out = append(out, "ORDER "+s.Order.V.Words()+": "+s.Order.V.Why)
	}
	out = append(out, s.TakeLines()...)
	line := "used this year " + s.UsedYear.Text()
	if s.Have.Known {
		how := "bought"
		if s.Counted {
			how = "counted"
		}
		line += "; " + how + " " + s.Since.Date() + ", used since " + s.Used.Text()
	}
	if s.Reorder.Known {
		line += "; reorder at " + s.Reorder.V.Text()
	}
	out = append(out, line)
	if s.Recounts > 0 && s.Unexplained.N != 0 {
		out = append(out, "unexplained by counts: "+s.Unexplained.Text())
	}
	if s.Price.Known && s.PriceFor.N > 0 {
		how := "by the label entry"
		if s.Paid {
			how = "last paid"
		}
		price := s.Price.V.Text() + " for " + s.PriceFor.Text() + ", " + how
		if s.Supplier != "" {
			price += ", " + s.Supplier
		}
		if s.Lot != "" {
			price += ", lot " + s.Lot
		}
		out = append(out, price)
	}
	return out
}

// TakeLines are what the planned loads take, tank by tank, and what becomes of the packages.
func (s *Stocked) TakeLines() []string {
	var out []string
	for _, t := range s.Takes {
		l := "into " + t.Into + ": " + t.Measured.Words
		switch {
		case t.Measured.Finer.Known:
			l += "; " + t.Measured.Finer.V.Says
		case t.Measured.ErrorPct != 0:
			l += ", " + batch.ErrorText(t.Measured.ErrorPct)
		}
		out = append(out, l)
	}
	if s.Truck.Known {
		l := "take along: "
		switch o := s.Truck.V; {
		case o.Opened > 0 && o.FromOpen.N > 0:
			l += "the open one and " + batch.Packages(o.Opened, s.Package, "")
		case o.Opened > 0:
			l += batch.Packages(o.Opened, s.Package, "")
		default:
			l += "the open one"
		}
		out = append(out, l+"; "+s.Truck.V.Left.Text()+" left in it")
	}
	return out
}
