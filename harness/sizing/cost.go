package sizing

import (
	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/library"
)

// Cost is what a set of choices costs, in grams of copper.
type Cost struct {
	CopperG   float64 // of the wires whose size is chosen
	ThickG    float64 // for their thickness, see slot.thickG
	Sizes     int     // different wire sizes in the whole harness
	Terminals int     // different crimp parts in the whole harness
	Plugs     int     // different connector families in the whole harness
	PlugsA    float64 // sum of the currents that the chosen families are rated for
	FusesG    float64 // of the fuses chosen, see fuseCandidate.costG
}

// TotalG weighs it all; see the package.
func (c Cost) TotalG() float64 { return c.wiresG() + c.FusesG }

// wiresG is the cost of all but fuses.
func (c Cost) wiresG() float64 {
	return c.CopperG + c.ThickG + distinctSizeG*float64(c.Sizes) + distinctTerminalG*float64(c.Terminals) +
		distinctPlugG*float64(c.Plugs) + plugGPerA*c.PlugsA
}

// stock is a wire size of one insulation: one setting of the crimping tool.
type stock struct {
	kind *library.WireType
	size *library.WireSize
}

// costOf adds up the cost of the present choices.
func (s *search) costOf(c *circuit.Circuit) Cost {
	l := ledger{}
	for _, x := range c.Wires {
		key := sized{size: x.Spec.Size, parts: [2]*library.Terminal{x.FromEnd, x.ToEnd}}
		l.put(s.remembered(x, key, func() [2]end { return [2]end{{part: x.FromEnd}, {part: x.ToEnd}} }), 1)
	}
	for _, p := range c.Parts {
		if p.Plug != nil {
			l.plug(s.number(p.Plug.Family), isOpen(p), p.Plug.Family.MaxA, 1)
		}
	}
	cost := l.Cost
	for _, x := range s.slots {
		switch x.kind {
		case Fuse:
			cost.FusesG += x.fuses[x.at].costG()
		case WireSize:
			cost.ThickG += x.thickG(x.at)
		}
	}
	return cost
}

// isOpen tells whether a part's plug is chosen.
func isOpen(p *circuit.Part) bool {
	x, ok := p.Source.(design.Pluggable)
	return ok && x.PlugSpec().PlugAuto
}

// copperG is the copper of a wire in a size.
func copperG(w *circuit.Wire, z *library.WireSize) float64 {
	return copperGPerMm2M * z.AreaMm2 * w.LengthM
}
