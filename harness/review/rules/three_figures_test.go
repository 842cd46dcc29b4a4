package rules_test

import (
	"fmt"
	"testing"

	"fusewright/harness/proof/example"
	"fusewright/harness/review/finding"
)

// TestThreeFigures: what a block or a ground point bears holds against the likely
// figure; what a switch is rated for and what is left of a tap against the nominal one;
// what only the worst case breaks is advice to which nothing is sized, and of a tap
// nothing. The jacket is a resistor of 1.35 Ω that gets 13.7 V at 14.3 V: 10.1 A at
// nominal, with a tenth more power 11.1 A, with half a volt more as well 11.5 A; by the
// root of the sum of squares a likely 11.2 A.
func TestThreeFigures(t *testing.T) {
	const harness = `
taps:
  keyed feed: {at: battery tray, hot: running, fuse: 30 A, spare: %[1]g A, supervised: no}
grounds:
  frame: {kind: frame stud, at: battery tray, limit: %[2]g A, frame resistance: 2 mΩ}
blocks:
  rear: {way limit: %[3]g A, total limit: %[4]g A, at: rear, fed by: keyed feed, wire: {size: 2.5 mm²}, ways: {1: {fuse: none}}}
loads:
  warm jacket: {power: 135 W, rated at: 13.5 V, behaves: resistor, at: rear, fed by: jacket switch, wire: {size: 2.5 mm²}, returns to: frame, return wire: {size: 2.5 mm²}}
switches:
  jacket switch: {rating: %[5]g A, at: rear, fed by: rear 1, wire: {size: 2.5 mm², length: 200 mm}}
`
	const fault, advice = finding.Fault, finding.Advice
	steps := []float64{10, 10.7, 11.35, 11.6} // below nominal, likely and worst, and above all
	for name, c := range map[string]struct {
		rule string
		at   int
		want [4]finding.Severity
	}{
		"tap":    {"tap-over-spare", 0, [4]finding.Severity{fault}},
		"ground": {"ground-overload", 1, [4]finding.Severity{fault, fault, advice}},
		"way":    {"block-way-overload", 2, [4]finding.Severity{fault, fault, advice}},
		"block":  {"block-overload", 3, [4]finding.Severity{fault, fault, advice}},
		"switch": {"switch-overload", 4, [4]finding.Severity{fault, advice, advice}},
	} {
		for i, limitA := range steps {
			want := c.want[i]
			limits := [5]any{25.0, 25.0, 25.0, 25.0, 25.0}
			limits[c.at] = limitA
			found := assess(t, "three.yaml", []byte(example.Design(fmt.Sprintf(harness, limits[:]...))))
			var got finding.Severity
			for _, f := range found {
				if f.Rule == c.rule {
					got = f.Severity
					if f.Leave != (got == finding.Advice) {
						t.Errorf("%s of %g A: leave %t with %s", name, limitA, f.Leave, got)
					}
				}
			}
			if got != want {
				t.Errorf("%s of %g A: severity %q, want %q", name, limitA, got, want)
			}
		}
	}
}

// TestVoltsOfLoadsAndCoils: what a load withstands and what a coil pulls in on hold
// against the worst case, one and a half times the rated voltage at nominal. The
// regulator gives 14.2 V, 14.7 V at the top of its tolerance: 16 V are enough, 14.5 V
// are broken at the worst alone. A relay in a place of 160 °C needs 8 V × (1 + 0.00393·140)
// = 12.40 V: enough at 12.7 V, and too much on a battery that still starts the engine.
func TestVoltsOfLoadsAndCoils(t *testing.T) {
	const lamp = "loads:\n  tail lamp: {power: 5 W, behaves: constant power, %s, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame}\n"
	for _, c := range []struct {
		rule, text string
		want       finding.Severity
	}{
		{"load-overvoltage", fmt.Sprintf(lamp, "maximum voltage: 16 V"), 0},
		{"load-overvoltage", fmt.Sprintf(lamp, "maximum voltage: 14.5 V"), finding.Fault},
		{"load-overvoltage", fmt.Sprintf(lamp, "maximum voltage: 14.5 V, critical: yes"), finding.Danger},
		{"load-overvoltage", fmt.Sprintf(lamp, "rated at: 9.6 V"), finding.Advice}, // 14.4 V
		{"load-overvoltage", fmt.Sprintf(lamp, "rated at: 9.4 V"), finding.Fault},  // 14.1 V
		{"load-overvoltage", fmt.Sprintf(lamp, "rated at: 9.9 V"), 0},              // 14.85 V
		{"relay-coil-voltage", relayIn("100 °C"), 0},
		{"relay-coil-voltage", relayIn("160 °C"), finding.Fault},
	} {
		found := assess(t, "volts.yaml", []byte(example.Design(c.text)))
		var got finding.Severity
		for _, f := range found {
			if f.Rule == c.rule {
				got = f.Severity
			}
		}
		if got != c.want {
			t.Errorf("%s of\n%s: severity %q, want %q", c.rule, c.text, got, c.want)
		}
	}
}

func relayIn(ambient string) string {
	return `
places:
  battery tray: {ambient: 40 °C}
  rear: {ambient: 35 °C}
  engine: {ambient: ` + ambient + `}
runs:
  - {from: battery tray, to: rear, length: 600 mm}
  - {from: battery tray, to: engine, length: 600 mm, cover: heat sleeve}
wire: {insulation: ISO 6722 thin wall class D, size: 1 mm²}
relays:
  lamp relay: {form: mini make, at: engine, fed by: lamp fuse, coil: {fed by: lamp fuse, returns to: frame, suppressed by: diode}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp relay, returns to: frame}
situations:
  waiting: {key: on, on: all}
`
}

// TestRelayAboveItsRating: a contact is a danger where the load is a third above its rating for
// motors at nominal, up to that advice; in the worst case it is to carry what flows. The form switches 15 A
// of motor and carries 20 A, of which 0.954 are left at 40 °C: 14.3 and 19.1 A; a motor
// may draw a fifth more. A pump of P watts draws P/12 A.
func TestRelayAboveItsRating(t *testing.T) {
	for watts, want := range map[float64]finding.Severity{232: finding.Danger, 228: finding.Advice, 173: finding.Advice, 170: 0} {
		found := assess(t, "relay.yaml", []byte(example.Design(fmt.Sprintf(`
fuses:
  heat fuse: {type: blade C, rating: 30 A, at: battery tray, fed by: battery, wire: {size: 6 mm², length: 100 mm}}
  pilot: {type: blade C, rating: 3 A, at: battery tray, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
relays:
  pump relay: {form: micro make, at: battery tray, fed by: heat fuse, wire: {size: 6 mm², length: 100 mm}, coil: {fed by: pilot, returns to: frame, suppressed by: diode, wire: {size: 1 mm², length: 100 mm}, return wire: {size: 1 mm², length: 100 mm}}}
loads:
  pump: {power: %g W, behaves: motor, at: rear, fed by: pump relay, wire: {size: 6 mm²}, returns to: frame, return wire: {size: 6 mm²}}
`, watts))))
		var got finding.Severity
		for _, f := range found {
			if f.Rule == "relay-contact-overload" {
				got = f.Severity
			}
		}
		if got != want {
			t.Errorf("%g W: severity %q, want %q", watts, got, want)
		}
	}
}
