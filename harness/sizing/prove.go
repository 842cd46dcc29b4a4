package sizing

import (
	"math"

	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
)

// Limits of the proof: beyond them the heuristic's answer stands unproven.
const (
	maxProofSlots  = 14
	maxProofVisits = 200_000
	maxProofLeaves = 20_000
	maxProofJudged = 400
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
	for i, x := range s.slots {
		if x.kind == Fuse && p.w.branch[i] != nil {
			p.order = append(p.order, i)
		}
	}
	p.w.loadsFirst(p.order)
	for i, x := range s.slots {
		if x.kind == Plug {
			p.order = append(p.order, i)
		}
	}
	for i, x := range s.slots {
		if x.kind == WireSize {
			p.order = append(p.order, i)
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
			p.wires.put(p.w.piece(y, y.Spec.Size))
		}
	}
	for _, y := range p.w.v.c.Parts {
		if y.Plug != nil && !isOpen(y) {
			p.wires.plug(s.plugNumber(y.Plug.Family), false, 0, 1)
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
			p.wide[i] = p.wireCandidates(i)
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
	return true
}

// wireCandidates are the sizes that could do with no fuse at all.
func (p *proof) wireCandidates(i int) []int {
	var list []int
	for z := range p.s.slots[i].sizes {
		if p.couldDo(i, z) {
			list = append(list, z)
		}
	}
	return list
}

// couldDo is fits without the fuses and plugs that are chosen.
func (p *proof) couldDo(i, z int) bool {
	size := p.s.slots[i].sizes[z]
	for _, x := range p.w.wires[i] {
		if size.AreaMm2 < p.w.leastMm2(x)*0.995 || !p.w.plugged(x) && !p.w.crimps(x, size, p.share) ||
			!p.w.carries(x, size, p.share) {
			return false
		}
	}
	return true
}

// leastG is a cost that no choice of the slots from depth k on comes below. What
// is left over of the lengths bought may all be used up by them; what they use
// themselves stays.
func (p *proof) leastG(k int) float64 {
	return p.wires.totalG() - leftShare*p.wires.leftG + p.fusesG + p.rest[k]
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
	switch p.s.slots[i].kind {
	case Fuse:
		return p.fuseBranches(k, i)
	case Plug:
		return p.plugBranches(k, i)
	}
	return p.wireBranches(k, i)
}

// end takes in a whole combination.
func (p *proof) end() {
	for _, x := range p.late {
		p.wires.put(p.w.piece(x, x.Spec.Size))
	}
	if g := p.wires.totalG() + p.fusesG; g < p.limitG-1e-9 && p.possible() {
		p.leaves = append(p.leaves, leaf{append([]int(nil), p.at...), g})
	}
	for _, x := range p.late {
		p.wires.drop(p.w.piece(x, x.Spec.Size))
	}
}

// plugBranches tries the families that could do.
func (p *proof) plugBranches(k, i int) bool {
	x := p.s.slots[i]
	was := x.at
	defer x.set(was)
	for z, f := range x.plugs {
		if !p.w.plugBears(i, z, p.share) {
			continue
		}
		x.set(z)
		p.at[i] = z
		n := p.s.plugNumber(f)
		p.wires.plug(n, true, f.MaxA, 1)
		ok := p.leastG(k+1) >= p.limitG-1e-9 || p.descend(k+1)
		p.wires.plug(n, true, f.MaxA, -1)
		if !ok {
			return false
		}
	}
	return true
}

// wireBranches tries the sizes that the fuses above protect.
func (p *proof) wireBranches(k, i int) bool {
	for _, z := range p.wide[i] {
		size, fits := p.s.slots[i].sizes[z], true
		for _, x := range p.w.wires[i] {
			fits = fits && p.w.fused(x, size) && p.w.crimps(x, size, p.share)
		}
		if !fits {
			continue
		}
		p.at[i] = z
		for _, x := range p.w.wires[i] {
			p.wires.put(p.w.piece(x, size))
		}
		ok := p.leastG(k+1) >= p.limitG-1e-9 || p.descend(k+1)
		for _, x := range p.w.wires[i] {
			p.wires.drop(p.w.piece(x, size))
		}
		if !ok {
			return false
		}
	}
	return true
}

// fuseBranches tries the ratings that could do.
func (p *proof) fuseBranches(k, i int) bool {
	x := p.s.slots[i]
	was, before := x.at, p.fusesG
	could := p.w.carrying(i, p.share)
	defer func() {
		x.set(was)
		p.fusesG = before
	}()
	for z := range x.fuses {
		if !could[z] {
			continue
		}
		x.set(z)
		p.at[i] = z
		p.fusesG = before + fuseGPerA*x.fuses[z].rating.RatingA
		if p.leastG(k+1) < p.limitG-1e-9 && !p.descend(k+1) {
			return false
		}
	}
	return true
}

// possible tells whether the drops could be met.
func (p *proof) possible() bool {
	for _, d := range p.w.drops {
		if p.w.least(d, p.at, p.share) > d.limitV {
			return false
		}
	}
	return true
}
