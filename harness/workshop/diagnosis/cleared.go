package diagnosis

import (
	"math"

	"fusewright/harness/network/circuit"
)

// relevantShare of the size that was found is the least that a second place would have to have to
// matter beside the first: half of it. Common practice, no source.
const relevantShare = 0.5

// bounds tells whether the readings that pass bound an element: had it a fault of the kind and the
// least size that matters, beside what best explains the readings, one of those would have shown it.
func (m *model) bounds(top *candidate, x *circuit.Branch) bool {
	found := top.faults[0]
	f := &fault{kind: contactBad, branch: x, wire: x.Wire}
	switch {
	case found.open || found.kind == brokenWire || found.kind == blownFuse:
		f.open = true
	case found.resistive():
		f.size = relevantShare * found.size
	default:
		return false
	}
	with := m.solved(nil, top.faults[0], f)
	for i, s := range m.sensors {
		if s.passed && math.Abs(with.pred[i]-top.pred[i]) > toldApart*top.scale[i] {
			return true
		}
	}
	return false
}
