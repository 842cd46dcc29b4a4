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
// load: feeds that lead to one, and returns other than those of coils. Wires
// that only feed coils carry a fifth of an ampere and do not warm a bundle.
func (c *Circuit) powers() []bool {
	var loads []*Node
	for _, b := range c.Branches {
		if b.Load != nil {
			loads = append(loads, b.A)
		}
	}
	power := c.Feeding(loads...)
	for _, b := range c.Branches {
		if b.Returns() && (b.Wire == nil || b.Wire.Role != CoilReturnWire) {
			power[b.Index] = true
		}
	}
	return power
}
