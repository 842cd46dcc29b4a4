package rules

import (
	"math"
	"testing"

	"fusewright/harness/network/circuit"
)

// A coil pulls in before its own contact's load pulls the battery down: with the engine at rest the current
// of the contact times the battery's resistance is added back, with it running nothing.
func TestCoilPullsInBeforeItsLoad(t *testing.T) {
	p := passOf(t, relayCoilVoltage, `
relays:
  lamp relay: {form: mini make, at: battery tray, fed by: lamp fuse, wire: {size: 1 mm², length: 100 mm}, coil: {fed by: lamp fuse, returns to: frame, suppressed by: diode, wire: {size: 1 mm², length: 100 mm}, return wire: {size: 1 mm², length: 100 mm}}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp relay, wire: {size: 1 mm²}, returns to: frame}
`)
	coil := p.coilOf[part(t, p, "lamp relay").Index]
	for _, s := range p.in.Solutions {
		s.BranchA[p.battery.Index], s.Ohm[p.battery.Index] = -10, 0.008
		for _, b := range p.c.ContactsOf(coil) {
			s.BranchA[b.Index] = 4
		}
		want := 4 * 0.008
		if circuit.Running(s.Situation) {
			want = 0
		}
		if got := p.ownDipV(s, coil); math.Abs(got-want) > 1e-12 {
			t.Errorf("%s: %g V, want %g V", s.Situation.Name, got, want)
		}
		if s.BranchA[p.battery.Index] = 10; p.ownDipV(s, coil) != 0 {
			t.Errorf("%s: a battery that is charged does not sag", s.Situation.Name)
		}
	}
}
