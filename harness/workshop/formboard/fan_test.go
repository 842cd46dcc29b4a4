package formboard_test

import (
	"fmt"
	"math"
	"testing"

	"fusewright/harness/workshop/formboard"
)

// TestFan: the layout of last resort crosses nothing either, and is to scale.
func TestFan(t *testing.T) {
	for seed := range 100 {
		t.Run(fmt.Sprint(seed), func(t *testing.T) {
			for _, s := range formboard.Lay(build(t, "web", web(uint64(seed)))).Sections {
				s.Fan()
				for i, l := range s.Limbs {
					if got := math.Hypot(l.To.At.X-l.From.At.X, l.To.At.Y-l.From.At.Y); math.Abs(got-l.Run.Length) > 1e-6 {
						t.Errorf("run %d is %g mm long, want %g", l.Run.Number, got, l.Run.Length)
					}
					for _, other := range s.Limbs[:i] {
						if formboard.Cross(l, other) {
							t.Errorf("section %d: runs %d and %d cross", s.Number, l.Run.Number, other.Run.Number)
						}
					}
				}
			}
		})
	}
}
