package schematic

import (
	"fusewright/harness/circuit"
	"fusewright/render/scene"
)

// The source: a trunk with the vehicle's loads and the generator as branches
// and the battery at its foot. Measures in modules.
const (
	sourceTrunk  = 2
	sourceBranch = 8 // width of a branch's symbol
	sourceStep   = 6
	sourceNeg    = 11 // the trunk of the negative side
	sourceBody   = 12
)

// sourceParts finds the parts that stand with the battery.
func (d *drawing) sourceParts() (generator, vehicle *circuit.Part) {
	for _, p := range d.circuit.Parts {
		switch p.Kind {
		case circuit.Generator:
			generator = p
		case circuit.VehicleLoads:
			vehicle = p
		}
	}
	return generator, vehicle
}

// sourceRows gives the rows of the branches and of the battery's plus pin; a
// branch that is not there has row 0.
func (d *drawing) sourceRows() (vehicle, generator, battery int) {
	g, v := d.sourceParts()
	next := 3
	if v != nil {
		vehicle, next = next, next+sourceStep
	}
	if g != nil {
		generator, next = next, next+sourceStep
	}
	if v != nil || g != nil {
		next -= 1
	}
	return vehicle, generator, next
}

// shapeSource measures the battery with what stands beside it.
func (d *drawing) shapeSource(c *cell) {
	_, _, battery := d.sourceRows()
	c.body = sourceBody
	c.caption = d.captionOf(c.part, 6.4*2.5, 4)
	c.rows[0].top = 1
	c.rows[0].bottom = float64(battery+5) + 1.75 + 0.2
	d.addOutlets(c, sourceTrunk)
}

// sourceCaptions are the texts at the vehicle's loads and the generator.
func (d *drawing) sourceCaptions() (vehicle, generator caption) {
	g, v := d.sourceParts()
	const width = 8.6 * 2.5
	if v != nil {
		words, details := d.wordsOf(v)
		vehicle = fit(v.Ref, words, details, width, 2)
	}
	if g != nil {
		words, details := d.wordsOf(g)
		generator = fit(g.Ref, words, details, width, 2)
	}
	return vehicle, generator
}

// batteryPostText names the negative post.
func batteryPostText(p *circuit.Part) string {
	return scene.Clean(p.Ref + " −")
}
