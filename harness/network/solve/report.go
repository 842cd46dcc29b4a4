package solve

import (
	"fmt"
	"math"

	"fusewright/harness/network/circuit"
)

// Solution writes down the network's present operating point.
func (n *Network) Solution() *Solution {
	c := n.plan.circuit
	s := &Solution{plan: n.plan, Circuit: c, Situation: n.situation, Status: n.status, Why: n.why, At: n.at, Hunts: n.hunts,
		NodeV: make([]float64, len(c.Nodes)), BranchA: make([]float64, len(c.Branches)),
		Ohm: make([]float64, len(c.Branches)), Closed: make([]bool, len(c.Branches)),
		LoadOn: make([]bool, len(c.Branches)), ChargingLimitA: n.limitA, Iterations: n.iterations}
	for i := range s.NodeV {
		s.NodeV[i] = n.v[i]
		if n.floating[i] {
			s.NodeV[i] = math.NaN()
		}
	}
	s.apart = n.apart()
	for i, b := range c.Branches {
		n.reportBranch(s, i, b)
	}
	n.reportSources(s)
	n.checkPower(s)
	return s
}

// Again solves the situation of a solution under other options.
func (s *Solution) Again(opt Options) *Solution {
	if s.plan == nil { // not of a network
		return Solve(s.Circuit, s.Situation, opt)
	}
	return s.plan.Network(s.Situation, opt).Solution()
}

// idleShare of its rated voltage is what a load that is off may see, when the
// current of others lifts a shared return: not enough to count as on.
const idleShare = 0.01

func (n *Network) reportBranch(s *Solution, i int, b *circuit.Branch) {
	s.Ohm[i] = math.Inf(1)
	s.Closed[i] = b.Kind == circuit.ContactBranch && n.conducts(i)
	if !n.conducts(i) {
		return
	}
	v := n.v[b.A.Index] - n.v[b.B.Index]
	law := &n.laws[i]
	amps, slope := law.At(v)
	s.BranchA[i] = amps
	switch {
	case law.Kind == Ohmic || law.Kind == Store || law.Kind == Charger || law.Kind == folded:
		s.Ohm[i] = law.Ohm
	case law.Kind == Valve && slope == 1/law.ChargeOhm:
		s.Ohm[i] = law.ChargeOhm
	case math.Abs(v) < 1e-9: // all laws are resistive there
		s.Ohm[i] = 1 / slope
	default:
		s.Ohm[i] = v / amps
	}
	if b.Kind == circuit.LoadBranch {
		s.LoadOn[i] = math.Abs(amps) > 1e-6 && math.Abs(v) > idleShare*b.Load.RatedV && !b.Load.Standby
	}
}

func (n *Network) reportSources(s *Solution) {
	for i, b := range s.Circuit.Branches {
		switch b.Kind {
		case circuit.BatteryBranch:
			if _, further := bankOf(b); !further {
				s.BatteryA -= s.BranchA[i]
			}
		case circuit.ChargerBranch:
			s.ChargingA -= s.BranchA[i]
		}
	}
	s.Limited = n.limitA > 0 && s.ChargingA >= n.limitA*(1-1e-9)
}

// checkPower sums the power of sources against that of everything else; what
// does not agree within a millionth is not a result.
func (n *Network) checkPower(s *Solution) {
	given, used := 0.0, 0.0
	for _, d := range n.opt.Drawn {
		used += n.v[d.Node.Index] * d.Amps
	}
	for b := range n.laws {
		if !n.conducts(b) {
			continue
		}
		v := n.v[n.from[b]] - n.v[n.to[b]]
		law := &n.laws[b]
		amps, _ := law.At(v)
		switch law.Kind {
		case Ohmic:
			used += amps * amps * law.Ohm
		case Store:
			inner := law.Ohm
			if law.EMFV > 0 && amps > 0 {
				used += v * amps
				continue
			}
			given -= law.EMFV * amps
			used += amps * amps * inner
		case Charger:
			given -= v * amps
		default:
			used += v * amps
		}
	}
	s.PowerErrorW = given - used
	least := 1e-8 // and what the balance of currents leaves open
	for _, v := range n.v {
		least += residualA * math.Abs(v)
	}
	if s.Status == Converged && math.Abs(s.PowerErrorW) > 1e-6*max(math.Abs(given), math.Abs(used))+least {
		s.Status, s.At = NotConverged, n.worstNode()
		s.Why = fmt.Sprintf("sources give %.9g W and the network uses %.9g W", given, used)
	}
}

// Law is the law that a branch follows in the situation; false = it does not
// conduct, or it lies in an island without voltage.
func (n *Network) Law(b *circuit.Branch) (Law, bool) {
	if !n.conducts(b.Index) || n.floating[b.A.Index] {
		return Law{}, false
	}
	return n.laws[b.Index], true
}
