package solvetest

import (
	"fmt"
	"math/rand/v2"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/library"
)

// RandomStuds is RandomBanks with the charging system at its own stud, from which an isolator's diodes lead to the
// first battery and some of the further ones, sensed at either end; and with a second alternator on one of these.
func RandomStuds(seed uint64) (*circuit.Circuit, *design.Situation) {
	c, sit := RandomBanks(seed)
	b, r := &Builder{C: c}, rand.New(rand.NewPCG(seed, 23))
	posts := []*circuit.Node{c.Nodes[1]}
	for _, p := range c.Parts {
		if p.Kind == circuit.Bank {
			posts = append(posts, p.Terminals[0].Node)
		}
	}
	ch := &c.Design.Charging
	if ch.Present() {
		stud, in := b.Node("B+"), b.Node("isolator")
		ch.Feeds, ch.Senses = true, []string{"battery", "machine"}[r.IntN(2)]
		for _, x := range c.Branches {
			if x.Kind == circuit.ChargerBranch {
				x.A.Branches = slices.DeleteFunc(x.A.Branches, func(y *circuit.Branch) bool { return y == x })
				x.A, stud.Branches = stud, append(stud.Branches, x)
			}
		}
		b.Resistor("field", stud, b.Ground(), 20+100*r.Float64()) // else leaks alone hold a stud that gives nothing
		b.Wire("isolator feed", stud, in, 0.3+2*r.Float64(), 16)
		for i, post := range posts {
			if i > 0 && r.IntN(3) == 0 {
				continue
			}
			end, name := b.Node("end"), fmt.Sprintf("I%d", i)
			b.Diode(name, in, end, r.IntN(2) == 0, false)
			b.Wire(name+" lead", end, post, 0.3+3*r.Float64(), 16)
		}
	}
	out, post := b.Node("alternator"), posts[r.IntN(len(posts))]
	b.Wire("alternator lead", out, post, 0.3+3*r.Float64(), 16)
	most := 20 + 60*r.Float64()
	p := b.addCharger("second", &library.ChargerType{Name: "alternator", From: "engine", Volts: 12, RatingA: most, OutV: 13.8 + r.Float64()}, 0, nil, out)
	p.Source.(*design.Charger).Engine = design.Charging{Output: []design.OutputPoint{
		{RPM: Given(400), CurrentA: Given(most / 4)}, {RPM: Given(3000), CurrentA: Given(most)}}}
	return c, sit
}
