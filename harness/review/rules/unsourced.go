package rules

import (
	"math"

	"fusewright/harness/formula/conductor"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

// Here is said how much of a figure rests on values without a source.

// unsourcedDrop is that of the volts lost before a load, or of those that its wires lose:
// the share of each element's volts at nominal that its resistance has unsourced, of
// judgedV, with marginV to the limit.
func (p *Pass) unsourcedDrop(l *loss, wiresOnly bool, judgedV, marginV float64) finding.Unsourced {
	if l == nil {
		return finding.Unsourced{}
	}
	part, of := 0.0, l.whole
	if wiresOnly {
		of = l.wires
	}
	for _, b := range l.taking {
		if b.Ohm > 0 && (b.Wire != nil || !wiresOnly) {
			part += l.taken(b) * b.UnsourcedOhm() / b.Ohm
		}
	}
	if !(of > 0) {
		return finding.Unsourced{}
	}
	return finding.Unsourced{Part: part / of * judgedV, Of: judgedV, Margin: math.Abs(marginV), Unit: "V"}
}

// unsourced is that of the current that a wire may carry, held against another: where a
// table without a source governs, by how much the heat balance differs from it.
func (p *Pass) unsourced(a allowance, againstA float64) finding.Unsourced {
	u := finding.Unsourced{Of: a.AllowedA, Margin: math.Abs(againstA - a.AllowedA), Unit: "A"}
	table := p.d.Library.CurrentTable(p.practice.Ampacity)
	if a.Governs == conductor.GovernsTable && table != nil && table.Source.Unsourced() && a.TableA > 0 {
		u.Part = math.Min(1, math.Abs(a.HeatA-a.TableA)/a.TableA) * a.AllowedA
	}
	return u
}

// lossFor is lossOf of the situation in which a load's figure decides.
func (p *Pass) lossFor(part *circuit.Part, c cornered) *loss {
	return p.lossOf(part, loadBranch(part), c.in)
}
