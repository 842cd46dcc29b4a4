package remedy_test

import (
	"testing"

	"fusewright/harness/proof/example"
)

// TestMeantIsTried: the value that may be meant is put into the design, and what is
// gone then stands under that cause.
func TestMeantIsTried(t *testing.T) {
	for _, c := range []struct{ name, sections, about, was, will string }{
		{"a lamp's watts as amperes", `
loads:
  tail lamp: {type: LED tail lamp, current: 4 A, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame}
`, "tail lamp, power", "54 W", "4 W"},
		{"a run in metres", `
runs:
  - {from: battery tray, to: rear, length: 60 m}
`, "battery tray - rear, length", "60.0 m", "600 mm"},
		{"charging of another vehicle", `
charging: {regulated: 14.3 V, output: {1300 rpm: 200 A, 3000 rpm: 240 A}, idle: 1300 rpm, cruise: 3000 rpm, hot derating: 0 %}
`, "charging, output", "240 A", "24.0 A"},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := review(t, []byte(example.Design(c.sections))).Remedies()
			if len(p.Causes) != 1 || p.Causes[0].Remedy == nil {
				t.Fatalf("%d causes, the first %+v", len(p.Causes), p.Causes[0])
			}
			x := p.Causes[0].Remedy
			if x.About != c.about || x.Was != c.was || x.Will != c.will || len(p.Left) != 0 {
				t.Errorf("%s: %s to %s, %d left", x.About, x.Was, x.Will, len(p.Left))
			}
		})
	}
}
