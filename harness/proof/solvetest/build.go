// Package solvetest assembles circuits for tests of the solver and of netlists:
// small ones by hand, random ones of every kind of branch from a seed, and
// large ones for benchmarks. Its circuits are networks only; they have no
// drawing, places or prices, and their values are invented.
package solvetest

import (
	"fmt"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/library"
)

// Builder assembles a circuit node by node.
type Builder struct {
	C *circuit.Circuit
}

// Given is a quantity as if the design said it.
func Given(v float64) design.Quantity {
	return design.Quantity{Value: v, Text: fmt.Sprint(v)}
}

// New starts a circuit of a 12 V system: node 0 is battery negative.
func New() *Builder {
	b := &Builder{C: &circuit.Circuit{Design: &design.Design{SystemV: Given(12)}}}
	b.Node("battery -")
	return b
}

// Node adds a node.
func (b *Builder) Node(name string) *circuit.Node {
	n := &circuit.Node{Index: len(b.C.Nodes), Name: name}
	b.C.Nodes = append(b.C.Nodes, n)
	return n
}

// Ground is battery negative.
func (b *Builder) Ground() *circuit.Node { return b.C.Nodes[0] }

// Branch adds a branch of any kind.
func (b *Builder) Branch(kind circuit.BranchKind, name string, from, to *circuit.Node, ohm float64) *circuit.Branch {
	br := &circuit.Branch{Index: len(b.C.Branches), Kind: kind, A: from, B: to, Ohm: ohm, Name: name}
	b.C.Branches = append(b.C.Branches, br)
	from.Branches = append(from.Branches, br)
	to.Branches = append(to.Branches, br)
	return br
}

// Battery adds the battery from a node to battery negative.
func (b *Builder) Battery(plus *circuit.Node, ohm float64) *circuit.Branch {
	return b.Branch(circuit.BatteryBranch, "G1", plus, b.Ground(), ohm)
}

// Charger adds a charging system that gives limitA at 1000 rpm and above.
func (b *Builder) Charger(plus *circuit.Node, regulatedV, limitA float64) *circuit.Branch {
	b.C.Design.Charging = design.Charging{RegulatedV: Given(regulatedV),
		Output: []design.OutputPoint{{RPM: Given(1000), CurrentA: Given(limitA)}}}
	return b.Branch(circuit.ChargerBranch, "G2", plus, b.Ground(), 0.001)
}

// Resistor adds a resistor.
func (b *Builder) Resistor(name string, from, to *circuit.Node, ohm float64) *circuit.Branch {
	return b.Branch(circuit.ResistorBranch, name, from, to, ohm)
}

// Wire adds a wire of a length and an area with ends of no resistance.
func (b *Builder) Wire(name string, from, to *circuit.Node, lengthM, areaMm2 float64) *circuit.Branch {
	ohm := 0.017241 * lengthM / areaMm2
	br := b.Branch(circuit.WireBranch, name, from, to, ohm)
	w := &circuit.Wire{Index: len(b.C.Wires), Number: name, LengthM: lengthM, ConductorOhm20: ohm, Branch: br}
	b.C.Wires = append(b.C.Wires, w)
	br.Wire = w
	return br
}

// Load adds a load that always draws when it has voltage.
func (b *Builder) Load(name string, from, to *circuit.Node, how design.Behaviour, powerW, ratedV float64) *circuit.Branch {
	br := b.Branch(circuit.LoadBranch, name, from, to, 0)
	br.Load = &circuit.LoadSpec{Behaves: how, PowerW: powerW, RatedV: ratedV, Duty: 1,
		Load: &design.Load{Common: design.Common{Name: name}}}
	return br
}

// Relay adds a coil and a make contact; rest tells of a break contact instead.
func (b *Builder) Relay(name string, coilPlus, coilMinus, in, out *circuit.Node, rest bool) (coil, contact *circuit.Branch) {
	coil = b.Resistor(name+" coil", coilPlus, coilMinus, 90)
	coil.Part = &circuit.Part{Kind: circuit.Relay, Name: name, Source: &design.Relay{
		Form: &library.RelayForm{CoilV: 12, CoilOhm: 90, PullInV: 8, DropOutV: 1.2, ContactOhm: 0.003}}, Branches: []*circuit.Branch{coil}}
	contact = b.Branch(circuit.ContactBranch, name+" contact", in, out, 0.003)
	contact.Closer = &circuit.Closer{Coil: coil}
	if rest {
		contact.Closer = &circuit.Closer{Break: coil}
	}
	return coil, contact
}

// Diode adds a diode of silicon or a Schottky, its cathode at the second node.
func (b *Builder) Diode(name string, from, to *circuit.Node, schottky, reversed bool) *circuit.Branch {
	row := &library.DiodeType{Name: name, KneeV: 0.65, DropV: 0.9, RatingA: 3, ReverseV: 100, LeakA: 5e-6}
	if schottky {
		row = &library.DiodeType{Name: name, KneeV: 0.3, DropV: 0.54, RatingA: 10, ReverseV: 45, LeakA: 1.5e-3}
	}
	d := b.Branch(circuit.DiodeBranch, name, from, to, row.SlopeOhm())
	d.Diode = &design.Diode{Type: row, Reversed: reversed}
	return d
}

// Situation is the key on at an engine speed; 0 = engine stopped.
func Situation(rpm float64) *design.Situation {
	return &design.Situation{Name: "test", Key: design.KeyOn, EngineRPM: rpm}
}
