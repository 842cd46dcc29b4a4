package circuit_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"fusewright/harness/network/circuit"
	"fusewright/harness/proof/buildtest"

	"github.com/google/go-cmp/cmp"
)

// parted is a loom with a connector at the bulkhead: the lamp's wires pass it, those of the
// gauge end there.
const parted = `fusewright: 1
title: parted
system: 12 V
practice: motorcycle
battery: {chemistry: AGM, capacity: 12 Ah, resistance: 12 mΩ, at: tray}
places: {tray: {ambient: 30 °C}, bulkhead: {ambient: 30 °C}, bow: {ambient: 30 °C}, mast: {ambient: 30 °C}}
runs:
  - {from: tray, to: bulkhead, length: 1 m}
  - {from: bulkhead, to: bow, length: 400 mm}
  - {from: bulkhead, to: mast, length: 300 mm}
wire: {insulation: ISO 6722 thin wall class B, size: 1 mm², slack: 50 mm}
fuses: {main: {type: blade C, rating: 5 A, at: tray, fed by: battery, wire: {length: 100 mm}}}
partings:
  front: {family: sealed 1.5, at: bulkhead}
loads:
  lamp: {power: 12 W, at: bow, fed by: main, returns to: battery negative, return wire: {length: 2.8 m}}
  gauge: {power: 1 W, at: bulkhead, fed by: main, returns to: battery negative}
`

// pieces lists what the wires of a connector are cut in.
func pieces(x *circuit.Inline) (list []string) {
	for _, p := range x.Poles {
		text := fmt.Sprintf("%d: %s %s|%s", p.Cavity, p.Wire.Purpose(), p.Near.Mark, p.Far.Mark)
		for _, w := range p.Wire.Pieces {
			text += fmt.Sprintf(", %s %.2f m", w.Number, w.LengthM)
		}
		list = append(list, text)
	}
	return list
}

// TestWiresArePartedAtAConnector by hand: 1 m and 0.4 m with 50 mm at each of two ends are 1.1 m
// and 0.5 m; of 2.8 m given the runs of 1.4 m take 2 m and 0.8 m.
func TestWiresArePartedAtAConnector(t *testing.T) {
	c := buildtest.Circuit(t, parted)
	x := c.Inlines()[0]
	want := []string{"1: lamp + socket|pin, W2a 1.10 m, W2b 0.50 m", "2: lamp - pin|socket, W4a 0.80 m, W4b 2.00 m"}
	if diff := cmp.Diff(want, pieces(x)); diff != "" {
		t.Error(diff)
	}
	if x.Part.Ref != "X1" || x.Part.Plug.Ways != 2 || x.Towards(x.Sockets)[0] != "tray" {
		t.Errorf("%s with %d ways, sockets towards %v", x.Part.Ref, x.Part.Plug.Ways, x.Towards(x.Sockets))
	}
	w := x.Poles[0].Wire
	if math.Abs(w.EndsOhm-w.FromEnd.ContactOhm-w.ToEnd.ContactOhm-0.002) > 1e-12 { // one pair of contacts is 2 mΩ
		t.Errorf("ends of %g Ω", w.EndsOhm)
	}
	if math.Abs(w.LengthM-1.6) > 1e-12 || math.Abs(w.Branch.Ohm-w.ConductorOhm20-w.EndsOhm) > 1e-12 {
		t.Errorf("%g m, %g Ω", w.LengthM, w.Branch.Ohm)
	}
}

// TestConnectorsThatTake share the wires out; what a connector at another side takes, and
// sockets where the design has them.
func TestConnectorsThatTake(t *testing.T) {
	text := strings.Replace(parted, "  front: {family: sealed 1.5, at: bulkhead}\n", "  front: {family: sealed 1.5, at: bulkhead, sockets towards: bow}\n"+
		"  mast plug: {family: open 6.3, at: bulkhead, takes: horn}\n", 1) +
		"  horn: {power: 30 W, at: mast, fed by: main, returns to: battery negative}\n"
	c := buildtest.Circuit(t, text)
	var got []string
	for _, x := range c.Inlines() {
		got = append(got, pieces(x)...)
	}
	want := []string{"1: lamp + pin|socket, W2a 1.10 m, W2b 0.50 m", "2: lamp - socket|pin, W5a 0.80 m, W5b 2.00 m",
		"1: horn + socket|pin, W4a 1.10 m, W4b 0.40 m", "2: horn - pin|socket, W7a 0.40 m, W7b 1.10 m"}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
	if near := c.Inlines()[1].Poles[0].Near; near.Mate() { // receptacles are the sockets of this family
		t.Error("the socket half of an open 6.3 is the mate")
	}
	if near := c.Inlines()[0].Poles[0].Near; near.Mate() {
		t.Error("the pin half of a sealed 1.5 is the mate")
	}
}

// TestThreeWaysHaveNoHalves: wires from each of three runs to each other cannot be parted
// in two halves.
func TestThreeWaysHaveNoHalves(t *testing.T) {
	text := parted + "  horn: {power: 30 W, at: mast, fed by: main, returns to: battery negative}\n" +
		"grounds: {bar: {kind: ground block, at: mast, returns to: battery negative}}\n" +
		"splices: {far: {at: bow, fed by: main}}\n"
	text = strings.Replace(text, "  gauge: {power: 1 W, at: bulkhead, fed by: main", "  gauge: {power: 1 W, at: mast, fed by: far", 1)
	_, err := circuit.Build(buildtest.Design(t, text))
	if err == nil || !strings.Contains(err.Error(), `design.yaml:14:3: connector "front"`) || !strings.Contains(err.Error(), "it has no two halves") {
		t.Error(err)
	}
}

// TestPiecesHaveTheColourOfTheirWire, also where it is chosen.
func TestPiecesHaveTheColourOfTheirWire(t *testing.T) {
	c := buildtest.Circuit(t, strings.Replace(parted, "size: 1 mm²,", "size: 1 mm², colour: auto,", 1))
	for _, w := range c.Wires {
		for _, piece := range w.Pieces {
			if got, want := piece.Spec.Colour.Code(), w.Spec.Colour.Code(); got != want || got == "" {
				t.Errorf("%s is %q, %s is %q", piece.Number, got, w.Number, want)
			}
		}
	}
}

// TestFittedWirePassesANewConnector whole, and is parted at one that is there already.
func TestFittedWirePassesANewConnector(t *testing.T) {
	for connector, want := range map[string]int{"": 0, ", fitted: yes": 1} {
		text := strings.Replace(parted, "front: {family: sealed 1.5, at: bulkhead", "front: {family: sealed 1.5, at: bulkhead"+connector, 1)
		text = strings.Replace(text, "fed by: main, returns to: battery negative, return wire: {length: 2.8 m}", "fed by: main, wire: {fitted: yes}, returns to: battery negative, return wire: {length: 2.8 m, fitted: yes}", 1)
		c := buildtest.Circuit(t, text)
		fed := 0
		for _, w := range c.Wires {
			if w.Owner().Name == "lamp" && !w.Role.Returns() {
				fed = len(w.Poles)
			}
		}
		if fed != want {
			t.Errorf("connector%s: the lamp's wire is parted %d times, want %d", connector, fed, want)
		}
	}
}
