package sizing

import (
	"math"
	"slices"

	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
)

// Limits of the proof: beyond them the heuristic's answer stands unproven.
const (
	maxProofSlots  = 14
	maxProofVisits = 200_000
	maxProofLeaves = 20_000
	maxProofJudged = 1_200
)

// prove looks for anything cheaper than the best answer, among the relays and
// blocks that it has, when that answer has no findings. Every combination is a leaf of a tree, fuses first, then wires. A branch is
// left out when its cost cannot come below, or when it breaks a constraint
// even with currents as low as they can be in a harness that meets the limits:
// no load loses more than the widest limit of drop, and its current falls by
// no more than that. The leaves are judged cheapest first; the first that
// passes is the cheapest of all.
func (s *search) prove() {
	open := 0
	for _, x := range s.slots {
		if x.kind == WireSize || x.kind == Fuse || x.kind == Plug {
			open++
		}
	}
	if open > maxProofSlots || s.best.verdict.score != (score{}) {
		return
	}
	s.tight, s.tuned = map[string]float64{}, s.tuned+1
	p := &proof{s: s, w: s.look(s.best.verdict), limitG: s.best.cost.TotalG(), share: s.leastShare()}
	if !p.prepare() || !p.descend(0) {
		return
	}
	ascending(p.leaves, func(l leaf) float64 { return l.costG })
	for n, l := range p.leaves {
		if n == maxProofJudged {
			return
		}
		for i, at := range l.at {
			s.slots[i].set(at)
		}
		a, err := s.answer()
		if err != nil {
			return
		}
		if a.better(s.best) && !s.best.verdict.score.less(a.verdict.score) {
			s.best = a
			break
		}
	}
	s.proven = true
}

// leastShare is how far a current can lie below the estimate: a load within
// the widest limit of drop draws no less than that share of it, and voltages
// at the posts differ by little more.
func (s *search) leastShare() float64 {
	other, _ := corner.DropLimit(s.d, false)
	critical, _ := corner.DropLimit(s.d, true)
	widest := math.Max(other, critical)
	return (1 - math.Min(widest, 0.9)) * 0.96
}

type leaf struct {
	at    []int
	costG float64
}

// proof is the tree of combinations.
type proof struct {
	s      *search
	w      *view
	share  float64
	limitG float64
	order  []int     // slots in the order of the tree
	rest   []float64 // by depth: least cost of what is not chosen yet
	wide   [][]int   // by slot: candidates within the static bounds
	at     []int
	wires  ledger          // of what is given and of what is chosen
	late   []*circuit.Wire // given, with ends that hang on plugs
	fusesG float64
	visits int
	leaves []leaf
}

// prepare orders the slots and finds their candidates; false = none to try.
func (p *proof) prepare() bool {
	s := p.s
	p.at = p.w.present()
	sized := map[*circuit.Wire]bool{}
	p.wide = make([][]int, len(s.slots))
	p.order = p.w.loadsFirst()
	for _, kind := range []Kind{Plug, WireSize} {
		for i, x := range s.slots {
			if x.kind == kind {
				p.order = append(p.order, i)
			}
			for _, y := range p.w.wires[i] {
				sized[y] = true
			}
		}
	}
	for _, y := range p.w.v.c.Wires {
		switch {
		case sized[y]:
		case p.w.plugged(y):
			p.late = append(p.late, y)
		default:
			p.wires.put(p.w.piece(y, y.Spec.Size), 1)
		}
	}
	for _, y := range p.w.v.c.Parts {
		if y.Plug != nil && !isOpen(y) {
			p.wires.plug(s.number(y.Plug.Family), false, 0, 1)
		}
	}
	return p.bounds()
}

// bounds finds the candidates of each wire with the smallest fuses, and the
// least cost of what comes after each depth.
func (p *proof) bounds() bool {
	p.rest = make([]float64, len(p.order)+1)
	for k := len(p.order) - 1; k >= 0; k-- {
		i := p.order[k]
		least := 0.0
		if p.s.slots[i].kind == WireSize {
			for z := range p.s.slots[i].sizes {
				if p.couldDo(i, z) {
					p.wide[i] = append(p.wide[i], z)
				}
			}
			if len(p.wide[i]) == 0 {
				return false
			}
			least = p.w.slotG(i, p.wide[i][0])
		}
		if p.s.slots[i].kind == Plug {
			least = plugGPerA * p.s.slots[i].plugs[0].MaxA
		}
		p.rest[k] = p.rest[k+1] + least
	}
	p.w.abreast(p.wide)
	return true
}

// couldDo is fits without the fuses and plugs that are chosen.
func (p *proof) couldDo(i, z int) bool {
	size := p.s.slots[i].sizes[z]
	for _, x := range p.w.wires[i] {
		if !p.w.plugged(x) && !p.w.crimps(x, size, p.share) || !p.w.stands(x, size, p.share) {
			return false
		}
	}
	return true
}

// leastG is a cost that no choice of the slots from depth k on comes below.
func (p *proof) leastG(k int) float64 {
	return p.wires.wiresG() + p.fusesG + p.rest[k]
}

// descend tries the candidates of one slot after another; false = too many.
func (p *proof) descend(k int) bool {
	if p.visits++; p.visits > maxProofVisits || len(p.leaves) > maxProofLeaves {
		return false
	}
	if k == len(p.order) {
		p.end()
		return true
	}
	i := p.order[k]
	x := p.s.slots[i]
	was, before := x.at, p.fusesG
	defer func() {
		x.set(was)
		p.fusesG = before
	}()
	for _, z := range p.candidates(i) {
		p.at[i] = z
		p.enter(i, z, 1)
		ok := p.leastG(k+1) >= p.limitG-1e-9 || p.descend(k+1)
		p.enter(i, z, -1)
		if p.fusesG = before; !ok {
			return false
		}
	}
	return true
}

// candidates are those of a slot that could do with the fuses and plugs as they
// are now.
func (p *proof) candidates(i int) (list []int) {
	x := p.s.slots[i]
	could := func(z int) bool { return p.w.plugCould(i, z, p.share) }
	switch x.kind {
	case Fuse:
		carrying := p.w.carrying(i, p.share)
		could = func(z int) bool { return carrying[z] }
	case WireSize:
		could = func(z int) bool { return slices.Contains(p.wide[i], z) && p.protected(i, z) }
	}
	for z := range x.count() {
		if could(z) {
			list = append(list, z)
		}
	}
	return list
}

// protected tells whether the fuses above a slot's wires protect them in a size
// that their ends take.
func (p *proof) protected(i, z int) bool {
	size := p.s.slots[i].sizes[z]
	for _, x := range p.w.wires[i] {
		if !p.w.fused(x, size) || !p.w.crimps(x, size, p.share) {
			return false
		}
	}
	return true
}

// enter takes a candidate into the costs, and fuses and plugs into the design, or
// out of the costs again (by -1).
func (p *proof) enter(i, z, by int) {
	switch x := p.s.slots[i]; x.kind {
	case Fuse:
		x.set(z)
		p.fusesG += float64(by) * x.fuses[z].costG()
	case Plug:
		x.set(z)
		p.wires.plug(p.s.number(x.plugs[z]), true, x.plugs[z].MaxA, by)
	default:
		p.wires.ThickG += float64(by) * x.thickG(z)
		for _, y := range p.w.wires[i] {
			p.wires.put(p.w.piece(y, x.sizes[z]), by)
		}
	}
}

// end takes in a whole combination.
func (p *proof) end() {
	for _, x := range p.late {
		p.wires.put(p.w.piece(x, x.Spec.Size), 1)
	}
	if g := p.wires.wiresG() + p.fusesG; g < p.limitG-1e-9 && p.possible() {
		p.leaves = append(p.leaves, leaf{append([]int(nil), p.at...), g})
	}
	for _, x := range p.late {
		p.wires.put(p.w.piece(x, x.Spec.Size), -1)
	}
}

// possible tells whether the drops could be met.
func (p *proof) possible() bool {
	return !slices.ContainsFunc(p.w.drops, func(d *drop) bool { return p.w.least(d, p.at, p.share) > d.limitV })
}
