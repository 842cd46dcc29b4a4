package bundle

import (
	"math"
	"math/rand"
	"testing"

	"fusewright/harness/formula/conductor"
)

// The 2.5 mm² wire of the hand calculation: 7.82 mΩ/m, 3.0 mm over all.
var hand25 = plastic(7.82e-3, 2.1, 3.0, 0.2)

func handWires(n int, amps, limitC float64) []Wire {
	all := make([]Wire, n)
	for i := range all {
		all[i] = Wire{Insulated: hand25, CurrentA: amps, LimitC: limitC}
	}
	return all
}

// A thin wire of a lower class that carries next to nothing inside sixteen wires of
// 2.5 mm² in 40 °C is as hot as they are in the middle. By hand (a cylinder of 13.9 mm with
// the heat evenly spread, Churchill-Chu and radiation at its surface, 0.13 W/mK inside):
// at 16.5 A 47 W/m, 102 °C at the surface, 130 °C in the middle; at 13.2 A 28 W/m, 80
// and 97 °C. No less than the surface, whatever its own class or current.
func TestIdleWireIsAsHotAsTheBundle(t *testing.T) {
	for _, c := range []struct{ amps, surfaceC, middleC float64 }{{13.2, 80, 97}, {15.1, 92, 115}, {16.5, 102, 130}} {
		for _, own := range []float64{0, 2e-3, 5e-3, 20e-3} {
			wires := append(handWires(16, c.amps, 140), Wire{Insulated: thin25, LimitC: 75, CurrentA: own})
			b := ready(t, wires, 40)
			beside, conductorC := b.Among(16, b.Along(16, make([]float64, 17)))
			law := beside.ConductorC(40, own, conductor.NewBalance(thin25, conductor.StillAir{AmbientC: 40}).ConductorC)
			if conductorC < c.surfaceC || math.Abs(conductorC-c.middleC) > 4 || math.Abs(law-conductorC) > 0.6 {
				t.Errorf("%g A beside %g A: %.1f °C, by the law %.1f °C; by hand %g °C", own, c.amps, conductorC, law, c.middleC)
			}
			if mayA := beside.Share * b.AloneA(16); mayA > own || !beside.Known() {
				t.Errorf("%g A beside %g A: may carry %g A", own, c.amps, mayA)
			}
		}
	}
}

// Eight feeds and their returns of 2.5 mm², class 105 °C less 10 K in 40 °C: by hand at
// 17.3 A 52 W/m, 107 °C at the surface, 124 °C in the mean, 139 °C in the middle. What
// one may carry is what all of them may, 12.9 A by hand, however much they carry.
func TestOverloadedBundle(t *testing.T) {
	air := conductor.NewBalance(hand25, conductor.StillAir{AmbientC: 40})
	for _, amps := range []float64{13.5, 15, 17.3, 25} {
		b := ready(t, handWires(16, amps, 95), 40)
		along := make([]float64, 16)
		along[0], along[8] = amps, amps
		beside, conductorC := b.Among(0, b.Along(0, along))
		if got := beside.Share * b.AloneA(0); math.Abs(got-12.9) > 0.3 {
			t.Errorf("at %g A it may carry %.2f A", amps, got)
		}
		if amps == 17.3 && math.Abs(conductorC-140) > 5 {
			t.Errorf("%.1f °C, by hand 139 °C", conductorC)
		}
		if law := beside.ConductorC(40, amps, air.ConductorC); amps < 20 && math.Abs(law-conductorC) > 4 {
			t.Errorf("%g A: %.1f °C by the law, %.1f °C", amps, law, conductorC)
		}
	}
}

// A 95 mm² feed with its return carries what both of them may, not what one may beside
// the other at a lesser load: 0.193 mΩ/m, 16.7 mm, 95 °C in 40 °C, some 300 A by hand.
func TestPairCarriesWhatBothMay(t *testing.T) {
	big := plastic(0.193e-3, 14.5, 16.7, 0.2)
	for _, amps := range []float64{1, 100, 250, 290} {
		b := ready(t, []Wire{{Insulated: big, CurrentA: amps, LimitC: 95}, {Insulated: big, CurrentA: amps, LimitC: 95}}, 40)
		beside, _ := b.Among(0, b.Along(0, []float64{amps, amps}))
		if got := beside.Share * b.AloneA(0); math.Abs(got-300) > 15 || beside.RiseK != 0 {
			t.Errorf("at %g A it may carry %.0f A, %g K by others", amps, got, beside.RiseK)
		}
	}
}

// More than its limit and more than it may are the same; at what it may carry, with its
// own loads' wires along, its conductor is at its limit; and the law is at the bundle's
// temperature there.
func TestAmongIsWhereTheLimitIs(t *testing.T) {
	rng := rand.New(rand.NewSource(11))
	over := 0
	for range 300 {
		wires := mixed(rng, 2+rng.Intn(10), 0.9)
		b, i := ready(t, wires, 40), rng.Intn(len(wires))
		with := make([]float64, len(wires))
		for j := range with {
			if rng.Intn(3) == 0 || j == i {
				with[j] = wires[j].CurrentA * rng.Float64()
			}
		}
		g := b.Along(i, with)
		beside, conductorC := b.Among(i, g)
		amps, limitC := beside.Share*b.AloneA(i), wires[i].LimitC
		if conductorC < limitC-1e-3 != (wires[i].CurrentA < amps) && wires[i].CurrentA > 0 {
			t.Errorf("at %.1f of %.1f °C, carries %.3f of %.3f A", conductorC, limitC, wires[i].CurrentA, amps)
		}
		if conductorC > limitC {
			over++
			continue
		}
		at := b.at(func(j int) float64 { return g.amps(j, amps) }).conductorC(i)
		law := beside.ConductorC(40, amps, conductor.NewBalance(wires[i].Insulated, conductor.StillAir{AmbientC: 40}).ConductorC)
		if math.Abs(at-limitC) > 1e-3 || math.Abs(law-limitC) > 0.2 {
			t.Errorf("at %g A %.4f °C, by the law %.4f °C, limit %g °C", amps, at, law, limitC)
		}
	}
	if over < 20 {
		t.Errorf("only %d wires were over their limits", over)
	}
}

// A wire counts as loaded from a hundredth of the loss of the one that loses most: beside
// 10 A from 1 A in a wire of the same size, from 0.5 A in one of four times its resistance.
func TestHeats(t *testing.T) {
	wire := func(amps, times float64) Wire {
		w := Wire{Insulated: thin25, CurrentA: amps, LimitC: 105}
		w.OhmPerM20 *= times
		return w
	}
	for _, c := range []struct {
		wires []Wire
		want  int
	}{
		{nil, 0}, {[]Wire{wire(0, 1), wire(0, 1)}, 0},
		{[]Wire{wire(10, 1), wire(0.99, 1)}, 1}, {[]Wire{wire(10, 1), wire(1, 1)}, 2},
		{[]Wire{wire(10, 1), wire(0.49, 4)}, 1}, {[]Wire{wire(0.5, 4), wire(10, 1), wire(0, 1)}, 2},
		{[]Wire{wire(0.15, 1)}, 1}, // a coil alone is all there is
	} {
		if count := ready(t, c.wires, 40).Heating(); count != c.want {
			t.Errorf("%v: %d, want %d", c.wires, count, c.want)
		}
	}
}

// Traces of a current warm nothing, however small.
func TestTracesOfHeat(t *testing.T) {
	for amps := 1e-7; amps < 1e-2; amps *= 1.01 {
		for _, ambientC := range []float64{35, 40} {
			if c := ready(t, handWires(3, amps, 95), ambientC).Steady().MediumC; !(c >= ambientC && c < ambientC+1e-3) {
				t.Fatalf("%g A: %g °C in %g °C", amps, c, ambientC)
			}
		}
	}
}

// What a wire may carry falls without a jump as its neighbours carry more, also past their
// own limits and its own, and never to nothing; how hot it gets never falls.
func TestNeighboursNeverCollapse(t *testing.T) {
	air := conductor.NewBalance(hand25, conductor.StillAir{AmbientC: 40})
	for _, own := range []float64{0.05, 1, 5, 12} {
		at := func(amps float64) (mayA, conductorC, lawC float64) {
			wires := append(handWires(15, amps, 95), Wire{Insulated: hand25, CurrentA: own, LimitC: 95})
			b := ready(t, wires, 40)
			beside, c := b.Among(15, b.Along(15, make([]float64, 16)))
			return beside.Share * b.AloneA(15), c, beside.ConductorC(40, own, air.ConductorC)
		}
		wasA, wasC, wasLawC := at(0)
		for amps := 0.5; amps <= 20; amps += 0.5 {
			mayA, c, lawC := at(amps)
			if c < wasC || lawC < wasLawC-riseStepK {
				t.Errorf("%g A beside %g A: %.2f °C after %.2f, by the law %.2f after %.2f", own, amps, c, wasC, lawC, wasLawC)
			}
			if mayA > wasA+1e-6 || c > 95 && mayA < own/2 {
				t.Errorf("%g A beside %g A: %.1f °C, may carry %.3f A after %.3f A", own, amps, c, mayA, wasA)
			}
			low, high, lowA, highA := amps-0.5, amps, wasA, mayA
			for lowA-highA > 0.5 && high-low > 1e-9 { // a jump stays however near its sides
				mid := (low + high) / 2
				if midA, _, _ := at(mid); lowA-midA > midA-highA {
					high, highA = mid, midA
				} else {
					low, lowA = mid, midA
				}
			}
			if lowA-highA > 0.5 {
				t.Errorf("%g A: may carry %.3f A beside %.9g A, %.3f A beside %.9g A", own, lowA, low, highA, high)
			}
			wasA, wasC, wasLawC = mayA, c, lawC
		}
	}
}

// A wire without current beside the others changes nothing for them.
func TestUnloadedWireChangesNothing(t *testing.T) {
	rng := rand.New(rand.NewSource(12))
	for range 50 {
		wires := mixed(rng, 2+rng.Intn(10), 0.9)
		more := append(handWires(1, 0, 70), wires...)
		a, b := ready(t, wires, 40), ready(t, more, 40)
		for i := range wires {
			x, xC := a.Among(i, a.Along(i, make([]float64, len(wires))))
			y, yC := b.Among(i+1, b.Along(i+1, make([]float64, len(more))))
			if math.Abs(x.Share-y.Share) > 1e-9 || x.RiseK != y.RiseK || math.Abs(xC-yC) > 1e-6 {
				t.Errorf("wire %d: %+v at %g °C, with one more %+v at %g °C", i, x, xC, y, yC)
			}
		}
	}
}
