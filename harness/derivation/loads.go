package derivation

import (
	"fmt"
	"math"
	"slices"

	"fusewright/harness/design/quantity"
	"fusewright/harness/formula/battery"
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
	t.Answer = []string{fmt.Sprintf("The circuit of %s may lose %s.", load.Part.Name, t.Root.Value), b.wiresLose(load, b.dropLimit(load).v)}
	if at >= 0 {
		t.Answer = append(t.Answer, fmt.Sprintf("With fuses and contacts it loses %s at nominal and %s at worst, %s.", quantity.Format(worst.Nominal, quantity.Voltage),
			quantity.Format(worst.Corner, quantity.Voltage), during(b.set().Solution(at).Situation.Name)))
	}
	t.Notes = []string{"The limit is that of the conductors at nominal values; with fuses and contacts one and a half times as much may be lost."}
	if load.Load.Load.TightDrop {
		t.Notes = []string{"The limit is that of the conductors at nominal values: above it is advice, above one and a half times a fault."}
	}
	t.Next = []string{fmt.Sprintf("why \"drop of %s\"", load.Part.Name)}
	return t
}

// neverLasts tells of a load that no situation in which batteries run down has on, and that runs from the first battery.
func (b *book) neverLasts(load *circuit.Branch) bool {
	if plus, _ := b.c.Supply(load.A); plus != b.c.Positive() || battery.Of(b.d) == nil {
		return false
	}
	for _, l := range slices.Concat(b.r.Balanced().Lines, b.r.Balanced().KeyOff) {
		if slices.Contains(l.Situation.On, load.Load.Load) && !math.IsInf(l.BatteryHours, 1) {
			return false
		}
	}
	return true
}

// aloneTree explains how long a full battery runs a load with nothing else on.
func (b *book) aloneTree(load *circuit.Branch) *Tree {
	t, name := ofPart(load.Part), load.Part.Name
	bat := battery.Of(b.d)
	drain := of("current of "+name, amps, b.c.DrawA(load), "{} ÷ {}", b.ratedW(load), b.ratedV(load)).orSolved("by its behaviour, at the system voltage")
	if share := load.Load.Average(); share != 1 {
		drain = of(drain.label+", on average", amps, drain.v*share, "{} × {}", drain, b.view(0, corner.Nominal).duty(load))
	}
	s := bat.Stand(1, bat.StartReserve(battery.RatedC), drain.v, battery.RatedC)
	days := standingOf(s, &b.d.Battery, exactly("full", plain, 1), row("charge that a start needs", plain, s.To, s.Source), drain)
	t.finish(of("until a start is not sure", hours, 24*days.v, "24 × {}", days).by(days), nil)
	t.Answer = []string{fmt.Sprintf("A full battery runs %s for %s, with the engine stopped and nothing else on, until a start of the engine is not sure.", name,
		quantity.Format(24*3600*days.v, quantity.Duration)), "No situation of the design has it on while the battery runs down."}
	t.Notes = []string{"What else is on takes from it: a situation of the design with key: off, or on, gives the whole."}
	return t
}
