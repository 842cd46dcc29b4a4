package sizing

import (
	"fmt"
	"testing"

	"fusewright/harness/workshop/cutting"
	"fusewright/harness/workshop/purchase"
)

// TestStockLengthsDecideNothing: a wire that 0.75 mm² does takes the next size that other
// wires have anyway, and none above it, however the lengths bought come out: 1.5 mm² is cut
// 1.70 m (with 10 % waste 1.87 m, bought 2 m) without 0.645 m of a third wire and 2.345 m
// (2.58 m, 3 m) with it; 2.5 mm² 1.10 m (2 m) and 1.745 m (1.92 m, 2 m).
func TestStockLengthsDecideNothing(t *testing.T) {
	for _, thinM := range []float64{1.05, 1.64} {
		for given, want := range map[string]string{"1 mm²": "1 mm²", "1.5 mm²": "0.75 mm²"} {
			p, err := Complete(read(t, bench(fmt.Sprintf(`
places: {tray: {ambient: 30 °C}}
fuses:
  a: {type: blade C, rating: 5 A, at: tray, fed by: battery, wire: {length: 200 mm, size: 2.5 mm², colour: BU}, stays live: "test"}
  b: {type: blade C, rating: 5 A, at: tray, fed by: battery, wire: {length: 200 mm, size: 2.5 mm², colour: BU}, stays live: "test"}
  c: {type: blade C, rating: 5 A, at: tray, fed by: battery, wire: {length: 200 mm, size: 2.5 mm², colour: BU}, stays live: "test"}
loads:
  x: {power: 20 W, behaves: resistor, at: tray, fed by: a, wire: {length: %g m, size: %s, colour: RD}, returns to: battery negative, return wire: {length: 1 m, size: 2.5 mm²}}
  y: {power: 20 W, behaves: resistor, at: tray, fed by: b, wire: {length: 1.05 m, size: 2.5 mm², colour: RD}, returns to: battery negative, return wire: {length: 1 m, size: 2.5 mm²}}
  z: {power: 20 W, behaves: resistor, at: tray, fed by: c, wire: {length: 0.6 m, size: auto, colour: RD}, returns to: battery negative, return wire: {length: 1 m, size: 2.5 mm²}}
`, thinM, given))))
			if err != nil {
				t.Fatal(err)
			}
			if z := p.Choices[0]; z.Value != want || !p.Proven {
				t.Errorf("%s of %g m bought: %+v, proven %t", given, thinM, z, p.Proven)
			}
		}
	}
}

// TestLedger: wires that come and go leave the ledger as it was, and what is cut and
// left over is what stands on the bill of materials.
func TestLedger(t *testing.T) {
	p, err := Complete(opened(t, 40))
	if err != nil {
		t.Fatal(err)
	}
	w := p.s.look(p.s.best.verdict)
	l := w.ledgerOf(p.s.best.at)
	before := l.wiresG()
	for i, x := range p.s.slots {
		if x.kind == WireSize {
			for z := range x.sizes {
				w.swap(l, i, x.at, z)
				w.swap(l, i, z, x.at)
			}
		}
	}
	if d := l.wiresG() - before; d > 1e-6 || d < -1e-6 {
		t.Errorf("the ledger is off by %g g", d)
	}
	boughtG := 0.0
	for _, line := range purchase.List(w.v.c).Lines {
		if line.Group == purchase.Wire {
			boughtG += gramsOf(t, w, line)
		}
	}
	if got := cutG(w) + p.LeftG; got < boughtG-1e-6 || got > boughtG+1e-6 {
		t.Errorf("%.3f g cut and left over, %.3f g on the bill", got, boughtG)
	}
}

// gramsOf is the copper of a line of the bill.
func gramsOf(t *testing.T, w *view, line *purchase.Line) float64 {
	for _, x := range w.v.c.Wires {
		if x.Number == line.For[0] {
			return copperGPerMm2M * x.Spec.Size.AreaMm2 * line.Buy
		}
	}
	t.Fatalf("no wire for %s", line.Item)
	return 0
}

// cutG is the copper of all wires as cut.
func cutG(w *view) float64 {
	g := 0.0
	for _, x := range w.v.c.Wires {
		g += copperGPerMm2M * x.Spec.Size.AreaMm2 * cutting.Break(x).CutM
	}
	return g
}
