package remedy_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fusewright/harness/proof/example"
	"fusewright/harness/proof/reviewtest"
	"fusewright/harness/review/finding"
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
		{"a battery's milliohms as ohms", `
battery: {chemistry: AGM, capacity: 12 Ah, resistance: 8 Ω, at: battery tray}
`, "battery, resistance", "8 Ω", "8 mΩ"},
		{"charging of a smaller system", `
charging: {regulated: 7.15 V, output: {1300 rpm: 14 A, 3000 rpm: 24 A}, idle: 1300 rpm, cruise: 3000 rpm, hot derating: 0 %}
`, "charging, regulated", "7.15 V", "14.3 V"},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := reviewtest.Of(t, []byte(example.Design(c.sections))).Remedies()
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

// TestSlipIsOneCause: one slipped point in a clean design, and every danger and fault
// that the design has not without it stands under the question about that figure.
func TestSlipIsOneCause(t *testing.T) {
	for _, c := range []struct{ file, part, power, meant string }{
		{"designs/fen-runner.yaml", "left lamp: {type: LED auxiliary lamp", "238 W", "23.8 W"},
		{"testdata/corpus-clean-trade/19-open-boat.yaml", "bow lamps: {type: LED navigation lamp", "30 W", "3 W"},
		{"testdata/corpus-clean-trade/25-micro-camper.yaml", "water pump: {type: fresh water pump", "600 W", "60 W"},
	} {
		t.Run(filepath.Base(c.file), func(t *testing.T) {
			src, err := os.ReadFile("../../" + c.file)
			if err != nil {
				t.Fatal(err)
			}
			slipped := strings.Replace(string(src), c.part, c.part+", power: "+c.power, 1)
			if slipped == string(src) {
				t.Fatal("no such part")
			}
			before := map[string]bool{}
			for _, f := range reviewtest.Of(t, src).Findings {
				before[f.Rule+f.Part+f.Wire] = true
			}
			more := 0
			for _, cause := range reviewtest.Of(t, []byte(slipped)).Remedies().Causes {
				asked := cause.Remedy != nil && cause.Remedy.Guess
				if asked && cause.Remedy.Will != c.meant {
					t.Errorf("%s is asked for, want %s", cause.Remedy.Will, c.meant)
				}
				for _, f := range cause.Findings {
					if f.Severity == finding.Advice || before[f.Rule+f.Part+f.Wire] {
						continue
					}
					if more++; !asked {
						t.Errorf("%s: %s stands elsewhere", f.Rule, f.What)
					}
				}
			}
			if more == 0 {
				t.Error("nothing follows from it")
			}
		})
	}
}
