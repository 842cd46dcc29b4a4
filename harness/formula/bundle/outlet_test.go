package bundle

import (
	"fmt"
	"math"
	"testing"

	"fusewright/harness/formula/conductor"
)

// What a fault makes of a wire (conductor.Outlet, from its factor in the bundle) against
// the bundle itself with the fault in that wire and the others as they are: never more
// than 1 K cooler, and no hotter than by half the rise above the limit and 15 K. A wire
// that stays below its limit is taken as at it, as it was before the fault.
func TestFaultInABundle(t *testing.T) {
	const limitC = 95
	farthest, checked := 0.0, 0
	for _, ambientC := range []float64{30, 70} {
		for _, loaded := range []float64{0.2, 0.5, 0.8, 1} {
			for _, n := range []int{2, 4, 8, 20, 40} {
				for _, beside := range []conductor.Insulated{thin25, core15} {
					wires := make([]Wire, n)
					for i := range wires {
						wires[i] = Wire{Insulated: beside, LimitC: limitC, CurrentA: 1}
					}
					b := ready(t, wires, ambientC)
					common := loaded * b.CommonFactor()
					for i := range wires {
						wires[i].CurrentA = common
					}
					wires[0].Insulated = thin25
					b = ready(t, wires, ambientC)
					beside, _ := b.Among(0, b.Along(0, make([]float64, n)))
					air := conductor.NewBalance(thin25, conductor.StillAir{AmbientC: ambientC})
					out := conductor.Allowed{LimitC: limitC, Beside: beside, CoverShare: 1, AltShare: 1}.Outlet(ambientC)
					for _, times := range []float64{0.5, 1, 1.2, 1.5, 2} {
						amps := times * b.AllowedA(0)
						got, want := max(limitC, out.SteadyC(air, amps)), b.with(0, amps).Steady().ConductorC[0]
						at := fmt.Sprintf("%d wires at %g of what they may, %g of what it may, %g °C", n, loaded, times, ambientC)
						if got < want-1 {
							t.Errorf("%s: %.1f °C, the bundle has %.1f", at, got, want)
						}
						if most := max(limitC, want) + 0.5*max(0, want-limitC) + 15; got > most {
							t.Errorf("%s: %.1f °C, the bundle has %.1f", at, got, want)
						}
						farthest, checked = math.Max(farthest, got-want), checked+1
					}
				}
			}
		}
	}
	t.Logf("%d states, at most %.1f K hotter than the bundle", checked, farthest)
}
