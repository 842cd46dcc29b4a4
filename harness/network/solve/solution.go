// Package solve finds the DC operating point of a circuit in a situation by
// nodal analysis with Newton iteration. It reads circuits and writes solutions;
// it judges nothing.
//
// Every branch is a law i(v) of its own voltage (see Law), sources included, so
// the matrix of slopes is symmetric: a sparse LDLᵀ factorisation in an order
// made once for a circuit (Prepare) serves all situations, iterations and
// faults. A Network is one solved situation that can be solved again with
// changes (Resolve; Local for the part that one open branch changes), or asked for
// linear estimates (Linear, Thevenin).
//
// A solution counts when currents balance at every node, the power given and
// used agree within a millionth, relays have settled, and no constant-power
// load has collapsed.
package solve

import (
	"math"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
)

// Status is how a solution ended.
type Status string

// The ends of a solution. Anything but Converged means that the numbers of the
// solution must not be used as results.
const (
	Converged    Status = "converged"
	Collapsed    Status = "voltage collapse" // constant-power demand beyond what the network can carry
	NotConverged Status = "did not converge"
	Chattering   Status = "relay chatters" // contacts do not settle
)

// Solution is the operating point in one situation.
type Solution struct {
	plan      *Plan
	Circuit   *circuit.Circuit
	Situation *design.Situation
	Status    Status
	Why       string        // what failed, in words, when Status is not Converged
	At        *circuit.Node // where it failed, when known

	NodeV   []float64 // by node index, against battery negative; NaN = floating
	BranchA []float64 // by branch index, A to B
	Ohm     []float64 // by branch index: resistance used (wires warm)
	Closed  []bool    // by branch index: contacts
	LoadOn  []bool    // by branch index: loads that draw

	// Hunts is the coil of a sensing relay that opens whenever it has closed: the
	// solution is that with it open. Nil = none does.
	Hunts *circuit.Branch

	BatteryA       float64 // out of the first battery, negative = charging; of further ones see Given
	ChargingA      float64 // out of the charging system
	ChargingLimitA float64 // what it can give at this engine speed
	Limited        bool    // the charging system is at its limit
	Iterations     int
	// PowerErrorW is the power supplied less the power used: the check of the solution.
	PowerErrorW float64

	apart *apart // nil = no battery is cut off from the first one
}

// apart is what a further battery keeps up that nothing joins to battery negative any more:
// voltages within each such island, against some node of it.
type apart struct {
	v      []float64
	island []int32 // by node; -1 = in none
}

func (a *apart) volts(plus, minus *circuit.Node) float64 {
	if a == nil || a.island[plus.Index] < 0 || a.island[plus.Index] != a.island[minus.Index] {
		return math.NaN()
	}
	return a.v[plus.Index] - a.v[minus.Index]
}

// Trouble is what failed, in words.
func (s *Solution) Trouble() string {
	if s.Why == "" {
		return string(s.Status)
	}
	return string(s.Status) + ", " + s.Why
}

// Volts is the voltage across a branch, from A to B; of a battery that of its posts.
func (s *Solution) Volts(b *circuit.Branch) float64 {
	plus, minus := b.A, b.B
	if b.Kind == circuit.BatteryBranch {
		plus, minus = b.Posts()
	}
	v := s.NodeV[plus.Index] - s.NodeV[minus.Index]
	if math.IsNaN(v) {
		return s.apart.volts(plus, minus)
	}
	return v
}

// LoadV is the voltage that a load has: Volts, of a motor that runs either way its
// magnitude.
func (s *Solution) LoadV(b *circuit.Branch) float64 {
	v := s.Volts(b)
	if b.Load != nil && b.Load.Reverses {
		return math.Abs(v)
	}
	return v
}

// PostsV is the voltage across the posts of the battery that feeds a branch.
func (s *Solution) PostsV(b *circuit.Branch) float64 {
	plus, minus := s.Circuit.Supply(b.A)
	return s.NodeV[plus.Index] - s.NodeV[minus.Index]
}

// On tells of a load whether it draws at an operating point.
func (s *Solution) On(b *circuit.Branch) bool { return s.Status == Converged && s.LoadOn[b.Index] }

// HeldV is what resistors that stand in the feed or return of a load, as parts of their own, take
// of the voltage for it: along the way that carries most.
func (s *Solution) HeldV(b *circuit.Branch) (sum float64) {
	if len(s.Circuit.Design.Resistors) == 0 {
		return 0
	}
	along := func(n *circuit.Node, next func(*circuit.Node) []*circuit.Branch, far func(*circuit.Branch) *circuit.Node) {
		for range s.Circuit.Branches {
			var most *circuit.Branch
			for _, x := range next(n) {
				if most == nil || math.Abs(s.BranchA[x.Index]) > math.Abs(s.BranchA[most.Index]) {
					most = x
				}
			}
			if most == nil || s.Circuit.IsPost(n) {
				return
			}
			if most.Dropper() {
				sum += math.Abs(s.Volts(most))
			}
			n = far(most)
		}
	}
	along(b.A, (*circuit.Node).FedBy, func(x *circuit.Branch) *circuit.Node { return x.A })
	along(b.B, (*circuit.Node).ReturnsBy, func(x *circuit.Branch) *circuit.Node { return x.B })
	return sum
}

// OthersV is what the other loads of its string, and resistors, take of the voltage for a load.
func (s *Solution) OthersV(b *circuit.Branch) (sum float64) {
	sum = s.HeldV(b)
	for _, x := range b.String {
		if x != b {
			sum += s.Volts(x)
		}
	}
	return sum
}

// LostV is what is lost between the posts of the battery and a load: in wires, fuses and contacts.
func (s *Solution) LostV(b *circuit.Branch) float64 { return s.PostsV(b) - s.OthersV(b) - s.LoadV(b) }

// SourceA is what a load's current, 0 where that is not known, is to the system's battery: of one behind a
// converter what the converter takes for it.
func (s *Solution) SourceA(load *circuit.Branch) float64 {
	a := math.Abs(s.BranchA[load.Index])
	if p := s.Circuit.ConverterOf(load.A); p != nil && a > 0 {
		out, in := p.Output(), p.Converts()
		a *= s.Volts(out) / (s.Volts(in) * out.OfCharger().Type.Efficiency)
	}
	if math.IsNaN(a) {
		return 0
	}
	return a
}

// Given is the current out of a battery, of its branch; negative = it is charged.
func (s *Solution) Given(battery *circuit.Branch) float64 { return -s.BranchA[battery.Index] }

// Amps is the current of a branch from A to B.
func (s *Solution) Amps(b *circuit.Branch) float64 { return s.BranchA[b.Index] }
