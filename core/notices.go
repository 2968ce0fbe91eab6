package core

import "time"

// Signs are those that were put up at a lawn in one go.
type Signs struct {
	Lawn  string
	Count int64
	Date  string // of the day in which they were put up
	Up    Moment
	Due   Moment // not to be taken down before; zero: no time was set
	Down  Moment // zero: they still stand
}

// Contact is one contact or attempt, with its time and the entry that it stands in.
type Contact struct {
	Told
	At  Moment
	Seq uint64
}

// Reached tells whether somebody was spoken to, or the paper or message was left.
func (c *Contact) Reached() bool { return c.Result == ToldReached }

// AllSigns lists the signs that stand, and those that were taken down since the day was opened, oldest first.
func (s *state) AllSigns() []Signs { return s.signs }

// SignsOf lists the signs of a lawn that were put up in the day of a date; older ones than the last day's only as long as they stand.
func (s *state) SignsOf(lawn, date string) []Signs {
	var out []Signs
	for _, g := range s.signs {
		if g.Lawn == lawn && g.Date == date {
			out = append(out, g)
		}
	}
	return out
}

// AllContacts lists the contacts about the date of the last day and later ones, oldest first. Those about dates before stand in the journal.
func (s *state) AllContacts() []Contact { return s.contacts }

// ContactsOf lists the contacts about the treatment of a lawn on a date, with whom is empty for all of them.
func (s *state) ContactsOf(lawn, date, whom string) []Contact {
	var out []Contact
	for _, c := range s.contacts {
		if c.Lawn == lawn && c.For == date && (whom == "" || c.Whom == whom) {
			out = append(out, c)
		}
	}
	return out
}

// AllNeighbours lists who is to be told before a lawn is treated, in the order of entry. Those whose time has ended are in it.
func (s *state) AllNeighbours() []Neighbour { return s.neighbours }

// NeighboursOf lists who is to be told before a lawn is treated on a date.
func (s *state) NeighboursOf(lawn, date string) []Neighbour {
	var out []Neighbour
	for _, n := range s.neighbours {
		if n.Lawn == lawn && (n.Until == "" || date <= n.Until) {
			out = append(out, n)
		}
	}
	return out
}

// Neighbour finds one by lawn and name, nil if there is none.
func (s *state) Neighbour(lawn, name string) *Neighbour {
	for i := range s.neighbours {
		if s.neighbours[i].Lawn == lawn && s.neighbours[i].NeighbourName == name {
			return &s.neighbours[i]
		}
	}
	return nil
}

// onDate is a time of day on the date of a moment; the moment itself where none is given or it is none.
func onDate(at Moment, clock string) Moment {
	t, err := time.Parse(clockForm, clock)
	if err != nil {
		return at
	}
	const minute, day = 60, 86_400
	local := at.Unix + int64(at.Offset)
	midnight := local - (local%day+day)%day
	return Moment{midnight + int64(t.Hour()*60+t.Minute())*minute - int64(at.Offset), at.Offset}
}

// due is the moment before which signs put up at a time are not to be taken down, zero if none is set.
func (f *Signed) due(up Moment) Moment {
	var out Moment
	if f.Hours.Known {
		out = Moment{up.Unix + int64(f.Hours.V*3600), up.Offset}
	}
	if t, err := time.Parse(time.DateOnly, f.Until); err == nil {
		if m := (Moment{t.Unix() - int64(up.Offset), up.Offset}); m.Unix > out.Unix || out.Zero() {
			out = m
		}
	}
	return out
}

// The lists are made anew when they change, because clones share them.

func (s *state) applySigned(e Entry, f *Signed) {
	at := onDate(e.At, f.Clock)
	out := append(make([]Signs, 0, len(s.signs)+1), s.signs...)
	if f.What == SignsDown {
		for i := range out {
			if out[i].Lawn == f.Lawn && out[i].Down.Zero() {
				out[i].Down = at
			}
		}
	} else {
		date := e.At.Date()
		if s.day.Open {
			date = s.day.Date
		}
		out = append(out, Signs{Lawn: f.Lawn, Count: f.Count, Date: date, Up: at, Due: f.due(at)})
	}
	s.signs = out
}

func (s *state) applyTold(e Entry, f *Told) {
	s.contacts = append(append(make([]Contact, 0, len(s.contacts)+1), s.contacts...), Contact{*f, onDate(e.At, f.Clock), e.Seq})
}

func (s *state) applyNeighbour(f *Neighbour) {
	out := make([]Neighbour, 0, len(s.neighbours)+1)
	put := false
	for _, n := range s.neighbours {
		if n.Lawn != f.Lawn || n.NeighbourName != f.NeighbourName {
			out = append(out, n)
		} else if put = true; f.Gone == "" {
			out = append(out, *f)
		}
	}
	if !put && f.Gone == "" {
		out = append(out, *f)
	}
	s.neighbours = out
}

// startNotices forgets signs that were taken down and contacts about days before the one that is opened.
func (s *state) startNotices(date string) {
	var signs []Signs
	for _, g := range s.signs {
		if g.Down.Zero() {
			signs = append(signs, g)
		}
	}
	var contacts []Contact
	for _, c := range s.contacts {
		if c.For >= date {
			contacts = append(contacts, c)
		}
	}
	s.signs, s.contacts = signs, contacts
}

// digestNotices says nothing of a book without any, so that older books keep their digest.
func (s *state) digestNotices(w *binaryWriter) {
	if len(s.signs)+len(s.contacts)+len(s.neighbours) == 0 {
		return
	}
	w.str("notices")
	w.count(len(s.signs))
	for _, g := range s.signs {
		w.str(g.Lawn)
		w.int(g.Count)
		w.str(g.Date)
		w.yes(g.Due.Zero())
		w.yes(g.Down.Zero())
	}
	w.count(len(s.contacts))
	for i := range s.contacts {
		w.factFields(&s.contacts[i].Told)
	}
	w.count(len(s.neighbours))
	for i := range s.neighbours {
		w.factFields(&s.neighbours[i])
	}
}

// notices keeps signs, contacts and neighbours.
func (k *keptCodec) notices(s *state) {
	kept(k, &s.signs, func(g *Signs) {
		text(k, &g.Lawn)
		whole(k, &g.Count)
		text(k, &g.Date)
		k.moment(&g.Up)
		k.moment(&g.Due)
		k.moment(&g.Down)
	})
	kept(k, &s.contacts, func(c *Contact) {
		k.fact(&c.Told)
		k.moment(&c.At)
		whole(k, &c.Seq)
	})
	kept(k, &s.neighbours, func(n *Neighbour) { k.fact(n) })
}
