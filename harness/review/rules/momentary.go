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

// margined tells whether the figures of all that a fuse carries have their margin: the
// highest that a load takes, or a motor's full pull, which lasts moments of a short time.
func (f *facts) margined(fuse *circuit.Branch) bool {
	return !slices.ContainsFunc(f.drawsBelow(fuse.B), func(b *circuit.Branch) bool {
		if b.Load == nil || b.Load.Load == nil {
			return true
		}
		l := b.Load.Load
		return l.Figure != "highest" && !(l.Behaves == design.Motor && corner.ShortTime(l))
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
