package core

import (
	"example.com/tintline/core/fluid"
)

// FlowModel is the number of the model by which liquid moves in a day opened now: one stirred cell, then
// plug flow (package fluid).
const FlowModel = 1

// Book is all that the journal says, added up. It is changed by Apply alone.
type Book struct {
	mark

	state
	base  Closed      // the last close, from which strikes fold again
	since []sinceLine // the entries since then
}

// mark is a place in the journal: the last entry before it.
type mark struct {
	seq    uint64
	digest Digest
	truck  uint32
	lastAt Moment
}

// Closed is the book as it was at a close. It never changes, so that it can be kept while the book goes on.
type Closed struct {
	mark
	*state
}

// sinceLine is an entry since the last close, and what became of it.
type sinceLine struct {
	entry    Entry
	struckBy uint64
	instead  Fact   // what a strike put in its place
	by       uint64 // the strike that did
}

// state is what the book says, apart from numbers, chain and history.
type state struct {
	rig       *Rig // in force: as entered, with the tips that were fitted since
	entered   *Rig
	fitted    map[string]string // tip by applicator; made anew when it changes
	hung      map[string]string // hose by applicator, where it hangs on another one than was entered; made anew too
	products  []ProductHistory
	mixes     []Mix
	lawns     []*Lawn
	lawnAt    map[string]int
	lawnFrom  []string // by lawn: the date of its first entry
	productAt map[string]int
	settings  map[string]string
	plumbing  *fluid.Plumbing
	origins   []Origin
	batches   map[string]string // mix name by tank: a letter, or an applicator; of a hopper under hopperBatch
	day       Day
	weather   *WeatherAt
	planned   *DayPlanned
	overrides []Overridden
	tint      *TintSeen               // what was seen
	missed    []TintSeen              // how far it went without
	turned    *turned                 // what stood in the line when the valves were last turned
	learned   *learning               // what timed changeovers have shown
	gauged    *gauged                 // what readings of gauges have shown
	plans     map[string]*LoadPlanned // by tank: a letter, or an applicator
	ticks     map[string][]string     // the items done, by list, sorted
	owed      []Owed
	notes     map[string][]LawnNote // by lawn
	cautions  []Cautioned
	history   [][]zoneHistory // by lawn
	rounds    int32           // of the history: the last number given
	rates     []RateInForce   // what accepted tests gave; made anew when it changes
	tests     []TestTaken     // the last ones of each applicator; made anew too
	charted   string          // letters of the compartments with marks that were read with a meter
	moved     moved           // when liquid last moved where
	jars      []Jar           // the last of each set of products; made anew when it changes, as the next two are
	unmixed   []Jar           // marked as not to be mixed
	met       []pairMet       // products that went into a tank in one load
	filledAt  lastFill
	money
	stock []stockLine // by product; shorter where the last ones have none
	// The next three are made anew when they change.
	signs      []Signs
	contacts   []Contact
	neighbours []Neighbour
	wetted     []wetted // made anew when it changes, so that copies may share it
	evening
}

// ProductHistory is a product with all its versions; the last is in force.
type ProductHistory struct {
	Name     string
	Versions []Product
	Entered  []Moment // of each version
}

// Now is the version in force.
func (h *ProductHistory) Now() *Product { return &h.Versions[len(h.Versions)-1] }

// Origin says where liquid was drawn from: a compartment's letter (0: the rig's first water, or a load put
// straight into an applicator) and the mix that stood in it.
type Origin struct {
	Letter byte
	Mix    string
}

// WeatherAt is an observation with its time.
type WeatherAt struct {
	Weather
	At Moment
}

// NewBook is an empty book of a truck.
func NewBook(truck uint32) *Book {
	b := &Book{mark: mark{truck: truck}, state: newState()}
	b.rebase(b.mark)
	return b
}

func newState() state {
	return state{
		lawnAt: map[string]int{}, productAt: map[string]int{}, settings: map[string]string{},
		plumbing: &fluid.Plumbing{Outside: fluid.Accounts{}}, batches: map[string]string{},
		origins: []Origin{{}}, plans: map[string]*LoadPlanned{}, ticks: map[string][]string{}, notes: map[string][]LawnNote{},
	}
}

// clone copies all that is changed in place.
func (s *state) clone() *state {
	c := *s
	c.products = make([]ProductHistory, len(s.products))
	for i, h := range s.products {
		c.products[i] = ProductHistory{h.Name, h.Versions[:len(h.Versions):len(h.Versions)], h.Entered[:len(h.Entered):len(h.Entered)]}
	}
	c.mixes = append([]Mix(nil), s.mixes...)
	c.lawns = append([]*Lawn(nil), s.lawns...)
	c.lawnAt, c.productAt = cloneMap(s.lawnAt), cloneMap(s.productAt)
	c.settings, c.batches = cloneMap(s.settings), cloneMap(s.batches)
	c.plumbing = s.plumbing.Clone()
	c.origins = append([]Origin(nil), s.origins...)
	c.overrides = append([]Overridden(nil), s.overrides...)
	c.missed = s.missed[:len(s.missed):len(s.missed)]
	c.plans, c.ticks = cloneMap(s.plans), cloneMap(s.ticks)
	c.notes = cloneMap(s.notes)
	c.lawnFrom = append([]string(nil), s.lawnFrom...)
	c.history = append([][]zoneHistory(nil), s.history...)
	c.moved.hoses = append([]movedHose(nil), s.moved.hoses...)
	c.stock = append([]stockLine(nil), s.stock...)
	c.day = s.day.clone()
	return &c
}

func cloneMap[V any](m map[string]V) map[string]V {
	c := make(map[string]V, len(m))
	for k, v := range m {
		c[k] = v
	}
	return c
}

// Clone is a book of its own with the same content.
func (b *Book) Clone() *Book {
	c := *b
	c.state = *b.state.clone()
	c.since = append([]sinceLine(nil), b.since...)
	return &c
}

// rebase makes what the book says now the point from which strikes fold; at is the last entry in it.
func (b *Book) rebase(at mark) {
	b.base = Closed{at, b.state.clone()}
	b.since = nil
}

// LastClose is the book at the last close, or the empty book it began as. A day that is opened over an open one counts
// as a close.
func (b *Book) LastClose() Closed { return b.base }

// Seq is the number of the last entry, 0 in an empty book.
func (m mark) Seq() uint64 { return m.seq }

// Digest is that of the last entry.
func (m mark) Digest() Digest { return m.digest }

// Truck is the number of the truck whose book it is.
func (m mark) Truck() uint32 { return m.truck }

// LastAt is when the last entry happened.
func (m mark) LastAt() Moment { return m.lastAt }

// Rig is the rig in force, nil if none was entered.
func (s *state) Rig() *Rig { return s.rig }

// Plumbing is where the liquid is. It is not to be changed; Sketch it to try something.
func (s *state) Plumbing() *fluid.Plumbing { return s.plumbing }

// Day is the open day, or the last one.
func (s *state) Day() *Day { return &s.day }

// Planned is the plan that was accepted last, for the day that is open, was the last or is to come; nil if none was.
func (s *state) Planned() *DayPlanned { return s.planned }

// Weather is the last observation, nil if there was none since the day was opened.
func (s *state) Weather() *WeatherAt { return s.weather }

// Tint is what was seen since the valves were last turned, nil if nothing.
func (s *state) Tint() *TintSeen { return s.tint }

// TintMissed lists how far it went without a tint since the valves were last turned. A tint that is seen later takes
// none of it back.
func (s *state) TintMissed() []TintSeen { return s.missed }

// Lawn finds a lawn by its name, nil if there is none.
func (s *state) Lawn(name string) *Lawn {
	if i, ok := s.lawnAt[name]; ok {
		return s.lawns[i]
	}
	return nil
}

// Lawns lists the lawns in the order in which they were entered.
func (s *state) Lawns() []*Lawn { return s.lawns }

// Product finds the version in force, nil if there is none.
func (s *state) Product(name string) *Product {
	if i, ok := s.productAt[name]; ok {
		return s.products[i].Now()
	}
	return nil
}

// Products lists the products; a product's place in the list is its key in the plumbing.
func (s *state) Products() []ProductHistory { return s.products }

// ProductVersions are all versions of the product with this key.
func (s *state) ProductVersions(key int32) *ProductHistory { return &s.products[key] }

// ProductByKey is the version in force of the product with this key.
func (s *state) ProductByKey(key int32) *Product { return s.products[key].Now() }

// ProductKey is a product's key in the plumbing.
func (s *state) ProductKey(name string) (int32, bool) {
	i, ok := s.productAt[name]
	return int32(i), ok
}

// Mix finds a mix by its name, nil if there is none.
func (s *state) Mix(name string) *Mix {
	for i := range s.mixes {
		if s.mixes[i].MixName == name {
			return &s.mixes[i]
		}
	}
	return nil
}

// Mixes lists the mixes in the order in which they were entered.
func (s *state) Mixes() []Mix { return s.mixes }

// MixIn names the mix that stands in a compartment (a letter) or an applicator's tank; empty if none was
// named when it was loaded.
func (s *state) MixIn(tank string) string { return s.batches[tank] }

// Origin says what an origin key means.
func (s *state) Origin(key int32) Origin { return s.origins[key] }

// Applicator finds an applicator by its name, nil if there is none.
func (s *state) Applicator(name string) *Applicator {
	return s.rig.applicator(name)
}

func (f *Rig) applicator(name string) *Applicator {
	if f == nil {
		return nil
	}
	for i := range f.Applicators {
		if f.Applicators[i].Name == name {
			return &f.Applicators[i]
		}
	}
	return nil
}

// RigCompartment finds a compartment's set-up, nil if there is none.
func (s *state) RigCompartment(letter byte) *RigCompartment {
	if s.rig == nil {
		return nil
	}
	for i := range s.rig.Compartments {
		if s.rig.Compartments[i].Letter == letter {
			return &s.rig.Compartments[i]
		}
	}
	return nil
}

// Overridden is the entry by which the operator goes on in spite of what a rule says of a product on a zone of the lawn
// now visited; the heaviest, if there are several.
func (s *state) Overridden(rule, lawn, product, zone string) (went Overridden, yes bool) {
	return s.OverriddenAbout(rule, lawn, product, zone, "")
}

// OverriddenAbout is the same where the rule looks at several things. One reason opens one finding: an entry that keeps
// what was said, as the screen writes it, opens what has just its product, zone and thing, also where it names none; a
// line that was typed without that opens all that it does not leave out by a name.
func (s *state) OverriddenAbout(rule, lawn, product, zone, about string) (went Overridden, yes bool) {
	for _, o := range s.overrides {
		if o.Rule == rule && o.Lawn == lawn && o.isFor(product, zone, about) {
			if !yes || !went.Opens(o.Weight) {
				went = o
			}
			yes = true
		}
	}
	return went, yes
}

func (f *Overridden) isFor(product, zone, about string) bool {
	if f.Said != "" {
		return f.Product == product && f.Zone == zone && f.About == about
	}
	return (f.Product == "" || f.Product == product) && (f.Zone == "" || f.Zone == zone) && (f.About == "" || f.About == about)
}

// StruckBy is the number of the entry that struck seq, 0 if none did. It knows the entries since the last
// close; before that, read the journal.
func (b *Book) StruckBy(seq uint64) uint64 {
	for i := range b.since {
		if b.since[i].entry.Seq == seq {
			return b.since[i].struckBy
		}
	}
	return 0
}

// Since lists the entries since the last close that are in the sum, newest last.
func (b *Book) Since() []Entry {
	var out []Entry
	for _, s := range b.since {
		if s.struckBy == 0 {
			if _, strike := s.entry.What.(*Struck); !strike {
				out = append(out, s.entry)
			}
		}
	}
	return out
}
