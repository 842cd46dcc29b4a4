package circuit

import "math"

// loadBundles finds the diameter of each bundle and how many of its wires can
// be warm at once.
func (b *builder) loadBundles() {
	power := b.c.powers()
	for _, bundle := range b.c.Bundles {
		bundle.OuterMm = bundleMm(bundle.Wires)
		for _, w := range bundle.Wires {
			if power[w.Branch.Index] {
				bundle.Loaded++
			}
		}
	}
}

// bundleMm is the diameter of round wires laid together: by BundleFactor, but
// never less than the two thickest side by side.
func bundleMm(wires []*Wire) float64 {
	squares, first, second := 0.0, 0.0, 0.0
	for _, w := range wires {
		if w.Spec.Size == nil {
			continue
		}
		d := w.Spec.Size.OuterMm
		squares += d * d
		switch {
		case d > first:
			first, second = d, first
		case d > second:
			second = d
		}
	}
	if second == 0 {
		return first
	}
	return math.Max(first+second, BundleFactor*math.Sqrt(squares))
}

// powers tells, by branch index, which branches can carry the current of a
// load: feeds that lead to one, and returns that can be on the way of one home.
// Wires that only coils use carry a fifth of an ampere and do not warm a bundle.
func (c *Circuit) powers() []bool {
	var hot, back []*Node
	for _, b := range c.Branches {
		if b.Load != nil {
			hot, back = append(hot, b.A), append(back, b.B)
		}
	}
	power := c.Feeding(hot...)
	c.markReturns(back, power)
	return power
}

// markReturns marks the returns that are joined to one of the nodes by other
// returns, without going through the battery's negative post; those of coils
// are left out.
func (c *Circuit) markReturns(from []*Node, power []bool) {
	seen := make([]bool, len(c.Nodes))
	seen[0] = true
	for len(from) > 0 {
		n := from[len(from)-1]
		from = from[:len(from)-1]
		if seen[n.Index] {
			continue
		}
		seen[n.Index] = true
		for _, b := range n.Branches {
			if b.Returns() && (b.Wire == nil || b.Wire.Role != CoilReturnWire) {
				power[b.Index] = true
				from = append(from, b.A, b.B)
			}
		}
	}
}
