package label

// stageOf is the stage whose rows fit a state of growth; turf of which nothing is said counts as established.
func stageOf(growth string) string {
	switch growth {
	case Dormant:
		return StageDormant
	case GreeningUp:
		return StageGreenUp
	case Sodded:
		return StageEstablishing
	case Seeded:
		return StageSeedling
	}
	return StageEstablished
}

// Tolerance is the verdict of one active, or of a mixture under its name in the reference, on one grass: of the rows that
// apply, the strictest decides; a recalled row may make it stricter and never milder. Rows that were read of the stage
// that the zone is in go before rows of established turf; where there is none, established turf answers for it, on new
// turf only with what speaks against. A row of seedlings or new sod is never a verdict on established turf. A row that
// allows an active on dormant turf only applies whatever the growth: as OnlyDormant, and on turf that is dormant as
// Tolerant. No rows: the reference says nothing of this stage.
func Tolerance(active, grass string, c Circumstances) Verdict {
	return blockVerdict(blocksOf(active), grass, &c)
}

// blockVerdict is the verdict by the rows of an active.
func blockVerdict(of []block, grass string, c *Circumstances) Verdict {
	return verdictOf(rowsOn(of, grass), c)
}

// verdictOf is the verdict by rows of one active on one grass.
func verdictOf(rows []Row, c *Circumstances) Verdict {
	stage, young := stageOf(c.Growth), c.Growth == Sodded || c.Growth == Seeded
	var room [2][mostRows]counted
	on, aside := room[0][:0], room[1][:0]
	fits := false
	for i := range rows {
		r := &rows[i]
		if r.When.Stage != stage && r.When.Stage != StageEstablished && r.Rating != OnlyDormant {
			continue
		}
		rating, counts := judge(r, c)
		switch {
		case counts:
			on = append(on, counted{r, rating})
			fits = fits || r.When.Stage == stage && r.read()
		case r.Contradicted != "" || r.Rating == RatingUnknown:
			aside = append(aside, counted{r, RatingUnknown})
		}
	}
	return weigh(standing(on, stage, !fits, young), standing(aside, stage, !fits, young))
}

// standing keeps the rows of a stage, and those of dormant turf only; where all are wanted, those of established turf too,
// but on young turf none of them that clears.
func standing(on []counted, stage string, all, young bool) []counted {
	kept := on[:0]
	for _, o := range on {
		if o.row.When.Stage == stage || o.row.Rating == OnlyDormant || all && (!young || o.rating != Tolerant) {
			kept = append(kept, o)
		}
	}
	return kept
}

// weigh puts the rows that count in order, the one that decides first, and behind them what is shown and decides nothing.
func weigh(on, aside []counted) Verdict {
	order(on)
	if len(on)+len(aside) == 0 {
		return Verdict{}
	}
	v := Verdict{Rows: make([]Row, 0, len(on)+len(aside))}
	var read, mildest, recalled Rating
	for _, o := range on {
		v.Rows = append(v.Rows, *o.row)
		if o.row.Recalled() {
			recalled = max(recalled, o.rating)
			continue
		}
		read = max(read, o.rating)
		if mildest == RatingUnknown || o.rating < mildest {
			mildest = o.rating
		}
	}
	v.Disagree = mildest != read
	v.Rating = read
	if recalled > max(read, Tolerant) {
		v.Rating = recalled
	}
	v.Recalled = recalled != RatingUnknown && (read == RatingUnknown || read < v.Rating)
	for _, o := range aside {
		v.Rows = append(v.Rows, *o.row)
	}
	return v
}

// order puts rows in the order of compare, those that are equal as they stand in the table. There are a dozen at most.
func order(on []counted) {
	for i := range on {
		for j := i; j > 0 && on[j].compare(on[j-1]) < 0; j-- {
			on[j], on[j-1] = on[j-1], on[j]
		}
	}
}

// compare puts the stricter first, among equals the one that was read, and of those that were read a weak source last.
func (o counted) compare(p counted) int {
	if o.rating != p.rating {
		return int(p.rating) - int(o.rating)
	}
	return p.row.trust() - o.row.trust()
}

func (r *Row) trust() int {
	switch s, _ := FindSource(r.Source); {
	case !r.read():
		return 0
	case s.Weak:
		return 1
	}
	return 2
}

// Read tells whether a source that was read stands behind the verdict at all.
func (v Verdict) Read() bool {
	for i := range v.Rows {
		if v.Rows[i].read() {
			return true
		}
	}
	return false
}

// Counted is the rating to be used where a warning depends on it: unless a source that was read says something, a grass
// counts as not tolerant.
func (v Verdict) Counted() Rating {
	if !v.Read() {
		return NotTolerant
	}
	return v.Rating
}
