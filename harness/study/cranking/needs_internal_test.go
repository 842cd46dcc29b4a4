package cranking

import (
	"testing"

	"fusewright/harness/formula/battery"
	"fusewright/harness/proof/buildtest"
	"fusewright/harness/proof/example"
)

// A starter of which nothing is known turns from 7 V per 12 V of the system on; another from what it says.
func TestTurnsAtWhatItNeeds(t *testing.T) {
	d := buildtest.Circuit(t, example.Design("")).Design // of 12 V
	for _, c := range []struct {
		start battery.Start
		want  float64
	}{{battery.Start{}, 7}, {battery.Start{NeedsV: 8.5}, 8.5}} {
		if got := needsV(c.start, d); got != c.want {
			t.Errorf("%+v: %g V, want %g", c.start, got, c.want)
		}
	}
}
