package batch

import (
	"strconv"

	"example.com/tintline/core/measure"
)

// Opening is what becomes of packages when an amount is taken from them: the one that is open is used up first.
type Opening struct {
	FromOpen measure.Amount // out of the package that was open
	Opened   int64          // packages that are opened
	Empty    int64          // packages that are empty then
	Left     measure.Amount // in the one that is open then; 0: none is
	Steps    []Step
}

// Open takes an amount from packages of one size, of which one may be open with so much in it. It refuses an amount below 0, a package that
// holds nothing, and one that is open with more in it than it holds.
func Open(product string, take, open, pack measure.Amount) (Opening, error) {
	for _, a := range []measure.Amount{take, open} {
		if err := checkAmount(product, pack.Kind, a); err != nil {
			return Opening{}, err
		}
	}
	if pack.N <= 0 {
		return Opening{}, measure.Troublef("Enter with the product how much is in a package.", "A package of %s holds %s.", product, pack.Text())
	}
	if open.N > pack.N {
		return Opening{}, measure.Troublef("Count what is there.", "The open package of %s holds %s, and a full one %s.", product, open.Text(), pack.Text())
	}
	out := Opening{FromOpen: measure.Amount{N: min(take.N, open.N), Kind: pack.Kind}, Left: measure.Amount{N: open.N - take.N, Kind: pack.Kind}}
	var s steps
	if rest := take.N - open.N; rest > 0 {
		out.Opened = (rest + pack.N - 1) / pack.N
		out.Left.N = out.Opened*pack.N - rest
	}
	out.Empty = out.Opened
	if open.N > 0 {
		out.Empty++
	}
	if out.Left.N > 0 {
		out.Empty--
	}
	if out.FromOpen.N > 0 {
		s.say(product, ": ", out.FromOpen.Text(), " out of the open one, in which ", open.Text(), " were")
	}
	if out.Opened > 0 {
		s.say(product, ": open ", Packages(out.Opened, pack, ""), "; ", out.Left.Text(), " are left in the last")
	} else if take.N > 0 {
		s.say(product, ": ", out.Left.Text(), " are left in it")
	}
	out.Steps = s
	return out, nil
}

// InPackages is an amount as it stands on a shelf: so many full packages, and what is in one that is open.
func InPackages(a, pack measure.Amount) (full int64, open measure.Amount) {
	open = measure.Amount{N: max(0, a.N), Kind: a.Kind}
	if pack.N <= 0 || pack.Kind != a.Kind {
		return 0, open
	}
	full = open.N / pack.N
	open.N -= full * pack.N
	return full, open
}

// Shelf prints that: "2 full of 2.5 gal, 1.10 gal in an open one".
func Shelf(a, pack measure.Amount) string {
	full, open := InPackages(a, pack)
	switch {
	case pack.N <= 0:
		return a.Text()
	case full > 0 && open.N > 0:
		return strconv.FormatInt(full, 10) + " full of " + PackageSize(pack) + ", " + open.Text() + " in an open one"
	case full > 0:
		return strconv.FormatInt(full, 10) + " full of " + PackageSize(pack)
	case open.N > 0:
		return open.Text() + " in an open one of " + PackageSize(pack)
	}
	return "none"
}
