package sizing

import (
	"math"

	"fusewright/harness/circuit"
	"fusewright/harness/corner"
	"fusewright/library"
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
		if x.kind == WireSize || x.kind == Fuse {
			open++
		}
	}
	if open > maxProofSlots || s.best.verdict.score != (score{}) {
		return
	}
	s.tight = map[string]float64{}
	p := &proof{s: s, w: s.look(s.best.verdict), limitG: s.best.cost.TotalG(), share: s.leastShare()}
	if !p.prepare() || !p.descend(0, 0) {
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
	stocks map[stock]int
	crimps map[*library.Terminal]int
	fixedG float64 // stock and crimp parts of given wires
	visits int
	leaves []leaf
}

// prepare orders the slots and finds their candidates; false = none to try.
func (p *proof) prepare() bool {
	s := p.s
	p.at = p.w.present()
	p.stocks, p.crimps = map[stock]int{}, map[*library.Terminal]int{}
	sized := map[*circuit.Wire]bool{}
	p.wide = make([][]int, len(s.slots))
	for i, x := range s.slots {
		if x.kind == Fuse && p.w.branch[i] != nil {
			p.order = append(p.order, i)
		}
	}
	depth := func(i int) float64 { return float64(len(p.w.fusesBelow(p.w.branch[i]))) }
	ascending(p.order, depth)
	for i, x := range s.slots {
		if x.kind == WireSize {
			p.order = append(p.order, i)
			for _, y := range p.w.wires[i] {
				sized[y] = true
			}
		}
	}
	for _, y := range p.w.v.c.Wires {
		if !sized[y] {
			p.fixedG += p.count(y, y.Spec.Size, 1)
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

// couldDo is fits without the fuses.
func (p *proof) couldDo(i, z int) bool {
	size := p.s.slots[i].sizes[z]
	for _, x := range p.w.wires[i] {
		if size.AreaMm2 < p.w.leastMm2(x)*0.995 || !p.w.crimps(x, size, p.w.amps[x.Branch.Index]*p.share) ||
			!p.w.carries(x, size, p.share) {
			return false
		}
	}
	return true
}

// count adds a wire's stock and crimp parts to what is in use, or takes them
// away, and returns the cost of those that are new or gone.
func (p *proof) count(x *circuit.Wire, z *library.WireSize, by int) float64 {
	g := 0.0
	st := stock{x.Spec.Type, z}
	if by > 0 && p.stocks[st] == 0 || by < 0 && p.stocks[st] == 1 {
		g += distinctSizeG
	}
	p.stocks[st] += by
	for _, e := range p.w.ends(x, z) {
		if e.part == nil {
			continue
		}
		if by > 0 && p.crimps[e.part] == 0 || by < 0 && p.crimps[e.part] == 1 {
			g += distinctTerminalG
		}
		p.crimps[e.part] += by
	}
	return g
}

// descend tries the candidates of one slot after another; false = too many.
func (p *proof) descend(k int, costG float64) bool {
	if p.visits++; p.visits > maxProofVisits || len(p.leaves) > maxProofLeaves {
		return false
	}
	if k == len(p.order) {
		if p.possible() {
			p.leaves = append(p.leaves, leaf{append([]int(nil), p.at...), costG + p.fixedG})
		}
		return true
	}
	i := p.order[k]
	if p.s.slots[i].kind == Fuse {
		return p.fuseBranches(k, i, costG)
	}
	for _, z := range p.wide[i] {
		p.at[i] = z
		g, fits := 0.0, true
		for _, x := range p.w.wires[i] {
			fits = fits && p.w.fused(x, p.s.slots[i].sizes[z])
		}
		if !fits {
			continue
		}
		for _, x := range p.w.wires[i] {
			g += copperG(x, p.s.slots[i].sizes[z]) + p.count(x, p.s.slots[i].sizes[z], 1)
		}
		ok := true
		if costG+g+p.rest[k+1]+p.fixedG < p.limitG-1e-9 {
			ok = p.descend(k+1, costG+g)
		}
		for _, x := range p.w.wires[i] {
			p.count(x, p.s.slots[i].sizes[z], -1)
		}
		if !ok {
			return false
		}
	}
	return true
}

// fuseBranches tries the ratings that could do.
func (p *proof) fuseBranches(k, i int, costG float64) bool {
	x := p.s.slots[i]
	was := x.at
	could := p.w.carrying(i, p.share)
	defer x.set(was)
	for z := range x.fuses {
		if !could[z] {
			continue
		}
		x.set(z)
		p.at[i] = z
		g := fuseGPerA * x.fuses[z].rating.RatingA
		if costG+g+p.rest[k+1]+p.fixedG < p.limitG-1e-9 && !p.descend(k+1, costG+g) {
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
