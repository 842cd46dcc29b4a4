package circuit

import "slices"

// Guard is how a branch of the feed network is protected from the source side.
type Guard struct {
	// Fuses are the nearest protections upstream, one for each feed path that
	// has any, without repeats, in the order found.
	Fuses []*Branch
	// Bare says that current can come from the battery without passing one.
	Bare bool
	// BareM is the longest length of wire from the battery, this wire included,
	// that has no protection before it; of a fuse, how far it is from the
	// source. Zero when Bare is false.
	BareM float64
	// UnsheathedM is the part of BareM that is not sheathed from end to end.
	UnsheathedM float64
	// Unfed says that no path from the battery leads here.
	Unfed bool
}

// Guards is the guard of every branch, by index. Branches that feed nothing, such
// as loads and returns, have an empty one.
type Guards []Guard

// Nearest are the fuses nearest above what a branch feeds: itself if it is one.
func (g Guards) Nearest(b *Branch) []*Branch {
	if b.Kind == FuseBranch {
		return []*Branch{b}
	}
	return g[b.Index].Fuses
}

// Above are the fuses nearest above a node, over all that feeds it, each once;
// bare tells that current can come from the battery without passing one.
func (g Guards) Above(n *Node) (fuses []*Branch, bare bool) {
	var at Guard
	for _, b := range n.fedBy {
		for _, f := range g.Nearest(b) {
			at.addFuse(f)
		}
		bare = bare || b.Kind != FuseBranch && g[b.Index].Bare
	}
	return at.Fuses, bare
}

// Upstream are all fuses above a branch up to the battery, itself left out, the
// nearest first, each once.
func (g Guards) Upstream(b *Branch) []*Branch {
	var out Guard
	out.Fuses, _ = g.Above(b.A)
	for i := 0; i < len(out.Fuses); i++ {
		for _, f := range g[out.Fuses[i].Index].Fuses {
			if f != b {
				out.addFuse(f)
			}
		}
	}
	return out.Fuses
}

// Guards finds the guards in one pass.
func (c *Circuit) Guards() Guards {
	at := make([]Guard, len(c.Nodes))
	out := make(Guards, len(c.Branches))
	for i := range at {
		at[i].Unfed = true
	}
	for _, post := range c.Posts() {
		at[post.Index] = Guard{Bare: true}
	}
	for _, n := range c.flow.limited {
		at[n.Index] = Guard{} // fed, and nothing that a fuse there would have to open
	}
	for _, n := range c.flow.order {
		for _, b := range n.feeds {
			g := at[n.Index]
			if g.Bare && b.Wire != nil {
				g.BareM += b.Wire.LengthM
				if !b.Wire.Spec.Sheathed {
					g.UnsheathedM += b.Wire.LengthM
				}
			}
			out[b.Index] = g
			if b.Kind == FuseBranch && !g.Unfed {
				g = Guard{Fuses: []*Branch{b}}
			}
			if !c.IsPost(b.B) {
				at[b.B.Index].join(g)
			}
		}
	}
	return out
}

// join adds what comes over one more feed.
func (g *Guard) join(more Guard) {
	if more.Unfed {
		return
	}
	if g.Unfed {
		// Of its own slice, so that a later feed does not write into another's.
		more.Fuses = more.Fuses[:len(more.Fuses):len(more.Fuses)]
		*g = more
		return
	}
	for _, f := range more.Fuses {
		g.addFuse(f)
	}
	if more.Bare && (!g.Bare || more.BareM > g.BareM) {
		g.Bare, g.BareM, g.UnsheathedM = true, more.BareM, more.UnsheathedM
	}
}

func (g *Guard) addFuse(f *Branch) {
	if !slices.Contains(g.Fuses, f) {
		g.Fuses = append(g.Fuses, f)
	}
}
