package cell

import (
	"fusewright/harness/network/circuit"
	"fusewright/render/schematic/labels"
	"fusewright/render/schematic/lettering"
	"fusewright/render/schematic/parts"
	"fusewright/render/schematic/sign"
	"fusewright/render/symbol"
)

// Cells are the things to be arranged on sheets, and what feeds what.
type Cells struct {
	List  []*Cell                        // in design order
	Outs  map[*circuit.Terminal]*Cell    // node whose right side shows a terminal
	Feeds map[*circuit.Terminal][]*Inlet // wires fed from a terminal, in order
}

// builder makes the cells of a circuit.
type builder struct {
	*labels.Labels
	*Cells
	into      map[*circuit.Part][]*Inlet // wires that come in at a part, in order
	sheetRows int                        // rows of a sheet
}

// Build makes a cell of every part that is drawn in the circuit, none of them
// with more rows than a sheet has.
func Build(l *labels.Labels, sheetRows int) *Cells {
	b := &builder{l, &Cells{Outs: map[*circuit.Terminal]*Cell{}, Feeds: map[*circuit.Terminal][]*Inlet{}},
		map[*circuit.Part][]*Inlet{}, sheetRows}
	b.sortWires()
	slots := b.addSlots()
	for _, p := range b.Circuit.Parts {
		if b.LeavesOut(p) {
			continue
		}
		switch p.Kind {
		case circuit.Generator:
			if !parts.Cabled(p) {
				continue
			}
		case circuit.Ground, circuit.VehicleLoads, circuit.Connector:
			continue // grounds are listed, connectors drawn on their wires, the others stand with the battery
		case circuit.Relay:
			if b.Detached {
				b.addDetached(p)
				continue
			}
		}
		if parts.Fans(p) {
			b.addBlock(p)
			continue
		}
		c := &Cell{Part: p, Returns: b.Wiring.Returns[p]}
		if p.Kind == circuit.Bank || p.Kind == circuit.Charger || p.Kind == circuit.Generator {
			c.Returns = nil // the cable of its negative post is listed with the grounds
		}
		c.Rows = []*Row{{Cell: c}}
		b.addInlets(c)
		switch p.Kind {
		case circuit.Battery:
			b.shapeSource(c)
		case circuit.Relay:
			b.shapeRelay(c)
		default:
			if c.Ends() {
				b.shapeLoad(c)
			} else {
				b.shapeInline(c)
			}
		}
		b.addCell(c)
	}
	for _, c := range slots {
		b.shapeSlot(c)
		b.addCell(c)
	}
	return b.Cells
}

// addCell registers a cell and what its right side shows.
func (b *builder) addCell(c *Cell) {
	if b.Outlined {
		b.raiseForFlags(c)
	}
	b.List = append(b.List, c)
	for _, o := range c.Outlets {
		if b.Outs[o.Term] == nil {
			b.Outs[o.Term] = c
		}
	}
}

// raiseForFlags keeps the flags on a cell's wires clear of an outline's name.
func (b *builder) raiseForFlags(c *Cell) {
	top := (lettering.GapMM + 2*sign.Radius + 0.5) / symbol.M
	for _, in := range c.Inlets {
		if in.Wire != nil && b.Signs.OfWire(in.Wire) > 0 {
			in.Row.Top = max(in.Row.Top, top-float64(in.Off))
		}
	}
	for _, w := range c.Returns {
		if b.Signs.OfWire(w) > 0 {
			c.Rows[0].Top = max(c.Rows[0].Top, top)
		}
	}
}

// lift is by how much a sign over an outline reaches higher than its caption, in modules:
// into the air above or, where places are outlined, no further than its row.
func (b *builder) lift() float64 {
	if b.Outlined {
		return (sign.Lift + sign.Above) / symbol.M
	}
	return sign.Lift / symbol.M
}

// sortWires files every wire under the terminal it leaves and the part it feeds.
func (b *builder) sortWires() {
	for _, w := range b.Circuit.Wires {
		if parts.IsReturn(w) || w.Role == circuit.LinkWire || b.LeavesWire(w) {
			continue
		}
		in := &Inlet{Wire: w, Source: w.From, Term: w.To}
		if parts.ToHalf(w) {
			in.Source, in.Term = in.Term, in.Source
		}
		b.file(in)
	}
	for _, p := range b.Circuit.Parts {
		for _, t := range p.Terminals {
			switch post := t.OnPost(); {
			case post == nil:
			case t.Name == "in":
				b.file(&Inlet{Source: post, Term: t})
			default:
				b.file(&Inlet{Source: t, Term: post})
			}
		}
	}
}

func (b *builder) file(in *Inlet) {
	b.Feeds[in.Source] = append(b.Feeds[in.Source], in)
	b.into[in.Term.Part] = append(b.into[in.Term.Part], in)
}

// addInlets gives a cell its incoming wires, in the order of the circuit.
func (b *builder) addInlets(c *Cell) {
	for _, in := range b.into[c.Part] {
		if in.Wire == nil || c.takes(in.Wire) {
			in.Cell, in.Row = c, c.Rows[0]
			c.Inlets = append(c.Inlets, in)
		}
	}
}

// leadOf is the room for the labels of a cell's incoming wires.
func (b *builder) leadOf(c *Cell) int {
	lead := 0
	for _, in := range c.Inlets {
		if in.Wire != nil {
			lead = max(lead, b.InletM(in.Wire, c.Part, b.Stacked))
		}
	}
	return lead
}

// spreadInlets puts further wires into one terminal below the first.
func (b *builder) spreadInlets(list []*Inlet, off int) (last int) {
	for k, in := range list {
		in.Off = off + k*b.InletStep()
		last = in.Off
	}
	return last
}
