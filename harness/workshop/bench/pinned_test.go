package bench

import (
	"math"
	"slices"
	"strings"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
	"fusewright/harness/network/solve"
	"fusewright/library"
)

func made(t *testing.T, src string) *circuit.Circuit {
	t.Helper()
	d, err := design.Read("test.yaml", []byte(src), library.Default())
	if err != nil {
		t.Fatal(err)
	}
	c, err := circuit.Build(d)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

const bulb = `
fusewright: 1
title: bulb
system: 12 V
practice: motorcycle
battery: {chemistry: AGM, capacity: 12 Ah, resistance: 10 mΩ}
charging: {regulated: 14 V, output: {1000 rpm: 10 A, 4000 rpm: 25 A}, idle: 1000 rpm, cruise: 4000 rpm}
vehicle loads: {machine: 112 W}
wire: {insulation: ISO 6722 thin wall class B, size: 1 mm²}
fuses:
  f: {type: blade C, rating: 10 A, fed by: battery, wire: {length: 2 m}}
relays:
  r: {form: mini make, fed by: f, wire: {length: 1 m}, coil: {fed by: f, returns to: battery negative, suppressed by: diode, wire: {length: 1 m}, return wire: {length: 1 m}}}
loads:
  lamp: {resistance: 4 Ω, rated at: 12 V, fed by: r, wire: {length: 3 m}, returns to: battery negative, return wire: {length: 5 m}}
`

func close9(t *testing.T, what string, got, want float64) {
	t.Helper()
	if !(math.Abs(got-want) <= 1e-9*math.Abs(want)) {
		t.Errorf("%s: %.9g, want %.9g", what, got, want)
	}
}

// Wires by hand: 2 m of 18.5 mΩ/m at 35 °C, ends aged; 1 % and 0.1 mΩ of a fine
// meter, 1 % and 0.2 Ω of a plain one. Coils: data ±10 %, 10 to 35 °C.
func TestColdReadingsByHand(t *testing.T) {
	c := made(t, bulb)
	for _, s := range Make(c).Sections {
		for _, check := range s.Checks() {
			switch s.Kind {
			case Continuity:
				if check.Ref != "W1" {
					continue
				}
				w := c.Wires[0]
				hot := 2*18.5e-3*(1+0.00393*15) + w.FromEnd.AgedOhm + w.ToEnd.AgedOhm
				close9(t, "W1 at most, fine", check.High, hot*1.01+1e-4)
				close9(t, "W1 at most, plain", check.PlainHigh, hot*1.01+0.2)
			case Coils:
				ohm := library.Default().RelayForm("mini make").CoilOhm
				close9(t, "coil", check.Nominal, ohm)
				close9(t, "coil at least", check.Low, 0.9*ohm*(1-0.0393)*0.99-0.2)
				close9(t, "coil at most", check.High, 1.1*ohm*(1+0.00393*15)*1.01+0.2)
			case Isolation:
				close9(t, "isolation", check.Low, 1e6)
			}
		}
	}
	close9(t, "end of no known part", agedOhm(nil), 0.001)
	close9(t, "end without aged data", agedOhm(&library.Terminal{ContactOhm: 0.0007}), 0.0014)
	close9(t, "end with aged data", agedOhm(&library.Terminal{ContactOhm: 0.0007, AgedOhm: 0.003}), 0.003)
}

// A dropping resistor of 5 Ω, by hand: ±10 % cold, then 1 % and 0.2 Ω of a plain meter; the same in use, least where loads draw most.
func TestResistorByHand(t *testing.T) {
	c := made(t, strings.Replace(bulb, "rated at: 12 V, fed by: r", "rated at: 12 V, fed by: dropper", 1)+
		"resistors:\n  dropper: {resistance: 5 Ω, rating: 50 W, fed by: r, wire: {length: 1 m}}\n")
	read := 0
	for _, s := range Make(c).Sections {
		for _, check := range s.Checks() {
			if s.Kind == Resistors {
				read++
				close9(t, "at least", check.Low, 4.5*0.99-0.2)
				close9(t, "at most", check.High, 5.5*1.01+0.2)
			}
		}
	}
	if read != 1 {
		t.Errorf("%d resistors", read)
	}
	m := &maker{c: c, d: c.Design, tol: corner.TolerancesOf(c.Design)}
	for heavy, want := range map[bool]float64{true: 4.5, false: 5.5} {
		i := slices.IndexFunc(m.corner(heavy, heavy).Changes, func(x solve.Change) bool { return x.Branch.Dropper() })
		close9(t, "in use", m.corner(heavy, heavy).Changes[i].Ohm, want)
	}
}

// The corners of loads, contacts and source.
func TestCornersByHand(t *testing.T) {
	c := made(t, bulb)
	m := &maker{c: c, d: c.Design, tol: corner.TolerancesOf(c.Design)}
	light, heavy := m.corner(false, false), m.corner(true, true)
	close9(t, "contacts at least", light.ContactFactor, 0.5)
	close9(t, "contacts at most", heavy.ContactFactor, 2)
	w := &circuit.Wire{AmbientC: 10}
	close9(t, "wires of a cold place, on a warm bench", heavy.WireTempC(w), 35)
	close9(t, "wires on a cold bench", light.WireTempC(w), 10)
	w.AmbientC = 60
	close9(t, "wires of a hot place", heavy.WireTempC(w), 60)
	ohm := library.Default().RelayForm("mini make").CoilOhm
	close9(t, "coil, heavy: a tenth less, at 10 °C", heavy.Changes[0].Ohm, 0.9*ohm*(1-0.0393))
	close9(t, "coil, light: a tenth more, at 35 °C", light.Changes[0].Ohm, 1.1*ohm*(1+0.00393*15))
	machine := &circuit.Branch{Load: &circuit.LoadSpec{Vehicle: &design.VehicleLoad{}}}
	close9(t, "machine, heavy", heavy.LoadFactor(machine), 1.2)
	close9(t, "machine, light", light.LoadFactor(machine), 0.8)
	var low, high solve.Options
	m.source(&low, false)
	m.source(&high, true)
	if low.Discharged != 0.5 || high.Discharged != 0 || low.RegulatedV != 13.5 || high.RegulatedV != 14.5 ||
		low.ColdCharging || !high.ColdCharging {
		t.Errorf("sources %g and %g discharged, %g and %g V", low.Discharged, high.Discharged, low.RegulatedV, high.RegulatedV)
	}
	close9(t, "supply of 1.05 · 12 V", m.supplyV(), 12.6)
}

// The supply's limit: a fifth over the reading, in tenths, 0.5 A at the least and
// never above the fuse.
func TestSupplyLimit(t *testing.T) {
	for _, c := range []struct{ high, fuse, want float64 }{
		{0, 10, 0.5}, {0.41, 10, 0.5}, {0.42, 10, 0.6}, {1, 10, 1.2}, {1.01, 10, 1.3}, {9, 10, 10}, {1, 0, 1.2},
	} {
		close9(t, "limit", setting(c.high, c.fuse), c.want)
	}
}

// reading is a state in which one branch carries a current and loses a voltage.
func reading(key design.KeyState, amps, volts float64) *solved {
	c := &circuit.Circuit{}
	n := []*circuit.Node{{Index: 0}, {Index: 1}}
	c.Nodes = n
	s := &solve.Solution{Status: solve.Converged, Circuit: c, NodeV: []float64{0, volts}, BranchA: []float64{amps}}
	return &solved{situation: &design.Situation{Key: key}, spread: spread{nominal: s}}
}

func branch() *circuit.Branch {
	return &circuit.Branch{A: &circuit.Node{Index: 1}, B: &circuit.Node{Index: 0}, Part: &circuit.Part{Ref: "F1", Kind: circuit.Fuse,
		Terminals: []*circuit.Terminal{{Name: "in"}, {Name: "out"}}}}
}

// A clamp errs by 2.5 % and 0.1 A; below 1 A with the key off a meter goes in
// series and errs by 1.5 % and 20 µA.
func TestMetersByHand(t *testing.T) {
	for _, c := range []struct {
		key             design.KeyState
		amps, low, high float64
	}{
		{design.KeyOn, 4, 3.8, 4.2}, {design.KeyOn, 0.999, 0.874025, 1.123975}, {design.KeyOff, 4, 3.8, 4.2},
		{design.KeyOff, 1, 0.875, 1.125}, {design.KeyOff, 0.999, 0.983995, 1.014005}, {design.KeyOff, 1e-5, 0, 3.015e-5},
	} {
		s := reading(c.key, c.amps, 0)
		got := current(s, func(sol *solve.Solution) float64 { return sol.BranchA[0] })
		if math.Abs(got.Low-c.low) > 1e-9 || math.Abs(got.High-c.high) > 1e-9 {
			t.Errorf("%s, %g A: %g to %g A, want %g to %g A", c.key, c.amps, got.Low, got.High, c.low, c.high)
		}
	}
	got := dropOf(reading(design.KeyOn, 4, 0.1), branch())
	close9(t, "drop at most: 0.5 % and 2 mV", got.High, 0.1025)
	close9(t, "drop at least", got.Low, 0.0975)
}

// A connection is measured at nine tenths of its largest current or more, and
// above 25 A; one that may lose less than 20 mV is not.
func TestWhereDropsAreMeasured(t *testing.T) {
	b := branch()
	all := []*solved{reading(design.KeyOn, 50, 0), reading(design.KeyOn, 45.5, 0), reading(design.KeyOn, 45, 0), reading(design.KeyOn, 44.5, 0)}
	if got := loaded(all, b); len(got) != 2 || got[0] != 0 || got[1] != 1 {
		t.Errorf("measured in %v, want the first two", got)
	}
	for amps, want := range map[float64]int{24.9: 0, 25: 0, 25.1: 1} {
		if got := len(loaded([]*solved{reading(design.KeyOn, amps, 0)}, b)); got != want {
			t.Errorf("%g A: measured in %d situations, want %d", amps, got, want)
		}
	}
	// 17.8 mV · 1.005 + 2 mV is 19.9 mV, 18.0 mV · 1.005 + 2 mV is 20.1 mV.
	c := &circuit.Circuit{Branches: []*circuit.Branch{b}}
	b.Kind = circuit.FuseBranch
	b.Fuse = &circuit.FuseSpec{Ref: "F1"}
	b.Part.Branches = c.Branches
	for volts, measured := range map[float64]bool{17.8e-3: false, 18.0e-3: true} {
		m, s := &maker{c: c}, reading(design.KeyOn, 26, volts)
		s.section = &Section{}
		m.drops([]*solved{s})
		if got := len(s.section.Groups) == 1; got != measured || strings.Contains(strings.Join(m.missing, ""), "F1") == measured {
			t.Errorf("%g V: measured %t, missing %q", volts, got, m.missing)
		}
	}
}
