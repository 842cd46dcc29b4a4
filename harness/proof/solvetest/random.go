package solvetest

import (
	"fmt"
	"math/rand/v2"
	"strings"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
)

// Random is a network of every kind of load from a seed: a battery, usually
// with a charging system that is at its limit or not, a tree of feeds with
// loops, relays, switches' contacts left to chance, some islands and returns
// through frame and wires. Its constant-power loads stay well under what the
// network can carry.
func Random(seed uint64) (*circuit.Circuit, *design.Situation) {
	r := rand.New(rand.NewPCG(seed, 7))
	b := New()
	plus := b.Node("battery +")
	b.Battery(plus, 0.005+0.02*r.Float64())
	b.C.Design.Battery.CapacityAh = Given(8 + 40*r.Float64())
	rpm := 0.0
	if r.IntN(4) > 0 {
		b.Charger(plus, 13.8+r.Float64(), 5+40*r.Float64())
		rpm = 500 + 2000*r.Float64()
	}
	feeds := grow(b, r, []*circuit.Node{plus}, 3+r.IntN(20), "W")
	returns := grow(b, r, []*circuit.Node{b.Ground()}, 1+r.IntN(6), "R")
	for i := range r.IntN(3) {
		coil := b.Node("coil")
		b.Wire(fmt.Sprintf("C%d", i), pick(r, feeds), coil, 1, 0.5)
		out := b.Node("87")
		b.Relay(fmt.Sprintf("K%d", i), coil, pick(r, returns), pick(r, feeds), out, r.IntN(4) == 0)
		feeds = append(feeds, out)
	}
	kinds := []design.Behaviour{design.Resistor, design.FilamentLamp, design.ConstantPower, design.Motor}
	for i := range 2 + r.IntN(14) {
		load := b.Load(fmt.Sprintf("E%d", i), pick(r, feeds), pick(r, returns), kinds[r.IntN(4)],
			2+50*r.Float64(), 12+2*r.Float64())
		if load.Load.Behaves == design.Motor && i%2 == 0 {
			load.Load.FanStall = 2 + float64(i)/2
		}
	}
	if r.IntN(3) == 0 { // an island
		x, y := b.Node("x"), b.Node("y")
		b.Wire("X", x, y, 1, 1)
		b.Load("EX", x, y, design.ConstantPower, 10, 12)
	}
	return b.C, Situation(rpm)
}

// grow adds nodes by wires to nodes that are there, sometimes with a second
// way, sometimes by a fuse or an open contact.
func grow(b *Builder, r *rand.Rand, nodes []*circuit.Node, count int, letter string) []*circuit.Node {
	for i := range count {
		from, to := pick(r, nodes), b.Node(fmt.Sprintf("%s%d", letter, i))
		name := fmt.Sprintf("%s%d", letter, i)
		b.Wire(name, from, to, 0.2+2*r.Float64(), []float64{1, 1.5, 2.5, 4}[r.IntN(4)])
		switch r.IntN(5) {
		case 0:
			b.Wire(name+"b", pick(r, nodes), to, 0.2+2*r.Float64(), 1)
		case 1:
			b.Branch(circuit.FuseBranch, "F"+name, pick(r, nodes), to, 0.004)
		case 2:
			k := b.Branch(circuit.ContactBranch, "S"+name, pick(r, nodes), to, 0.01)
			k.Closer = &circuit.Closer{Key: design.WhenRunning}
		}
		nodes = append(nodes, to)
	}
	return nodes
}

func pick(r *rand.Rand, nodes []*circuit.Node) *circuit.Node { return nodes[r.IntN(len(nodes))] }

// Harness is a regular network of about the given number of wires: feeders with
// a fuse, a relay and a block of eight ways each, whose loads of all kinds
// return to a stud of the frame.
func Harness(wires int) (*circuit.Circuit, *design.Situation) {
	b := New()
	plus := b.Node("battery +")
	feeders := max(1, wires/18)
	b.Battery(plus, 0.010/float64(feeders))
	b.C.Design.Battery.CapacityAh = Given(14 * float64(feeders))
	b.Charger(plus, 14.3, 15*float64(feeders))
	kinds := []design.Behaviour{design.ConstantPower, design.Resistor, design.FilamentLamp, design.Motor}
	stud := b.Node("stud")
	for f := 0; f < feeders; f++ {
		if f%50 == 0 {
			stud = b.Node("stud")
			b.Resistor("frame", stud, b.Ground(), 0.0002)
		}
		in, out := b.Node("in"), b.Node("out")
		b.Wire("feed", plus, in, 0.3, 4)
		b.Branch(circuit.FuseBranch, "fuse", in, out, 0.002)
		bus := b.Node("bus")
		b.Relay("K", out, stud, out, bus, false)
		for w := range 8 {
			way, end, back := b.Node("way"), b.Node("end"), b.Node("back")
			b.Branch(circuit.FuseBranch, "way", bus, way, 0.006)
			b.Wire("load", way, end, 1.5, 1)
			b.Load("E", end, back, kinds[w%4], 12, 13.5)
			b.Wire("return", back, stud, 1, 1)
		}
	}
	return b.C, Situation(2600)
}

// RandomValves is Random with diodes of both kinds, a few of them reversed, between its nodes
// and before loads of their own, and a switch in one of three positions, two outputs of which
// meet behind diodes.
func RandomValves(seed uint64) (*circuit.Circuit, *design.Situation) {
	c, sit := Random(seed)
	b, r := &Builder{C: c}, rand.New(rand.NewPCG(seed, 11))
	var nodes []*circuit.Node // feeds alone: from there to a return even a diode is a short
	for _, n := range c.Nodes[1:] {
		if strings.HasPrefix(n.Name, "W") || n.Name == "battery +" {
			nodes = append(nodes, n)
		}
	}
	kinds := []design.Behaviour{design.Resistor, design.FilamentLamp, design.ConstantPower, design.Motor}
	for i := range 1 + r.IntN(6) {
		out := b.Node("cathode")
		b.Diode(fmt.Sprintf("D%d", i), pick(r, nodes), out, r.IntN(2) == 0, r.IntN(5) == 0)
		if r.IntN(2) == 0 {
			b.Diode(fmt.Sprintf("D%db", i), pick(r, nodes), out, r.IntN(2) == 0, false)
		}
		b.Load(fmt.Sprintf("ED%d", i), out, b.Ground(), kinds[r.IntN(4)], 1+20*r.Float64(), 12)
	}
	s := &design.Switch{Positions: []*design.Position{{Name: "off"}, {Name: "low", Outputs: []string{"a"}}, {Name: "high", Outputs: []string{"a", "b"}}}}
	part := &circuit.Part{Index: len(c.Parts), Kind: circuit.Switch, Name: "P", Source: s}
	c.Parts = append(c.Parts, part)
	in, join := pick(r, nodes), b.Node("join")
	for _, output := range s.Outputs() {
		out := b.Node(output)
		k := b.Branch(circuit.ContactBranch, "P:"+output, in, out, 0.005)
		k.Closer, k.Part = &circuit.Closer{Switch: s, Output: output}, part
		b.Diode("DP"+output, out, join, true, false)
		b.Load("EP"+output, out, b.Ground(), kinds[r.IntN(4)], 2+20*r.Float64(), 12)
	}
	b.Load("EP", join, b.Ground(), kinds[r.IntN(4)], 2+20*r.Float64(), 12)
	sit.Set = []design.Setting{{Switch: s, Position: s.Positions[r.IntN(3)].Name}}
	return c, sit
}
