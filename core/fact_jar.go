package core

// JarTested is what came of a jar in which products stood together, or that the operator marked them as not to be mixed.
// A later one of the same products takes its place.
type JarTested struct {
	Products []string // two or more
	Result   string   // JarMixed and the others
	Signs    []string // of JarFailed: JarSigns
	Note     string
}

// What a jar came to, and the mark that needs no jar.
const (
	JarMixed     = "mixed"
	JarFailed    = "failed"
	JarNotMixing = "not_mixing" // marked by the operator: they are not to be mixed
	JarMayMix    = "may_mix"    // the mark is taken back
)

// JarSigns are the signs of a jar that failed.
//
// Source: Utah State University extension, jar test, 2012.
func JarSigns() []string { return []string{"layers", "clumps", "grain", "foam", "sludge", "warm"} }

// Kind of the fact.
func (*JarTested) Kind() Kind { return kindJarTested }

// Name of the fact.
func (*JarTested) Name() string { return "jar_tested" }

func (f *JarTested) fields(w walker) {
	w.texts(1, "products", &f.Products)
	w.text(2, "result", &f.Result)
	w.texts(3, "signs", &f.Signs)
	w.text(4, "note", &f.Note)
}
