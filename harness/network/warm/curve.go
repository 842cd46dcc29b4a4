package warm

import (
	"math"

	"gonum.org/v1/gonum/interp"

	"fusewright/harness/formula/conductor"
)

// curve is the steady temperature of one wire alone in still air against its
// current. The heat balance costs a search for each answer and a harness asks
// tens of thousands of times of a few dozen kinds of wire, so the balance is
// solved at some temperatures and drawn through: the logarithm of the rise
// against that of the current is nearly a straight line of slope two. It stays
// within 0.06 K of the balance up to 250 °C.
type curve struct {
	ambientC   float64
	ok         bool
	fit        interp.NotAKnotCubic
	least, top float64 // amperes of the first and last point
	leastRise  float64
}

// The points are a fifth more of the surface's rise apart, from firstRise up to
// copper's melting point in the conductor: the surface needs no search.
const firstRise, step = 0.5, 1.2

func newCurve(w conductor.Insulated, ambientC float64) *curve {
	c := &curve{ambientC: ambientC}
	b := conductor.NewBalance(w, conductor.StillAir{AmbientC: ambientC})
	var x, y []float64
	add := func(conductorC, amps float64) bool {
		x, y = append(x, math.Log(amps)), append(y, math.Log(conductorC-ambientC))
		return amps > 0 && conductorC > ambientC
	}
	for rise := firstRise; ; rise *= step {
		hot, amps := b.Steady(ambientC + rise)
		if hot < conductor.CopperMeltsC {
			if !add(hot, amps) {
				return c
			}
			continue
		}
		if !add(conductor.CopperMeltsC, b.CurrentA(conductor.CopperMeltsC)) {
			return c
		}
		break
	}
	c.least, c.leastRise, c.top = math.Exp(x[0]), math.Exp(y[0]), math.Exp(x[len(x)-1])
	c.ok = len(x) > 1 && c.fit.Fit(x, y) == nil
	return c
}

// celsius is the temperature at a current; +Inf when no steady state lies below
// the melting point of copper, or the wire's dimensions are not known.
func (c *curve) celsius(amps float64) float64 {
	switch {
	case !(amps > 0):
		return c.ambientC
	case !c.ok || amps > c.top:
		return math.Inf(1)
	case amps <= c.least:
		share := amps / c.least
		return c.ambientC + c.leastRise*share*share
	}
	return c.ambientC + math.Exp(c.fit.Predict(math.Log(amps)))
}
