// Package charging is what an engine-driven charging system gives over engine
// speed: straight lines between the points of the design, or a smooth curve where
// it asks for one, without overshoot between them and without gifts beyond them.
// It knows no circuit.
package charging

import (
	"math"
	"sort"

	"gonum.org/v1/gonum/interp"

	"fusewright/harness/design"
)

// Curve is charging current in amperes over engine speed in revolutions per
// minute. The zero value gives nothing at any speed.
//
// Between the points it is a straight line: no more than they prove, since the
// output of such machines bulges upwards. Where the design says `curve: smooth` it
// is a piecewise cubic after Fritsch and Butland ("A method for constructing local
// monotone piecewise cubic interpolants", SIAM J. Sci. Stat. Comput. 5, 1984),
// which passes through every point, rises where the points rise and never leaves
// the range of two neighbours. Above the last point the last current holds: such
// machines run into a plateau, and more than what is documented is not promised.
// Below the first see CutIn.
type Curve struct {
	rpm, amps []float64
	between   interp.FittablePredictor
	cutIn     float64
}

// Of is what a charging system gives for good: the curve through its points, in
// ascending order of speed, less what is lost when hot. Points without a derating are
// taken as those of a hot machine.
func Of(c *design.Charging) *Curve { return through(c, 1-c.HotLost()) }

// Cold is what a charging system gives until it is hot: the points as they are.
// It is the stronger source, and nothing to count on.
func Cold(c *design.Charging) *Curve { return through(c, 1) }

// through is the curve through a share of each point's current.
func through(of *design.Charging, share float64) *Curve {
	c := &Curve{between: &interp.PiecewiseLinear{}}
	if of.Smooth() {
		c.between = &interp.FritschButland{}
	}
	for _, p := range of.Output {
		c.rpm = append(c.rpm, p.RPM.Value)
		c.amps = append(c.amps, math.Max(p.CurrentA.Value*share, 0))
	}
	if len(c.rpm) == 0 {
		return c
	}
	c.cutIn = cutIn(c.rpm, c.amps)
	if len(c.rpm) > 1 && c.between.Fit(c.rpm, c.amps) != nil {
		return &Curve{} // unreachable with ascending speeds
	}
	return c
}

// CutIn is the speed in rpm below which the curve gives nothing. At full field
// and constant voltage the current of an alternator goes with
//
//	I(n) = I∞ · √(1 − (n0/n)²)
//
// which the first two points solve for n0. (Published claw-pole output formula,
// Power Electronics Handbook, 3rd ed., p. 655; a permanent-magnet stator with
// its winding inductance has the same form.) From n0 to the first point the
// curve is a straight line, which lies below the formula. Where the first two
// points do not rise nothing is known of n0: below the first point the curve
// then gives nothing.
func (c *Curve) CutIn() float64 { return c.cutIn }

func cutIn(rpm, amps []float64) float64 {
	if len(rpm) < 2 || amps[0] <= 0 || amps[1] <= amps[0] || rpm[0] <= 0 {
		return rpm[0]
	}
	i1, i2 := amps[0]*amps[0], amps[1]*amps[1]
	n1, n2 := rpm[0]*rpm[0], rpm[1]*rpm[1]
	return math.Min(math.Sqrt((i2-i1)/(i2/n1-i1/n2)), rpm[0])
}

// Amps is the output at an engine speed.
func (c *Curve) Amps(rpm float64) float64 {
	last := len(c.rpm) - 1
	switch {
	case last < 0 || !(rpm > 0) || rpm < c.cutIn:
		return 0
	case rpm < c.rpm[0]:
		return c.amps[0] * (rpm - c.cutIn) / (c.rpm[0] - c.cutIn)
	case rpm >= c.rpm[last]:
		return c.amps[last]
	}
	return c.between.Predict(rpm)
}

// Speed is the lowest engine speed in rpm, from a given one upwards, at which
// the curve gives a current; NaN when no speed does.
func (c *Curve) Speed(amps, fromRPM float64) float64 {
	if len(c.rpm) == 0 || math.IsNaN(amps) {
		return math.NaN()
	}
	at := math.Max(fromRPM, 0)
	if c.Amps(at) >= amps {
		return at
	}
	if at = math.Max(at, c.cutIn); c.Amps(at) >= amps { // the curve begins with a jump
		return at
	}
	for _, rpm := range c.rpm[sort.SearchFloat64s(c.rpm, at):] {
		if c.Amps(rpm) >= amps {
			return c.within(at, rpm, amps)
		}
		at = rpm
	}
	return math.NaN()
}

// within bisects a stretch in which the curve is monotone.
func (c *Curve) within(low, high, amps float64) float64 {
	for range 80 {
		mid := low + (high-low)/2
		if c.Amps(mid) >= amps {
			high = mid
		} else {
			low = mid
		}
	}
	return high
}

// Points samples the curve for a picture: every documented point, and between
// each two so many steps.
func (c *Curve) Points(steps int) (rpm, amps []float64) {
	add := func(n float64) {
		rpm, amps = append(rpm, n), append(amps, c.Amps(n))
	}
	for i, n := range c.rpm {
		if i > 0 {
			for k := 1; k < steps; k++ {
				add(c.rpm[i-1] + (n-c.rpm[i-1])*float64(k)/float64(steps))
			}
		}
		add(n)
	}
	return rpm, amps
}

// OutputA is what a design's charging system gives for good at an engine speed
// (rpm), in amperes; zero without a charging system or with the engine stopped.
func OutputA(d *design.Design, rpm float64) float64 {
	if d == nil {
		return 0
	}
	return Of(&d.Charging).Amps(rpm)
}

// ColdA is the output of a machine that is not hot yet.
func ColdA(d *design.Design, rpm float64) float64 {
	if d == nil {
		return 0
	}
	return Cold(&d.Charging).Amps(rpm)
}

// BreakEven is the lowest engine speed in rpm, from idle upwards, at which the
// output covers a demand in amperes; NaN when no speed does.
func BreakEven(d *design.Design, demandA float64) float64 {
	out := d.Charging.Output
	if len(out) == 0 {
		return math.NaN()
	}
	return Of(&d.Charging).Speed(demandA, d.Charging.IdleRPM.Or(out[0].RPM.Value))
}
