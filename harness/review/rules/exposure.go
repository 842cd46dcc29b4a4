package rules

import (
	"math"

	"fusewright/harness/network/circuit"
)

// exposure is what lies downstream of an unfused node.
type exposure struct {
	fused   bool    // some way reaches a fuse
	farM    float64 // longest conductor to the first fuse of such ways
	unfused bool    // some way reaches a load, a coil or a loose end without a fuse
}

// unfusedWire is a wire that no fuse protects, with what lies below it. Only
// the first of a chain is listed: the others have the same cause.
type unfusedWire struct {
	wire *circuit.Wire
	exposure
	lengthM float64 // from the source to the far end of this wire's exposure
}

// unfusedWires walks from the battery down to the first fuses. It lists the
// first wires below which nothing is fused, and the first wires at the source
// that do lead to fuses, so that their distance can be judged. Starter cables are part of the source.
func (f *facts) unfusedWires() []unfusedWire {
	if f.positive == nil {
		return nil
	}
	w := &exposureWalk{f: f, known: map[*circuit.Node]exposure{}}
	for _, post := range f.c.Posts() {
		w.list(post, false)
	}
	m := &exposureWalk{f: f, known: map[*circuit.Node]exposure{}, machine: true}
	for _, b := range f.c.Branches {
		if f.ofMachine(b) && f.guardMachine[b].open() {
			m.list(b.A, false)
		}
	}
	return append(w.found, m.found...)
}

type exposureWalk struct {
	f     *facts
	known map[*circuit.Node]exposure
	seen  map[*circuit.Node]bool
	found []unfusedWire

	machine bool // what the charging system's own stud feeds beside the batteries
}

// list collects wires below a node; listed tells that a wire above was already
// listed as leading to fuses.
func (w *exposureWalk) list(n *circuit.Node, listed bool) {
	if w.seen == nil {
		w.seen = map[*circuit.Node]bool{}
	}
	if w.seen[n] {
		return
	}
	w.seen[n] = true
	for _, b := range n.Branches {
		if !w.follows(b, n) || b.Kind == circuit.FuseBranch {
			continue
		}
		if b.Wire == nil || w.f.bearsMachine(b.Wire) {
			w.on(b.B, listed)
			continue
		}
		if w.f.cranks(b.Wire) { // needs no fuse; what branches off it begins anew
			w.on(b.B, false)
			continue
		}
		e := w.exposure(b.B)
		if !e.fused {
			w.found = append(w.found, unfusedWire{b.Wire, e, b.Wire.LengthM})
			continue
		}
		if !listed {
			w.found = append(w.found, unfusedWire{b.Wire, e, b.Wire.LengthM + e.farM})
		}
		w.on(b.B, true)
	}
}

// on is list of what lies further down; a further battery's post has its own.
func (w *exposureWalk) on(n *circuit.Node, listed bool) {
	if !w.f.c.IsPost(n) {
		w.list(n, listed)
	}
}

// follows tells whether a branch leads downstream from a node. The factory's wiring is
// not looked at: of a tap whose fuse is not given data-missing asks.
func (w *exposureWalk) follows(b *circuit.Branch, from *circuit.Node) bool {
	factory := b.Part != nil && b.Part.Kind == circuit.Tap
	return b.A == from && b.Feeds() && !factory && w.machine == w.f.ofMachine(b) && (b.Wire == nil || !isReturn(b.Wire))
}

// exposure works out what lies below a node. A node met again on the way down
// (parts that feed each other) counts as nothing.
func (w *exposureWalk) exposure(n *circuit.Node) exposure {
	if e, ok := w.known[n]; ok {
		return e
	}
	w.known[n] = exposure{}
	if w.f.c.IsPost(n) {
		w.known[n] = exposure{unfused: true}
		return w.known[n]
	}
	var e exposure
	onward := false
	for _, b := range n.Branches {
		switch {
		case b.A == n && (b.Kind == circuit.LoadBranch || w.f.coils[b] != nil):
			e.unfused, onward = true, true
		case !w.follows(b, n):
		case b.Kind == circuit.FuseBranch:
			e.fused, onward = true, true
		default:
			e = e.join(w.exposure(b.B), lengthOf(b))
			onward = true
		}
	}
	if !onward {
		e.unfused = true
	}
	w.known[n] = e
	return e
}

func lengthOf(b *circuit.Branch) float64 {
	if b.Wire == nil {
		return 0
	}
	return b.Wire.LengthM
}

// join adds what lies below a branch of a length.
func (e exposure) join(sub exposure, lengthM float64) exposure {
	e.unfused = e.unfused || sub.unfused
	if sub.fused {
		e.fused = true
		e.farM = math.Max(e.farM, lengthM+sub.farM)
	}
	return e
}
