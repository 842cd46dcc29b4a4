package rules

import (
	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
)

// conditions says which contacts may be closed when asking what is live.
type conditions struct {
	key    bool // factory contacts of taps
	hand   bool // switches, and the loads' own
	aboard bool // battery switches, closed as long as somebody is there
}

var (
	keyOff    = conditions{hand: true}            // what can be live without the key
	anything  = conditions{key: true, hand: true} // what can be live at all
	untouched = conditions{}                      // what is live with every contact at rest
)

// liveness is what can be joined to the source under some conditions.
type liveness struct {
	nodes []bool
	cold  []bool                   // joined to battery negative
	coils map[*circuit.Branch]bool // coils that can be energised
	posts []*circuit.Node          // of the batteries that count
}

// live floods from the battery's positive post with the contacts the
// conditions allow. Relay contacts follow their coils: a make contact is
// crossed once its coil can be energised, which may open the way to the next
// coil, so the flood is repeated until nothing changes. Break contacts are
// taken as closed, since their coil may be at rest. Stop, when not nil, keeps
// the flood out of branches.
func (f *facts) live(when conditions, stop func(*circuit.Branch) bool) *liveness {
	return f.liveBy(f.c.Posts(), when, stop)
}

// liveBy is live by some of the batteries alone.
func (f *facts) liveBy(posts []*circuit.Node, when conditions, stop func(*circuit.Branch) bool) *liveness {
	l := &liveness{coils: map[*circuit.Branch]bool{}, posts: posts}
	for {
		f.spread(l, func(b *circuit.Branch) bool {
			return (stop == nil || !stop(b)) && mayClose(b, when, l.coils)
		})
		if !f.energise(l) {
			return l
		}
	}
}

// spread finds what conducting branches join to the posts of the batteries.
func (f *facts) spread(l *liveness, conducts func(*circuit.Branch) bool) {
	l.nodes = f.floodBy(l.posts, passing(func(b *circuit.Branch) bool { return b.Feeds() && conducts(b) }))
	if l.cold = f.cold; f.c.SwitchedBack() {
		l.cold = f.c.JoinedBack(conducts)
	}
}

// draws tells whether a load or coil is live and has its way back.
func (l *liveness) draws(b *circuit.Branch) bool { return l.nodes[b.A.Index] && l.cold[b.B.Index] }

// energise adds the coils that the live nodes can energise; false when none is new.
func (f *facts) energise(l *liveness) bool {
	grown := false
	for coil := range f.coils {
		if !l.coils[coil] && l.canEnergise(coil) {
			l.coils[coil] = true
			grown = true
		}
	}
	return grown
}

// canEnergise tells whether a coil has a live node at one end and a way back
// at the other.
func (l *liveness) canEnergise(coil *circuit.Branch) bool {
	a, b := coil.A.Index, coil.B.Index
	return l.nodes[a] && l.cold[b] || l.nodes[b] && l.cold[a]
}

// mayClose tells whether a branch can conduct under the conditions. Metal
// without a closer always does.
func mayClose(b *circuit.Branch, when conditions, energised map[*circuit.Branch]bool) bool {
	c := b.Closer
	switch {
	case c == nil, c.Break != nil, c.Standby != nil:
		return true
	case c.Latch != nil:
		return when.hand
	case c.Coil != nil:
		return energised[c.Coil] && (when.key || !c.Coil.Senses())
	case c.Switch != nil, c.OwnSwitch != nil:
		return when.hand || when.aboard && isolates(b)
	}
	return when.key || c.Key == design.WhenAlways || c.KeyOff && when.hand
}

// findStuckRelays marks the relays whose coil is energised with every switch
// and key contact open: nothing can release them.
func (f *facts) findStuckRelays() {
	f.stuckOn = make([]bool, len(f.c.Parts))
	for coil := range f.live(untouched, nil).coils {
		f.stuckOn[f.coils[coil].Index] = !coil.Senses() && !latches(f.coils[coil])
	}
}

// latches tells of a relay that stays as a pulse at its coil left it.
func latches(p *circuit.Part) bool {
	r, ok := p.Source.(*design.Relay)
	return ok && r.Latches
}

// staysLive tells whether the design gives a reason why a part may be live
// with the key off.
func staysLive(p *circuit.Part) bool {
	s, ok := p.Source.(interface{ LiveReason() string })
	return ok && s.LiveReason() != ""
}
