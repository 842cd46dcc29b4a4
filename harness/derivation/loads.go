package derivation

import (
	"fmt"

	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
)

func ofPart(p *circuit.Part) *Tree { return &Tree{File: p.Pos.File, Line: p.Pos.Line} }

// voltsTree explains the least voltage of a load.
func (b *book) voltsTree(load *circuit.Branch) *Tree {
	worst, at := b.set().WorstIn(-1, corner.AtWorst, b.on(load), func(i int) corner.Value { return b.set().LoadV(i, load) })
	t, v := ofPart(load.Part), b.view(at, worst.At)
	t.in(v)
	v.drop(load)
	x := v.left[load]
	if x == nil {
		x = v.loadV(load)
	}
	t.finish(x, b.minV(load))
	t.Answer = []string{fmt.Sprintf("At %s there are at the least %s, %s (%s); at nominal %s.", load.Part.Name, t.Root.Value, during(t.Situation), t.State,
		quantity.Format(worst.Nominal, quantity.Voltage))}
	if t.Limit != nil {
		t.Answer = append(t.Answer, fmt.Sprintf("It needs %s.", t.Limit.Value))
	} else {
		t.Answer = append(t.Answer, "Neither the design nor the library says what it needs.")
	}
	t.Next = []string{fmt.Sprintf("why \"drop of %s\"", load.Part.Name)}
	return t
}

// minV is the least that a load works with; nil = not known.
func (b *book) minV(load *circuit.Branch) *value {
	l := load.Load.Load
	switch {
	case !l.MinV.Given():
		return nil
	case l.MinV.Pos.Line > 0 || l.Type == nil:
		return given("needs at least", volts, l.MinV)
	}
	return row("needs at least, "+l.Type.Name, volts, l.MinV.Value, l.Type.Source)
}

func (b *book) on(load *circuit.Branch) func(int) bool {
	return func(i int) bool { return b.set().Solution(i).LoadOn[load.Index] }
}

// limitTree explains what a load's circuit may lose.
func (b *book) limitTree(load *circuit.Branch) *Tree {
	t := ofPart(load.Part)
	worst, at := b.worstDrop(load)
	t.finish(b.dropLimit(load), nil)
	t.Answer = []string{fmt.Sprintf("The circuit of %s may lose %s.", load.Part.Name, t.Root.Value)}
	if at >= 0 {
		t.Answer = append(t.Answer, fmt.Sprintf("It loses %s at nominal and %s at worst, %s.", quantity.Format(worst.Nominal, quantity.Voltage),
			quantity.Format(worst.Corner, quantity.Voltage), during(b.set().Solution(at).Situation.Name)))
	}
	t.Notes = []string{"The limit is that of the conductors at nominal values; with fuses and contacts one and a half times as much may be lost."}
	t.Next = []string{fmt.Sprintf("why \"drop of %s\"", load.Part.Name)}
	return t
}
