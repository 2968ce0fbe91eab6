package measure

// Kind says how a product is measured: by volume or by weight.
type Kind uint8

// Liquid is measured in nanolitres, Dry in nanograms.
const (
	Liquid Kind = iota
	Dry
)

// String names the kind.
func (k Kind) String() string {
	if k == Dry {
		return "dry"
	}
	return "liquid"
}

// quantity is the name under which units.csv lists amounts of this kind.
func (k Kind) quantity() string {
	if k == Dry {
		return "mass"
	}
	return "volume"
}

// Amount is an amount of a product: nanolitres if Liquid, nanograms if Dry.
type Amount struct {
	N    int64
	Kind Kind
}

// LiquidAmount is v of a liquid product.
func LiquidAmount(v Volume) Amount { return Amount{N: int64(v), Kind: Liquid} }

// DryAmount is m of a dry product.
func DryAmount(m Mass) Amount { return Amount{N: int64(m), Kind: Dry} }

// In gives a in a unit of volume (Liquid) or mass (Dry), named by its key in
// units.csv. The error says which units there are.
func (a Amount) In(unit string) (float64, error) {
	u, err := unitOf(a.Kind.quantity(), unit)
	if err != nil {
		return 0, err
	}
	return u.of(float64(a.N)), nil
}
