package purchase

import (
	"math"
	"strings"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/library"
)

// Waste and spares at and around each step.
func TestFinishByHand(t *testing.T) {
	for _, c := range []struct {
		name       string
		line       Line
		spare, buy float64
	}{
		{"wire: 9 m and a tenth are 9.9 m", Line{Group: Wire, Unit: "m", SoldAs: "m", Need: 9}, 0.9, 10},
		{"wire: 10 m and a tenth are 11 m, not 12", Line{Group: Wire, Unit: "m", SoldAs: "m", Need: 10}, 1, 11},
		{"wire: a little more", Line{Group: Wire, Unit: "m", SoldAs: "m", Need: 10.01}, 1.001, 12},
		{"cover: 10 m", Line{Group: Covers, Unit: "m", SoldAs: "m", Need: 10}, 1, 11},
		{"10 terminals", Line{Group: Terminals, Unit: "pcs", SoldAs: "pcs", Need: 10}, 1, 11},
		{"11 terminals", Line{Group: Terminals, Unit: "pcs", SoldAs: "pcs", Need: 11}, 2, 13},
		{"10 contacts of plugs", Line{Group: Plugs, Unit: "pcs", SoldAs: "pcs", Need: 10}, 1, 11},
		{"24 terminals and 3 in packs of 25", Line{Group: Terminals, Unit: "pcs", SoldAs: "pack of 25", Need: 24}, 3, 2},
		{"22 terminals and 3 in a pack of 25", Line{Group: Terminals, Unit: "pcs", SoldAs: "pack of 25", Need: 22}, 3, 1},
		{"1 fuse", Line{Group: Fuses, Unit: "pcs", SoldAs: "pcs", Need: 1}, 1, 2},
		{"4 fuses", Line{Group: Fuses, Unit: "pcs", SoldAs: "pcs", Need: 4}, 1, 5},
		{"5 fuses", Line{Group: Fuses, Unit: "pcs", SoldAs: "pcs", Need: 5}, 2, 7},
		{"a breaker closes again", Line{Group: Fuses, Unit: "pcs", SoldAs: "pcs", Need: 1, resets: true}, 0, 1},
		{"a relay has no spare", Line{Group: Relays, Unit: "pcs", SoldAs: "pcs", Need: 1}, 0, 1},
	} {
		finish(&c.line)
		if math.Abs(c.line.Spare-c.spare) > 1e-9 || c.line.Buy != c.buy {
			t.Errorf("%s: spare %g, buy %g; want %g and %g", c.name, c.line.Spare, c.line.Buy, c.spare, c.buy)
		}
	}
	for cut, want := range map[float64]float64{0: 0, 0.5: 1, 9: 10, 10: 11, 10.01: 12, 50: 55, 90: 99, 100: 110} {
		if got := WireToBuyM(cut); got != want {
			t.Errorf("%g m to cut: buy %g m, want %g m", cut, got, want)
		}
	}
}

const loom = `fusewright: 1
title: loom
system: 12 V
practice: motorcycle
battery: {chemistry: AGM, capacity: 12 Ah, resistance: 12 mΩ, at: tray}
places: {tray: {ambient: 30 °C}, rear: {ambient: 30 °C}}
runs:
  - {from: tray, to: rear, length: 310 mm, cover: braided sleeve}
wire: {insulation: ISO 6722 thin wall class B, size: 1 mm², slack: 50 mm}
fuses:
  main: {type: blade C, rating: 5 A, at: tray, fed by: battery, wire: {length: 100 mm}}
loads:
  lamp: {at: rear, power: 20.06 W, behaves: resistor, plug: sealed 1.5, fed by: main, returns to: battery negative}
`

// One run of 310 mm has ⌈310/150⌉ + 1 = 4 ties, three wires six markers; 30 mm of
// heat-shrink goes on each crimp that is not sealed.
func TestConsumablesByHand(t *testing.T) {
	d, err := design.Read("loom.yaml", []byte(loom), library.Default())
	if err != nil {
		t.Fatal(err)
	}
	c, err := circuit.Build(d)
	if err != nil {
		t.Fatal(err)
	}
	unsealed := 0
	for _, w := range c.Wires {
		for _, end := range []*library.Terminal{w.FromEnd, w.ToEnd} {
			if end != nil && !end.Sealed {
				unsealed++
			}
		}
	}
	if len(c.Wires) != 3 || unsealed == 0 || unsealed == 6 {
		t.Fatalf("%d wires, %d unsealed ends", len(c.Wires), unsealed)
	}
	lines := map[string]*Line{}
	for _, l := range List(c).Lines {
		lines[l.Item] = l
	}
	for item, want := range map[string]struct {
		need, buy float64
		soldAs    string
	}{
		"cable ties":                       {4, 1, "pack of 25"},
		"wire markers":                     {6, 6, "pcs"},
		"heat-shrink tube, adhesive lined": {0.03 * float64(unsealed), 1, "m"},
		"braided sleeve":                   {0.31, 1, "m"},
		"lamp, 20.1 W":                     {1, 1, "pcs"},
	} {
		l := lines[item]
		if l == nil || math.Abs(l.Need-want.need) > 1e-9 || l.Buy != want.buy || !strings.HasPrefix(l.SoldAs, want.soldAs) {
			t.Errorf("%s: %+v, want %+v", item, l, want)
		}
	}
	if l := lines["braided sleeve"]; l != nil && l.LargestMm != c.Bundles[0].OuterMm {
		t.Errorf("the sleeve must take %g mm, the run is %g mm thick", l.LargestMm, c.Bundles[0].OuterMm)
	}
	seals := 0.0
	for item, l := range lines {
		if strings.HasPrefix(item, "wire seal for ") {
			seals += l.Need
		}
	}
	if seals != 4 {
		t.Errorf("%g wire seals for two wires into both halves, want 4", seals)
	}
}

// Sleeves are bought by size, up to 6, 10, 15 mm and so on: of the bundles of one size
// the thickest counts, in any order, and their lengths together.
func TestCoversAreBoughtBySize(t *testing.T) {
	checkCovers(t, 0, [][2]float64{{10, 25.1}, {22.8, 22.8}, {6, 9}})
}

// One size of what stretches to twice takes the bundles down to half the thickest: 22.8 alone, as
// 10 is less than 11.4; 10 down to 5; and 3. Tape takes all.
func TestStretchingCoversAreOneArticle(t *testing.T) {
	checkCovers(t, 2, [][2]float64{{10, 31.1}, {22.8, 22.8}, {3, 3}})
	checkCovers(t, 100, [][2]float64{{22.8, 56.9}})
}

// checkCovers holds the largest bundle and the length of each line of bundles of 6.1, 22.8,
// 10, 3, 6 and 9 mm, each of as many metres.
func checkCovers(t *testing.T, spans float64, want [][2]float64) {
	t.Helper()
	b := &builder{lines: map[string]*Line{}}
	cover := &library.Cover{Name: "sleeve", Spans: spans}
	of := func(mm float64) *circuit.Bundle {
		run := &design.Run{Cover: cover, LengthM: design.Quantity{Value: mm}}
		return &circuit.Bundle{OuterMm: mm, Wires: []*circuit.Wire{{}}, Run: run}
	}
	b.covers(&circuit.Circuit{Bundles: []*circuit.Bundle{of(6.1), of(22.8), of(10), of(3), of(6), of(9)}})
	if len(b.order) != len(want) {
		t.Fatalf("%d lines, want %d", len(b.order), len(want))
	}
	for i, key := range b.order {
		if l := b.lines[key]; l.LargestMm != want[i][0] || math.Abs(l.Need-want[i][1]) > 1e-9 || l.Item != "sleeve" {
			t.Errorf("line %d: %+v, want %v", i, l, want[i])
		}
	}
}

// Ways left over in a sealed housing are closed in both halves.
func TestBlankingPlugsByHand(t *testing.T) {
	for ways, want := range map[int]float64{2: 0, 3: 2, 5: 6} {
		b := &builder{lines: map[string]*Line{}}
		plug := &circuit.Plug{Family: &library.Connector{Name: "f", Sealed: true, SealsPer: 10}, Needed: 2, Ways: ways}
		b.plugs(&circuit.Circuit{Parts: []*circuit.Part{{Ref: "E1", Plug: plug}}})
		l := b.lines[string(Plugs)+"\x00blanking plug, f"]
		if (l == nil) != (want == 0) || l != nil && (l.Need != want || l.SoldAs != "pack of 10") {
			t.Errorf("%d ways, 2 used: %+v, want %g", ways, l, want)
		}
	}
}
