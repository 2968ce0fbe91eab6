package check

import (
	"fmt"
	"strings"

	"example.com/tintline/core"
	"example.com/tintline/core/label"
)

// What rule trace looks at beside residue in the account.
const aboutStrainers = "strainers"

const strainersSource = "University of Nebraska extension: dry hose, strainers and end caps hold most of what is left of 2,4-D and dicamba, and a later load loosens it; " +
	"guidance on continuous rinsing: valves, boom ends and filters can hold 10 to 15 per cent when the nozzle gives 1 to 2; three rinses: Purdue extension"

// Stuck is a product of which little injures and of which something may have dried on in strainers and dead ends, where no
// account reaches.
type Stuck struct {
	core.Dried
	Class   byte   // by which its residue is judged: 'A', or 'D'
	Missing string // "the strainers were not opened since 9:40, a has had 0 of 3 rinses"
}

// StillDried lists those that have not been cleaned away: strainers opened, and a triple rinse of each compartment.
func StillDried(b *core.Book, at core.Moment) []Stuck {
	var out []Stuck
	for _, d := range b.Dried() {
		if p := b.Product(d.Product); p != nil {
			if class := lingers(p); class != 0 {
				out = append(out, Stuck{d, class, missingOf([]core.Dried{d}, at)})
			}
		}
	}
	return out
}

// lingers is the class of a product's most sensitive active of those after which more than the account is asked for: A, of
// which little injures, and D, the hormones, which water alone does not take out; 0: it has none.
func lingers(p *core.Product) byte {
	class := byte(0)
	for _, a := range p.Label.Actives {
		if info, ok := label.FindActive(a.Name); ok && (info.Trace == 'A' || info.Trace == 'D') && (class == 0 || info.Trace < class) {
			class = info.Trace
		}
	}
	return class
}

// strainers is one note for all of them, once a day where it matters. While the hose has to be pushed out first it waits:
// what to do now is not to be pushed off the screen by what to do in the evening.
func (s *situation) strainers() []Finding {
	if !s.wet || s.tank != nil || s.hoseStopped {
		return nil
	}
	var due []core.Dried
	var names []string
	on := map[string]bool{}
	for _, d := range StillDried(s.b, s.in.At) {
		p := s.b.Product(d.Product)
		zones := unfit(p, s.lawn)
		if !s.anyOf(zones) || s.isDrawn(p) || s.saidToday(d.Since, func(l *core.Lawn) bool { return len(unfit(p, l)) > 0 }) {
			continue
		}
		due = append(due, d.Dried)
		if !hasText(names, called(p)) {
			names = append(names, called(p))
		}
		for _, z := range zones {
			on[z] = true
		}
	}
	if len(due) == 0 {
		return nil
	}
	f := Finding{Weight: Note, About: aboutStrainers, Part: PartRig, Ground: GroundExtension, Source: strainersSource}
	for _, z := range s.zones {
		if on[z.Name] {
			f.Zones = append(f.Zones, z.Name)
		}
	}
	f.Says = fmt.Sprintf("What lies dried of %s in strainers and dead ends is not in the account: %s.", list(names), missingOf(due, s.in.At))
	f.Do = doClean(due)
	return []Finding{f}
}

// anyOf tells whether one of the zones is to be treated now.
func (s *situation) anyOf(zones []string) bool {
	for _, z := range s.zones {
		if hasText(zones, z.Name) {
			return true
		}
	}
	return false
}

// isDrawn tells whether a product stands in what is drawn from as a mix of its own: then it goes down anyhow, and the other
// rules speak of it.
func (s *situation) isDrawn(p *core.Product) bool {
	k, ok := s.b.ProductKey(p.ProductName)
	return ok && s.own(k) > s.otherMix(k)
}

// unfit lists the zones of a lawn that a product may not go on by its label entry, or that have a bed of food plants.
func unfit(p *core.Product, l *core.Lawn) []string {
	var out []string
	for _, z := range l.Zones {
		if !p.Label.Lists(z.Grass) || hasSite(z, label.SiteEdible) {
			out = append(out, z.Name)
		}
	}
	return out
}

// missingOf says what has not been done since, of all of them together.
func missingOf(dried []core.Dried, now core.Moment) string {
	var out []string
	if last, open := notOpened(dried); open {
		out = append(out, "the strainers were not opened since "+when(last, now))
	}
	for _, r := range toRinse(dried) {
		out = append(out, fmt.Sprintf("%c has had %d of %d rinses", r.Letter, r.Done, core.TripleRinse))
	}
	return strings.Join(out, ", ")
}

// notOpened is when something last went through the strainers that were not opened since.
func notOpened(dried []core.Dried) (last core.Moment, yes bool) {
	for _, d := range dried {
		if !d.Opened {
			yes = true
			if d.Last.Unix > last.Unix {
				last = d.Last
			}
		}
	}
	return last, yes
}

// toRinse are the compartments that have not had three rinses, in their order, each with the fewest of any product.
func toRinse(dried []core.Dried) []core.Rinses {
	var out []core.Rinses
	for letter := byte('a'); letter <= 'f'; letter++ {
		r := core.Rinses{Letter: letter, Done: core.TripleRinse}
		for _, d := range dried {
			for _, one := range d.Rinses {
				if one.Letter == letter {
					r.Done = min(r.Done, one.Done)
				}
			}
		}
		if r.Done < core.TripleRinse {
			out = append(out, r)
		}
	}
	return out
}

func doClean(dried []core.Dried) string {
	var out []string
	if _, open := notOpened(dried); open {
		out = append(out, "open the strainers")
	}
	var letters []string
	for _, r := range toRinse(dried) {
		letters = append(letters, string(r.Letter))
	}
	if len(letters) > 0 {
		out = append(out, "rinse "+list(letters)+" three times")
	}
	return "At the clean-out " + list(out) + "; enter it."
}
