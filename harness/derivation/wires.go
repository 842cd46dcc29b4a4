package derivation

import (
	"fmt"
	"math"

	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
	"fusewright/harness/workshop/cutting"
)

// ofWire is a tree about a wire.
func ofWire(w *circuit.Wire) *Tree { return &Tree{File: w.Pos.File, Line: w.Pos.Line} }

// from says where a wire goes.
func wireWords(w *circuit.Wire) string {
	return fmt.Sprintf("%s, %s from %s to %s", w.Number, w.Spec.Size.Label, w.From.Part.Name, w.To.Part.Name)
}

// worstAmps is the greatest current of a branch.
func (b *book) worstAmps(br *circuit.Branch) (corner.Value, int) {
	return b.set().WorstIn(1, corner.AtWorst, func(int) bool { return true }, func(i int) corner.Value { return b.set().Amps(i, br) })
}

func (t *Tree) in(v *view) {
	t.Situation, t.State = v.sol.Situation.Name, v.state.String()
}

// ohmTree explains a wire's resistance where it carries most.
func (b *book) ohmTree(br *circuit.Branch, t *Tree, name string) *Tree {
	worst, at := b.worstAmps(br)
	if at < 0 {
		at = 0
	}
	v := b.view(at, worst.At)
	x := v.ohm(br)
	t.in(v)
	t.finish(x, nil)
	t.Answer = []string{fmt.Sprintf("%s has %s where it carries most: %s (%s).", name, t.Root.Value, during(t.Situation), t.State)}
	if br.Wire != nil {
		t.Notes = append(t.Notes, noteLengths(br.Wire)...)
		t.Answer = append(t.Answer, fmt.Sprintf("On the bench, at 20 °C with new ends, it is %s.", quantity.Format(br.Ohm, quantity.Resistance)))
		if !br.Wire.Spec.Fitted {
			t.Notes = append(t.Notes, fmt.Sprintf("It is reckoned over its finished length, %s; to be cut are %s.", quantity.Format(br.Wire.LengthM, quantity.Length),
				quantity.Format(cutting.LengthM(br.Wire), quantity.Length)))
		}
	} else {
		t.Answer = append(t.Answer, fmt.Sprintf("New and cold it is %s.", quantity.Format(br.Ohm, quantity.Resistance)))
	}
	return t
}

// endsTree explains the crimps of a wire.
func (b *book) endsTree(w *circuit.Wire) *Tree {
	t := ofWire(w)
	x := b.view(0, corner.Weak).endsOhm(w, true)
	t.finish(x, nil)
	t.Answer = []string{fmt.Sprintf("The ends of %s have %s together once aged.", wireWords(w), t.Root.Value),
		fmt.Sprintf("New they have %s; the conductor between them has %s at 20 °C.", quantity.Format(w.EndsOhm, quantity.Resistance), quantity.Format(w.ConductorOhm20, quantity.Resistance))}
	return t
}

// ampsTree explains a wire's greatest current.
func (b *book) ampsTree(br *circuit.Branch, t *Tree, name string) *Tree {
	worst, at := b.worstAmps(br)
	v := b.view(at, worst.At)
	x := v.amps(br)
	t.in(v)
	t.finish(x, nil)
	t.Answer = []string{fmt.Sprintf("The current of %s is %s at worst, %s (%s).", name, t.Root.Value, during(t.Situation), t.State),
		fmt.Sprintf("At nominal it is %s.", quantity.Format(worst.Nominal, quantity.Current))}
	return t
}

// hotTree explains how hot a wire gets.
func (b *book) hotTree(w *circuit.Wire) *Tree {
	worst, at := b.set().WorstIn(1, corner.AtWorst, func(int) bool { return true }, func(i int) corner.Value { return b.set().WireC(i, w) })
	t, v := ofWire(w), b.view(max(at, 0), worst.At)
	t.in(v)
	limit := b.limitC(w, &b.set().Model.Wires[w.Index])
	limit.label = "conductor at its limit"
	t.finish(v.hotC(w), limit)
	t.Answer = []string{fmt.Sprintf("The conductor of %s gets %s at worst, %s (%s); at nominal %s.", wireWords(w), t.Root.Value, during(t.Situation), t.State,
		quantity.Format(worst.Nominal, quantity.Temperature)),
		fmt.Sprintf("It may be %s: its class, %s, less the margin of the practice.", t.Limit.Value, quantity.Plain(w.Spec.Type.ClassC, quantity.Temperature))}
	return t
}

// allowedTree explains what a wire may carry.
func (b *book) allowedTree(w *circuit.Wire) *Tree {
	t := ofWire(w)
	l := &b.set().Model.Wires[w.Index]
	worst, at := b.worstAmps(w.Branch)
	t.finish(b.allowed(w), nil)
	carries := "It carries nothing in any situation."
	if at >= 0 && worst.Corner > traceA {
		carries = fmt.Sprintf("It carries %s at nominal and %s at worst, %s.", quantity.Format(worst.Nominal, quantity.Current),
			quantity.Format(worst.Corner, quantity.Current), during(b.set().Solution(at).Situation.Name))
	}
	t.Answer = []string{fmt.Sprintf("%s may carry %s where it lies; the %s governs.", wireWords(w), b.mayCarry(w), l.Governs), carries}
	return t
}

// cutTree explains the length to cut.
func (b *book) cutTree(w *circuit.Wire) *Tree {
	t := ofWire(w)
	var pieces []*value
	for _, piece := range w.Cut() {
		pieces = append(pieces, cutLength(piece))
	}
	x := pieces[0]
	if len(pieces) > 1 {
		x = sum("to cut, all pieces", metres, cutting.LengthM(w), pieces...)
	}
	t.finish(x, nil)
	t.Answer = []string{fmt.Sprintf("Cut %s of %s.", t.Root.Value, wireWords(w)), lengths(w) + " " +
		"The cut list and the drawings give the length to cut; drop, resistance and current go by that of the finished wire."}
	return t
}

// lengths says what a wire measures finished and to cut, and what lies between.
func lengths(w *circuit.Wire) string {
	return fmt.Sprintf("%s is %s long finished, from terminal to terminal, and %s to cut: the rest goes into the barrels, is trimmed, or is room within the permitted band.",
		w.Number, metre(w.LengthM), metre(cutting.LengthM(w)))
}

// metre is a length to the millimetre.
func metre(m float64) string { return text0(math.Round(1000*m)/1000) + " m" }

// noteLengths are the lengths of a wire that is cut, for what goes by the finished one.
func noteLengths(w *circuit.Wire) []string {
	if w.Spec.Fitted {
		return nil
	}
	return []string{lengths(w) + " Its resistance goes by the first."}
}

// cutLength is the length to cut of one piece.
func cutLength(w *circuit.Wire) *value {
	p := cutting.Break(w)
	from, formula := []*value{}, ""
	add := func(x *value) {
		if math.Abs(x.v) < 1e-9 {
			return
		}
		if len(from) > 0 {
			formula += " + "
		}
		from, formula = append(from, x), formula+"{}"
	}
	add(lengthOf(w))
	add(solved("for renewing the terminals twice, beyond the slack", metres, p.ServiceM, "AC 43.13-1B par. 11-118"))
	for _, from := range []bool{true, false} {
		if end := w.Crimp(from); end != nil && end.StripMm > 0 {
			add(row("in the barrel of "+end.Name, metres, end.StripMm/1000, end.Source))
		}
	}
	add(of("trimmed square, both ends", metres, p.TrimM, "2 × {}", assumed("trimmed square at an end", metres, cutting.TrimM, "to square off")))
	add(of("to the middle of the permitted band", metres, p.ToleranceM, "{} ÷ 2", published("permitted band of the length", metres, p.BandM, cutting.ToleranceSource)))
	add(solved(fmt.Sprintf("up to the next %.0f mm", 1000*cutting.StepM), metres, p.RoundingM, "rounding"))
	return of("to cut of "+w.Number, metres, p.CutM, formula, from...)
}
