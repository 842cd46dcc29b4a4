package fault

import (
	"math"

	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
)

// strandings tells what the loss of a return leaves hanging, for all returns that
// hang by one branch at once: what stands beyond each is added up from the ends.
type strandings struct {
	c     *circuit.Circuit
	order []*circuit.Node   // ends first
	by    []*circuit.Branch // by node: the one conductor that joins it to the rest
	users []users           // by node, everything beyond it included
}

// users is whether one part, or more than one, stands beyond a node.
type users struct {
	first *circuit.Part
	more  bool
}

func (u *users) add(p *circuit.Part) {
	switch {
	case p == nil || p == u.first:
	case u.first == nil:
		u.first = p
	default:
		u.more = true
	}
}

func newStrandings(c *circuit.Circuit) *strandings {
	s := &strandings{c: c, users: make([]users, len(c.Nodes))}
	s.order, s.by = dangling(c, (*circuit.Branch).Conductor)
	for _, n := range s.order {
		u := &s.users[n.Index]
		eachPart(n, u.add)
		if on := s.onward(n); on != nil {
			beyond := &s.users[on.Index]
			beyond.add(u.first)
			beyond.more = beyond.more || u.more
		}
	}
	return s
}

// onward is the node that a node hangs on; nil = none.
func (s *strandings) onward(n *circuit.Node) *circuit.Node {
	switch b := s.by[n.Index]; {
	case b == nil:
		return nil
	case b.A == n:
		return b.B
	default:
		return b.A
	}
}

// hangs tells whether everything beyond a return hangs by it alone.
func (s *strandings) hangs(lost *circuit.Branch) bool { return s.by[lost.A.Index] == lost }

// shared tells whether more than one part loses its way back with a return.
func (s *strandings) shared(lost *circuit.Branch) bool {
	if s.hangs(lost) {
		return s.users[lost.A.Index].more
	}
	return len(stranded(s.c, lost)) > 1
}

// eachPart goes through the parts whose loads or coils end at a node.
func eachPart(n *circuit.Node, do func(*circuit.Part)) {
	for _, b := range n.Branches {
		if !b.Conductor() && b.Part != nil {
			do(b.Part)
		}
	}
}

// mood is how the parts beyond a lost return stand before the loss.
type mood struct {
	live, idle bool
	relay      bool // a live coil, whose contacts move when it lets go
	source     bool // a battery or charger, which feeds on without the way back
}

// mixed tells whether the loss can do more than kill: some of the parts joined
// are live on their hot side and others are not, so that current has a way from
// one to the other; a relay lets go, whose contacts then move; or a source goes with them.
func (m mood) mixed() bool { return m.relay || m.source || m.live && m.idle }

func (m *mood) add(more mood) {
	m.live, m.idle, m.relay, m.source = m.live || more.live, m.idle || more.idle, m.relay || more.relay, m.source || more.source
}

func moodOf(part *circuit.Part, before *solve.Solution) mood {
	var m mood
	for _, b := range part.Branches {
		m.source = m.source || b.Kind == circuit.BatteryBranch || b.Kind == circuit.OutputBranch
		if b.OfLead() || b.Dropper() || b.Kind != circuit.LoadBranch && b.Kind != circuit.ResistorBranch {
			continue
		}
		v := before.NodeV[b.A.Index]
		switch {
		case math.IsNaN(v): // its hot side hangs in the air
		case v > idleV:
			m.live, m.relay = true, m.relay || b.Load == nil
		default:
			m.idle = true
		}
	}
	return m
}

// moods is the mood beyond every node that hangs on one conductor, by node.
func (s *strandings) moods(before *solve.Solution) []mood {
	out := make([]mood, len(s.c.Nodes))
	for _, n := range s.order {
		eachPart(n, func(p *circuit.Part) { out[n.Index].add(moodOf(p, before)) })
		if on := s.onward(n); on != nil {
			out[on.Index].add(out[n.Index])
		}
	}
	return out
}

// mixed is mood.mixed of what stands beyond a return.
func (b *base) mixed(l *Lost) bool {
	if b.strandings.hangs(l.Branch) {
		return b.moods[l.Branch.A.Index].mixed()
	}
	var m mood
	for _, part := range l.Shared() {
		m.add(moodOf(part, b.before))
	}
	return m.mixed()
}
