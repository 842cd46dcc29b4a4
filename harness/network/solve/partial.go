package solve

import (
	"math"

	"fusewright/harness/network/circuit"
)

// Partial is the operating point of a Local. Inside the part it is exact; of the
// rest it gives what the slopes there make of the change at the border.
type Partial struct {
	l      *Local
	border float64
}

// Branches lists the branches within the part, ascending.
func (p *Partial) Branches() []*circuit.Branch { return p.l.sub.branches }

// Inside tells whether a branch lies within the part.
func (p *Partial) Inside(b *circuit.Branch) bool { return p.l.sub.has(p.l, b.Index) }

// ShiftV is the most that a node outside the part can have moved, in volts.
func (p *Partial) ShiftV() float64 { return p.border * p.l.swell }

// Volts is the voltage across a branch, from A to B; NaN = floating.
func (p *Partial) Volts(b *circuit.Branch) float64 { return p.node(b.A.Index) - p.node(b.B.Index) }

func (p *Partial) node(i int) float64 {
	l := p.l
	switch {
	case i == 0:
		return 0
	case l.region.in[i] == l.region.round:
		k := l.sub.place[i] + 1
		if l.sub.net.floating[k] {
			return math.NaN()
		}
		return l.sub.net.v[k]
	case l.n.floating[i]:
		return math.NaN()
	}
	return l.n.v[i] + l.shift(l.n.plan.pattern.pos[i-1])
}

// shift is how far a node outside the part has moved: by its ancestors alone.
func (l *Local) shift(k int32) float64 {
	node := l.nodeAt[k]
	if l.region.in[node] == l.region.round {
		return l.sub.net.v[l.sub.place[node]+1] - l.n.v[node]
	}
	if l.known[k] == l.region.round {
		return l.shifts[k]
	}
	p := l.n.plan.pattern
	x := 0.0
	for t := p.rowStart[k]; t < p.rowStart[k+1]; t++ {
		x += l.n.factor.l[t] * l.shift(p.col[t])
	}
	l.shifts[k], l.known[k] = x, l.region.round
	return x
}

// Amps is the current of a branch from A to B.
func (p *Partial) Amps(b *circuit.Branch) float64 {
	n, i := p.l.n, b.Index
	if p.Inside(b) {
		n, i = p.l.sub.net, int(p.l.sub.at[b.Index])
	}
	v := p.Volts(b)
	if !n.conducts(i) || math.IsNaN(v) {
		return 0
	}
	amps, _ := n.laws[i].At(v)
	return amps
}

// Closed tells whether a contact is closed.
func (p *Partial) Closed(b *circuit.Branch) bool {
	if b.Kind != circuit.ContactBranch {
		return false
	}
	if p.Inside(b) {
		return p.l.sub.net.conducts(int(p.l.sub.at[b.Index]))
	}
	return p.l.n.conducts(b.Index)
}
