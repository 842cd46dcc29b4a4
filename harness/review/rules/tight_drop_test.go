package rules_test

import (
	"strings"
	"testing"

	"fusewright/harness/proof/example"
	"fusewright/harness/review/finding"
)

// ABYC E-11: 3 % for navigation lights, blowers and electronics, without a word of the
// design. The lamp of 6 Ω and 1 mm² of some 20 mΩ/m warm: 2 × 3 m lose 0.12 Ω of 6.1 Ω
// at 14.3 V, 2.3 % of 12 V; 2 × 4.6 m 3.6 %; 2 × 6.5 m 5 %, more than one and a half times.
func TestTightDropAfloat(t *testing.T) {
	const lamp = `
practice: PRACTICE
wire: {insulation: tinned marine 105 °C metric, size: 1 mm²}
loads:
  anchor lamp: {TYPE, power: 24 W, rated at: 12 V, behaves: resistor, at: rear, fed by: lamp fuse, wire: {length: LENGTH}, returns to: battery negative, return wire: {length: LENGTH}}
`
	for _, c := range []struct {
		practice, says, length string
		want                   finding.Severity
	}{
		{"marine", "type: anchor lamp 25 W", "3 m", 0},
		{"marine", "type: anchor lamp 25 W", "4.6 m", finding.Advice},
		{"marine", "type: anchor lamp 25 W", "6.5 m", finding.Fault},
		{"marine", "type: anchor lamp 25 W, critical: no", "4.6 m", 0},
		{"marine", "type: anchor lamp 25 W, critical: no", "6.5 m", finding.Advice},
		{"marine", "type: anchor lamp 25 W, critical: yes", "4.6 m", finding.Fault},
		{"marine", "type: bulb 21 W", "4.6 m", 0},
		{"motorcycle", "type: anchor lamp 25 W", "4.6 m", 0},
	} {
		if got := gravest(t, replace(lamp, "PRACTICE", c.practice, "TYPE", c.says, "LENGTH", c.length), "voltage-drop"); got != c.want {
			t.Errorf("%s, %s, %s: %v, want %v", c.practice, c.says, c.length, got, c.want)
		}
	}
}

// A lamp that a coil feeds backwards loses more than there is: no drop, but a coil in
// series. The two relays wait for each other.
func TestCoilInSeriesIsNoDrop(t *testing.T) {
	const waiting = `
relays:
  neg: {form: mini make, at: battery tray, returns to: frame, coil: {fed by: lamp fuse, returns to: neg, suppressed by: diode}}
  pos: {form: mini make, at: battery tray, fed by: lamp fuse, coil: {fed by: pos, returns to: frame, suppressed by: diode}}
loads:
  tail lamp: {power: 40 W, behaves: resistor, at: rear, fed by: pos, wire: {size: 1 mm²}, returns to: neg, return wire: {size: 1 mm²}}
`
	var said []string
	for _, f := range assess(t, "coils.yaml", []byte(example.Design(waiting))) {
		if f.Rule == "voltage-drop" {
			said = append(said, f.What)
		}
	}
	if len(said) != 1 || !strings.HasPrefix(said[0], "tail lamp is in series with the coil of neg and pos and gets ") {
		t.Errorf("%q", said)
	}
}
