package sizing

import (
	"fusewright/harness/circuit"
	"fusewright/library"
)

// fits tells whether a size meets every constraint of a wire slot that does not
// hang on other sizes: mechanical minimum, crimp parts, heat, and the fuses as
// they are now. Share takes currents at a part of the estimate; 1 = all.
func (w *view) fits(i, z int, share float64) bool {
	s := w.s.slots[i]
	size := s.sizes[z]
	for _, x := range w.wires[i] {
		if size.AreaMm2 < w.leastMm2(x)*0.995 || !w.crimps(x, size, w.amps[x.Branch.Index]*share) ||
			!w.carries(x, size, share) || !w.fused(x, size) {
			return false
		}
	}
	return true
}

// carries tells whether a wire would carry its currents, at nominal and at the
// worst corner, at a share of the estimate. Where the place is as hot as the
// insulation no size does: that is a finding of its own.
func (w *view) carries(x *circuit.Wire, z *library.WireSize, share float64) bool {
	allowed := w.allowedA(x, z, 0)
	if allowed <= 0 {
		return true
	}
	hot := w.allowedA(x, z, w.aboveK())
	return allowed >= w.amps[x.Branch.Index]*share && (hot <= 0 || hot >= w.corner[x.Branch.Index]*share)
}

// aboveK is how much hotter every place is at the corner.
func (w *view) aboveK() float64 { return w.v.corners.Hot.AboveK }

// fused tells whether the fuses around a wire, as they are now, would protect
// it by their ratings.
func (w *view) fused(x *circuit.Wire, z *library.WireSize) bool {
	allowed := w.allowedA(x, z, 0)
	return allowed <= 0 || w.s.d.Practice.FuseWireShare*allowed >= w.guardA(x)
}

// leastMm2 is the mechanical minimum of a wire: more where it is bent in use.
func (w *view) leastMm2(x *circuit.Wire) float64 {
	p := w.s.d.Practice
	if bends(x) && p.MinFlexMm2 > p.MinMm2 {
		return p.MinFlexMm2
	}
	return p.MinMm2
}

func bends(x *circuit.Wire) bool {
	for _, b := range x.Route {
		if b.Run.Flexes {
			return true
		}
	}
	for _, t := range []*circuit.Terminal{x.From, x.To} {
		if len(x.Route) > 0 && t.Part.Place != nil && t.Part.Place.Moves {
			return true
		}
	}
	return false
}

// crimps tells whether both ends take a size and its current.
func (w *view) crimps(x *circuit.Wire, z *library.WireSize, amps float64) bool {
	e := w.ends(x, z)
	return e[0].takes(amps) && e[1].takes(amps)
}

// sized is a wire in a size.
type sized struct {
	wire *circuit.Wire
	size *library.WireSize
}

// ends are what ends a wire in a size, remembered.
func (w *view) ends(x *circuit.Wire, z *library.WireSize) [2]end {
	e, ok := w.fit[sized{x, z}]
	if !ok {
		e = [2]end{w.crimp(x.Spec.FromEnd, x.Spec.FromKind, x.From.Kind, z),
			w.crimp(x.Spec.ToEnd, x.Spec.ToKind, x.To.Kind, z)}
		w.fit[sized{x, z}] = e
	}
	return e
}

// end is what ends a wire: a part, nothing known, or nothing that fits.
type end struct {
	part *library.Terminal
	none bool // a kind is wanted that the library lacks for the size
}

func (e end) takes(amps float64) bool {
	return !e.none && (e.part == nil || e.part.MaxA <= 0 || e.part.MaxA >= amps)
}

// crimp is the part for an end: the one the design names, else one of the kind
// it asks for, else one of the kind the connected part has.
func (w *view) crimp(named *library.Terminal, asked, kind string, z *library.WireSize) end {
	if named != nil && asked == "" {
		bad := z.AreaMm2 < named.MinMm2*0.99 || z.AreaMm2 > named.MaxMm2*1.01
		return end{named, bad}
	}
	if asked != "" {
		kind = asked
	}
	if kind == "" {
		return end{}
	}
	t := w.s.terminal(kind, z.AreaMm2)
	return end{t, t == nil}
}
