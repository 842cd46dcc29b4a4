package bench

import (
	"math"
	"strings"

	"fusewright/harness/design/quantity"
	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
)

// leastA is the current below which a connection's drop is not asked for: what it
// loses is in the volts of its load, and what a bad one makes of heat is little: 0.1 V
// more is 2.5 W. Common practice, no source.
const leastA = 25.0

// leastDropV is the upper bound below which a workshop meter, which errs by
// DropFixedV, cannot tell a good connection from a bad one.
const leastDropV = 20e-3

// nearShare is the share of its largest current at which a connection may be
// measured as well: it saves setting up a situation for one drop.
const nearShare = 0.9

// drops gives each connection its largest allowed drop, in a situation that
// loads it most or nearly so: measured there once, it need not be measured
// again. Of several such situations the one that serves most connections is
// taken.
func (m *maker) drops(all []*solved) {
	joints := m.joints()
	serves := make([]int, len(all))
	for _, b := range joints {
		for _, i := range loaded(all, b) {
			serves[i]++
		}
	}
	groups := make([]*Group, len(all))
	var still []string
	for _, b := range joints {
		best := -1
		for _, i := range loaded(all, b) {
			if best < 0 || serves[i] > serves[best] {
				best = i
			}
		}
		if best < 0 {
			still = append(still, jointName(b))
			continue
		}
		check := dropOf(all[best], b)
		if check.High < leastDropV {
			still = append(still, jointName(b))
			continue
		}
		if groups[best] == nil {
			groups[best] = &Group{Title: "Drops across connections, at or near their largest current"}
			if s := all[best]; s.section.Kind == Charging { // which has several states
				groups[best].Title += ": " + s.situation.Name
			}
		}
		groups[best].Checks = append(groups[best].Checks, check)
	}
	for i, g := range groups {
		if g != nil {
			all[i].section.Groups = append(all[i].section.Groups, g)
		}
	}
	if len(still) > 0 {
		m.missing = append(m.missing, "No drop is measured across connections that carry less than 25 A or may lose less than 20 mV in every "+
			"situation: "+wording.And(still)+". Their continuity and the volts of their loads are their test; where a load reads low, "+
			"follow the drops from the post outward.")
	}
}

// loaded are the situations in which a connection carries nearly its largest
// current; none when that is too small to measure a drop by.
func loaded(all []*solved, b *circuit.Branch) []int {
	most := leastA
	for _, s := range all {
		if s.ok() {
			most = math.Max(most, math.Abs(s.nominal.Amps(b)))
		}
	}
	var list []int
	for i, s := range all {
		if s.ok() && math.Abs(s.nominal.Amps(b)) > most*nearShare && math.Abs(s.nominal.Amps(b)) > leastA {
			list = append(list, i)
		}
	}
	return list
}

// joints lists the connections in the order in which one follows them from the
// battery: each wire and then what lies behind its end.
func (m *maker) joints() []*circuit.Branch {
	var list []*circuit.Branch
	done := make([]bool, len(m.c.Branches))
	add := func(b *circuit.Branch) {
		if joint(b) && !done[b.Index] {
			done[b.Index] = true
			list = append(list, b)
		}
	}
	for _, w := range m.c.Wires {
		for _, b := range w.From.Node.Branches { // ways of a block come before the wire that leaves them
			if b.Part == w.From.Part && b.B == w.From.Node {
				add(b)
			}
		}
		add(w.Branch)
		for _, b := range w.To.Node.Branches {
			if b.Part == w.To.Part && b.A == w.To.Node && b.Part.Kind != circuit.Block {
				add(b)
			}
		}
	}
	for _, b := range m.c.Branches {
		add(b)
	}
	return list
}

// joint tells whether a branch is a connection that can be probed from outside:
// wires, fuses, contacts, links and the frame.
func joint(b *circuit.Branch) bool {
	if !b.Conductor() || b.Kind == circuit.ContactBranch && (b.Closer.OwnSwitch != nil || b.Closer.Standby != nil) {
		return false
	}
	return b.Wire != nil || b.Part != nil && b.Part.Kind != circuit.Tap
}

func jointName(b *circuit.Branch) string {
	if b.Wire != nil {
		var numbers []string
		for _, piece := range b.Wire.Cut() {
			numbers = append(numbers, piece.Number)
		}
		return strings.Join(numbers, " ")
	}
	if b.Fuse != nil && b.Fuse.Ref != "" {
		return b.Fuse.Ref
	}
	return b.Part.Ref
}

// dropOf is the drop of one connection.
func dropOf(s *solved, b *circuit.Branch) *Check {
	c := &Check{Ref: jointName(b), Quantity: quantity.Voltage, Basis: basisDrop, Probe: s.between(b.A, b.B)}
	nominal, low, high := s.of(func(sol *solve.Solution) float64 { return math.Abs(sol.Volts(b)) })
	c.Nominal = nominal
	c.Low, c.High = widen(low, high, DropShare, DropFixedV)
	if w := b.Wire; w != nil {
		c.Name, c.Where = w.Look(), short(w.From)+" to "+short(w.To)
		return c
	}
	c.Name, c.Where = b.Part.Name, ends(b)
	if b.Part.Kind == circuit.Ground {
		c.Where = "stud to battery −"
	}
	return c
}

// ends are the terminals of a part between which a branch lies.
func ends(b *circuit.Branch) string {
	name := func(n *circuit.Node) string {
		for _, t := range b.Part.Terminals {
			if t.Node == n {
				return t.Name
			}
		}
		if len(n.Terminals) > 0 { // of the other half of a reversing pair
			return short(n.Terminals[0])
		}
		return "inside"
	}
	return name(b.A) + " to " + name(b.B)
}
