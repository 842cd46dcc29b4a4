package cell

import (
	"slices"

	"fusewright/harness/network/circuit"
	"fusewright/render/schematic/labels"
	"fusewright/render/schematic/lettering"
	"fusewright/render/schematic/parts"
	"fusewright/render/schematic/sign"
	"fusewright/render/symbol"
)

// The source stands in two parts: its post, whose row is the first row of the
// page, and below everything the battery feeds in the next column its cellar: a
// positive trunk with the vehicle's loads and the generator as branches, the
// battery at its foot, and the negative trunk; beside or below it the ground bars with
// their wires back to the battery. Measures in modules.
const (
	SourceTrunk  = 2
	SourceBranch = 8  // width of a branch's symbol
	SourceNeg    = 13 // the negative trunk
	SourcePost   = 4  // width of the cell in its own column
	sourceCellar = 15 // least width of the cellar, which reaches into the next column
	sourceStep   = 6
)

// shapeSource measures the battery with what stands beside it.
func (b *builder) shapeSource(c *Cell) {
	_, _, battery := SourceRows(b.Labels)
	c.Body = SourcePost
	c.Caption = b.BatteryCaption((SourceNeg-SourceTrunk-2.5)*symbol.M, c.Part)
	c.Rows[0].Top, c.Rows[0].Bottom = 1, 0.8
	c.Rows = append(c.Rows, &Row{Cell: c, Index: 1, Top: 1.75, Bottom: float64(battery+5) + 1.75 + 0.2})
	c.Lead = b.leadOf(c)
	c.Rows[0].Bottom += float64(b.spreadInlets(c.Inlets, 0))
	for _, in := range c.Inlets { // from a charging system at its own stud
		in.Dx = SourceTrunk
	}
	b.addMains(c)
	b.addOutlets(c, SourceTrunk)
}

// addMains hangs the wires from ground points to the battery on the negative trunk,
// from its foot upwards; what finds no room there stands below, and so do those from
// one bar to another on the way there, as many as leave the source two thirds of a sheet. Wires to a
// stud of the frame are listed with the ground points.
func (b *builder) addMains(c *Cell) {
	var mains []*circuit.Wire
	for _, p := range b.Circuit.Parts {
		for _, w := range b.Wiring.Returns[p] {
			if p.Kind == circuit.Ground && b.endsAtSource(w, len(b.Circuit.Parts)) {
				mains = append(mains, w)
			}
		}
	}
	low, long := c.Rows[1], 0
	first, step := b.mainSteps(mains)
	_, _, battery := SourceRows(b.Labels)
	up, down := 0, first
	if b.MainsBelow {
		up = battery + 5
	}
	for _, w := range mains {
		at := down
		if w.To.Part.Kind == circuit.Battery && up < battery+5 {
			at, up = -up, up+step
		} else if float64(battery+5+at+step) > float64(b.sheetRows)*2/3 {
			continue
		} else {
			down += step
			low.Bottom = float64(battery + 5 + down)
		}
		c.Returns, c.MainRows = append(c.Returns, w), append(c.MainRows, at)
		name := b.Head(w.From.Part).Fit(parts.NameOf(w.From.Part), "", mostNameMM, 1).Width() + 1.1
		if w.To.Part.Kind != circuit.Battery { // it ends before the ground's sign
			name += 1.5 * symbol.M
		}
		long = max(long, 1+b.LabelM(w, true), lettering.InM(name))
	}
	c.Bar, c.Turn = SourceNeg+long, SourceNeg
	if b.MainsBelow {
		c.Bar, c.Turn = 1, max(SourceNeg, 1+long)
	}
	c.Cellar = max(sourceCellar, c.Bar+2, c.Turn+2)
}

// endsAtSource tells of the wire from a ground point whether it leads to the first battery's post, over at most so many
// bars: what comes home at another battery is listed with the ground points.
func (b *builder) endsAtSource(w *circuit.Wire, most int) bool {
	to := w.To.Part
	return to.Kind == circuit.Battery || most > 0 && parts.IsGroundBlock(to) &&
		slices.ContainsFunc(b.Wiring.Returns[to], func(on *circuit.Wire) bool { return b.endsAtSource(on, most-1) })
}

// mostNameMM is the most room that the name of a bar gets.
const mostNameMM = 16 * symbol.M

// mainSteps gives the row of the first main return below the battery's foot and the
// distance between two, in modules: a label in two lines above, the bar's name below,
// and a ground's sign where one ends in it.
func (b *builder) mainSteps(list []*circuit.Wire) (first, step int) {
	top := lettering.GapMM + lettering.CapMM + lettering.LineMM + 0.3
	below := 2*lettering.GapMM + lettering.CapMM
	for _, w := range list {
		if b.Signs.OfWire(w) > 0 {
			top = max(top, lettering.GapMM+2*sign.Radius+0.5)
		}
		if b.Signs.OfPart(w.From.Part) > 0 {
			below = max(below, lettering.GapMM+2*sign.Radius+sign.Drop)
		}
		if w.To.Part.Kind != circuit.Battery {
			below = max(below, labels.GroundRoom)
		}
	}
	return lettering.InM(2*symbol.M + top), lettering.InM(top + below)
}

// SourceRows gives the rows of the branches and of the battery's plus pin,
// counted from the cellar's row; a branch that is not there has row -1.
func SourceRows(l *labels.Labels) (vehicle, generator, battery int) {
	g, v := parts.SourceParts(l.Circuit)
	vehicle, generator = -1, -1
	next := 0
	if v != nil {
		vehicle, next = next, next+sourceStep
	}
	if g != nil {
		generator, next = next, next+sourceStep
	}
	return vehicle, generator, max(next-1, 0)
}
