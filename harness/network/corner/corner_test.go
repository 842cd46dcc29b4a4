package corner_test

import (
	"math"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
	"fusewright/harness/network/solve"
	"fusewright/harness/proof/buildtest"
	"fusewright/harness/proof/example"
	"fusewright/harness/proof/synth"
)

// A work lamp of 48 W at 12 V (a resistor, 3 Ω) at the end of 100 mm and 2 m of
// 1 mm² (18.5 mΩ/m at most, ISO 6722), back by 2 m to a frame stud of 2 mΩ;
// battery AGM of 12 mΩ, 12.8 V full; engine stopped.
const byHand = `
fuses:
  lamp fuse: {type: blade C, rating: 7.5 A, at: battery tray, fed by: battery, wire: {size: 1 mm², length: 100 mm}}
loads:
  work lamp: {power: 48 W, rated at: 12 V, behaves: resistor, own switch: yes, at: rear, fed by: lamp fuse, wire: {size: 1 mm², length: 2 m}, returns to: frame, return wire: {size: 1 mm², length: 2 m}}
situations:
  at rest: {key: on, engine: stopped, on: [work lamp]}
`

// TestByHand compares with a loop worked by hand, in mΩ. Temperatures are those
// of the heat balance at the current, to 0.1 K, in 40 °C, which the design gives and no
// corner raises; of the two wires in the run at 1/0.81 of it, which is what two wires with
// the same current leave each other (package bundle): 42.9 and 44.4 °C
// at nominal; 43.5 and 45.2 °C at the corner (high source), 43.3 and 44.9 °C (weak source).
//
//	nominal: wires 1.85·1.0901 + 1.10, 37·1.0959 + 1.01, 37·1.0959 + 0.51;
//	         fuse 10.91, lamp's switch 1, stud 2: 99.64 on the way;
//	         12.8 V / (99.64 + 12 + 3000) = 4.1136 A; drop 0.40988 V
//	fuse warm by (4/3 · 4.1136/7.5)² = 0.535 of 70 %: 10.91·1.3745 = 15.00
//	high:    lamp 10 % stronger 2727.27, ends aged 1.5+3, 3+0.9, 0.9+1.5:
//	         1.85·1.0922 + 4.5, 37·1.0990 + 3.9, 37·1.0990 + 2.4: 112.15;
//	         12.8 V / (112.15 + 12 + 2727.27) = 4.4890 A; drop 0.50344 V
//	weak:    battery at 60 % 12.42 V and 12·1.4 = 16.8; way 112.07;
//	         12.42 V / 2856.14 = 4.3485 A, 11.8596 V at the lamp; at nominal 12.3408 V
//	likely:  lamp alone stronger: way 99.85, 12.8 V / 2839.12 = 4.5084 A, drop
//	         0.45018 V; ends alone aged: way 111.90, 12.8 V / 3123.90 = 4.0975 A, drop
//	         0.45851 V; the weak source alone drops less; 0.40988 V + √(0.04030² + 0.04863²) V
func TestByHand(t *testing.T) {
	c := buildtest.Circuit(t, []byte(example.Design(byHand)))
	s := corner.Compute(c)
	lamp := loadNamed(t, c, "work lamp")
	near := func(what string, got, want float64) {
		t.Helper()
		if !(math.Abs(got-want) <= 5e-4*want) {
			t.Errorf("%s = %.5g, want %.5g ± 0.05 %%", what, got, want)
		}
	}
	drop, volts, amps := s.Drop(0, lamp), s.LoadV(0, lamp), s.Amps(0, lamp)
	near("drop at nominal", drop.Nominal, 0.40988)
	near("drop at the corner", drop.Corner, 0.50344)
	near("drop as it is likely", drop.Likely, 0.47304)
	near("volts at nominal", volts.Nominal, 12.3408)
	near("volts at the corner", volts.Corner, 11.8596)
	near("amperes at nominal", amps.Nominal, 4.1136)
	if drop.At != corner.High || volts.At != corner.Weak || amps.At != corner.Fresh {
		t.Errorf("corners at %q, %q and %q", drop.At, volts.At, amps.At)
	}
	w := c.Wires[1] // fuse to lamp
	warm := s.WireC(0, w)
	if math.Abs(warm.Nominal-44.4) > 0.1 || math.Abs(warm.Corner-45.2) > 0.1 {
		t.Errorf("%s at %.2f and %.2f °C, want 44.4 and 45.2", w.Number, warm.Nominal, warm.Corner)
	}
}

func loadNamed(t testing.TB, c *circuit.Circuit, name string) *circuit.Branch {
	t.Helper()
	for _, b := range c.Branches {
		if b.Load != nil && b.Load.Load != nil && b.Load.Load.Name == name && !b.Load.Standby {
			return b
		}
	}
	t.Fatalf("no load %q", name)
	return nil
}

// TestOneCornerIsWorse: nominal is never the worst. Of every load that is on,
// some corner has a larger drop and a lower voltage; every wire is hotter.
func TestOneCornerIsWorse(t *testing.T) {
	loads, wires := 0, 0
	for seed := int64(1); seed <= 8; seed++ {
		c := buildtest.Circuit(t, synth.YAML(50, seed))
		s := corner.Compute(c)
		for i := range c.Design.Situations {
			if !s.Usable(i) {
				t.Fatalf("seed %d: situation %d has no operating point", seed, i)
			}
			nominal := s.Results[corner.Nominal][i]
			for _, b := range c.Branches {
				if b.Load == nil || b.Load.Load == nil || !nominal.Solution.LoadOn[b.Index] {
					continue
				}
				loads++
				if d := s.Drop(i, b); !(d.Corner > d.Nominal) {
					t.Errorf("seed %d: %s drops %g V at nominal and %g V at the corner", seed, b.Name, d.Nominal, d.Corner)
				}
				if v := s.LoadV(i, b); !(v.Corner < v.Nominal) {
					t.Errorf("seed %d: %s has %g V at nominal and %g V at the corner", seed, b.Name, v.Nominal, v.Corner)
				}
			}
			for _, w := range c.Wires {
				wires++
				// Hotter where the design does not say how hot; the wire of a coil may be a
				// trace less warm above its place, when the stronger loads pull the source down.
				if v := s.WireC(i, w); !w.AmbientKnown && v.Corner < v.Nominal+0.99*s.Tolerances.AmbientK {
					t.Errorf("seed %d: %s at %g °C, at the corner %g °C", seed, w.Number, v.Nominal, v.Corner)
				}
			}
		}
	}
	if loads < 100 || wires < 500 {
		t.Errorf("only %d loads and %d wires met", loads, wires)
	}
}

// TestCornerPowersBalance: every solution of every corner balances.
func TestCornerPowersBalance(t *testing.T) {
	c := buildtest.Circuit(t, synth.YAML(80, 2))
	s := corner.Compute(c)
	for state, results := range s.Results {
		for _, r := range results {
			used := 0.0
			for _, b := range c.Branches {
				if p := r.Solution.Volts(b) * r.Solution.Amps(b); p > 0 {
					used += p
				}
			}
			if !r.Settled || math.Abs(r.Solution.PowerErrorW) > 1e-6*used+1e-8 {
				t.Errorf("%s, %s: settled %v, powers differ by %g of %g W", corner.State(state),
					r.Solution.Situation.Name, r.Settled, r.Solution.PowerErrorW, used)
			}
		}
	}
}

// TestOptions: what Options gives solves to the very result.
func TestOptions(t *testing.T) {
	c := buildtest.Circuit(t, synth.YAML(40, 4))
	s := corner.Compute(c)
	for state := range s.Results {
		for i, sit := range c.Design.Situations {
			again := solve.Solve(c, sit, s.Options(i, corner.State(state)))
			for n, v := range s.Results[state][i].Solution.NodeV {
				if x := again.NodeV[n]; !(math.Abs(x-v) <= 1e-6) && !(math.IsNaN(x) && math.IsNaN(v)) {
					t.Fatalf("%s, %s: node %d at %.9g V, again %.9g V", corner.State(state), sit.Name, n, v, x)
				}
			}
		}
	}
}

// TestTolerances: the design's own tolerance goes before the library's, and
// volts are in proportion to the system voltage.
func TestTolerances(t *testing.T) {
	src := example.Design(`
loads:
  tail lamp: {power: 5 W, behaves: resistor, tolerance: 3 %, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame}
  stop lamp: {power: 21 W, behaves: motor, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame}
`)
	c := buildtest.Circuit(t, []byte(src))
	s := corner.Compute(c)
	for name, want := range map[string]float64{"tail lamp": 1.03, "stop lamp": 1.2} {
		b := loadNamed(t, c, name)
		if got := s.Options(0, corner.Fresh).LoadFactor(b); math.Abs(got-want) > 1e-12 {
			t.Errorf("%s: power times %g, want %g", name, got, want)
		}
	}
	t24 := corner.TolerancesOf(&design.Design{SystemV: design.Quantity{Value: 24, Text: "24 V"}})
	t12 := corner.TolerancesOf(nil)
	if t24.LowestV != 2*t12.LowestV || t24.RegulatedV != 2*t12.RegulatedV || t12.LowestV != 10.5 {
		t.Errorf("24 V: %+v, 12 V: %+v", t24, t12)
	}
}

// TestCollapseAtCornerOnly: a feed that just works at nominal is said to
// collapse at the worst corner.
func TestCollapseAtCornerOnly(t *testing.T) {
	src := example.Design(`
loads:
  tail lamp: {power: 36 W, behaves: constant power, at: rear, fed by: lamp fuse, wire: {size: 0.75 mm², length: 40 m}, returns to: frame}
`)
	c := buildtest.Circuit(t, []byte(src))
	s := corner.Compute(c)
	found := false
	for i, sit := range c.Design.Situations {
		sol, state, failed := s.Unsolved(i)
		if failed {
			found = true
			if sol.Status != solve.Collapsed || state != corner.Weak {
				t.Errorf("%s: %s at %q", sit.Name, sol.Status, state)
			}
		}
	}
	if !found {
		t.Error("no situation fails at its corner alone")
	}
}
