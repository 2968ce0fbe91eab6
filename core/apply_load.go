package core

import (
	"sort"
	"strings"
)

// applyLoadPlanned puts a plan in the place of the one for the same tank. What is ticked stays ticked where the new
// plan takes as much of it.
func (s *state) applyLoadPlanned(f *LoadPlanned) {
	old := s.plans[f.Into]
	list := LoadList(f.Into)
	var still []string
	if old != nil {
		same := map[LoadItem]bool{}
		for _, i := range f.items() {
			same[i] = true
		}
		for _, i := range old.items() {
			if same[i] && hasText(s.ticks[list], i.Item) {
				still = append(still, i.Item)
			}
		}
		f, still = f.takeOver(old, s.ticks[list], still)
	}
	s.endPlan(f.Into)
	if t, _ := s.tank(f.Into); t == nil || f.Volume <= 0 {
		return
	}
	s.plans[f.Into] = f
	if len(still) > 0 {
		s.ticks[list] = still
	}
}

// endPlan takes the plan for a tank away, and its ticks.
func (s *state) endPlan(into string) {
	delete(s.plans, into)
	delete(s.ticks, LoadList(into))
}

// endLostPlans ends the plans for tanks that the rig does not have any more.
func (s *state) endLostPlans() {
	for into := range s.plans {
		if t, _ := s.tank(into); t == nil {
			s.endPlan(into)
		}
	}
}

// applyTicked makes the list anew: earlier copies of the state keep theirs.
func (s *state) applyTicked(f *Ticked) {
	var items []string
	for _, i := range s.ticks[f.List] {
		if i != f.Item {
			items = append(items, i)
		}
	}
	if f.Undo != yes {
		items = append(items, f.Item)
		sort.Strings(items)
	}
	if len(items) == 0 {
		delete(s.ticks, f.List)
		return
	}
	s.ticks[f.List] = items
}

// noteTicked puts what was typed with a tick into the plan.
func (s *state) noteTicked(f *Ticked) {
	into := strings.TrimPrefix(f.List, LoadList(""))
	if p := s.plans[into]; p != nil {
		s.plans[into] = f.note(p)
	}
}

// digestLoads adds what is planned and ticked; a book without either has the digest that it always had.
func (s *state) digestLoads(w *binaryWriter) {
	s.digestJars(w)
	s.digestStock(w)
	s.digestMoney(w)
	if len(s.plans)+len(s.ticks) == 0 {
		return
	}
	w.str("loads")
	var tanks, lists []string
	for into := range s.plans {
		tanks = append(tanks, into)
	}
	for list := range s.ticks {
		lists = append(lists, list)
	}
	sort.Strings(tanks)
	sort.Strings(lists)
	w.count(len(tanks))
	for _, into := range tanks {
		w.factFields(s.plans[into])
	}
	w.count(len(lists))
	for _, list := range lists {
		w.str(list)
		w.count(len(s.ticks[list]))
		for _, item := range s.ticks[list] {
			w.str(item)
		}
	}
}
