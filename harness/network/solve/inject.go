package solve

import (
	"slices"

	"fusewright/harness/network/circuit"
)

// Draw is a current taken out of a node, in amperes.
type Draw struct {
	Node *circuit.Node
	Amps float64
}

// Response tells how node voltages change when currents are drawn in addition
// at the operating point, every branch held to its slope there. It solves only
// for the nodes that it is asked for: in the order of elimination the voltage of
// a node rests on those of its ancestors alone, which in a harness are a few
// tens whatever its size. So a fault costs its own way to the source and not the
// whole circuit. It uses the memory of its network: one goroutine at a time.
type Response struct {
	n     *Network
	in    []float64 // by place: current carried forward
	x     []float64 // by place: volts
	drawn []int32   // by place: round in which in holds something
	known []int32   // by place: round in which x is known
	round int32
	trail []int32
}

// Responder makes a Response of a network; nil when the network has no
// operating point to respond from. Solving the network again makes it void.
func (n *Network) Responder() *Response {
	if !n.ready() {
		return nil
	}
	size := len(n.plan.pattern.pos)
	return &Response{n: n, in: make([]float64, size), x: make([]float64, size),
		drawn: make([]int32, size), known: make([]int32, size)}
}

// Draw sets what is drawn; what is drawn returns through battery negative. On a
// network of resistances and sources the response is exact for every current,
// so that a fault of any strength is a multiple of it. False: a node floats.
func (r *Response) Draw(draws ...Draw) bool {
	r.round++
	r.trail = r.trail[:0]
	pos := r.n.plan.pattern.pos
	for _, d := range draws {
		if r.n.floating[d.Node.Index] {
			return false
		}
		if i := d.Node.Index; i > 0 {
			r.reach(pos[i-1])
			r.in[pos[i-1]] -= d.Amps
		}
	}
	slices.Sort(r.trail)
	r.forward()
	return true
}

// reach adds a place and its ancestors to the trail.
func (r *Response) reach(k int32) {
	p := r.n.plan.pattern
	for r.drawn[k] != r.round {
		r.drawn[k], r.in[k] = r.round, 0
		r.trail = append(r.trail, k)
		if p.rowStart[k] == p.rowStart[k+1] {
			return
		}
		k = p.col[p.rowStart[k]] // the first neighbour left is the parent
	}
}

func (r *Response) forward() {
	p, f := r.n.plan.pattern, r.n.factor
	for _, k := range r.trail {
		for t := p.rowStart[k]; t < p.rowStart[k+1]; t++ {
			r.in[p.col[t]] += f.l[t] * r.in[k]
		}
	}
}

// At is the change of a node's voltage in volts.
func (r *Response) At(node *circuit.Node) float64 {
	if node.Index == 0 {
		return 0
	}
	p, f := r.n.plan.pattern, r.n.factor
	place := p.pos[node.Index-1]
	trail := r.trail[:0]
	for k := place; r.known[k] != r.round; k = p.col[p.rowStart[k]] {
		trail = append(trail, k)
		if p.rowStart[k] == p.rowStart[k+1] {
			break
		}
	}
	for i := len(trail) - 1; i >= 0; i-- {
		k := trail[i]
		x := 0.0
		if r.drawn[k] == r.round {
			x = r.in[k] / f.d[k]
		}
		for t := p.rowStart[k]; t < p.rowStart[k+1]; t++ {
			x += f.l[t] * r.x[p.col[t]]
		}
		r.x[k], r.known[k] = x, r.round
	}
	r.trail = trail[:0]
	return r.x[place]
}

// Volts is the voltage of a node at the operating point.
func (n *Network) Volts(at *circuit.Node) float64 { return n.v[at.Index] }

// Floats tells whether no conducting path joins a node to battery negative.
func (n *Network) Floats(at *circuit.Node) bool { return n.floating[at.Index] }

// Status tells whether the network has an operating point.
func (n *Network) Status() Status { return n.status }
