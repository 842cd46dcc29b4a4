package solve

import (
	"fmt"
	"math"
	"slices"

	"fusewright/harness/network/circuit"
)

// operate finds the operating point with contacts as they stand.
func (n *Network) operate() {
	n.status, n.why, n.at, n.factored = Converged, "", nil, false
	n.findIslands()
	n.start()
	out := n.newton()
	if !out.converged && !out.strained {
		out = n.ramp()
	}
	n.judge(out)
}

// judge sets the status. Where the network cannot carry the demand, the
// iteration ends with a load in its fold though without load it had voltage
// enough. A load that never had the voltage (on a sneak path, or rated for
// another system) is not a collapse.
func (n *Network) judge(out outcome) {
	load := n.foldedLoad()
	lawless := func(b int32) bool { return n.laws[b].Kind == LawKinds }
	switch {
	case out.converged && !out.unstable && (load < 0 || n.opt.AcceptFolded):
		return
	case slices.ContainsFunc(n.active, lawless):
		b := n.plan.circuit.Branches[n.active[slices.IndexFunc(n.active, lawless)]]
		n.status, n.at, n.why = NotConverged, b.A, b.Name+" follows no law that is known"
	case load >= 0:
		b := n.plan.circuit.Branches[load]
		n.status, n.at = Collapsed, b.A
		n.why = fmt.Sprintf("the feed of %s cannot carry its constant power of %.4g W", b.Name, n.laws[load].PowerW)
	case out.strained && slices.ContainsFunc(n.active, n.hadVolts):
		n.status, n.why = Collapsed, "constant-power loads ask for as much as the network can carry"
	default:
		n.status, n.at = NotConverged, n.worstNode()
		n.why = fmt.Sprintf("currents did not balance after %d steps", n.iterations)
	}
}

// hadVolts tells of a constant-power load that has voltage enough without load.
func (n *Network) hadVolts(b int32) bool {
	law := &n.laws[b]
	return law.Kind == Power && math.Abs(n.v0[n.from[b]]-n.v0[n.to[b]]) >= law.EdgeV
}

// foldedLoad is the constant-power branch deepest in its fold; -1 = none.
func (n *Network) foldedLoad() int {
	worst, lowest := -1, 1.0
	for _, b := range n.active {
		law := &n.laws[b]
		if !n.hadVolts(b) {
			continue
		}
		from, to := n.from[b], n.to[b]
		if x := math.Abs(n.v[from]-n.v[to]) / law.EdgeV; x < lowest {
			worst, lowest = int(b), x
		}
	}
	return worst
}

// tellShare adds to a collapse how much could be carried, once contacts and chargers have settled.
func (n *Network) tellShare() {
	if n.status == Collapsed && !n.opt.AcceptFolded {
		n.why += n.share()
	}
}

// share finds by halving which share of the constant-power demand the network
// carries, in words. It leaves the voltages of the collapse in place.
func (n *Network) share() string {
	v := append([]float64(nil), n.v...)
	low, high := 0.0, 1.0
	for range 7 {
		mid := (low + high) / 2
		if n.carries(mid) {
			low = mid
		} else {
			high = mid
		}
	}
	copy(n.v, v)
	n.factored = false
	if low == 0 {
		return ""
	}
	return fmt.Sprintf("; about %.0f %% of such loads' power can be carried", 100*low)
}

// carries tells whether the network works with a share of the constant power.
func (n *Network) carries(share float64) bool {
	n.scalePower(share)
	defer n.scalePower(1 / share)
	n.start()
	out := n.newton()
	return out.converged && !out.unstable && n.foldedLoad() < 0
}

func (n *Network) scalePower(by float64) {
	for _, b := range n.active {
		if n.laws[b].Kind == Power {
			n.laws[b].PowerW *= by
		}
	}
}

// ramp is the way round when Newton fails from the unloaded start: the loads
// grow from nothing in steps, each from the point before.
func (n *Network) ramp() outcome {
	full := append([]Law(nil), n.laws...)
	defer copy(n.laws, full)
	n.start()
	var out outcome
	for step := 1; step <= 20; step++ {
		for _, b := range n.active {
			law := full[b]
			law.PowerW *= float64(step) / 20
			law.CurrentA *= float64(step) / 20
			n.laws[b] = law
		}
		if out = n.newton(); !out.converged {
			return out
		}
	}
	return out
}

// worstNode is where the currents balance least.
func (n *Network) worstNode() *circuit.Node {
	var at *circuit.Node
	most := 0.0
	for i, r := range n.work.residual {
		if x := math.Abs(r) / n.work.tolerance[i]; i > 0 && !(x <= most) {
			most, at = x, n.plan.circuit.Nodes[i]
		}
	}
	return at
}
