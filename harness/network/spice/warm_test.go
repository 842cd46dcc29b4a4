package spice_test

import (
	"fmt"
	"testing"

	"fusewright/harness/network/corner"
	"fusewright/harness/proof/buildtest"
	"fusewright/harness/proof/referencetest"
	"fusewright/harness/proof/synth"
)

// Warm networks with their final resistances, at nominal and in every corner:
// harnesses whose wires have each a temperature of its own.
func TestWarmNetworksAgainstNgspice(t *testing.T) {
	program, dir := referencetest.Program(t, "ngspice"), t.TempDir()
	var w worst
	for seed := int64(1); seed <= 4; seed++ {
		c := buildtest.Circuit(t, synth.YAML(40, seed))
		d := c.Design
		s := corner.Compute(c)
		for state, results := range s.Results {
			warmest := 0.0
			for i, r := range results {
				for k := range c.Wires {
					warmest = max(warmest, r.WireC[k]-s.Model.Wires[k].AmbientC)
				}
				name := fmt.Sprintf("warm%d-%d-%d", seed, state, i)
				w.against(t, program, dir, name, c, d.Situations[i], s.Options(i, corner.State(state)))
			}
			if warmest < 1 {
				t.Errorf("seed %d, %s: no wire is warm", seed, corner.State(state))
			}
		}
	}
	t.Logf("%d networks: largest deviation %.3g V, %.3g of a current", w.networks, w.volts, w.share)
}
