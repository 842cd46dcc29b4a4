package derivation

import (
	"fmt"
	"math"

	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
	"fusewright/harness/network/solve"
	"fusewright/library"
)

// worstDrop is the worst drop of a load over the situations in which it is on.
func (b *book) worstDrop(load *circuit.Branch) (corner.Value, int) {
	return b.set().WorstIn(1, corner.AtWorst, func(i int) bool { return b.set().Solution(i).LoadOn[load.Index] },
		func(i int) corner.Value { return b.set().Drop(i, load) })
}

// dropTree explains what a load's circuit loses at its worst.
func (b *book) dropTree(load *circuit.Branch) *Tree {
	worst, at := b.worstDrop(load)
	v := b.view(at, worst.At)
	root, limit := v.drop(load), b.dropLimit(load)
	t := &Tree{Situation: v.sol.Situation.Name, State: worst.At.String(), File: load.Part.Pos.File, Line: load.Part.Pos.Line}
	nominal := b.c.NominalAt(load.A)
	share := func(volts float64) string { return quantity.Format(volts/nominal, quantity.Share) }
	t.finish(root, limit)
	t.noMargin(root, limit)
	t.Answer = []string{
		fmt.Sprintf("The circuit of %s loses %s at worst, %s of %s, %s (%s); at nominal %s, %s.", load.Part.Name, t.Root.Value, share(root.v),
			quantity.Plain(nominal, quantity.Voltage), during(t.Situation), t.State, quantity.Format(worst.Nominal, quantity.Voltage), share(worst.Nominal)),
		b.wiresLose(load, limit.v),
	}
	t.Lost = v.lostIn(load)
	if text := copperWords(t.Lost); text != "" {
		t.Answer = append(t.Answer, text)
	}
	t.Notes = []string{"Wires count with their finished lengths; what is cut of them is longer, and stands in the drawing and the cut list."}
	t.Next = []string{fmt.Sprintf("why \"limit of %s\"", load.Part.Name)}
	if w := v.worstWire(load); w != nil {
		t.Next = append(t.Next, fmt.Sprintf("why \"resistance of %s\"", w.Number))
		t.Notes = append(t.Notes, noteLengths(w)...)
	}
	t.Next = append(t.Next, "explain voltage-drop")
	return t
}

// worstWire is the wire of a load's way that loses most; nil = none does.
func (v *view) worstWire(load *circuit.Branch) (worst *circuit.Wire) {
	way, _ := v.way(load)
	most := 0.0
	for _, b := range way {
		if lost := math.Abs(v.sol.Volts(b)); b.Wire != nil && lost > most {
			worst, most = b.Wire, lost
		}
	}
	return worst
}

// wiresLose is what decides: what the wires of a load's way lose at nominal, against what they may.
func (b *book) wiresLose(load *circuit.Branch, limitV float64) string {
	way := b.c.WayConductors(load.Part)
	lost, _ := b.set().WorstIn(1, corner.AtNominal, b.on(load), func(i int) corner.Value {
		return b.set().Figure(i, 1, func(s *solve.Solution) (sum float64) {
			for _, w := range way(s.BranchA) {
				sum += math.Abs(s.Volts(w))
			}
			return sum
		})
	})
	share := func(volts float64) string {
		return quantity.Format(volts/b.c.NominalAt(load.A), quantity.Share)
	}
	return fmt.Sprintf("Its wires may lose %s, %s, at nominal, which decides; they lose %s, %s: %s.", quantity.Format(limitV, quantity.Voltage), share(limitV),
		quantity.Format(lost.Nominal, quantity.Voltage), share(lost.Nominal), marginOf(limitV-lost.Nominal))
}

func marginOf(v float64) string {
	if v < 0 {
		return quantity.Format(-v, quantity.Voltage) + " too much"
	}
	return "margin " + quantity.Format(v, quantity.Voltage)
}

// dropLimit is what the wires of a load's circuit may lose.
func (b *book) dropLimit(load *circuit.Branch) *value {
	l := load.Load.Load
	kind := "a load that is not critical"
	switch {
	case l.Critical:
		kind = "a critical load"
	case l.TightDrop:
		kind = "navigation lamps, radios, blowers and bilge pumps"
	}
	return b.limitFor(load, kind, l.Critical || l.TightDrop)
}

// limitFor is the limit of critical or other loads.
func (b *book) limitFor(load *circuit.Branch, kind string, critical bool) *value {
	limit, given1 := corner.DropLimit(b.d, critical)
	key, q := "drop other", b.d.Limits.DropOther
	if critical {
		key, q = "drop critical", b.d.Limits.DropCritical
	}
	share := given("share for "+kind, percent, q)
	if !given1 {
		from := library.Source{}
		if b.d.Practice != nil {
			from = b.d.Practice.Source[key]
		}
		share = row("share for "+kind, percent, limit, from)
	}
	return of("may be lost by "+kind, volts, limit*b.c.NominalAt(load.A), "{} × {}", share, b.nominalV(load)).by(share)
}
