package circuit

import "math"

// loadBundles finds the diameter of each bundle.
func (b *builder) loadBundles() {
	for _, bundle := range b.c.Bundles {
		bundle.OuterMm = bundleMm(bundle.Wires)
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
