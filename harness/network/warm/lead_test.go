package warm_test

import (
	"math"
	"testing"

	"fusewright/harness/network/warm"
	"fusewright/harness/proof/buildtest"
	"fusewright/harness/proof/example"
)

// A lead between two sizes is the lower; one thinner than all has the thinnest
// one's current density, and stands the same density for as long.
func TestLead(t *testing.T) {
	c := buildtest.Circuit(t, []byte(example.Design(`
fuses:
  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: battery, wire: {size: 1 mm², length: 100 mm}}
loads:
  lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame}
`)))
	m, feed := warm.New(c), c.Wires[1]
	one, between := m.Lead(feed, 40, 1), m.Lead(feed, 40, 1.2)
	if one.AllowedA != between.AllowedA || !(one.AllowedA > m.Lead(feed, 40, 0.999).AllowedA) ||
		!(one.AllowedA > m.Lead(feed, 50, 1).AllowedA) {
		t.Errorf("1 mm² carries %g A, 1.2 mm² %g A", one.AllowedA, between.AllowedA)
	}
	least := feed.Spec.Type.Sizes[0]
	thinnest, half := m.Lead(feed, 40, least.AreaMm2), m.Lead(feed, 40, least.AreaMm2/2)
	if math.Abs(half.AllowedA-thinnest.AllowedA/2) > 1e-9 || math.Abs(half.ToClassA-thinnest.ToClassA/2) > 1e-9 || half.StandsS(50) != thinnest.StandsS(100) {
		t.Errorf("%g mm² carries %g A, half of it %g A", least.AreaMm2, thinnest.AllowedA, half.AllowedA)
	}
}
