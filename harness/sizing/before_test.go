package sizing

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"
)

// TestBeforeTheFuse: the wire before a fuse is as thick as what follows, though what
// follows is given, or two wires hang on the fuse.
func TestBeforeTheFuse(t *testing.T) {
	src := strings.Replace(single("off-road", "6 A", "resistor", 3), "fed by: f, returns", "fed by: f, wire: {size: 4 mm²}, returns", 1)
	two := src + "  m: {current: 1 A, behaves: resistor, at: tray, own switch: yes, stays live: \"test\", fed by: f, returns to: battery negative}\n"
	for _, src := range []string{src, two} {
		p, err := Complete(read(t, src))
		if err != nil {
			t.Fatal(err)
		}
		if z := p.Design.Fuses[0].FedBy[0].Wire.Size; z.AreaMm2 < 4*0.99 {
			t.Errorf("%s before a fuse with 4 mm² behind it", z.Label)
		}
		if err := p.Explain(); err != nil {
			t.Fatal(err)
		}
		for _, c := range p.Choices {
			if strings.Contains(c.Lost, "not found by the search") {
				t.Errorf("%s: %s", c.Part, c.Lost)
			}
		}
	}
}

// tree is a random harness: a main fuse, an isolator, a bus, and fused circuits of
// different length behind it that return over a bar.
func tree(seed uint64) string {
	r := rand.New(rand.NewPCG(seed, 3))
	var fuses, loads, runs, places strings.Builder
	for i := range 2 + r.IntN(3) {
		fmt.Fprintf(&places, "  p%d: {ambient: 40 °C}\n", i)
		fmt.Fprintf(&runs, "  - {from: tray, to: p%d, length: %d mm}\n", i, 600+r.IntN(6000))
		fmt.Fprintf(&fuses, "  f%d: {at: tray, fed by: %s, wire: {length: 120 mm}, stays live: test}\n", i,
			[]string{"isolator", "bus"}[r.IntN(2)])
		fmt.Fprintf(&loads, "  l%d: {current: %d A, behaves: resistor%s, at: p%d, fed by: f%d, returns to: bar, own switch: yes, stays live: test}\n",
			i, 1+r.IntN(12), []string{"", ", critical: yes"}[r.IntN(2)], i, i)
	}
	return fmt.Sprintf(`fusewright: 1
title: tree %d
system: 12 V
practice: off-road
battery: {chemistry: AGM, capacity: 100 Ah, rate: 10 h, resistance: 5 mΩ, at: tray}
charging: {regulated: 14.3 V, output: {1000 rpm: 300 A, 3000 rpm: 300 A}, idle: 1000 rpm, cruise: 3000 rpm}
places:
  tray: {ambient: 40 °C}
%sruns:
%sfuses:
  main: {at: tray, fed by: battery, wire: {length: 150 mm}, stays live: test}
%sswitches:
  isolator: {at: tray, fed by: main, wire: {length: 400 mm}, rating: 100 A, stays live: test}
splices:
  bus: {at: tray, fed by: isolator, wire: {length: 300 mm}}
grounds:
  bar: {kind: ground block, at: tray, limit: 100 A, returns to: battery negative, wire: {length: 500 mm}}
loads:
%s`, seed, places.String(), runs.String(), fuses.String(), loads.String())
}

// TestStepsDown: on no way from the battery outward is a wire thinner than what follows,
// where its ends take that; nor is it on the way back.
func TestStepsDown(t *testing.T) {
	for seed := range uint64(10) {
		p, err := Complete(read(t, tree(seed)))
		if err != nil {
			t.Fatalf("%d: %v", seed, err)
		}
		w := p.s.look(p.s.best.verdict)
		for i, x := range p.s.slots {
			follows := w.followingMm2(i)
			if x.kind != WireSize || x.sizes[x.at].AreaMm2 >= follows*0.999 {
				continue
			}
			if z := x.at + 1; w.crimpsAll(i, z) {
				t.Errorf("%d: %s has %s, and %g mm² follow", seed, x.part, x.sizes[x.at].Label, follows)
			}
		}
	}
}

// TestTrunk: the feed of a block with two circuits and the return of a bar with two are a trunk of
// 1.5 mm² at least, though 0.75 mm² would carry what hangs on them; of one circuit they are not.
func TestTrunk(t *testing.T) {
	const two = `
places: {tray: {ambient: 30 °C}}
fuses:
  main: {type: blade C, rating: 5 A, at: tray, fed by: battery, wire: {length: 100 mm}, stays live: "test"}
blocks:
  box: {type: fuse block 4 way blade C, at: tray, fed by: main, wire: {length: 200 mm}, stays live: "test", ways: {1: 3 A, 2: 3 A}}
grounds:
  bar: {kind: ground block, at: tray, limit: 40 A, returns to: battery negative, wire: {length: 300 mm}}
loads:
  a: {power: 6 W, behaves: resistor, at: tray, fed by: box 1, wire: {length: 500 mm}, returns to: bar, return wire: {length: 500 mm}}
  b: {power: 6 W, behaves: resistor, at: tray, fed by: box 2, wire: {length: 500 mm}, returns to: bar, return wire: {length: 500 mm}}
`
	one := strings.Replace(strings.Replace(two, ", 2: 3 A", "", 1), "  b: ", "  # b: ", 1)
	for parts, want := range map[string]float64{two: 1.5, one: 0.75} {
		p, err := Complete(read(t, bench(parts)))
		if err != nil {
			t.Fatal(err)
		}
		d := p.Design
		for _, z := range []float64{d.Fuses[0].FedBy[0].Wire.Size.AreaMm2, d.Blocks[0].FedBy[0].Wire.Size.AreaMm2, d.Grounds[0].Returns[0].Wire.Size.AreaMm2} {
			if z < want*0.95 || z > want*1.05 {
				t.Errorf("%g mm², want %g", z, want)
			}
		}
	}
}
