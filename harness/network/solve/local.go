package solve

import (
	"cmp"
	"math"
	"slices"

	"fusewright/harness/network/circuit"
)

// Local solves a network again with one branch open, in that part alone which
// the loss can change much: what hangs on the branch, what the relays switch
// whose coils hang on it, and the ways from there to the source. The rest of the
// circuit stands at its slopes and is folded into conductances between the nodes
// of the part (the Schur complement that the factorisation holds already), so
// that a fault costs its own part and not the whole circuit. Whatever leaves the
// range in which that is true is not answered: Open then gives nil, and Resolve
// does.
//
// It uses the memory of its network: one goroutine at a time.
type Local struct {
	n         *Network
	a, excess []float64 // conductances at the time of elimination
	siemens   []float64 // by branch: slope at the operating point
	amps      []float64 // by branch
	group     []int32   // by node: conductor that it belongs to, see conductors
	nodeAt    []int32   // by place
	coilAt    []int32   // by branch: index into the network's coils; -1 = none
	swell     float64   // most that the rest moves for one volt at its border
	mostV     float64   // most that the border may move
	watched   []watch   // ascending by slack
	coilWatch []watch   // by coil
	region    region
	sub       part
	shifts    []float64 // by place: of nodes outside the part
	known     []int32   // by place: round in which shifts holds
}

// watch is a branch whose voltage has to stay between bounds: a coil that keeps
// its contacts, a load that keeps its law.
type watch struct {
	branch    *circuit.Branch
	low, high float64 // of the magnitude
	slack     float64 // to the nearer bound
}

// mostShift is the share of the system voltage that the border of the part may
// move. A lamp's current is then straight to 1.2e-5 of itself, which moves what
// lies before it by microvolts.
const mostShift = 0.01

// Local prepares local solutions; nil when the network has no operating point,
// or holds changes, or has a charger, which a branch may move at either end, or a regulator that senses afar.
func (n *Network) Local() *Local {
	if len(n.converters) > 0 || n.plan.sensing != nil || n.status != Converged || len(n.laws) != len(n.plan.circuit.Branches) || !n.factorise(n.v, false) {
		return nil
	}
	n.factored = true
	p, c := n.plan.pattern, n.plan.circuit
	l := &Local{n: n, a: slices.Clone(n.factor.a), excess: slices.Clone(n.factor.excess),
		siemens: make([]float64, len(n.laws)), amps: make([]float64, len(n.laws)),
		group: make([]int32, len(c.Nodes)), nodeAt: make([]int32, len(p.pos)),
		coilAt: make([]int32, len(n.laws)), mostV: mostShift * c.Design.NominalV(),
		shifts: make([]float64, len(p.pos)), known: make([]int32, len(p.pos))}
	for node, k := range p.pos {
		l.nodeAt[k] = int32(node) + 1
	}
	for i := range n.laws {
		l.coilAt[i] = -1
		if n.conducts(i) {
			l.amps[i], l.siemens[i] = n.laws[i].At(n.v[n.from[i]] - n.v[n.to[i]])
		}
	}
	for i, k := range n.coils {
		l.coilAt[k.branch.Index] = int32(i)
	}
	l.conductors()
	l.bound()
	l.watch()
	l.region = newRegion(l)
	return l
}

// conductors finds which nodes are one conductor.
func (l *Local) conductors() {
	n := l.n
	for i := range n.group {
		n.group[i] = int32(i)
	}
	for i, b := range n.plan.circuit.Branches {
		if b.Conductor() && n.conducts(i) {
			n.unite(n.from[i], n.to[i])
		}
	}
	for i := range l.group {
		l.group[i] = n.root(int32(i))
	}
}

// bound finds how much the nodes that are eliminated can move for one volt of
// those that are not: a mean of them where all slopes are positive, a trace more
// where constant power has a negative one.
func (l *Local) bound() {
	p := l.n.plan.pattern
	by := make([]float64, len(p.pos))
	l.swell = 1
	for k := len(p.pos) - 1; k >= 0; k-- {
		sum := 0.0
		by[k] = 1
		for t := p.rowStart[k]; t < p.rowStart[k+1]; t++ {
			sum += math.Abs(l.n.factor.l[t])
			by[k] = max(by[k], by[p.col[t]])
		}
		by[k] *= max(1, sum)
		l.swell = max(l.swell, by[k])
	}
}

// watch lists what must not leave its range outside the part.
func (l *Local) watch() {
	n := l.n
	pulled := n.pulled()
	for i, k := range n.coils {
		factor := or(n.opt.PullInFactor, 1)
		w := watch{branch: k.branch, high: k.pullV * factor}
		if pulled[i] {
			w.low, w.high = k.dropV*factor, math.Inf(1)
		}
		l.watched = append(l.watched, w)
	}
	l.coilWatch = slices.Clone(l.watched)
	for i, b := range n.plan.circuit.Branches {
		law := &n.laws[i]
		if !n.conducts(i) || law.EdgeV == 0 {
			continue
		}
		w := watch{branch: b, low: law.EdgeV, high: math.Inf(1)}
		if l.across(b) < law.EdgeV {
			w.low, w.high = 0, law.EdgeV
		}
		l.watched = append(l.watched, w)
	}
	for i := range l.watched {
		w := &l.watched[i]
		w.slack = w.high - l.across(w.branch)
		if w.low > 0 {
			w.slack = min(w.slack, l.across(w.branch)-w.low)
		}
	}
	slices.SortStableFunc(l.watched, func(a, b watch) int { return cmp.Compare(a.slack, b.slack) })
}

// across is the magnitude of a branch's voltage at the operating point.
func (l *Local) across(b *circuit.Branch) float64 {
	return math.Abs(l.n.v[b.A.Index] - l.n.v[b.B.Index])
}

// Open solves the network with a conducting branch open and relays settled anew
// from rest. Nil = not to be told locally. The answer holds until the next call.
func (l *Local) Open(b *circuit.Branch) *Partial {
	if !l.region.grow(b) {
		return nil
	}
	s := &l.sub
	s.take(l, b)
	n := s.net
	n.atRest = slices.Clone(n.closed)
	if !n.settleBy(false) && !n.settleBy(true) || n.status != Converged {
		return nil
	}
	p := &Partial{l: l, border: s.moved(l.n.v)}
	if !(p.border <= l.mostV) || !l.rangesHold(p) || !n.definite() {
		return nil
	}
	return p
}

// definite tells whether no coil stands between its release and its pull-in
// voltage, where its contacts hang on what happened before: the relays outside
// the part stood still meanwhile, and in the whole network they do not.
func (n *Network) definite() bool {
	factor := or(n.opt.PullInFactor, 1)
	for _, k := range n.coils {
		v := math.Abs(n.v[k.branch.A.Index] - n.v[k.branch.B.Index])
		if v >= k.dropV*factor && v < k.pullV*factor {
			return false
		}
	}
	return true
}

// rangesHold tells whether everything watched outside the part stays in its
// range, and the coils within it too whose contacts lie outside.
func (l *Local) rangesHold(p *Partial) bool {
	for _, b := range l.sub.branches {
		if k := l.coilAt[b.Index]; k >= 0 && !l.region.moves(k) && !l.holds(l.coilWatch[k], p) {
			return false
		}
	}
	reach := 2 * p.ShiftV()
	for i := range l.watched {
		w := &l.watched[i]
		if w.slack > reach {
			return true
		}
		if !p.Inside(w.branch) && !l.holds(*w, p) {
			return false
		}
	}
	return true
}

func (l *Local) holds(w watch, p *Partial) bool {
	v := math.Abs(p.Volts(w.branch))
	return v >= w.low && v < w.high
}
