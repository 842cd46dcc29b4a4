package bench_test

import (
	"strings"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/proof/example"
	"fusewright/harness/workshop/bench"
	"fusewright/library"
)

// A winch is not pulled at its rated current without a word about how: what is weaker,
// or on for good, is.
func TestTimedMotorsAreRigged(t *testing.T) {
	for says, want := range map[string]bool{"type: winch small": true, "current: 49 A, rated at: 12 V, behaves: motor, on for: 1 min": false,
		"current: 51 A, rated at: 12 V, behaves: motor, on for: 1 min": true, "current: 51 A, rated at: 12 V, behaves: motor": false} {
		d, err := design.Read("winch.yaml", []byte(example.Design("fuses:\n  big: {type: strip SF51, rating: 200 A, at: battery tray, fed by: battery, wire: {size: 50 mm²}}\n"+
			"loads:\n  pull: {"+says+", at: rear, fed by: big, wire: {size: 50 mm²}, returns to: battery negative, return wire: {size: 50 mm²}}\n"+
			"situations:\n  use: {engine: stopped, on: [pull]}\n")), library.Default())
		if err != nil {
			t.Fatal(err)
		}
		c, err := circuit.Build(d)
		if err != nil {
			t.Fatal(err)
		}
		got := false
		for _, s := range bench.Make(c).Sections {
			setup := strings.Join(s.Setup, " ")
			got = got || strings.Contains(setup, "safely rigged load and for at most 1 min")
			if strings.Contains(setup, "on its stand") {
				t.Errorf("%s: %s", says, setup)
			}
		}
		if got != want {
			t.Errorf("%s: %v, want %v", says, got, want)
		}
	}
}
