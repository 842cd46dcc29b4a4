package rules

import (
	"slices"

	"fusewright/harness/network/circuit"
)

// keylessLoads is what the key does not switch off and the design does not excuse.
type keylessLoads struct {
	always []*circuit.Part // loads that are on whenever the battery is connected
	byHand []handGroup     // loads that a hand contact can leave on
	rest   *liveness       // with every contact at rest, excused parts left out
}

// handGroup is a hand contact or relay with what it can leave on.
type handGroup struct {
	gate  *circuit.Branch
	loads []*circuit.Branch
}

// keyless finds, once, the loads that can be live with the key off. The flood
// stops at parts that the design says stay live, whose branches are thereby
// excused, and at the contacts of relays that nothing can release, which are
// findings of their own.
func (f *facts) keyless() *keylessLoads {
	if f.keylessKnown == nil {
		f.keylessKnown = f.findKeyless()
	}
	return f.keylessKnown
}

func (f *facts) findKeyless() *keylessLoads {
	stop := f.excused
	first := f.c.Posts()[:1] // what further batteries feed is theirs to feed with the key off
	rest, hand := f.liveBy(first, untouched, stop), f.liveBy(first, keyOff, stop)
	k := &keylessLoads{rest: rest}
	byGate := map[*circuit.Branch]bool{}
	for _, b := range f.c.Branches {
		switch {
		case b.Kind == circuit.LoadBranch && f.drawsKeyless(b, rest):
			k.always = append(k.always, b.Part)
		case f.isGate(b, rest, hand) && !byGate[b]:
			byGate[b] = true
			loads := f.liveBelow(b, rest, hand)
			said := slices.ContainsFunc(k.byHand, func(g handGroup) bool { return g.gate.Part == b.Part && slices.Equal(g.loads, loads) })
			if len(loads) > 0 && !said { // by another output of the switch
				k.byHand = append(k.byHand, handGroup{b, loads})
			}
		}
	}
	return k
}

// excused tells whether the key-off flood stops at a branch.
func (f *facts) excused(b *circuit.Branch) bool {
	if b.Part == nil {
		return false
	}
	return staysLive(b.Part) || b.Part.Kind == circuit.Relay && f.stuckOn[b.Part.Index]
}

// drawsKeyless tells whether an accessory's branch is live and has a way back.
func (f *facts) drawsKeyless(b *circuit.Branch, live *liveness) bool {
	return b.Load != nil && b.Load.Load != nil && !b.Load.Standby && !staysLive(b.Part) &&
		live.draws(b)
}

// isGate tells whether a contact is the first that a hand closes on the way
// from the source: live before it at rest, dead behind it until it is closed; of one in
// a return the last on the way back.
func (f *facts) isGate(b *circuit.Branch, rest, hand *liveness) bool {
	if b.Kind != circuit.ContactBranch || b.Closer == nil || f.excused(b) || !mayClose(b, keyOff, hand.coils) {
		return false
	}
	if b.Returns() {
		return rest.cold[b.B.Index] && !rest.cold[b.A.Index]
	}
	return rest.nodes[b.A.Index] && !rest.nodes[b.B.Index] && hand.nodes[b.B.Index]
}

// liveBelow lists the loads below a gate that draw with it closed, or of one in a return
// those that no gate in their feed has already.
func (f *facts) liveBelow(gate *circuit.Branch, rest, hand *liveness) []*circuit.Branch {
	var list []*circuit.Branch
	if gate.Returns() {
		for _, b := range f.c.DrawsBack(gate) {
			list = append(list, b)
			list = append(list, others(b.String, b)...)
		}
		return slices.DeleteFunc(list, func(b *circuit.Branch) bool {
			return !rest.nodes[b.A.Index] || !f.drawsKeyless(b, hand)
		})
	}
	f.below(gate.B, func(b *circuit.Branch) bool {
		if b.Kind == circuit.LoadBranch && f.drawsKeyless(b, hand) {
			list = append(list, b)
		}
		return !f.excused(b)
	})
	slices.SortFunc(list, func(a, b *circuit.Branch) int { return a.Index - b.Index })
	return list
}
