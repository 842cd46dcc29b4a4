package solvetest

import (
	"fmt"
	"math/rand/v2"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/library"
)

// Bank adds a further battery between two nodes.
func (b *Builder) Bank(name, chemistry string, capacityAh float64, plus, minus *circuit.Node) *circuit.Branch {
	chem := library.Default().Chemistry(chemistry)
	store := design.Battery{Chemistry: chem, CapacityAh: Given(capacityAh)}
	p := &circuit.Part{Index: len(b.C.Parts), Kind: circuit.Bank, Name: name, Source: &design.Bank{Store: store}}
	b.C.Parts = append(b.C.Parts, p)
	p.Terminals = []*circuit.Terminal{{Part: p, Name: "+", Node: plus}, {Part: p, Name: "-", Node: minus}}
	br := b.Branch(circuit.BatteryBranch, name, plus, minus, chem.Ohm(capacityAh))
	br.Part = p
	p.Branches = append(p.Branches, br)
	return br
}

// RandomBanks is RandomValves with one to three further batteries, each linked to what is
// there by a wire with a contact, a voltage-sensing relay or a diode, with its negative post
// on the first one's or behind a cable, and with loads of its own.
func RandomBanks(seed uint64) (*circuit.Circuit, *design.Situation) {
	c, sit := RandomValves(seed)
	b, r := &Builder{C: c}, rand.New(rand.NewPCG(seed, 13))
	kinds := []design.Behaviour{design.Resistor, design.FilamentLamp, design.ConstantPower, design.Motor}
	from := []*circuit.Node{c.Nodes[1]}
	for i := range 1 + r.IntN(3) {
		name := fmt.Sprintf("B%d", i)
		plus, end, minus := b.Node(name+" +"), b.Node(name+" end"), b.Ground()
		if r.IntN(2) == 0 {
			minus = b.Node(name + " -")
			b.Wire(name+" negative", minus, b.Ground(), 0.3+2*r.Float64(), 16)
		}
		b.Bank(name, []string{"AGM", "flooded", "LiFePO4"}[r.IntN(3)], 20+100*r.Float64(), plus, minus)
		b.Wire(name+" link", end, plus, 0.3+3*r.Float64(), 16)
		switch up := pick(r, from); r.IntN(3) {
		case 0:
			coil, _ := b.Relay(name+" sense", up, b.Ground(), up, end, false)
			form := coil.Part.Source.(*design.Relay).Form
			form.Senses, form.PullInV, form.DropOutV, coil.Ohm = true, 13.3, 12.8, 12000
		case 1:
			b.Diode(name+" diode", up, end, r.IntN(2) == 0, false)
		default:
			k := b.Branch(circuit.ContactBranch, name+" switch", up, end, 0.0005)
			k.Closer = &circuit.Closer{Key: []design.When{design.WhenRunning, design.WhenAlways}[r.IntN(2)]}
		}
		for j := range 1 + r.IntN(4) {
			at := b.Node("load")
			b.Wire(fmt.Sprintf("%s W%d", name, j), plus, at, 0.3+3*r.Float64(), 2.5)
			b.Load(fmt.Sprintf("%s E%d", name, j), at, minus, kinds[r.IntN(4)], 2+40*r.Float64(), 12)
		}
		from = append(from, plus)
	}
	return c, sit
}
