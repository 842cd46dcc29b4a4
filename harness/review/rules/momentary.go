package rules

import (
	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
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

// momentary tells whether a branch is the contact of a momentary switch.
func momentary(b *circuit.Branch) bool {
	if b.Closer == nil || b.Closer.Switch == nil || b.Part == nil {
		return false
	}
	s, ok := b.Part.Source.(*design.Switch)
	return ok && s.Momentary
}
