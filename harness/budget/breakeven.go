package budget

import (
	"math"

	"fusewright/harness/design"
)

// BreakEvenRPM is the lowest engine speed in rpm, from idle upwards, at which
// the hot charging output covers a demand in amperes; NaN when no speed of the
// curve does. Between the points of the curve the output runs straight.
func BreakEvenRPM(d *design.Design, demandA float64) float64 {
	out := d.Charging.Output
	if len(out) == 0 || math.IsNaN(demandA) {
		return math.NaN()
	}
	at := startRPM(d)
	if OutputA(d, at) >= demandA {
		return at
	}
	for _, p := range out {
		rpm := p.RPM.Value
		if rpm <= at {
			continue
		}
		from, to := OutputA(d, at), OutputA(d, rpm)
		if to >= demandA {
			return at + (rpm-at)*(demandA-from)/(to-from)
		}
		at = rpm
	}
	return math.NaN()
}

// startRPM is the slowest speed at which the engine runs.
func startRPM(d *design.Design) float64 {
	if d.Charging.IdleRPM.Given() {
		return d.Charging.IdleRPM.Value
	}
	return d.Charging.Output[0].RPM.Value
}
