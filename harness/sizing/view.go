package sizing

import (
	"math"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
	"fusewright/harness/network/warm"
)

// view is what the last verdict says of every slot: the wires that it sets,
// their currents, and the fuses around them. It is exact for the choices that
// were judged and an estimate for others.
type view struct {
	s *search
	v *verdict

	wires  [][]*circuit.Wire   // by slot
	sets   [][]*circuit.Branch // by slot: all that it sets
	branch []*circuit.Branch   // by slot: of fuses
	slotOf []int               // by branch: of a wire or fuse; -1 = it is given
	// plugSlot are the slots of plugs by part.
	plugSlot map[*circuit.Part]int
	// unchosen are the plugs that eachPlug has not come to; nil outside it.
	unchosen  map[*circuit.Part]bool
	amps      []float64                // by branch: greatest at nominal over the situations
	corner    []float64                // the same at the worst corner
	guards    circuit.Guards           // by branch
	cold      [][]*circuit.Branch      // by wire: of returns, the fuses whose faults they carry
	terms     map[*warm.Result][]*term // by branch; nil = not worked out
	drops     []*drop
	first     [][]*circuit.Branch         // by wire: the fuses that protect it from below, see findFirst
	shares    map[*circuit.Branch]float64 // by fuse, see longShare
	exclusive *circuit.Exclusive          // nil = not yet worked out
	tuned     int                         // search.tuned when they were found
	// through are the drops by slot whose way leads over it, in order.
	through [][]use
}

func (s *search) look(v *verdict) *view {
	if v.seen == nil {
		v.seen = s.lookAnew(v)
	} else if v.seen.tuned != s.tuned {
		v.seen.findDrops()
	}
	return v.seen
}

func (s *search) lookAnew(v *verdict) *view {
	w := &view{s: s, v: v, guards: v.c.Guards(), plugSlot: map[*circuit.Part]int{}, shares: map[*circuit.Branch]float64{},
		slotOf: slices.Repeat([]int{-1}, len(v.c.Branches)), terms: map[*warm.Result][]*term{},
		wires: make([][]*circuit.Wire, len(s.slots)), sets: make([][]*circuit.Branch, len(s.slots)), branch: make([]*circuit.Branch, len(s.slots)),
		amps: make([]float64, len(v.c.Branches)), corner: make([]float64, len(v.c.Branches)),
		cold: make([][]*circuit.Branch, len(v.c.Wires))}
	for state, results := range v.corners.Results {
		for _, r := range results {
			w.take(corner.State(state), r)
		}
	}
	w.findSlots()
	w.findCold()
	w.findFirst()
	w.findDrops()
	return w
}

// take notes the greatest currents of a result.
func (w *view) take(state corner.State, r *warm.Result) {
	if !r.Usable() {
		return
	}
	for i, a := range r.Solution.BranchA {
		if a = math.Abs(a); math.IsInf(a, 0) {
			continue
		}
		if state == corner.Nominal && a > w.amps[i] {
			w.amps[i] = a
		}
		if a > w.corner[i] {
			w.corner[i] = a
		}
	}
}

// findSlots finds the wires and fuses of the circuit that each slot sets.
func (w *view) findSlots() {
	wires := map[home][]*circuit.Wire{}
	for _, x := range w.v.c.Wires {
		wires[homeOf(x)] = append(wires[homeOf(x)], x)
	}
	for i, s := range w.s.slots {
		part := w.v.c.PartOf(s.owner)
		switch {
		case s.kind == WireSize:
			for _, y := range s.each() {
				w.wires[i] = append(w.wires[i], wires[y.home()]...)
			}
			for _, x := range w.wires[i] {
				w.slotOf[x.Branch.Index] = i
				w.sets[i] = append(w.sets[i], x.Branch)
			}
		case part == nil:
		case s.kind == Fuse:
			if b := fuseBranch(part, s.way); b != nil {
				w.branch[i], w.slotOf[b.Index], w.sets[i] = b, i, []*circuit.Branch{b}
			}
		default:
			w.sets[i] = part.Branches
			if s.kind == Plug {
				w.plugSlot[part] = i
			}
		}
	}
}

// fuseBranch is the fuse of a part, of a block that of a way; nil = none.
func fuseBranch(part *circuit.Part, way *design.Way) *circuit.Branch {
	for _, b := range part.Branches {
		if b.Kind == circuit.FuseBranch && (way == nil || b.B == part.Terminal(way.Number).Node) {
			return b
		}
	}
	return nil
}

// findCold gives every return the fuses nearest above the loads and coils whose
// current it brings back, and those through which a battery feeds a short in a charger.
func (w *view) findCold() {
	linked := w.v.c.Linked()
	for _, p := range w.v.c.Parts {
		if hot, back, ok := p.Draws(); ok {
			fuses, _ := w.guards.Above(hot.Node)
			w.cool(back.Node, fuses)
		}
		if out := p.Output(); out != nil {
			fuses, _ := linked.Into(out.A)
			w.cool(out.B, fuses)
		}
	}
}

// cool gives fuses to the returns below a node.
func (w *view) cool(back *circuit.Node, fuses []*circuit.Branch) {
	seen := map[*circuit.Node]bool{back: true}
	for queue := []*circuit.Node{back}; len(queue) > 0; queue = queue[1:] {
		for _, b := range queue[0].ReturnsBy() {
			if b.Wire != nil {
				w.bringsBack(b.Wire.Index, fuses)
			}
			if !seen[b.B] {
				seen[b.B] = true
				queue = append(queue, b.B)
			}
		}
	}
}

// bringsBack gives a return the fuses that it has not yet, but for those of a battery whose
// negative cable it is: what that feeds is home before.
func (w *view) bringsBack(wire int, fuses []*circuit.Branch) {
	for _, f := range fuses {
		if !slices.Contains(w.cold[wire], f) && !w.v.c.BeyondHome(f.A, w.v.c.Wires[wire].Branch) {
			w.cold[wire] = append(w.cold[wire], f)
		}
	}
}

// above are the nearest fuses of a branch, itself if it is one.
func (w *view) above(b *circuit.Branch) []*circuit.Branch {
	return w.guards.Nearest(b)
}

// rating is the present rating of a fuse branch; 0 = not known.
func (w *view) rating(b *circuit.Branch) float64 {
	if i := w.slotOf[b.Index]; i >= 0 {
		return w.s.slots[i].fuses[w.s.slots[i].at].rating.RatingA
	}
	if b.Fuse == nil || b.Fuse.Rating == nil {
		return 0
	}
	return b.Fuse.Rating.RatingA
}

// throughA is the most that a fuse lets through for good: its rating, or a
// smaller one above it; of several fuses in parallel the largest. Zero = none.
func (w *view) throughA(fuses []*circuit.Branch) float64 {
	most := 0.0
	for _, b := range fuses {
		r := w.rating(b)
		if up := w.throughA(w.guards[b.Index].Fuses); up > 0 && up < r {
			r = up
		}
		most = math.Max(most, r)
	}
	return most
}

// guardA is what the fuses around a wire let through for good; zero = none.
func (w *view) guardA(x *circuit.Wire) float64 {
	if x.Role == circuit.ReturnWire || x.Role == circuit.CoilReturnWire {
		return w.throughA(w.cold[x.Index])
	}
	if first := w.first[x.Index]; first != nil {
		sum := 0.0
		for _, f := range first {
			sum += w.rating(f)
		}
		return sum
	}
	if g := w.guards[x.Branch.Index]; !g.Bare {
		return w.throughA(g.Fuses)
	}
	return 0
}

// findFirst finds the fuses that protect a wire before them: those first below it,
// where no fuse is above it, or where it leads to fuses alone and is no longer than
// a fuse may be from its source.
func (w *view) findFirst() {
	w.first = make([][]*circuit.Branch, len(w.v.c.Wires))
	for _, x := range w.v.c.Wires {
		if x.Role.Returns() || !x.Branch.Feeds() {
			continue
		}
		above := w.guards[x.Branch.Index]
		if !above.Bare && !w.v.c.Tail(x) {
			continue
		}
		for _, f := range w.fusesBelow(x.Branch) {
			if at := w.guards[f.Index]; at.Bare == above.Bare && slices.Equal(at.Fuses, above.Fuses) {
				w.first[x.Index] = append(w.first[x.Index], f)
			}
		}
	}
}
