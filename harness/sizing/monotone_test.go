package sizing

import (
	"fmt"
	"strings"
	"testing"

	"fusewright/harness/design"
)

// single is a load behind its fuse at the end of a run.
func single(practice, draw, behaves string, lengthM float64) string {
	return fmt.Sprintf(`fusewright: 1
title: single
system: 12 V
practice: %s
battery: {chemistry: AGM, capacity: 60 Ah, rate: 20 h, resistance: 4 mΩ, at: tray}
charging: {regulated: 14.2 V, output: {900 rpm: 200 A, 4000 rpm: 200 A}, idle: 1000 rpm, cruise: 3000 rpm}
places: {tray: {ambient: 35 °C}, far: {ambient: 35 °C}}
runs:
  - {from: tray, to: far, length: %g m}
fuses:
  f: {at: tray, fed by: battery, stays live: "test", wire: {length: 120 mm}}
loads:
  l: {current: %s, behaves: %s, at: far, own switch: yes, stays live: "test", fed by: f, returns to: battery negative}
`, practice, lengthM, draw, behaves)
}

// chosen is what sizing makes of a design: the area of each wire and the rating of
// its fuse.
func chosen(t *testing.T, src string) (mm2 []float64, fuseA float64) {
	t.Helper()
	d := read(t, src)
	if _, err := Complete(d); err != nil {
		t.Fatal(err)
	}
	for _, w := range []design.WireSpec{d.Fuses[0].FedBy[0].Wire, d.Loads[0].FedBy[0].Wire, d.Loads[0].Returns[0].Wire} {
		mm2 = append(mm2, w.Size.AreaMm2)
	}
	return mm2, d.Fuses[0].Rating.RatingA
}

// TestLargerLoadNeverThinner: more current never gives a thinner wire or a smaller
// fuse, the stub is never thinner than the feed, and feed and return are alike.
func TestLargerLoadNeverThinner(t *testing.T) {
	for _, practice := range []string{"motorcycle", "off-road", "marine"} {
		for _, behaves := range []string{"resistor", "constant power", "motor"} {
			lastMm2, lastA := 0.0, 0.0
			for _, amps := range []float64{0.2, 1, 2, 3.5, 5, 8, 12, 18, 24, 27, 40, 60, 100} {
				draw := fmt.Sprintf("%g A", amps)
				mm2, fuseA := chosen(t, single(practice, draw, behaves, 2.5))
				if mm2[0] < mm2[1] || mm2[1] != mm2[2] {
					t.Errorf("%s, %s, %s: stub %g, feed %g, return %g mm²", practice, behaves, draw, mm2[0], mm2[1], mm2[2])
				}
				if mm2[1] < lastMm2 || fuseA < lastA {
					t.Errorf("%s, %s, %s: %g mm² and %g A, after %g mm² and %g A", practice, behaves, draw, mm2[1], fuseA, lastMm2, lastA)
				}
				lastMm2, lastA = mm2[1], fuseA
			}
		}
	}
}

// TestLongerNeverThinner: a longer way never has a thinner wire, also where the thickest that the holder of its fuse takes
// leaves too much lost.
func TestLongerNeverThinner(t *testing.T) {
	for _, c := range []struct{ practice, draw, behaves string }{
		{"off-road", "92 A", "constant power, critical: yes, drop aim: 2 %"}, {"marine", "20 A", "motor, critical: yes"},
	} {
		last := 0.0
		for _, lengthM := range []float64{0.5, 1, 2, 3, 4, 5, 6, 7, 8, 10, 12, 16, 24} {
			mm2, _ := chosen(t, single(c.practice, c.draw, c.behaves, lengthM))
			if mm2[1] < last {
				t.Errorf("%s, %s, %s: %g mm² at %g m, after %g mm²", c.practice, c.draw, c.behaves, mm2[1], lengthM, last)
			}
			last = mm2[1]
		}
	}
}

// TestIdleNeighbour: a wire beside it that carries nothing, or a longer name, changes
// no size.
func TestIdleNeighbour(t *testing.T) {
	src := single("off-road", "18 A", "resistor", 3)
	want, wantA := chosen(t, src)
	idle := strings.Replace(src, "loads:\n", "  g: {at: tray, type: blade C, rating: 3 A, fed by: battery, stays live: \"test\", wire: {length: 120 mm, size: 1 mm²}}\nloads:\n", 1) +
		"  spare: {current: 1 mA, behaves: resistor, at: far, own switch: yes, stays live: \"test\", fed by: g, returns to: battery negative, wire: {size: 1 mm²}, return wire: {size: 1 mm²}}\n"
	name := strings.ReplaceAll(src, "f: ", "fuse of the lamp on the far side: ")
	name = strings.ReplaceAll(name, "fed by: f,", "fed by: fuse of the lamp on the far side,")
	for what, src := range map[string]string{"an idle wire": idle, "a longer name": name} {
		got, gotA := chosen(t, src)
		if fmt.Sprint(got, gotA) != fmt.Sprint(want, wantA) {
			t.Errorf("%s: %v mm² and %g A, before %v mm² and %g A", what, got, gotA, want, wantA)
		}
	}
}

// TestShopSizes: sizing offers what a shop has, and all sizes when asked to.
func TestShopSizes(t *testing.T) {
	src := single("off-road", "5 A", "resistor", 3)
	for want, src := range map[bool]string{true: src, false: strings.Replace(src, "fuses:\n", "wire: {sizes: all}\nfuses:\n", 1)} {
		shop := true
		for _, s := range collect(read(t, src)) {
			for _, z := range s.sizes {
				shop = shop && z.Shop
			}
		}
		if shop != want {
			t.Errorf("sizes of a shop alone: %t, want %t", shop, want)
		}
	}
}

// TestIdleCircuits: four circuits of 1 mm² that carry nothing, on wire that is bought for
// them, change no size of two that do.
func TestIdleCircuits(t *testing.T) {
	const idle = 4
	fuses, loads := "", ""
	for i := range idle {
		fuses += fmt.Sprintf("  i%d: {type: blade C, rating: 1 A, at: tray, fed by: battery, wire: {size: 1 mm², length: 120 mm}, stays live: \"test\"}\n", i)
		loads += fmt.Sprintf("  n%d: {current: 1 mA, behaves: resistor, at: far, fed by: i%d, wire: {size: 1 mm²}, returns to: battery negative, return wire: {size: 1 mm²}, own switch: yes, stays live: \"test\"}\n", i, i)
	}
	src := strings.Replace(single("off-road", "12.45 A", "motor, on for: 5 s, every: 1 min, figure: highest", 0.8), "loads:\n",
		"  g: {at: tray, fed by: battery, stays live: \"test\", wire: {length: 120 mm}}\nloads:\n", 1) +
		"  m: {current: 6.36 A, behaves: motor, inrush: {peak: 3, time: 200 ms}, at: far, own switch: yes, stays live: \"test\", fed by: g, returns to: battery negative}\n"
	want := sizesOf(t, src)
	if got := sizesOf(t, strings.Replace(src, "loads:\n", fuses+"loads:\n", 1)+loads); got != want {
		t.Errorf("with %d idle circuits %s, without %s", idle, got, want)
	}
}

// sizesOf are the choices of a design in words.
func sizesOf(t *testing.T, src string) string {
	t.Helper()
	p, err := Complete(read(t, src))
	if err != nil {
		t.Fatal(err)
	}
	var list []string
	for _, c := range p.Choices {
		list = append(list, c.Part+" "+c.Value)
	}
	return strings.Join(list, "; ")
}
