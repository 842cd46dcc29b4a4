package conductor

import "math"

// Beside is what the wires laid beside a wire make of it. The zero value is none
// that is known.
type Beside struct {
	// Share is what it may carry of the current that it may carry alone, 0..1.
	Share float64
	// RiseK is by how much the wires that do not carry its current warm the place
	// where it lies.
	RiseK float64
	// Own is what is left of the lone wire's current, over 0, by what warms it in the
	// bundle with its own current; above 1 where the others spread its heat.
	Own float64
	// Cold is Own where the wires that do not carry its current carry nothing: they give
	// no heat then, and in a fault take no less. 0 = not known.
	Cold float64
	// Held is what a published factor leaves of the heat balance's share: what the wire
	// stands in a fault is less by it too; 0 = nothing published is lower.
	Held float64
}

// Alike is beside wires that are all loaded as the wire itself, whatever it carries:
// what a published factor stands for.
func Alike(share float64) Beside { return Beside{Share: share, Own: share, Cold: share} }

// AtMost is beside wires that leave no more than a share by a published factor. How hot the
// wire gets is not told by that.
func (b Beside) AtMost(share float64) Beside {
	if share < b.Share {
		b.Held, b.Share = share/b.Share, share
	}
	return b
}

// held is what a published factor leaves of what the heat balance does.
func (b Beside) held() float64 {
	if b.Held > 0 {
		return b.Held
	}
	return 1
}

// Known tells that the wires beside are known.
func (b Beside) Known() bool { return b.Own > 0 }

// ConductorC is the steady temperature at a current in amperes of a wire whose
// temperature by itself is alone(current): as warm as its place, and by its own heat
// above that; no cooler than by itself. Alone has the resistance of a wire that is cooler
// by what the others warm it, so the current is raised to the same heat.
func (b Beside) ConductorC(ambientC, currentA float64, alone func(amps float64) float64) float64 {
	currentA = math.Abs(currentA)
	amps := currentA / b.Own
	if b.RiseK == 0 {
		return alone(math.Max(amps, currentA))
	}
	c := ambientC // of the wire by itself
	for range 3 { // each brings thirty times nearer
		c = alone(amps * math.Sqrt(AtTemperature(1, c+b.RiseK)/AtTemperature(1, c)))
	}
	if c += b.RiseK; b.Own > 1 {
		return math.Max(c, alone(currentA))
	}
	return c
}
