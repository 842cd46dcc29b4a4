package circuit_test

import (
	"math"
	"strings"
	"testing"

	"fusewright/harness/network/circuit"
)

// The lead that an accessory comes with is copper both ways: 2 × 0.3 m × 0.017241 Ω·mm²/m (IEC 60028)
// over 1 mm² are 10.345 mΩ at 20 °C; at 70 °C, 0.00393 a kelvin more, 12.378 mΩ. Standby and the own
// switch lie behind it. Without a length there is none.
func TestOwnLead(t *testing.T) {
	const text = start + `
loads:
  cold: {power: 5 W, standby: 10 mA, lead: {size: 1 mm², length: 300 mm}, at: cool, fed by: battery, wire: {length: 1 m}, returns to: stud, return wire: {length: 1 m}}
  warm: {power: 5 W, lead: {size: 1 mm², length: 300 mm}, at: hot, fed by: battery, wire: {length: 1 m}, returns to: stud, return wire: {length: 1 m}}
  bare: {power: 5 W, lead: {size: 1 mm²}, at: cool, fed by: battery, wire: {length: 1 m}, returns to: stud, return wire: {length: 1 m}}
`
	c := build(t, "t.yaml", strings.Replace(text, "{a: {}}", "{a: {}, cool: {ambient: 20 °C}, hot: {ambient: 70 °C}}", 1))
	for i, want := range []float64{0.010345, 0.012378, 0} {
		p := c.PartOf(c.Design.Loads[i])
		leads := p.Leads()
		if (len(leads) > 0) != (want > 0) {
			t.Fatalf("%s: %d leads", p.Name, len(leads))
		}
		if want == 0 {
			continue
		}
		b := leads[0]
		if math.Abs(b.Ohm-want) > 1e-6 || !b.Feeds() || b.A != p.Terminal("+").Node {
			t.Errorf("%s: %g Ω, want %g", b.Name, b.Ohm, want)
		}
		for _, x := range p.Branches {
			if x.Kind == circuit.ContactBranch && x.A != b.B {
				t.Errorf("%s is not behind the lead", x.Name)
			}
		}
	}
}
