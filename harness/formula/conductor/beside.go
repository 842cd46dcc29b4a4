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

// Heat is how a wire gets as hot as it does.
type Heat struct {
	AloneA     float64 // the current that warms it as much by itself in free air
	AloneC     float64 // how hot that makes it
	RiseK      float64 // what the others add
	ConductorC float64
}

// ConductorC is the steady temperature at a current in amperes of a wire whose
// temperature by itself is alone(current): see Heat.
func (b Beside) ConductorC(ambientC, currentA float64, alone func(amps float64) float64) float64 {
	return b.Heat(ambientC, currentA, alone).ConductorC
}

// Heat is that of a wire as warm as its place, and by its own heat
// above that; no cooler than by itself. Alone has the resistance of a wire that is cooler
// by what the others warm it, so the current is raised to the same heat.
func (b Beside) Heat(ambientC, currentA float64, alone func(amps float64) float64) Heat {
	currentA = math.Abs(currentA)
	amps := currentA / b.Own
	h := Heat{AloneA: math.Max(amps, currentA)}
	if b.RiseK != 0 {
		c := ambientC // of the wire by itself
		for range 3 { // each brings thirty times nearer
			h.AloneA = amps * math.Sqrt(AtTemperature(1, c+b.RiseK)/AtTemperature(1, c))
			c = alone(h.AloneA)
		}
		h.AloneC, h.RiseK, h.ConductorC = c, b.RiseK, c+b.RiseK
		if b.Own <= 1 {
			return h
		}
		if c = alone(currentA); c <= h.ConductorC {
			return h
		}
		h.AloneA, h.RiseK = currentA, 0
	}
	h.AloneC = alone(h.AloneA)
	h.ConductorC = h.AloneC
	return h
}
