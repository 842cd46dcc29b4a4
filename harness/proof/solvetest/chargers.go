package solvetest

import (
	"fmt"
	"math/rand/v2"
	"strings"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/library"
)

// AddCharger adds a charger of the library; in is nil of one that no battery feeds.
func (b *Builder) AddCharger(name, row string, panelW float64, in, out *circuit.Node) *circuit.Part {
	return b.addCharger(name, library.Default().Charger(row), panelW, in, out)
}

func (b *Builder) addCharger(name string, t *library.ChargerType, panelW float64, in, out *circuit.Node) *circuit.Part {
	x := &design.Charger{Common: design.Common{Name: name}, Type: t, PanelW: Given(panelW)}
	p := &circuit.Part{Index: len(b.C.Parts), Kind: circuit.Charger, Name: name, Source: x}
	b.C.Parts = append(b.C.Parts, p)
	add := func(kind circuit.BranchKind, at *circuit.Node, ohm float64) *circuit.Branch {
		br := b.Branch(kind, name, at, b.Ground(), ohm)
		br.Part, p.Branches = p, append(p.Branches, br)
		return br
	}
	add(circuit.OutputBranch, out, circuit.ChargerOhm)
	own := out
	if in != nil {
		own = in
		add(circuit.LoadBranch, in, 0).Load = &circuit.LoadSpec{Behaves: design.ConstantPower,
			PowerW: x.Type.RatingA * x.HeldV() / x.Type.Efficiency, RatedV: 12, Duty: 1, Load: &design.Load{}}
	}
	add(circuit.LoadBranch, own, 0).Load = &circuit.LoadSpec{Behaves: design.Resistor, PowerW: x.Type.OwnA * 12, RatedV: 12,
		Duty: 1, Load: &design.Load{}, Standby: true}
	return p
}

// RandomChargers is RandomBanks with one to four chargers of every kind: from one battery to another
// over a feed that may be too thin, on the sun and on shore power; the batteries are part charged.
func RandomChargers(seed uint64) (*circuit.Circuit, *design.Situation) {
	c, sit := RandomBanks(seed)
	b, r := &Builder{C: c}, rand.New(rand.NewPCG(seed, 17))
	sit.Sun, sit.Shore, sit.Charge = 1.2*r.Float64(), r.IntN(2) == 0, map[*design.Bank]float64{}
	posts := []*circuit.Node{c.Nodes[1]}
	for _, p := range c.Parts {
		if bank, ok := p.Source.(*design.Bank); ok {
			sit.Charge[bank] = 0.2 + 0.8*r.Float64()
			posts = append(posts, p.Terminals[0].Node)
		}
	}
	for i := range 1 + r.IntN(4) {
		name, post := fmt.Sprintf("X%d", i), posts[1:][r.IntN(len(posts)-1)]
		out := b.Node(name + " out")
		b.Wire(name+" output", out, post, 0.2+2*r.Float64(), 16)
		var in *circuit.Node
		row := []string{"DC-DC charger 10 A 12 V", "DC-DC charger 30 A 12 V", "PWM controller 20 A 12 V", "MPPT controller 20 A 12 V", "shore charger 20 A 12 V"}[r.IntN(5)]
		if strings.HasPrefix(row, "DC-DC") {
			in = b.Node(name + " in")
			b.Wire(name+" input", posts[0], in, 0.3+6*r.Float64(), []float64{2.5, 6, 16}[r.IntN(3)])
		}
		b.AddCharger(name, row, 20+400*r.Float64(), in, out)
	}
	return c, sit
}
