// Package warming solves a circuit with its wires as warm as their currents
// make them. It joins package solve to package conductor and judges nothing.
package warming

import (
	"math"

	"fusewright/harness/circuit"
	"fusewright/harness/conductor"
	"fusewright/harness/solve"
)

// Solve solves every situation with the wires as warm as their worst
// current makes them: first with every conductor at the ambient of its hottest
// place, then at the temperature that the currents found give. One round is
// enough for a check: a wire within its limits changes its resistance by less
// than a third and its current by far less.
func Solve(c *circuit.Circuit) []*solve.Solution {
	first := solve.All(c, solve.Options{WireTempC: func(w *circuit.Wire) float64 { return w.AmbientC }})
	temps := conductorTemps(c, first)
	return solve.All(c, solve.Options{WireTempC: func(w *circuit.Wire) float64 { return temps[w.Index] }})
}

// conductorTemps is the steady temperature in °C of each conductor at its
// largest current over the converged solutions, by wire index. A wire past
// its insulation class counts as at the class: it is a finding of its own, and
// what it would do beyond is no longer a state of use.
func conductorTemps(c *circuit.Circuit, sols []*solve.Solution) []float64 {
	rater := conductor.NewRater(c.Design.Library, c.Design.Practice)
	temps := make([]float64, len(c.Wires))
	for i, w := range c.Wires {
		temps[i] = w.AmbientC
		worst := 0.0
		for _, s := range sols {
			if a := math.Abs(s.Amps(w.Branch)); s.Status == solve.Converged && a > worst {
				worst = a
			}
		}
		if w.Spec.Type == nil || w.Spec.Size == nil {
			continue
		}
		at := hardest(w)
		// Heat goes with the square of the current: below a twentieth of the
		// allowed current the rise is under a kelvin.
		if worst < rater.Allowed(at).AllowedA/20 {
			continue
		}
		temps[i] = math.Min(rater.ConductorC(at, worst), math.Max(w.Spec.Type.ClassC, w.AmbientC))
	}
	return temps
}

// hardest is a wire in the fullest and most covered run of its route.
func hardest(w *circuit.Wire) conductor.Conditions {
	at := conductor.Conditions{Type: w.Spec.Type, Size: w.Spec.Size, AmbientC: w.AmbientC}
	for _, b := range w.Route {
		at.Loaded = max(at.Loaded, b.Loaded)
		if cover := b.Run.Cover; cover != nil && (at.CoverFactor == 0 || cover.CurrentFactor < at.CoverFactor) {
			at.CoverFactor = cover.CurrentFactor
		}
	}
	return at
}
