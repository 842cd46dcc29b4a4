package sizing

import (
	"slices"

	"fusewright/harness/network/circuit"
	"fusewright/library"
)

// fits tells whether a size meets every constraint of a wire slot that does not
// hang on other sizes: mechanical minimum, crimp parts, heat, and the fuses as
// they are now.
func (w *view) fits(i, z int) bool {
	size := w.s.slots[i].sizes[z]
	return !slices.ContainsFunc(w.wires[i], func(x *circuit.Wire) bool {
		return !w.crimps(x, size, 1) || !w.stands(x, size, 1) || !w.fused(x, size)
	})
}

// stands tells whether a wire is thick enough for its use, more where it is bent,
// and would carry its current at nominal, at a share of the estimate. Where the place is as hot as the insulation no size does: that is
// a finding of its own.
func (w *view) stands(x *circuit.Wire, z *library.WireSize, share float64) bool {
	least := w.s.d.Practice.MinMm2
	if bends(x) {
		least = max(least, w.s.d.Practice.MinFlexMm2)
	}
	allowed := w.allowedA(x, z)
	return z.AreaMm2 >= least*0.995 && (allowed <= 0 || allowed >= w.amps[x.Branch.Index]*share)
}

// thicken gives wires that do not stand their current the next size that does; true
// when it changed any.
func (w *view) thicken() (changed bool) {
	for i, s := range w.s.slots {
		if s.kind != WireSize {
			continue
		}
		was := s.at
		for z := was; z < s.count(); z++ {
			s.set(z)
			if !slices.ContainsFunc(w.wires[i], func(x *circuit.Wire) bool { return !w.stands(x, s.sizes[z], 1) }) {
				break
			}
		}
		changed = changed || s.at != was
	}
	return changed
}

// allowedA is what a wire would carry for good in a size where it is laid: the
// least over its runs, as the rules have it, beside the other wires as they are.
func (w *view) allowedA(x *circuit.Wire, z *library.WireSize) float64 {
	p := w.piece(x, z)
	if p.rated != w {
		p.rated, p.allowedA = w, x.InPlace(w.s.rater, z, 0).AllowedA
	}
	return p.allowedA
}

// fused tells whether the fuses around a wire, as they are now, would protect
// it by their ratings.
func (w *view) fused(x *circuit.Wire, z *library.WireSize) bool {
	allowed := w.allowedA(x, z)
	return allowed <= 0 || w.s.d.Practice.FuseWireShare*allowed >= w.guardA(x)
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

// crimps tells whether both ends take a size and a share of its current; what is still to be
// chosen there will.
func (w *view) crimps(x *circuit.Wire, z *library.WireSize, share float64) bool {
	amps, corner := w.amps[x.Branch.Index]*share, w.corner[x.Branch.Index]*share
	e := w.ends(x, z)
	poles := w.poles(x, z)
	for i, p := range x.Poles {
		if !w.unchosen[p.Inline.Part] && !poles[i].takes(amps, corner) {
			return false
		}
	}
	return (w.unchosen[x.From.Part] || e[0].takes(amps, corner)) && (w.unchosen[x.To.Part] || e[1].takes(amps, corner))
}

// poles are the contacts of connectors that part a wire in a size.
func (w *view) poles(x *circuit.Wire, z *library.WireSize) (list []end) {
	for _, p := range x.Poles {
		family := w.plugOf(p.Inline.Part)
		e := w.crimp(nil, "", family.PinKind, family, z)
		e.keep = family.Share(p.Inline.Part.AmbientC())
		list = append(list, e)
	}
	return list
}

// sized is what decides what a wire adds up to: its size, and the parts on its
// ends or what they are chosen by.
type sized struct {
	size  *library.WireSize
	plugs [2]*library.Connector
	kinds [2]string // of the parts connected
	parts [2]*library.Terminal
}

// ends are what ends a wire in a size.
func (w *view) ends(x *circuit.Wire, z *library.WireSize) [2]end { return w.piece(x, z).ends }

// piece is a wire in a size with the plugs as they are now, remembered.
func (w *view) piece(x *circuit.Wire, z *library.WireSize) *piece {
	key := sized{size: z, plugs: [2]*library.Connector{w.plugOf(x.From.Part), w.plugOf(x.To.Part)},
		kinds: [2]string{x.From.Kind, x.To.Kind}}
	return w.s.remembered(x, key, func() [2]end {
		ends := [2]end{w.crimp(x.Spec.FromEnd, x.Spec.FromKind, x.From.Kind, key.plugs[0], z),
			w.crimp(x.Spec.ToEnd, x.Spec.ToKind, x.To.Kind, key.plugs[1], z)}
		for i, at := range []*circuit.Terminal{x.From, x.To} {
			ends[i].none = ends[i].none || at.LeadMm2 > 0 && ends[i].plug == nil && z.AreaMm2 > at.LeadMm2*1.01
			if ends[i].plug != nil {
				ends[i].keep = ends[i].plug.Share(at.Part.AmbientC())
			}
		}
		return ends
	})
}

// plugOf is the connector family at a part as it is chosen now; nil = none.
func (w *view) plugOf(p *circuit.Part) *library.Connector {
	if p.Plug == nil {
		return nil
	}
	if i, ok := w.plugSlot[p]; ok {
		s := w.s.slots[i]
		return s.plugs[s.at]
	}
	return p.Plug.Family
}

// end is what ends a wire: a part, nothing known, or nothing that fits.
type end struct {
	part *library.Terminal
	plug *library.Connector // of which it is a contact
	keep float64            // share of its ratings that a plug keeps in its place
	none bool               // a kind is wanted that the library lacks for the size
}

// takes tells whether an end bears a current: at nominal, and at the worst
// corner where it is a contact of a plug, as the rules have it.
func (e end) takes(amps, corner float64) bool {
	if e.none {
		return false
	}
	if e.plug != nil {
		return e.keep*e.plug.MaxA >= corner && (e.part == nil || e.part.MaxA <= 0 || e.keep*e.part.MaxA >= corner)
	}
	return e.part == nil || e.part.MaxA <= 0 || e.part.MaxA >= amps
}

// crimp is the part for an end: the one the design names, else one of the kind
// it asks for, else the contact of the plug, else one of the kind the connected
// part has.
func (w *view) crimp(named *library.Terminal, asked, kind string, plug *library.Connector, z *library.WireSize) end {
	outside := plug != nil && (z.AreaMm2 < plug.MinMm2*0.99 || z.AreaMm2 > plug.MaxMm2*1.01)
	if named != nil && asked == "" {
		bad := z.AreaMm2 < named.MinMm2*0.99 || z.AreaMm2 > named.MaxMm2*1.01
		return end{part: named, plug: plug, none: bad || outside}
	}
	if plug != nil {
		kind = plug.PinKind
	}
	if asked != "" {
		kind = asked
	}
	if kind == "" {
		return end{}
	}
	t := w.s.d.Library.TerminalFor(kind, z.AreaMm2)
	return end{part: t, plug: plug, none: t == nil || outside}
}
