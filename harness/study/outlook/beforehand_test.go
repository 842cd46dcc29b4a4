package outlook_test

import (
	"slices"
	"testing"

	"fusewright/harness/proof/reviewtest"
	"fusewright/harness/proof/synth"
	"fusewright/harness/study/outlook"
)

// What is answered beforehand holds each start as it is, and each leg, at every speed of a small harness; of a large
// one no more than can be afforded.
func TestBeforehand(t *testing.T) {
	small := reviewOf(t, demos[0]).Outlook()
	large := reviewtest.Of(t, synth.YAML(600, 1)).Outlook()
	for _, c := range []struct {
		name         string
		p            *outlook.Planner
		speeds, most int
	}{
		{"fen-runner", small, 9, 1000}, {"600 wires", large, 0, 40_000/600 + len(large.Starts)},
	} {
		b := c.p.Beforehand()
		if len(b.States) > c.most || c.speeds > 0 && len(b.Speeds) != c.speeds {
			t.Errorf("%s: %d states at %v", c.name, len(b.States), b.Speeds)
		}
		for _, s := range c.p.Starts {
			if !slices.ContainsFunc(b.States, func(x outlook.State) bool {
				return x.Start == s.ID && x.KeyOn == s.State.KeyOn && x.SpeedPerMin == s.State.SpeedPerMin && len(x.Set) == 0 && x.AirC == s.State.AirC && x.Charge == s.State.Charge
			}) {
				t.Errorf("%s: %s is not answered as it is", c.name, s.ID)
			}
		}
		for _, x := range b.States {
			if err := c.p.Check(x); err != nil {
				t.Errorf("%s: %v", c.name, err)
			}
		}
	}
	// Corners of the curve at 1000, 1500, 2500, 4000 and 7000, idle at 1300, cruise at a corner, legs at 3000 and 5500, and stopped.
	if b := small.Beforehand(); !slices.Equal(b.Speeds, []float64{0, 1000, 1300, 1500, 2500, 3000, 4000, 5500, 7000}) || len(b.Moves[small.Starts[1].ID]) != 4 {
		t.Errorf("speeds %v, moves %v", b.Speeds, b.Moves[small.Starts[1].ID])
	}
}
