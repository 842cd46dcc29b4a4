package diagnosis

import (
	"math"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/workshop/bench"
	"fusewright/harness/workshop/bench/readings"
	"fusewright/library"
)

// state is the circuit as it is at some readings: a situation with what stands at the posts.
type state struct {
	situation *design.Situation
	opt       solve.Options
	label     string
	key       string // see stateKey
}

// sensor is one reading as the model sees it.
type sensor struct {
	*readings.Placed
	probe *bench.Probe
	state int     // of the model; -1 = read without power
	y     float64 // what was read, in base units; resistances no more than openOhm
	gain  int     // which scale of the meter: its share of error is common to all of a scale
	// passed tells that it is within its bounds.
	passed bool
	flip   bool // the points of a single span stand against the flow
}

// The scales of a meter.
const (
	volts = iota
	ohms
	amps
	clamp
	supply // the supply's own display at first power
	gains
)

// A resistance beyond these counts as open, at wires and at coils.
const (
	openOhm     = 200.0
	openCoilOhm = 20e3
)

// most is where a sensor's resistance ends.
func (s *sensor) most() float64 {
	switch {
	case s.probe.Coil != nil:
		return openCoilOhm
	case s.probe.Wire != nil || s.probe.Return != nil:
		return openOhm
	}
	return math.Inf(1)
}

// sign turns a single span to the way in which its nominal reading is positive.
func (s *sensor) sign() float64 {
	if s.flip {
		return -1
	}
	return 1
}

// seen is what the meter shows at an operating point.
func (s *sensor) seen(sol *solve.Solution) float64 {
	if b := s.probe.Amps; b != nil {
		return math.Min(math.Abs(sol.Amps(b)), s.limitA())
	}
	if len(s.probe.Volts) == 1 {
		return s.sign() * spanV(sol, s.probe.Volts[0])
	}
	most := 0.0
	for _, span := range s.probe.Volts {
		most = math.Max(most, math.Abs(spanV(sol, span)))
	}
	return most
}

// limitA is what a supply at first power is set to: it gives no more.
func (s *sensor) limitA() float64 {
	if s.Check != nil && s.Check.SetA > 0 {
		return s.Check.SetA
	}
	return math.Inf(1)
}

// spanV is the voltage between two points, none where one of them floats: the meter drains it.
func spanV(sol *solve.Solution, s bench.Span) float64 {
	v := sol.NodeV[s.Plus.Index] - sol.NodeV[s.Minus.Index]
	if math.IsNaN(v) {
		return 0
	}
	return v
}

// unread are errors beside the meter's own data: the touch of the probes, and a supply that drifts
// between two readings. Common practice, no source.
const (
	touchOhm = 0.05
	driftV   = 0.014
	touchV   = 0.001 // of drops in millivolts

	clampStepA = 0.01 // last place of a clamp
)

// rectangular is the standard deviation of what lies evenly within ±1: 1/√3, JCGM 100:2008, 4.3.7.
var rectangular = 1 / math.Sqrt(3)

// least is the smallest scale of a meter of 1000 counts, by what it reads.
var least = [gains]float64{volts: 0.1, ohms: 100, amps: 1e-4}

// digitsOf is by how much the last digits may be off, and by how much the touch of the probes, at a
// reading near value. The share of the meter is common to all readings of a scale, see share.
func digitsOf(m *library.Meter, scale int, value float64) (digits, touch float64) {
	switch scale {
	case clamp:
		return m.ClampA + clampStepA/2, 0
	case supply:
		return bench.SupplyFixedA, 0
	case ohms:
		touch = touchOhm
	case volts:
		if touch = driftV; math.Abs(value) < 1 {
			touch = touchV
		}
	}
	return (m.Digits + 0.5) * lastPlace(m, value, least[scale]), touch // half a digit is rounded
}

// noise is the standard deviation of what is a reading's own error.
func noise(m *library.Meter, scale int, value float64) float64 {
	digits, touch := digitsOf(m, scale, value)
	return math.Hypot(digits, touch) * rectangular
}

// lastPlace is one digit on the smallest scale that shows a value; smallest is where the scales begin.
func lastPlace(m *library.Meter, value, smallest float64) float64 {
	lead := math.Pow(10, math.Floor(math.Log10(m.Counts)))
	scale := m.Counts / lead * smallest
	for k := 0; k < 12 && scale < math.Abs(value); k++ {
		scale *= 10
	}
	return scale / m.Counts
}

// share is the error that is common to a scale of the meter, as a standard deviation.
func share(m *library.Meter, scale int) float64 {
	return [gains]float64{m.VoltShare, m.OhmShare, m.AmpShare, m.ClampShare, bench.SupplyShare}[scale] * rectangular
}

// ohmsOf is what a sensor without power reads with changes, in ohms.
func (s *sensor) ohmsOf(ohm func(*circuit.Branch, *circuit.Wire) float64) float64 {
	sum := 0.0
	switch {
	case s.probe.Wire != nil:
		w := s.probe.Wire
		whole := w
		if w.Whole != nil {
			whole = w.Whole
		}
		sum = ohm(whole.Branch, w)
	case s.probe.Return != nil:
		for _, b := range s.probe.Return {
			sum += ohm(b, nil)
		}
	case s.probe.Coil != nil:
		siemens := 0.0
		for _, b := range s.probe.Coil.Branches {
			if b.OfCoil() {
				siemens += 1 / ohm(b, nil)
			}
		}
		sum = 1 / siemens
	}
	return math.Min(sum, s.most())
}
