package rules_test

import (
	"fmt"
	"strings"
	"testing"

	"fusewright/harness/proof/example"
)

// TestDropLeads: of a drop the figure comes first that is past the limit: nominal where that is, the likely one where
// it alone is past one and a half times it, or past it by one wire; less is no word. With the share that contacts and fuses take: thicker wires
// are chosen against it unless that is more than half.
func TestDropLeads(t *testing.T) {
	for _, c := range []struct {
		lengthM float64
		power   string
		want    string
		leave   bool
	}{
		{6, "20 W", "% at nominal (likely", false},
		{4, "20 W", "% in the likely case (nominal", false}, // one wire takes two fifths
		{1, "32 W", "", false},
		{1.2, "33 W", "% in the likely case (nominal", true},
		{1.5, "33 W", "% at nominal (likely", true},  // contacts and fuses take 52 %
		{1.7, "33 W", "% at nominal (likely", false}, // 49.6 %
	} {
		src := example.Design(fmt.Sprintf(`
fuses:
  main: {type: blade C, rating: 5 A, at: battery tray, fed by: battery, wire: {size: 1 mm², length: 100 mm}}
  lamp fuse: {type: blade F, rating: 3 A, at: battery tray, fed by: key, wire: {size: 1 mm², length: 100 mm}}
switches:
  key: {type: key switch 10 A, at: battery tray, fed by: main, wire: {size: 1 mm², length: 100 mm}}
  light: {type: handlebar rocker 5 A, at: battery tray, fed by: lamp fuse, wire: {size: 1 mm², length: 100 mm}}
loads:
  tail lamp: {power: %s, rated at: 13 V, behaves: constant power, critical: yes, at: rear, fed by: light, wire: {size: 0.75 mm², length: %g m}, returns to: frame, return wire: {size: 1 mm²}}
`, c.power, c.lengthM))
		said, leave := "", false
		for _, f := range assess(t, "lamp", []byte(src)) {
			if f.Rule == "voltage-drop" {
				said, leave = f.Severity.String()+": "+f.What, f.Leave
			}
		}
		if (said == "") != (c.want == "") || said != "" && (!strings.HasPrefix(said, "advice: ") || !strings.Contains(said, c.want) || !strings.Contains(said, "contacts and fuses take ")) || leave != c.leave {
			t.Errorf("%s, %g m: %q, left %t, want advice with %q, left %t", c.power, c.lengthM, said, leave, c.want, c.leave)
		}
	}
}
