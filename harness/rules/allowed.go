package rules

import (
	"fmt"

	"fusewright/harness/circuit"
	"fusewright/harness/conductor"
)

// allowance is what a wire may carry for good where it is laid.
type allowance struct {
	conductor.Allowed
	in *circuit.Bundle // the run that limits it; nil outside runs
}

// known tells whether the wire has a limit to compare with. A wire whose place
// is as hot as its insulation has none: that is rule insulation-class.
func (a allowance) known() bool { return a.AllowedA > 0 }

// where says what the allowance is for: "at 45 °C with 6 loaded wires in run ...".
func (a allowance) where(w *circuit.Wire) string {
	text := "at " + celsius(w.AmbientC)
	if a.in != nil && a.in.Loaded > 1 {
		text += fmt.Sprintf(" among %d loaded wires in run %q", a.in.Loaded, a.in.Run.Name)
	}
	return text + ", by the " + a.Governs
}

// findAllowances rates every wire at the hottest point it meets and in the run
// of its route that reduces it most.
func (f *facts) findAllowances() {
	rater := conductor.NewRater(f.d.Library, f.practice)
	f.limits = make([]allowance, len(f.c.Wires))
	for i, w := range f.c.Wires {
		base := conductor.Conditions{Type: w.Spec.Type, Size: w.Spec.Size, AmbientC: w.AmbientC}
		best := allowance{Allowed: rater.Allowed(base)}
		for _, b := range w.Route {
			at := base
			at.Loaded = b.Loaded
			if b.Run.Cover != nil {
				at.CoverFactor = b.Run.Cover.CurrentFactor
			}
			if a := rater.Allowed(at); a.AllowedA < best.AllowedA {
				best = allowance{a, b}
			}
		}
		f.limits[i] = best
	}
}

// allowed is the allowance of a wire.
func (f *facts) allowed(w *circuit.Wire) allowance { return f.limits[w.Index] }
