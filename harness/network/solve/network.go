package solve

import (
	"runtime"
	"sync"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
)

// Plan is what all solutions of one circuit share: the elimination order over
// every branch, open contacts included, and which contacts a situation closes. It is safe to
// share; neither the circuit nor a situation that it solved changes while it is used.
type Plan struct {
	circuit *circuit.Circuit
	pattern *pattern
	from    []int32 // by branch: node indices
	to      []int32
	slot    []int32         // by branch: see slotOf
	sensing *circuit.Branch // the charging system, at the end of its cable, its regulator sensing the posts; nil = not so
	atRest  sync.Map        // by *design.Situation: circuit.Contacts
}

// contacts are circuit.Contacts of a situation, worked out once: it is solved in a dozen states.
func (p *Plan) contacts(s *design.Situation) []bool {
	if known, ok := p.atRest.Load(s); ok {
		return known.([]bool)
	}
	closed := circuit.Contacts(p.circuit, s)
	p.atRest.Store(s, closed)
	return closed
}

// Prepare orders a circuit for solving. It costs about as much as one solution.
func Prepare(c *circuit.Circuit) *Plan { return prepare(c, nil) }

func prepare(c *circuit.Circuit, extra [][2]int32) *Plan {
	p := &Plan{circuit: c, sensing: sensesAfar(c)}
	pairs := make([][2]int32, 0, len(c.Branches)+len(extra))
	for _, b := range c.Branches {
		a, z := int32(b.A.Index), int32(b.B.Index)
		p.from, p.to = append(p.from, a), append(p.to, z)
		if a != z && a > 0 && z > 0 {
			pairs = append(pairs, [2]int32{a - 1, z - 1})
		}
	}
	for _, e := range extra {
		pairs = append(pairs, [2]int32{e[0] - 1, e[1] - 1})
	}
	p.pattern = newPattern(max(len(c.Nodes)-1, 0), pairs)
	p.slot = make([]int32, len(p.from))
	for i := range p.from {
		p.slot[i] = p.slotOf(p.from[i], p.to[i])
	}
	return p
}

// Slots of branches that are not between two matrix nodes.
const (
	noSlot   = -1 // both ends on one node, or no place in the pattern
	toGround = -2 // -2-k: from the node at place k to the reference
)

// slotOf is where a branch between two nodes adds its conductance.
func (p *Plan) slotOf(a, z int32) int32 {
	switch {
	case a == z:
		return noSlot
	case a == 0:
		return toGround - p.pattern.pos[z-1]
	case z == 0:
		return toGround - p.pattern.pos[a-1]
	}
	return p.pattern.slot(p.pattern.pos[a-1], p.pattern.pos[z-1])
}

// Network is a circuit in one situation under one set of options: its laws, its
// operating point and the factorisation there. Its methods use shared working
// memory: one goroutine at a time. Fault studies make one Network a situation
// and call Resolve on it once a fault.
type Network struct {
	plan      *Plan
	situation *design.Situation
	opt       Options
	sensed    sensed
	limitA    float64 // of the charging system

	laws       []Law // by branch, shorts after the circuit's own branches
	present    []bool
	forced     []int8 // by branch: +1 closed, -1 open, 0 as the circuit says
	atRest     []bool // contacts before any relay has moved
	closed     []bool // contacts
	coils      []coil
	converters []converter
	shut       []int32 // diodes that block without load
	active     []int32
	from       []int32
	to         []int32
	slot       []int32

	floating []bool    // by node
	anchors  []int32   // one node of each floating island
	group    []int32   // working memory of islands
	v        []float64 // by node
	v0       []float64 // by node: without load
	work     workspace
	factor   *factor

	status     Status
	why        string
	at         *circuit.Node
	iterations int
	factored   bool            // factor holds the matrix at v
	hunts      *circuit.Branch // see Solution.Hunts
	opened     []bool          // by coil: it opened and waits; nil = none waits
}

// Network solves a situation and keeps what is needed to solve it again.
func (p *Plan) Network(s *design.Situation, opt Options) *Network {
	branches, nodes := len(p.from), len(p.circuit.Nodes)
	n := &Network{plan: p, situation: s, opt: opt,
		atRest: p.contacts(s), laws: make([]Law, branches), present: make([]bool, branches),
		forced: make([]int8, branches), closed: make([]bool, branches),
		from: p.from, to: p.to, slot: p.slot,
		floating: make([]bool, nodes), group: make([]int32, nodes),
		v: make([]float64, nodes), v0: make([]float64, nodes),
		factor: newFactor(p.pattern), work: newWorkspace(nodes)}
	n.opt.AcceptFolded = opt.AcceptFolded || s.Cranks() // what a start starves for seconds goes on along its fold
	n.assemble()
	n.findConverters()
	n.applyChanges(opt.Changes)
	n.settle()
	return n
}

// Solve finds the operating point of a circuit in a situation. The Solution is
// never nil; its Status says whether its numbers may be used.
func Solve(c *circuit.Circuit, s *design.Situation, opt Options) *Solution {
	return Prepare(c).Network(s, opt).Solution()
}

// All solves every situation of the circuit's design, in design order. It uses
// the machine's processors; the result does not depend on how many there are.
func All(c *circuit.Circuit, opt Options) []*Solution {
	if c.Design == nil {
		return nil
	}
	plan := Prepare(c)
	out := make([]*Solution, len(c.Design.Situations))
	next := make(chan int)
	var wait sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), len(out)) {
		wait.Go(func() {
			for i := range next {
				out[i] = plan.Network(c.Design.Situations[i], opt).Solution()
			}
		})
	}
	for i := range out {
		next <- i
	}
	close(next)
	wait.Wait()
	return out
}
