package rules

import (
	"maps"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
)

// onlyHeld tells whether everything that a fuse carries flows only while a
// momentary switch is held: a horn, not a lamp.
func (f *facts) onlyHeld(fuse *circuit.Branch) bool {
	draws := f.drawsOf(fuse)
	for _, b := range draws {
		if f.stays(b) {
			return false
		}
	}
	return len(draws) > 0
}

// margined tells whether the figures of all that a fuse carries have their margin: the
// highest that a load takes, or a motor's full pull, which lasts moments of a short time.
func (f *facts) margined(fuse *circuit.Branch) bool {
	return !slices.ContainsFunc(f.drawsOf(fuse), func(b *circuit.Branch) bool {
		if b.Load == nil || b.Load.Load == nil {
			return true
		}
		l := b.Load.Load
		return l.Figure != "highest" && !(l.Behaves == design.Motor && corner.ShortTime(l))
	})
}

// letGo tells whether what draws is live only while a momentary switch is held.
func (f *facts) letGo(b *circuit.Branch) bool { return !f.stays(b) && f.ever.draws(b) }

// stays tells whether what draws can be live with no momentary switch held.
func (f *facts) stays(b *circuit.Branch) bool {
	if f.heldOff == nil {
		f.ever = f.live(anything, nil)
		f.heldOff = f.unheld(f.ever)
	}
	return f.heldOff.draws(b)
}

// unheld is what stays live when every momentary switch is let go:
// relays that held themselves stay pulled in.
func (f *facts) unheld(ever *liveness) *liveness {
	l := &liveness{coils: maps.Clone(ever.coils), posts: ever.posts}
	for {
		f.spread(l, func(b *circuit.Branch) bool { return !b.Momentary() && mayClose(b, anything, l.coils) })
		n := len(l.coils)
		maps.DeleteFunc(l.coils, func(coil *circuit.Branch, _ bool) bool { return !l.canEnergise(coil) })
		if len(l.coils) == n {
			return l
		}
	}
}
