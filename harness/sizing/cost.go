package sizing

import (
	"fusewright/harness/circuit"
	"fusewright/library"
)

// Cost is what a set of choices costs, in grams of copper.
type Cost struct {
	CopperG   float64 // of the wires whose size is chosen
	Sizes     int     // different wire sizes in the whole harness
	Terminals int     // different crimp parts in the whole harness
	FusesA    float64 // sum of the chosen ratings
}

// TotalG weighs it all; see the package.
func (c Cost) TotalG() float64 {
	return c.CopperG + distinctSizeG*float64(c.Sizes) + distinctTerminalG*float64(c.Terminals) +
		fuseGPerA*c.FusesA
}

// stock is a wire size of one insulation: what is bought as one thing.
type stock struct {
	kind *library.WireType
	size *library.WireSize
}

// costOf adds up the cost of the present choices.
func (s *search) costOf(c *circuit.Circuit) Cost {
	var cost Cost
	stocks, crimps := map[stock]bool{}, map[*library.Terminal]bool{}
	for _, w := range c.Wires {
		stocks[stock{w.Spec.Type, w.Spec.Size}] = true
		for _, t := range []*library.Terminal{w.FromEnd, w.ToEnd} {
			if t != nil {
				crimps[t] = true
			}
		}
		if w.Spec.SizeAuto {
			cost.CopperG += copperG(w, w.Spec.Size)
		}
	}
	for _, x := range s.slots {
		if x.kind == Fuse {
			cost.FusesA += x.fuses[x.at].rating.RatingA
		}
	}
	cost.Sizes, cost.Terminals = len(stocks), len(crimps)
	return cost
}

// copperG is the copper of a wire in a size.
func copperG(w *circuit.Wire, z *library.WireSize) float64 {
	return copperGPerMm2M * z.AreaMm2 * w.LengthM
}
