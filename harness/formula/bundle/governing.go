package bundle

import "math"

// Published is a practice's factor for wires loaded together.
type Published struct {
	// Factor is what is left of the lone wire's current with a number of wires
	// of which a share, over 0 to 1, is loaded; NaN where the practice has none.
	Factor func(wires int, loading float64) float64
	// ByLoading tells that Factor differs by the loading. Where it does not, it
	// is entered with the number of wires that really carry.
	ByLoading bool
}

// Loading is how far a bundle is really used.
type Loading struct {
	Wires int // that carry current; one without counts neither as loaded nor as insulation
	// Carrying is their number weighed by their loss: a wire with the current
	// that the practice allows it in the full bundle counts as one, one with
	// half of it as a quarter.
	Carrying float64
}

// Loading weighs the wires of the bundle. More current never lowers it.
func (b *Bundle) Loading(p Published) Loading {
	l := Loading{Wires: len(b.strands)}
	full := p.Factor(l.Wires, 1)
	for _, s := range b.strands {
		part := b.wires[s.wire].CurrentA / (full * b.AloneA(s.wire))
		if part *= part; !(part < 1) {
			part = 1
		}
		l.Carrying += part
	}
	return l
}

// The words that say what governs.
const (
	GovernsModel     = "heat balance of the bundle"
	GovernsPublished = "factor of the practice"
)

// Ruling is the factor on the lone wire's current that holds, and why.
type Ruling struct {
	Factor           float64
	Governs          string
	Model, Published float64 // both; Published is NaN where the practice has none
}

// Governing is the lower of the model's factor (Bundle.Factor) and the
// practice's at the loading really there.
func Governing(model float64, p Published, l Loading) Ruling {
	r := Ruling{Factor: model, Governs: GovernsModel, Model: model}
	const nearly = 1e-9 // a sum of whole wires is not the next whole number
	if p.ByLoading {
		r.Published = p.Factor(l.Wires, l.Carrying/math.Max(1, float64(l.Wires)))
	} else {
		r.Published = p.Factor(int(math.Ceil(l.Carrying-nearly)), 1)
	}
	if r.Published < model {
		r.Factor, r.Governs = r.Published, GovernsPublished
	}
	return r
}
