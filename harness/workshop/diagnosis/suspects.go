package diagnosis

import (
	"fusewright/harness/network/circuit"
)

// suspects lists every single fault that is tried.
func (m *model) suspects() (list []*fault) {
	add := func(f fault) {
		f.odds, f.number = m.odds(f.kind), len(list)+1
		list = append(list, &f)
	}
	for _, b := range m.c.Branches {
		switch b.Kind {
		case circuit.WireBranch:
			for _, w := range b.Wire.Cut() {
				kind := jointOfWire
				if w.From.Part.Plug != nil || w.To.Part.Plug != nil {
					kind = jointAtPlug
				}
				add(fault{kind: kind, branch: b, wire: w, free: true})
				add(fault{kind: brokenWire, branch: b, wire: w, open: true})
				for _, more := range thinnerOhm(w) {
					add(fault{kind: thinnerWire, branch: b, wire: w, size: more})
				}
			}
		case circuit.ContactBranch:
			if k := b.Closer; k == nil || k.OwnSwitch != nil || k.Standby != nil {
				continue
			}
			add(fault{kind: contactBad, branch: b, free: true})
			add(fault{kind: contactBad, branch: b, open: true})
			if b.Part.Kind != circuit.Tap {
				add(fault{kind: stuckContact, branch: b})
			}
		case circuit.FuseBranch:
			add(fault{kind: fuseHolder, branch: b, free: true})
			add(fault{kind: blownFuse, branch: b, open: true})
		case circuit.ResistorBranch:
			switch {
			case b.Part.Kind == circuit.Ground:
				add(fault{kind: groundPoint, branch: b, free: true})
				add(fault{kind: groundPoint, branch: b, open: true})
			case b.IsCoil() && !b.Senses():
				add(fault{kind: coilBad, branch: b, free: true})
				add(fault{kind: coilBad, branch: b, open: true})
			case !b.OfCoil():
				add(fault{kind: contactBad, branch: b, free: true})
				if b.Dropper() {
					add(fault{kind: contactBad, branch: b, open: true})
				}
			}
		case circuit.LoadBranch:
			if b.Load.Standby || b.Load.Vehicle != nil { // the machine's own are not of the harness
				continue
			}
			add(fault{kind: loadPower, branch: b, free: true})
			add(fault{kind: deadLoad, branch: b, open: true})
		}
	}
	for _, pair := range m.swappable() {
		add(fault{kind: swappedWires, branch: pair[0].Branch, other: pair[1].Branch})
	}
	return list
}

// thinnerSizes are the sizes that are taken by mistake, in mm².
var thinnerSizes = []float64{0.35, 0.5, 0.75, 1, 1.5, 2.5, 4, 6, 10, 16, 25, 35, 50}

// mostThinner are how many sizes below are tried.
const mostThinner = 3

// thinnerOhm is by how much a wire of the next smaller sizes has more.
func thinnerOhm(w *circuit.Wire) (list []float64) {
	if w.Spec.Size == nil || w.Spec.Fitted {
		return nil
	}
	area := w.Spec.Size.AreaMm2
	for i := len(thinnerSizes) - 1; i >= 0 && len(list) < mostThinner; i-- {
		if more := w.ConductorOhm20 * (area/thinnerSizes[i] - 1); thinnerSizes[i] < 0.95*area && more > leastOhm/10 {
			list = append(list, more)
		}
	}
	return list
}

// mostWays are the most wires at one part of which each two are tried as swapped.
const mostWays = 12

// swappable are the wires of one part that may be in each other's place: plus and minus of a load,
// two ways of a block.
func (m *model) swappable() (pairs [][2]*circuit.Wire) {
	for _, p := range m.c.Parts {
		var wires []*circuit.Wire
		for _, t := range p.Terminals {
			if len(t.Wires) != 1 || p.Kind == circuit.Block && t.Name == "in" {
				continue
			}
			wires = append(wires, t.Wires[0])
		}
		if p.Kind != circuit.Load && p.Kind != circuit.Block || len(wires) > mostWays {
			continue
		}
		for i, a := range wires {
			for _, z := range wires[i+1:] {
				if a != z && len(a.Pieces) == 0 && len(z.Pieces) == 0 {
					pairs = append(pairs, [2]*circuit.Wire{a, z})
				}
			}
		}
	}
	return pairs
}

// element is what of the harness a fault is of, by which explanations are told apart.
type element struct {
	branch, other *circuit.Branch
	wire          *circuit.Wire
	reading       int
}

func (f *fault) element() element {
	e := element{branch: f.branch, other: f.other, wire: f.wire, reading: -1}
	if f.kind == wrongReading {
		e.reading = f.reading
	}
	return e
}
