package rules

import (
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
)

// onlyHeld tells whether everything that a fuse carries flows only while a
// momentary switch is held: a horn, not a lamp.
func (f *facts) onlyHeld(fuse *circuit.Branch) bool {
	draws := f.drawsBelow(fuse.B)
	if f.heldOff == nil {
		f.heldOff = f.live(anything, momentary).nodes
	}
	for _, b := range draws {
		if f.heldOff[b.A.Index] {
			return false
		}
	}
	return len(draws) > 0
}

// onlyPulls tells whether all that a fuse carries are motors that run for a short
// time: what they take at full pull lasts moments.
func (f *facts) onlyPulls(fuse *circuit.Branch) bool {
	return !slices.ContainsFunc(f.drawsBelow(fuse.B), func(b *circuit.Branch) bool {
		return b.Load == nil || b.Load.Load == nil || b.Load.Behaves != design.Motor || !corner.ShortTime(b.Load.Load)
	})
}

// momentary tells whether a branch is the contact of a momentary switch.
func momentary(b *circuit.Branch) bool {
	if b.Closer == nil || b.Closer.Switch == nil || b.Part == nil {
		return false
	}
	s, ok := b.Part.Source.(*design.Switch)
	return ok && s.Momentary
}
