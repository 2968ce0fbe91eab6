package printed

// Document is what is handed out: parts in order.
type Document struct {
	Title   string
	About   []string // below the title: for whom, of which days, by whom
	Parts   []Part
	Foot    []string // cautions and sources, at the end
	OnePage bool     // its letters are made smaller and its narrow tables set side by side, so that it goes on one page
}

// Part is a piece of a document. Of Lines, Pairs and Table each may be empty.
type Part struct {
	Title string
	Lines []string
	Pairs []Pair
	Table Table
	Apart bool // begins on a new page
}

// Pair is a thing and what is said of it: "customer", "J. Example".
type Pair struct{ Name, Says string }

// Table is rows under columns. Each row has a cell for each column; Sum, if it is not empty, stands below them.
type Table struct {
	Columns []Column
	Rows    [][]string
	Sum     []string
}

// Column is the head of a column. In CSV its unit stands behind its title: "amount (fl oz)".
type Column struct {
	Title string
	Unit  string
	Left  bool // its cells are words; else they are figures and stand right
}

// Head is the title with the unit.
func (c Column) Head() string {
	if c.Unit == "" {
		return c.Title
	}
	return c.Title + " (" + c.Unit + ")"
}
