package derivation

import (
	"fmt"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
)

// speed is a load that a resistor holds back in some position of a switch, in one of its positions.
type speed struct {
	load     *circuit.Branch
	sw       *design.Switch
	position string
}

func (s *speed) name() string { return s.load.Part.Name + " on " + s.position }

// speeds are those of all such loads that a design may have.
func (b *book) speeds() (list []*speed) {
	for _, br := range b.c.Branches {
		if len(b.d.Resistors) == 0 || br.Kind != circuit.LoadBranch || br.Load.Load == nil || br.Load.Standby || !b.c.BehindDropper(br) {
			continue
		}
		for _, p := range b.c.Parts {
			if sw, ok := p.Source.(*design.Switch); ok && sw.Pole == nil {
				for _, position := range sw.Positions {
					list = append(list, &speed{br, sw, position.Name})
				}
			}
		}
	}
	return list
}

// at tells of a situation whether the load draws over the switch in that position.
func (s *speed) at(b *book) func(i int) bool {
	return func(i int) bool {
		sol := b.set().Solution(i)
		if now, _ := circuit.Positions(b.c, sol.Situation); now[s.sw] != s.position || !sol.LoadOn[s.load.Index] {
			return false
		}
		way, _ := b.view(i, corner.Nominal).way(s.load)
		return slices.ContainsFunc(way, func(x *circuit.Branch) bool {
			return x.Closer != nil && x.Closer.Switch != nil && x.Closer.Switch.Lead() == s.sw
		})
	}
}

func (b *book) addSpeeds(add adding) bool {
	for _, s := range b.speeds() {
		worst := func() (corner.Value, int) {
			return b.set().WorstIn(1, corner.AtWorst, s.at(b), func(i int) corner.Value { return b.set().Amps(i, s.load) })
		}
		if !add("current of", s.name(), func() bool { _, at := worst(); return at >= 0 }, func() *Tree {
			w, at := worst()
			t, v := ofPart(s.load.Part), b.view(at, w.At)
			t.in(v)
			t.finish(v.amps(s.load), nil)
			t.Answer = []string{fmt.Sprintf("With %s at %s %s draws %s at worst, %s (%s).", s.sw.Name, s.position, s.load.Part.Name, t.Root.Value, during(t.Situation), t.State),
				fmt.Sprintf("At nominal it is %s.", quantity.Format(w.Nominal, quantity.Current))}
			return t
		}) {
			return false
		}
	}
	return true
}
