package protection

import (
	"math"
	"slices"

	"fusewright/harness/formula/fusing"
	"fusewright/harness/network/circuit"
	"fusewright/harness/study/fault"
	"fusewright/library"
)

var noInrush library.Inrush

// protected is one wire of a fuse.
type protected struct {
	wire     *circuit.Wire
	faultA   float64
	parallel bool
}

// gathered is what belongs to each fuse, by branch index.
type gathered struct {
	guards  circuit.Guards
	linked  *circuit.Linked // nil = one battery
	rings   *circuit.Rings  // nil = none
	wires   [][]protected
	loads   [][]*circuit.Branch
	behind  []float64                          // greatest short-circuit current behind it
	feeders map[*fault.Short][]*circuit.Branch // by short inside a part
}

// gather goes through the wires and loads once: each belongs to the nearest
// devices above it, returns to those of the loads whose current they bring back.
func gather(c *circuit.Circuit, faults *fault.Study) *gathered {
	n := len(c.Branches)
	g := &gathered{guards: c.Guards(), linked: c.Linked(), rings: c.Rings(), wires: make([][]protected, n), loads: make([][]*circuit.Branch, n),
		behind: make([]float64, n), feeders: map[*fault.Short][]*circuit.Branch{}}
	for _, w := range c.Wires {
		if w.Branch.Feeds() {
			g.feed(w, faults)
		} else {
			g.back(w, faults)
		}
	}
	g.banks(c, faults)
	for _, b := range c.Branches {
		if b.Load == nil || b.Load.Load == nil || b.Load.Standby {
			continue
		}
		if plus := b.Part.Terminal("+"); plus != nil {
			fuses, _ := g.guards.Above(plus.Node)
			for _, f := range fuses {
				g.loads[f.Index] = append(g.loads[f.Index], b)
			}
		}
	}
	for _, b := range c.Branches {
		if b.Kind == circuit.FuseBranch {
			g.behind[b.Index] = math.Max(g.behind[b.Index], g.nodeFault(b, faults))
		}
	}
	return g
}

// feed gives a feed wire to the devices nearest above it, each with the greatest
// current of a short anywhere along it: one just behind its near end still drives
// that through a piece of it, and a short on the way is between the two ends.
func (g *gathered) feed(w *circuit.Wire, faults *fault.Study) {
	at := g.guards[w.Branch.Index]
	far := faults.FarEnd(w)
	if far == nil || !far.Fed {
		return
	}
	fuses := at.Fuses
	if g.linked != nil {
		fuses = slices.Concat(fuses, g.linked.Fuses[w.Branch.Index])
	}
	if g.rings.In(w.Branch) {
		for _, f := range g.rings.Far[w.Branch.Index] {
			if !slices.Contains(fuses, f) {
				fuses = append(slices.Clip(fuses), f)
			}
		}
	}
	for _, f := range fuses {
		most := 0.0
		for _, sh := range faults.OfWire(w) {
			most = math.Max(most, g.through(sh, f))
		}
		g.wires[f.Index] = append(g.wires[f.Index], protected{w, most, len(at.Fuses) > 1 || at.Bare})
	}
	for _, sh := range faults.OfWire(w) {
		for _, f := range fuses {
			if sh.Where == fault.NearEnd && f.B == w.From.Node {
				g.behind[f.Index] = math.Max(g.behind[f.Index], g.through(sh, f))
			}
		}
	}
}

// through is the greatest current of a short through a device: what the study
// found when the device is the one that opens, else all of it; in a ring, nothing passes one that was not met.
func (g *gathered) through(sh *fault.Short, f *circuit.Branch) float64 {
	r := sh.Results[fault.Strong]
	for _, x := range r.Through {
		if x.Device == f {
			return x.Amps
		}
	}
	switch {
	case r.Device == f:
		return r.DeviceA
	case g.rings != nil:
		return 0
	}
	return r.CurrentA
}

// back gives a return wire to the devices of the loads whose shorts it carries,
// each with its greatest current.
func (g *gathered) back(w *circuit.Wire, faults *fault.Study) {
	for _, sh := range faults.OfWire(w) {
		if !sh.Fed {
			continue
		}
		for _, f := range g.feedersOf(sh) {
			list := g.wires[f.Index]
			if n := len(list); n > 0 && list[n-1].wire == w {
				list[n-1].faultA = math.Max(list[n-1].faultA, g.through(sh, f))
				continue
			}
			g.wires[f.Index] = append(list, protected{w, g.through(sh, f), false})
		}
	}
}

// feedersOf are the nearest fuses that feed a short inside a part, which returns may have in common
// with others.
func (g *gathered) feedersOf(sh *fault.Short) []*circuit.Branch {
	fuses, known := g.feeders[sh]
	if !known {
		fuses = sh.Feeders(g.guards, g.linked)
		g.feeders[sh] = fuses
	}
	return fuses
}

// nodeFault is the greatest current at a wire that starts further behind a fuse
// with no other between; the wires of the fuse give it.
func (g *gathered) nodeFault(b *circuit.Branch, faults *fault.Study) float64 {
	most := 0.0
	for _, p := range g.wires[b.Index] {
		for _, sh := range faults.OfWire(p.wire) {
			if sh.Fed && (sh.Part == nil || slices.Contains(g.feedersOf(sh), b)) {
				most = math.Max(most, g.through(sh, b))
			}
		}
	}
	return most
}

// wire compares a device with a wire.
func (f *Fuse) wire(p protected, faults *fault.Study) Wire {
	d := faults.Wires.Damage(p.wire)
	key := wireKey{kindOf(f.Device), d, p.faultA, p.wire.Spec.Parallel}
	return Wire{Wire: p.wire, Parallel: p.parallel, Missing: d.Missing,
		Protection: faults.Wires.Kept(key, func() any {
			return fusing.ProtectsWire(f.Device, faults.Wires.Stands(p.wire), p.faultA)
		}).(fusing.Protection)}
}
