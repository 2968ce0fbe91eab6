package disktrace

import (
	"fmt"
	"hash/maphash"
	"maps"
	"math/rand/v2"
	"slices"
)

// Sector is what a disk writes whole or not at all, in bytes.
const Sector = 512

// Image is what a power cut may leave of the folder.
type Image struct {
	Files map[string][]byte
	At    int    // how many steps had ended
	How   string // which of the steps not synced yet are in it
	Said  string // what the program had said by then
}

// Choice says which images are made.
type Choice struct {
	Seed   uint64
	Random int  // subsets drawn for each moment
	NoSync bool // as if no sync had done anything: a control
	Single int  // at most how many with one step missing, for each moment; 0: all
	From   int  // the first moment
	Step   int  // one moment in so many, by chance, and always the last; 0: all
}

// disk is the model: what is on the disk for certain, and what may be.
type disk struct {
	files map[int][]byte // by file
	names map[string]int
	wait  []waiting
}

// waiting is a step that is not synced: a file's, or a change of names.
type waiting struct {
	step int
	op   Op
}

// Images calls f with every different image for every moment of the log. Of what
// was not synced: none, all, all but one step, and subsets drawn by chance, by
// step and by sector. A name may stay or not until its folder is synced. The bytes
// of an image are only good until f returns.
func (l *Log) Images(c Choice, f func(Image) error) error {
	d := l.begin()
	seen := map[uint64]bool{}
	hash := maphash.MakeSeed()
	dice := rand.New(rand.NewPCG(c.Seed, 1))
	said := ""
	give := func(at int, how string, keep func(i, sector int) bool) error {
		files := d.with(keep)
		if h := sum(hash, files, len(said)); !seen[h] {
			seen[h] = true
			return f(Image{Files: files, At: at, How: how, Said: said})
		}
		return nil
	}
	for i, op := range l.Ops {
		d.take(i, op, c.NoSync)
		if op.Kind == Said {
			said += string(op.Data)
		}
		if i+1 < c.From || op.Kind == Complained || c.Step > 1 && i+1 < len(l.Ops) && dice.IntN(c.Step) > 0 {
			continue
		}
		if err := d.moment(i+1, c, dice, give); err != nil {
			return err
		}
	}
	return nil
}

// After is the folder as the program left it.
func (l *Log) After() map[string][]byte {
	d := l.begin()
	for i, op := range l.Ops {
		d.take(i, op, true)
	}
	return d.with(func(int, int) bool { return true })
}

func (l *Log) begin() disk {
	d := disk{files: map[int][]byte{}, names: map[string]int{}}
	for name, id := range l.IDs {
		d.files[id], d.names[name] = slices.Clone(l.Start[name]), id
	}
	return d
}

// moment gives the images of one moment.
func (d *disk) moment(at int, c Choice, dice *rand.Rand, give func(int, string, func(i, sector int) bool) error) error {
	if err := give(at, "nothing more", func(int, int) bool { return false }); err != nil {
		return err
	}
	if err := give(at, "all", func(int, int) bool { return true }); err != nil {
		return err
	}
	single := dice.Perm(len(d.wait))
	if c.Single > 0 && len(single) > c.Single {
		single = single[:c.Single]
	}
	for _, m := range single {
		how := fmt.Sprint("all but step ", d.wait[m].step)
		if err := give(at, how, func(i, _ int) bool { return i != m }); err != nil {
			return err
		}
	}
	if len(d.wait) < 2 {
		return nil
	}
	for n := range c.Random {
		part := []float64{0.5, 0.1, 0.9, 0.5}[n%4]
		how := fmt.Sprint("part ", part, " by step, draw ", n)
		if n%2 == 0 {
			chosen := make([]bool, len(d.wait))
			for i := range chosen {
				chosen[i] = dice.Float64() < part
			}
			if err := give(at, how, func(i, _ int) bool { return chosen[i] }); err != nil {
				return err
			}
			continue
		}
		how = fmt.Sprint("part ", part, " by sector, draw ", n)
		if err := give(at, how, func(int, int) bool { return dice.Float64() < part }); err != nil {
			return err
		}
	}
	return nil
}

// take adds a step of the program.
func (d *disk) take(i int, op Op, noSync bool) {
	switch op.Kind {
	case Sync, SyncFolder:
		if !noSync {
			d.sync(op)
		}
	case Said, Complained, Mapped:
	default:
		d.wait = append(d.wait, waiting{i, op})
	}
}

// sync puts on the disk what a sync covers.
func (d *disk) sync(s Op) {
	var rest []waiting
	for _, w := range d.wait {
		named := w.op.Kind.named()
		covered := w.step < s.Since &&
			(s.Kind == SyncFolder && named || s.Kind == Sync && !named && w.op.File == s.File)
		if !covered {
			rest = append(rest, w)
			continue
		}
		if named {
			rename(d.names, w.op)
		} else {
			d.files[w.op.File] = change(d.files[w.op.File], w.op, nil)
		}
	}
	d.wait = rest
}

// named tells whether a step is about names.
func (k Kind) named() bool { return k == Create || k == Rename || k == Link || k == Unlink }

// with is the folder with some of what is not synced. Sector -1 stands for a step
// that is there whole or not at all.
func (d *disk) with(keep func(i, sector int) bool) map[string][]byte {
	names := maps.Clone(d.names)
	files := maps.Clone(d.files)
	own := map[int]bool{}
	for i, w := range d.wait {
		if w.op.Kind.named() {
			if keep(i, -1) {
				rename(names, w.op)
			}
			continue
		}
		if !own[w.op.File] {
			own[w.op.File] = true
			files[w.op.File] = slices.Clone(files[w.op.File])
		}
		files[w.op.File] = change(files[w.op.File], w.op, func(sector int) bool { return keep(i, sector) })
	}
	out := map[string][]byte{}
	for name, id := range names {
		out[name] = files[id]
	}
	return out
}

func rename(names map[string]int, op Op) {
	switch op.Kind {
	case Create:
		names[op.Name] = op.File
	case Link:
		names[op.To] = op.File
	case Unlink:
		delete(names, op.Name)
	case Rename:
		if names[op.Name] == op.File {
			delete(names, op.Name)
		}
		names[op.To] = op.File
	}
}

// change does a step to a file, or those sectors of it that keep allows.
func change(b []byte, op Op, keep func(sector int) bool) []byte {
	switch op.Kind {
	case Truncate:
		if keep == nil || keep(-1) {
			return sized(b, op.Size, true)
		}
	case Allocate:
		if keep == nil || keep(-1) {
			return sized(b, op.Size, false)
		}
	case Write:
		for at, data := op.At, op.Data; len(data) > 0; {
			n := min(int64(len(data)), Sector-at%Sector)
			if keep == nil || keep(int(at/Sector)) {
				b = sized(b, at+n, false)
				copy(b[at:], data[:n])
			}
			at, data = at+n, data[n:]
		}
	}
	return b
}

// sized is b with at least that many bytes, or exactly.
func sized(b []byte, size int64, exactly bool) []byte {
	if int64(len(b)) < size {
		b = append(b, make([]byte, size-int64(len(b)))...)
	}
	if exactly {
		b = b[:size:size]
	}
	return b
}

func sum(seed maphash.Seed, files map[string][]byte, said int) uint64 {
	var h maphash.Hash
	h.SetSeed(seed)
	for _, name := range slices.Sorted(maps.Keys(files)) {
		fmt.Fprintf(&h, "%q %d ", name, len(files[name]))
		_, _ = h.Write(files[name])
	}
	fmt.Fprint(&h, said)
	return h.Sum64()
}

// About is the choice of moments that makes about so many images.
func (c Choice) About(l *Log, most int) Choice {
	// A moment has some steps waiting, and many of its images are those of the last.
	c.Step = max(1, len(l.Ops)*(3+c.Random)/max(most, 1))
	return c
}
