package solve

import (
	"slices"

	"fusewright/harness/network/circuit"
)

// Reheat gives the wires other temperatures and finds the operating point anew
// from where it stands, so that a few kelvin cost a Newton step or two. Relay
// contacts stay as they are while their coils hold, as they do in a network that
// warms up; when a coil lets go or pulls in, all contacts settle anew from rest.
func (n *Network) Reheat(tempC func(*circuit.Wire) float64) {
	n.opt.WireTempC = tempC
	for i, b := range n.plan.circuit.Branches {
		if b.Wire != nil {
			n.laws[i].Ohm = max(branchOhm(b, &n.opt), leastOhm)
		}
	}
	for _, c := range n.opt.Changes { // a resistance that was set stays set
		if c.Branch != nil && c.Branch.Wire != nil && !c.Open && !c.Closed {
			n.changeBranch(c.Branch.Index, c)
		}
	}
	if n.status != Converged || !n.warm(slices.Clone(n.v)) ||
		n.moveCoils(n.pulled(), false) != nil {
		n.settle()
	}
}

// pulled tells, by coil, which coils hold their contacts.
func (n *Network) pulled() []bool {
	out := make([]bool, len(n.coils))
	for i, k := range n.coils {
		if len(k.make) > 0 {
			out[i] = n.closed[k.make[0]]
		} else {
			out[i] = !n.closed[k.rest[0]]
		}
	}
	return out
}
