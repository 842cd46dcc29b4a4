package circuit

import (
	"fusewright/harness/design"
	"fusewright/library"
)

// JointEnd is the kind of crimp part that takes the wires of a joint together.
const JointEnd = "joint"

// Crimp is what is crimped on an end of a wire: at a joint, the part that takes
// all its wires together, else the end's own; nil when none in the library fits.
func (w *Wire) Crimp(from bool) *library.Terminal {
	at, own := w.To, w.ToEnd
	if from {
		at, own = w.From, w.FromEnd
	}
	if at != nil && at.Jointed {
		return at.Joint
	}
	return own
}

// joints finds the crimp part of each joint: at a splice of several wires, at a tap,
// where the factory wire comes and goes on, and at the lead of a part that several wires
// go to, as a pump's that a float and a hand feed. An end that the design gives
// a crimp part of its own is left so.
func (b *builder) joints() {
	for _, p := range b.c.Parts {
		for _, t := range p.Terminals {
			if b.lib != nil && (p.Kind == Splice || p.Kind == Tap || t.atLead()) {
				b.joint(p.Kind, t)
			}
		}
	}
}

// atLead tells whether several wires go to the lead that a part comes with.
func (t *Terminal) atLead() bool {
	k := t.Part.Kind
	return k != Splice && k != Tap && t.Kind == LeadEnd && t.Part.Plug == nil && len(t.Wires) > 1
}

// joint is by the copper of all wires together; of two it is a butt splice for
// the thicker.
func (b *builder) joint(kind Kind, t *Terminal) {
	most, wires := 0.0, len(t.Wires)
	for _, w := range t.Wires {
		if w.Spec.Size == nil || w.givenEnd(t) {
			return
		}
		most = max(most, w.Spec.Size.AreaMm2)
	}
	if kind == Tap && wires > 0 {
		wires += 2 // the factory wire comes and goes on
	}
	if t.atLead() {
		t.Joint = b.lib.TerminalFor(JointEnd, t.CopperMm2())
		t.Jointed = t.Joint != nil
		return
	}
	switch {
	case wires < 2:
	case wires == 2:
		t.Jointed, t.Joint = true, b.lib.TerminalFor(LeadEnd, most)
	default:
		t.Jointed, t.Joint = true, b.lib.TerminalFor(JointEnd, t.CopperMm2())
	}
}

// CopperMm2 is all copper that meets at a splice, a tap or a lead. The factory wire's size is not
// known: it counts, coming and going, as the thickest of ours, and a lead of no size given as
// that once (common practice, no source).
func (t *Terminal) CopperMm2() float64 {
	sum, most := 0.0, 0.0
	for _, w := range t.Wires {
		if w.Spec.Size != nil {
			sum, most = sum+w.Spec.Size.AreaMm2, max(most, w.Spec.Size.AreaMm2)
		}
	}
	if t.Part.Kind == Tap {
		sum += 2 * most
	}
	if t.atLead() {
		sum += t.leadMm2(most)
	}
	return sum
}

// leadMm2 is the lead's conductor: as given, else as thick as ours, where it can be.
func (t *Terminal) leadMm2(ours float64) float64 {
	if l, ok := t.Part.Source.(*design.Load); ok && l.Lead.AreaMm2.Given() {
		return l.Lead.AreaMm2.Value
	}
	if t.LeadMm2 > 0 {
		return min(ours, t.LeadMm2)
	}
	return ours
}

// givenEnd tells that the design gives a wire's end a crimp part.
func (w *Wire) givenEnd(t *Terminal) bool {
	if w.From == t {
		return w.Spec.FromEnd != nil
	}
	return w.Spec.ToEnd != nil
}
