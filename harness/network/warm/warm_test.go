package warm_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/formula/conductor"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/network/warm"
	"fusewright/harness/proof/buildtest"
	"fusewright/harness/proof/example"
	"fusewright/harness/proof/synth"
	"fusewright/library"
)

func plain(int) solve.Options { return solve.Options{} }

// TestCurveAgainstBalance compares the temperature of laid wires with the heat
// balance itself, solved for each current, over all sizes of some wire types,
// two ambients, alone and reduced, up to 250 °C.
func TestCurveAgainstBalance(t *testing.T) {
	lib := library.Default()
	rater := conductor.NewRater(lib, nil)
	worst, count := 0.0, 0
	for _, name := range []string{"ISO 6722 thin wall class B", "TXL", "M22759/16", "tinned marine 105 °C AWG"} {
		kind := lib.WireType(name)
		for _, size := range kind.Sizes {
			for _, ambient := range []float64{-20, 75} {
				w := &circuit.Wire{Branch: &circuit.Branch{}, AmbientC: ambient, Spec: design.WireSpec{Type: kind, Size: size}}
				c := &circuit.Circuit{Design: &design.Design{Library: lib}, Wires: []*circuit.Wire{w}}
				laid := &warm.New(c).Wires[0]
				at := conductor.Conditions{Type: kind, Size: size, AmbientC: ambient}
				for amps := 0.02; ; amps *= 1.3 {
					want := rater.ConductorC(at, amps)
					if want > warm.HottestC {
						break
					}
					count++
					worst = math.Max(worst, math.Abs(laid.ConductorC(amps)-want))
				}
			}
		}
	}
	t.Logf("%d temperatures, worst difference %.4f K", count, worst)
	if count < 500 || !(worst <= 0.06) {
		t.Errorf("%d temperatures, worst difference %.4f K, want 0.06 K", count, worst)
	}
}

// TestAgreement checks what a warm solution claims: each wire's resistance is
// that of its temperature, its temperature that of its current (by the heat
// balance itself; of a current that flows for a time, of one between its mean heat
// and itself), and the powers balance within a millionth.
func TestAgreement(t *testing.T) {
	anyTimed := false
	for seed := int64(1); seed <= 6; seed++ {
		c := buildtest.Circuit(t, synth.YAML(60, seed))
		m := warm.New(c)
		rater := conductor.NewRater(library.Default(), c.Design.Practice)
		warmest := 0.0
		for _, r := range m.All(solve.Prepare(c), plain, nil) {
			s := r.Solution
			if !r.Settled || s.Status != solve.Converged || r.Passes > 5 {
				t.Fatalf("seed %d, %s: settled %v after %d passes, %s", seed, s.Situation.Name, r.Settled, r.Passes, r.Why)
			}
			if p := math.Abs(s.PowerErrorW); p > 1e-6*totalW(s)+1e-8 {
				t.Errorf("seed %d, %s: powers differ by %g W", seed, s.Situation.Name, p)
			}
			for i, w := range c.Wires {
				l, amps := m.Wires[i], s.Amps(w.Branch)
				at := conductor.Conditions{Type: w.Spec.Type, Size: w.Spec.Size, AmbientC: w.AmbientC}
				at.Beside = conductor.Alike(1)
				hottest := 0.0
				for _, b := range w.Route {
					if h, ok := b.HeatIn(m.SituationOf(s.Situation), w); ok && h.ConductorC > hottest {
						hottest, at.Beside, at.CoverFactor = h.ConductorC, h.Beside, b.CoverShare()
					} else if !ok && l.In != nil {
						at.CoverFactor = l.CoverShare
					}
				}
				forGoodA := l.Pulse.ForGoodA(amps)
				if forGoodA > amps || forGoodA < meanHeatA(w.Branch.TimeOn, amps)*(1-1e-9) || !w.Branch.TimeOn.Timed() && forGoodA != amps {
					t.Errorf("seed %d, %s, %s: %g A heat as %g A for good, on for %+v", seed, s.Situation.Name, w.Number, amps, forGoodA, w.Branch.TimeOn)
				}
				anyTimed = anyTimed || forGoodA < amps
				want := rater.ConductorC(at, forGoodA)
				if math.Abs(r.UsedC(w)-want) > 0.16 || math.Abs(r.WireC[i]-want) > 0.06 {
					t.Errorf("seed %d, %s, %s: %.3f A make %.3f °C, used %.3f, said %.3f", seed,
						s.Situation.Name, w.Number, amps, want, r.UsedC(w), r.WireC[i])
				}
				ohm := w.ConductorOhm20*(1+0.00393*(r.UsedC(w)-20)) + w.EndsOhm
				if math.Abs(s.Ohm[w.Branch.Index]-ohm) > 1e-12+1e-9*ohm {
					t.Errorf("seed %d: %s has %g Ω, want %g Ω", seed, w.Number, s.Ohm[w.Branch.Index], ohm)
				}
				if placeC := w.AmbientC + at.Beside.RiseK; amps == 0 && r.WireC[i] != placeC {
					t.Errorf("seed %d: %s carries nothing and is at %g °C, not %g", seed, w.Number, r.WireC[i], placeC)
				}
				warmest = math.Max(warmest, r.WireC[i]-w.AmbientC)
			}
		}
		if warmest < 1 {
			t.Errorf("seed %d: no wire is more than %.2f K warm, so nothing was tested", seed, warmest)
		}
	}
	if !anyTimed {
		t.Error("no current flows for a time, so that was not tested")
	}
}

// meanHeatA is the current for good with the mean heat of one that flows for a time.
func meanHeatA(on circuit.TimeOn, amps float64) float64 {
	if !on.Timed() || amps <= on.SteadyA {
		return amps
	}
	duty := on.OnS / on.EveryS
	squared := func(a float64) float64 { return duty*a*a + (1-duty)*on.SteadyA*on.SteadyA }
	if on.SteadyA > 0 && on.UsedA > 0 && amps > on.UsedA { // the mix stays
		return amps / on.UsedA * math.Sqrt(squared(on.UsedA))
	}
	return math.Sqrt(squared(amps))
}

// totalW is the power that the branches use.
func totalW(s *solve.Solution) float64 {
	sum := 0.0
	for _, b := range s.Circuit.Branches {
		if v := s.Volts(b) * s.Amps(b); v > 0 {
			sum += v
		}
	}
	return sum
}

// TestMoreAmbientNeverCools: hotter places make no wire cooler, whatever its
// current does.
func TestMoreAmbientNeverCools(t *testing.T) {
	for seed := int64(1); seed <= 12; seed++ {
		c := buildtest.Circuit(t, synth.Random(seed))
		m, plan := warm.New(c), solve.Prepare(c)
		before := m.All(plan, plain, nil)
		for _, k := range []float64{5, 20} {
			hot := m.Hotter(k).All(plan, plain, nil)
			for i, r := range hot {
				if !r.Usable() || !before[i].Usable() {
					continue
				}
				for w := range c.Wires {
					if r.WireC[w] < before[i].WireC[w] {
						t.Errorf("seed %d, %s: %g K hotter places make it %.3f °C instead of %.3f °C",
							seed, c.Wires[w].Number, k, r.WireC[w], before[i].WireC[w])
					}
				}
			}
		}
	}
}

// TestStartDoesNotMatter: the result is the same from the ambients and from
// another result.
func TestStartDoesNotMatter(t *testing.T) {
	c := buildtest.Circuit(t, synth.YAML(100, 3))
	m, plan := warm.New(c), solve.Prepare(c)
	cold := m.All(plan, plain, nil)
	again := m.All(plan, plain, m.Hotter(40).All(plan, plain, nil))
	for i := range cold {
		for w := range c.Wires {
			if d := math.Abs(cold[i].WireC[w] - again[i].WireC[w]); d > 0.1 {
				t.Errorf("%s differs by %.3f K", c.Wires[w].Number, d)
			}
		}
	}
}

// TestNoSteadyTemperature: a thread that is to carry a winch has none below
// 250 °C; that is said and the solution stays usable.
func TestNoSteadyTemperature(t *testing.T) {
	src := example.Design(`
fuses:
  winch fuse: {type: blade C, rating: 25 A, at: battery tray, fed by: battery, wire: {size: 6 mm², length: 100 mm}}
loads:
  winch: {current: 60 A, behaves: motor, at: rear, fed by: winch fuse, wire: {size: 0.5 mm²}, returns to: frame, return wire: {size: 6 mm²}}
`)
	c := buildtest.Circuit(t, []byte(src))
	m := warm.New(c)
	r := m.Solve(solve.Prepare(c), c.Design.Situations[0], solve.Options{}, nil)
	if !r.Usable() || len(r.Over) != 1 || !strings.Contains(r.Why, "no steady temperature below 250 °C") {
		t.Fatalf("status %s, %d wires over, %q", r.Solution.Status, len(r.Over), r.Why)
	}
	w := r.Over[0]
	if w.Spec.Size.Label != "0.5 mm²" || r.UsedC(w) != warm.HottestC || !(r.WireC[w.Index] > warm.HottestC) {
		t.Errorf("%s of %s at %g °C, used %g", w.Number, w.Spec.Size.Label, r.WireC[w.Index], r.UsedC(w))
	}
}

// TestCollapseIsSaid: a network that works cold and not warm ends as collapsed.
func TestCollapseIsSaid(t *testing.T) {
	src := example.Design(`
loads:
  tail lamp: {power: 40 W, behaves: constant power, at: rear, fed by: lamp fuse, wire: {size: 0.75 mm², length: 60 m}, returns to: frame}
`)
	c := buildtest.Circuit(t, []byte(src))
	for _, r := range warm.New(c).All(solve.Prepare(c), plain, nil) {
		if r.Solution.Situation.Key == design.KeyOff {
			continue
		}
		if r.Solution.Status != solve.Collapsed || r.Settled || !strings.Contains(r.Why, "voltage collapse") {
			t.Errorf("%s: %s, settled %v, %q", r.Solution.Situation.Name, r.Solution.Status, r.Settled, r.Why)
		}
	}
}

// BenchmarkWarm solves every situation of a harness with its wires warm,
// rating of the wires included.
func BenchmarkWarm(b *testing.B) {
	for _, wires := range []int{40, 1000, 10_000} {
		b.Run(fmt.Sprint(wires), func(b *testing.B) {
			c := buildtest.Circuit(b, synth.YAML(wires, 1))
			b.ReportAllocs()
			for b.Loop() {
				warm.New(c).All(solve.Prepare(c), plain, nil)
			}
		})
	}
}

// BenchmarkCold is the same at 20 °C, to compare.
func BenchmarkCold(b *testing.B) {
	for _, wires := range []int{40, 1000, 10_000} {
		b.Run(fmt.Sprint(wires), func(b *testing.B) {
			c := buildtest.Circuit(b, synth.YAML(wires, 1))
			for b.Loop() {
				solve.All(c, solve.Options{})
			}
		})
	}
}
