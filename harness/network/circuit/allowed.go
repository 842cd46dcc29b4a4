package circuit

import (
	"fusewright/harness/formula/bundle"
	"fusewright/harness/formula/conductor"
	"fusewright/library"
)

// InPlace is a wire where it is laid.
type InPlace struct {
	conductor.Allowed
	At conductor.Conditions
	In *Bundle // the run that reduces its current most; nil outside runs
	// Pulse is what its time on makes of what it may carry for good; the allowed
	// currents are those while it is on.
	Pulse bundle.Pulse
}

// InPlace rates a wire in a size, its own or another, at the hottest point that it
// meets and in the run of its route that leaves least of its current. Hotter by
// aboveK, where the design does not give the ambient, it is rated as in the worst
// case (conductor.Rater.AllowedAtWorst). A wire that is on for a time may carry more
// in that time than for good.
func (w *Wire) InPlace(r *conductor.Rater, size *library.WireSize, aboveK float64) InPlace {
	allowed := r.Allowed
	if w.AmbientKnown {
		aboveK = 0
	}
	if aboveK > 0 {
		allowed = r.AllowedAtWorst
	}
	alone := conductor.Conditions{Type: w.Spec.Type, Size: size, AmbientC: w.AmbientC + aboveK}
	least := InPlace{Allowed: allowed(alone), At: alone}
	for _, b := range w.Route {
		at := alone
		at.Beside = b.BesideOf(w)
		if b.Run.Cover != nil {
			at.CoverFactor = b.Run.Cover.CurrentFactor
		}
		if a := allowed(at); a.Share() < least.Share() || least.In == nil && a.Beside.RiseK > 0 {
			least = InPlace{Allowed: a, At: at, In: b}
		}
	}
	if w.Branch.TimeOn.Timed() && least.Known {
		least.Pulse = w.Branch.TimeOn.pulse(r.Insulated(alone.Type, size), alone.AmbientC, least.LimitC)
		least.Allowed = least.For(least.Pulse.MostA)
	}
	return least
}
