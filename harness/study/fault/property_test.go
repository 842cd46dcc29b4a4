package fault_test

import (
	"fmt"
	"math"
	"testing"

	"fusewright/harness/network/circuit"
	"fusewright/harness/proof/buildtest"
	"fusewright/harness/proof/synth"
	"fusewright/harness/study/fault"
	"fusewright/library"
)

// Prospective current never rises on the way from the source along a wire, and
// where one wire alone feeds a place its resistance grows in a straight line:
// the currents of shorts between its ends follow from those at its ends.
func TestCurrentAlongWire(t *testing.T) {
	wires, between := 0, 0
	for seed := range int64(24) {
		c := buildtest.Circuit(t, synth.YAML(120, seed))
		s := fault.Compute(c)
		for _, w := range c.Wires {
			if !w.Branch.Feeds() {
				continue
			}
			list := s.OfWire(w)
			near, far := list[0], list[len(list)-1]
			if !near.Fed {
				continue
			}
			wires++
			alone := len(w.To.Node.FedBy()) == 1
			for i := 1; i < len(list); i++ {
				a, b := list[i-1].Results[fault.Strong].CurrentA, list[i].Results[fault.Strong].CurrentA
				if alone && b > a*(1+1e-9) {
					t.Errorf("seed %d %s: %.6g A after %.6g A nearer the source", seed, w.Number, b, a)
				}
				between += straight(t, w, near, list[i], far)
			}
		}
	}
	if wires < 500 || between < 20 {
		t.Errorf("only %d wires and %d places between", wires, between)
	}
}

// straight compares a short between the ends in the weak state, where one line
// of voltage over current holds; the far end of a load's wire has another return.
func straight(t *testing.T, w *circuit.Wire, near, at, far *fault.Short) int {
	t.Helper()
	if at.Where != fault.Between || w.To.Part.Kind == circuit.Load || w.To.Part.Kind == circuit.Relay ||
		len(w.To.Node.FedBy()) > 1 {
		return 0
	}
	share := at.AlongM / w.LengthM
	a, b, c := 1/near.Results[fault.Weak].CurrentA, 1/at.Results[fault.Weak].CurrentA, 1/far.Results[fault.Weak].CurrentA
	if want := a + share*(c-a); math.Abs(b-want) > 1e-3*want {
		t.Errorf("%s at %s: 1/%.6g A, between its ends 1/%.6g A", w.Number, at.At, 1/b, 1/want)
	}
	return 1
}

// A thicker wire never ends hotter at the same current for the same time, and
// more time never leaves a wire cooler.
func TestThickerWireNeverHotter(t *testing.T) {
	lib := library.Default()
	for _, kind := range lib.WireTypes {
		c := buildtest.Circuit(t, oneWire(kind))
		for _, amps := range []float64{20, 60, 200, 700} {
			for _, seconds := range []float64{0.01, 0.5, 2, 5, 20, 300} {
				was := math.Inf(1)
				for i, size := range kind.Sizes {
					w := *c.Wires[1]
					w.Spec.Size = size
					c.Wires[1] = &w
					s := fault.NewWires(c)
					h := s.Heat(&w, amps, seconds)
					if h.EndC > was+1e-6 {
						t.Errorf("%s %s: %.2f °C after %g A for %g s, the size below %.2f °C", kind.Name, size.Label,
							h.EndC, amps, seconds, was)
					}
					was = h.EndC
					if later := s.Heat(&w, amps, 2*seconds); later.EndC < h.EndC-1e-6 && !cools(h) {
						t.Errorf("%s %s at %g A: %.2f °C after %g s, %.2f °C after twice that", kind.Name, size.Label,
							amps, h.EndC, seconds, later.EndC)
					}
					if i > 8 {
						break
					}
				}
			}
		}
	}
}

func cools(h fault.Heat) bool { return h.EndC <= h.StartC }

// oneWire is a design with a wire of a type.
func oneWire(kind *library.WireType) []byte {
	return []byte(fmt.Sprintf(`fusewright: 1
title: one wire
vehicle: invented machine
system: 12 V
practice: marine
battery: {chemistry: flooded, capacity: 40 Ah, resistance: 9 mΩ, at: box}
places:
  box: {ambient: 30 °C}
wire: {insulation: %s, size: %s}
fuses:
  branch: {type: blade C, rating: 10 A, at: box, fed by: battery, wire: {length: 100 mm}}
loads:
  lamp: {power: 5 W, behaves: resistor, at: box, fed by: branch, returns to: battery negative, wire: {length: 1 m}, return wire: {length: 1 m}}
`, kind.Name, kind.Sizes[0].Label))
}

// The damage curve and the temperature reached are one model read both ways: at
// the time the curve gives, the conductor is at the curve's limit.
func TestHeatAgreesWithDamage(t *testing.T) {
	c := buildtest.Circuit(t, synth.YAML(60, 3))
	s := fault.NewWires(c)
	compared := 0
	for _, w := range c.Wires {
		d := s.Damage(w)
		if !s.Rated(w) {
			continue
		}
		for _, amps := range []float64{40, 90, 250, 900} {
			short := d.ToShortS(amps)
			if math.IsInf(short, 1) || short == 0 {
				continue
			}
			compared++
			// The curve lays its knots between start and limit, the heating between
			// start and melting: in the slow range they differ by the loss's bend.
			if got := s.Heat(w, amps, short).EndC; math.Abs(got-d.ShortC) > 0.02*(d.ShortC-60) {
				t.Errorf("%s at %g A for %.4g s: %.2f °C, limit %.0f °C", w.Number, amps, short, got, d.ShortC)
			}
		}
	}
	if compared < 50 {
		t.Errorf("only %d compared", compared)
	}
}
