package circuit_test

import (
	"math"
	"strings"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/library"
)

const bare = `fusewright: 1
title: bare
system: SYSTEM
practice: motorcycle
battery: {chemistry: AGM, capacity: 10 Ah, at: tray}
charging: {regulated: 14 V, output: {1000 rpm: 10 A, 4000 rpm: 25 A}, idle: 1000 rpm, cruise: 4000 rpm}
places: {tray: {}, nose: {}}
runs: [{from: tray, to: nose, length: 1 m}]
wire: {insulation: ISO 6722 thin wall class B, size: 1 mm²}
taps:
  keyed: {at: tray, hot: key, fuse: 10 A, spare: 5 A, supervised: no}
fuses:
  main: {type: blade C, rating: 10 A, at: tray, fed by: battery, wire: {size: 16 mm², length: 100 mm}}
relays:
  relay: {form: mini make, at: tray, fed by: main, coil: {fed by: keyed, returns to: stud, suppressed by: resistor}}
blocks:
  block: {way limit: 10 A, total limit: 20 A, at: tray, fed by: relay, ways: {1: {fuse: none}}}
switches:
  rocker: {rating: 10 A, at: nose, fed by: block 1}
  isolator: {rating: 500 A, at: nose, fed by: block 1}
  unknown: {at: nose, fed by: block 1}
grounds:
  stud: {kind: frame stud, at: tray}
  plate: {kind: frame stud, at: nose, frame resistance: 0 mΩ}
loads:
  lamp: {power: 20 W, behaves: resistor, own switch: yes, at: nose, fed by: rocker, returns to: stud}
  horn: {power: 20 W, behaves: resistor, at: nose, fed by: rocker, returns to: plate}
`

// What stands where neither design nor library gives a resistance, and says so.
func TestAssumedResistances(t *testing.T) {
	for system, class := range map[string]float64{"12 V": 1, "24 V": 2} {
		form := map[string]string{"12 V": "mini make", "24 V": "mini make 24 V"}[system]
		c := build(t, "bare.yaml", strings.NewReplacer("SYSTEM", system, "form: mini make", "form: "+form).Replace(bare))
		ohm := func(part string, kind circuit.BranchKind, nth int) float64 {
			for _, b := range c.Branches {
				if b.Part != nil && b.Part.Name == part && b.Kind == kind {
					if nth--; nth < 0 {
						return b.Ohm
					}
				}
			}
			t.Fatalf("%s has no such branch", part)
			return 0
		}
		for _, test := range []struct {
			name      string
			got, want float64
		}{
			{"charging", ohm("charging", circuit.ChargerBranch, 0), 0.001},
			{"tap", ohm("keyed", circuit.ContactBranch, 0), 0.030},
			{"factory fuse: 0.1 V at 10 A", ohm("keyed", circuit.FuseBranch, 0), 0.010},
			{"suppressor of a coil", ohm("relay", circuit.ResistorBranch, 1), 680 * class * class},
			{"way of a block, 10 A: as one of 30 A, 60 mV", ohm("block", circuit.ResistorBranch, 0), 0.002},
			{"switch: 100 mV at 10 A", ohm("rocker", circuit.ContactBranch, 0), 0.010},
			{"isolator: 100 mV at 500 A", ohm("isolator", circuit.ContactBranch, 0), 0.0002},
			{"switch of unknown rating: as of 10 A", ohm("unknown", circuit.ContactBranch, 0), 0.010},
			{"switch in an accessory", ohm("lamp", circuit.ContactBranch, 0), 0.001},
			{"frame", ohm("stud", circuit.ResistorBranch, 0), 0.005},
			{"frame free of resistance", ohm("plate", circuit.ResistorBranch, 0), 1e-6},
		} {
			if math.Abs(test.got-test.want) > 1e-12 {
				t.Errorf("%s, %s: %g Ω, want %g Ω", system, test.name, test.got, test.want)
			}
		}
	}
}

// A battery of which nothing is known counts with 10 mΩ at 12 V, twice at 24 V.
func TestUnknownBattery(t *testing.T) {
	for volts, want := range map[float64]float64{0: 0.010, 12: 0.010, 24: 0.020} {
		d := &design.Design{Library: library.Default()}
		if volts > 0 {
			d.SystemV = design.Quantity{Value: volts, Text: "given"}
		}
		c, err := circuit.Build(d)
		if err != nil {
			t.Fatal(err)
		}
		if got := c.Branches[0].Ohm; math.Abs(got-want) > 1e-12 {
			t.Errorf("%g V: %g Ω, want %g Ω", volts, got, want)
		}
	}
}

// An end for which the library has no part counts with 0.5 mΩ; a wire that meets
// no place with an ambient, with 30 °C.
func TestAssumedOfWires(t *testing.T) {
	c := build(t, "bare.yaml", strings.ReplaceAll(bare, "SYSTEM", "12 V"))
	w := c.Wires[0]
	if w.ToEnd != nil || w.FromEnd == nil || math.Abs(w.EndsOhm-w.FromEnd.ContactOhm-0.0005) > 1e-12 {
		t.Errorf("16 mm² into a blade fuse: ends %v and %v of %g Ω", w.FromEnd, w.ToEnd, w.EndsOhm)
	}
	if math.Abs(w.Branch.Ohm-w.ConductorOhm20-w.EndsOhm) > 1e-15 || w.AmbientC != 30 || w.AmbientKnown {
		t.Errorf("%g Ω in all at %g °C", w.Branch.Ohm, w.AmbientC)
	}
}

// Four equal wires make a bundle of 1.25 · √(4 d²) = 2.5 d, two of them 2 d.
func TestBundleDiameter(t *testing.T) {
	for wires, times := range map[int]float64{1: 1, 2: 2, 4: 2.5, 6: 1.25 * math.Sqrt(6)} {
		text := "fusewright: 1\ntitle: t\nsystem: 12 V\npractice: motorcycle\n" +
			"battery: {chemistry: AGM, capacity: 10 Ah, at: a}\nplaces: {a: {}, b: {}}\n" +
			"runs: [{from: a, to: b, length: 1 m}]\nwire: {insulation: ISO 6722 thin wall class B, size: 1 mm²}\nfuses:\n"
		for i := range wires {
			text += "  f" + string(rune('a'+i)) + ": {type: blade C, rating: 10 A, at: b, fed by: battery}\n"
		}
		c := build(t, "t.yaml", text)
		d := c.Wires[0].Spec.Size.OuterMm
		if got := c.Bundles[0].OuterMm; math.Abs(got-times*d) > 1e-9 {
			t.Errorf("%d wires of %g mm: %g mm thick, want %g mm", wires, d, got, times*d)
		}
	}
}

// The longer of two bare ways counts, whichever comes first.
func TestLongestBareWay(t *testing.T) {
	for _, order := range []string{"[near, far]", "[far, near]"} {
		c := build(t, "t.yaml", "fusewright: 1\ntitle: t\nsystem: 12 V\npractice: motorcycle\n"+
			"battery: {chemistry: AGM, capacity: 10 Ah}\nwire: {insulation: ISO 6722 thin wall class B, size: 1 mm²}\n"+
			"splices:\n  near: {fed by: battery, wire: {length: 100 mm}}\n  far: {fed by: battery, wire: {length: 700 mm}}\n"+
			"fuses:\n  main: {type: blade C, rating: 10 A, fed by: "+order+", wire: {length: 100 mm}}\n")
		if g := c.Guards()[named(t, c, "main").Branches[0].Index]; !g.Bare || math.Abs(g.BareM-0.8) > 1e-12 {
			t.Errorf("fed by %s: %+v, want 0.8 m bare", order, g)
		}
	}
}

// What is hot with the engine running needs the key and the engine.
func TestHotWhileRunning(t *testing.T) {
	c := build(t, "t.yaml", strings.NewReplacer("SYSTEM", "12 V", "hot: key", "hot: running").Replace(bare))
	tap := named(t, c, "keyed").Branches[0].Index
	for _, test := range []struct {
		name string
		s    design.Situation
		want bool
	}{
		{"key off", design.Situation{Key: design.KeyOff}, false},
		{"key off, a speed given", design.Situation{Key: design.KeyOff, EngineRPM: 1000}, false},
		{"key on, stopped", design.Situation{Key: design.KeyOn}, false},
		{"key on, running", design.Situation{Key: design.KeyOn, EngineRPM: 1000}, true},
	} {
		if circuit.Running(&test.s) != test.want || circuit.Contacts(c, &test.s)[tap] != test.want {
			t.Errorf("%s: running %t, tap closed %t", test.name, circuit.Running(&test.s), circuit.Contacts(c, &test.s)[tap])
		}
	}
}
