package remedy_test

import (
	"testing"

	"fusewright/harness/proof/example"
)

// TestHotPlace: wires through air at their class are mended by the next class, all of the
// place at once, and not by copper; where the air is cooler no class is tried.
func TestHotPlace(t *testing.T) {
	for _, c := range []struct {
		ambient, about, will string
	}{
		{"105 °C", "wires at battery tray - rear", "ISO 6722 thin wall class C"},
		{"89.9 °C", "wires at battery tray - rear", "ISO 6722 thin wall class C"},
	} {
		p := review(t, []byte(example.Design("runs:\n  - {from: battery tray, to: rear, length: 600 mm, near: {what: exhaust, ambient: "+
			c.ambient+"}, cover: heat sleeve}\n"))).Remedies()
		if len(p.Causes) != 1 || p.Causes[0].Remedy == nil {
			t.Fatalf("%s: %d causes, the first %+v", c.ambient, len(p.Causes), p.Causes[0])
		}
		if x := p.Causes[0].Remedy; x.About != c.about || x.Will != c.will || len(p.Left) != 0 {
			t.Errorf("%s: %s: %s, %d left", c.ambient, x.About, x.Will, len(p.Left))
		}
	}
}
