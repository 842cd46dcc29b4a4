package solvetest

import (
	"fmt"
	"math/rand/v2"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
)

// RandomStays is RandomChargers with relays that latch and relays that an off delay holds, each found
// in either state, a motor between the halves of a reversing pair, and a machine at the end of a cable whose
// regulator senses the battery.
func RandomStays(seed uint64) (*circuit.Circuit, *design.Situation) {
	c, sit := RandomChargers(seed)
	b, r := &Builder{C: c}, rand.New(rand.NewPCG(seed, 19))
	plus := c.Nodes[1]
	kinds := []design.Behaviour{design.Resistor, design.FilamentLamp, design.ConstantPower, design.Motor}
	load := func(name string, at *circuit.Node) {
		b.Load(name, at, b.Ground(), kinds[r.IntN(4)], 2+40*r.Float64(), 12)
	}
	for i := range 1 + r.IntN(3) {
		name, in := fmt.Sprintf("L%d", i), b.Node("latch in")
		b.Wire(name+" feed", plus, in, 0.3+2*r.Float64(), 4)
		coilPlus := b.Node("pulse")
		b.Branch(circuit.ContactBranch, name+" button", in, coilPlus, 0.01).Closer = &circuit.Closer{Key: []design.When{design.WhenRunning, design.WhenKey}[r.IntN(2)]}
		set, reset := b.Changeover(name, coilPlus, in, b.Node("set"), b.Node("reset"))
		relay := set.Closer.Coil.Part.Source.(*design.Relay)
		relay.Latches, set.Closer.Latch, reset.Closer.Latch = true, relay, relay
		if r.IntN(2) == 0 {
			sit.Held = append(sit.Held, relay)
		}
		load(name+" set", set.B)
		load(name+" reset", reset.B)
	}
	for i := range 1 + r.IntN(3) {
		name, dead, out := fmt.Sprintf("T%d", i), b.Node("dead"), b.Node("delayed")
		k := b.Branch(circuit.ContactBranch, name+" key", plus, dead, 0.01)
		k.Closer = &circuit.Closer{Key: []design.When{design.WhenRunning, design.WhenAlways}[r.IntN(2)]}
		coil, _ := b.Relay(name, dead, b.Ground(), plus, out, false)
		if r.IntN(2) == 0 {
			sit.Held = append(sit.Held, coil.Part.Source.(*design.Relay))
		}
		load(name+" load", out)
	}
	b.reversing(r, plus)
	if c.Design.Charging.Present() && r.IntN(2) == 0 {
		b.afar(plus, 0.5+3*r.Float64())
	}
	return c, sit
}

// Changeover adds a coil with a make contact to one node and a break contact to another.
func (b *Builder) Changeover(name string, coilPlus, in, make, rest *circuit.Node) (makes, breaks *circuit.Branch) {
	coil, makes := b.Relay(name, coilPlus, b.Ground(), in, make, false)
	breaks = b.Branch(circuit.ContactBranch, name+" break", in, rest, 0.003)
	breaks.Closer = &circuit.Closer{Break: coil}
	return makes, breaks
}

// reversing adds a motor between the common contacts of two changeover relays, one of which may have pulled in.
func (b *Builder) reversing(r *rand.Rand, plus *circuit.Node) {
	in := b.Node("winch in")
	b.Wire("winch feed", plus, in, 0.3+2*r.Float64(), 16)
	half := func(name string, on bool) *circuit.Node {
		coil, out := b.Node(name+" coil"), b.Node(name)
		k := b.Branch(circuit.ContactBranch, name+" button", in, coil, 0.01)
		k.Closer = &circuit.Closer{Key: design.WhenRunning}
		if on {
			k.Closer.Key = design.WhenAlways
		}
		pulled, _ := b.Relay(name, coil, b.Ground(), in, out, false)
		rest := b.Branch(circuit.ContactBranch, name+" rest", out, b.Ground(), 0.003)
		rest.Closer = &circuit.Closer{Break: pulled}
		return out
	}
	which := r.IntN(3)
	b.Load("winch", half("haul", which == 0), half("veer", which == 1), design.Motor, 20+300*r.Float64(), 12)
}

// afar moves the charging system to the end of a cable, its regulator sensing the battery.
func (b *Builder) afar(plus *circuit.Node, lengthM float64) {
	machine := b.Node("B+")
	b.Wire("charging cable", plus, machine, lengthM, 10)
	b.C.Design.Charging.FedBy = []design.Feed{{}}
	for _, x := range b.C.Branches {
		if x.Kind == circuit.ChargerBranch {
			plus.Branches = slices.DeleteFunc(plus.Branches, func(y *circuit.Branch) bool { return y == x })
			x.A, machine.Branches = machine, append(machine.Branches, x)
		}
	}
}
