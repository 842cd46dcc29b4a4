package circuit

import "fusewright/harness/design"

// momentS is up to how long at once a load is on for a moment: a horn, a radio that sends, what is held by hand. Common
// practice, no source.
const momentS = 120

// Momentary tells of the contact of a switch that springs back.
func (b *Branch) Momentary() bool {
	if b.Closer == nil || b.Closer.Switch == nil || b.Part == nil {
		return false
	}
	s, ok := b.Part.Source.(*design.Switch)
	return ok && s.Momentary
}

// ForMoments tells of the loads that are on for moments alone: no longer than momentS at once, or dead with every momentary
// switch let go. Relays that hold themselves stay pulled in. Linear, times the relays that let go one by the other.
func (c *Circuit) ForMoments() func(*design.Load) bool {
	let := map[*Branch]bool{} // coils that let go
	closed := func(b *Branch) bool {
		k := b.Closer
		return k == nil || !b.Momentary() && (k.Coil == nil || k.Break != nil || k.Latch != nil || !let[k.Coil])
	}
	var live, back []bool
	for was := -1; was < len(let); {
		was = len(let)
		r := newReacher(c, closed)
		for _, post := range c.Posts() {
			r.visit(post)
		}
		r.run(func(n *Node) {
			if out := c.Gives(n); out != nil {
				r.visit(out)
			}
		})
		live, back = r.seen, c.JoinedBack(closed)
		for coil := range c.flow.contacts {
			a, b := coil.A.Index, coil.B.Index
			if !(live[a] && back[b] || live[b] && back[a]) {
				let[coil] = true
			}
		}
	}
	return func(l *design.Load) bool {
		if l.LongestS() <= momentS {
			return true
		}
		for l.Before != nil {
			l = l.Before
		}
		p := c.PartOf(l)
		if p == nil {
			return false
		}
		for _, b := range p.Branches {
			if b.Load != nil && !b.Load.Standby && live[b.A.Index] && back[b.B.Index] {
				return false
			}
		}
		return true
	}
}
