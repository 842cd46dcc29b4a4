package sizing_test

import (
	"strings"
	"testing"

	"fusewright/harness/proof/reviewtest"
	"fusewright/harness/review/finding"
)

// A lamp behind a bulkhead at which the loom comes apart.
const parted = `fusewright: 1
title: parted
system: 12 V
practice: off-road
battery: {chemistry: AGM, capacity: 60 Ah, resistance: 10 mΩ, at: battery}
charging: {regulated: 14.2 V, output: {1200 rpm: 60 A, 3000 rpm: 80 A}, idle: 1200 rpm, cruise: 3000 rpm, hot derating: 10 %}
places:
  battery: {ambient: 45 °C}
  bulkhead: {ambient: 40 °C, wet: yes}
  rack: {ambient: 40 °C, wet: yes}
runs:
  - {from: battery, to: bulkhead, length: 900 mm, cover: corrugated conduit}
  - {from: bulkhead, to: rack, length: 900 mm, cover: corrugated conduit}
fuses:
  lamp: {at: battery, fed by: battery, wire: {length: 150 mm}}
switches:
  key: {type: battery switch 100 A, at: battery, fed by: lamp, wire: {length: 200 mm}, stays live: "opened on leaving"}
partings:
  plug: {family: auto, at: bulkhead}
loads:
  work lamp: {power: 100 W, behaves: resistor, at: rack, fed by: key, returns to: battery negative}
`

// TestPartingAuto: the family of a connector in the loom is the smallest whose contacts carry what
// passes, sealed where it is wet, and take wires thick enough: 100 W at 14.2 V take 9.9 A and
// 300 W 29.6 A at most, which with tolerances is past the 18 A of the smaller one.
func TestPartingAuto(t *testing.T) {
	for _, c := range []struct{ power, family string }{{"100 W", "sealed 1.5"}, {"200 W", "sealed 2.8"}, {"300 W", "sealed 6.3"}} {
		src := strings.Replace(parted, "100 W", c.power, 1)
		review := reviewtest.Of(t, src)
		d := review.Design
		if got := d.Partings[0].Plug.Name; got != c.family {
			t.Errorf("%s: %s, want %s", c.power, got, c.family)
		}
		for _, f := range review.Findings {
			t.Errorf("%s: %s: %s", c.power, f.Rule, f.What)
		}
	}
}

// TestPartingTakesThickWires: a connector that takes no wire thick enough for the length gives way to one that
// does. By hand, 24 m there and back (2 × 12 m) of 2.5 mm², the most that sealed 1.5 takes, are some 0.19 Ω and lose more
// than a tenth of 12 V at 10 A; the 4 % that are usual for long use, 0.48 V, want 10 mm² (1.8 mΩ/m). 700 W want 50 A:
// 16 mm² lose 1.4 V, 35 mm² 0.7 V. Of two side by side each takes half, and a housing must have four ways.
func TestPartingTakesThickWires(t *testing.T) {
	for _, c := range []struct{ power, length, wire, family string }{
		{"150 W", "6 m", "", "sealed 6.3"}, {"700 W", "6 m", "", "sealed 10"},
		{"300 W", "4 m", "wire: {parallel: 2}, return wire: {parallel: 2}, ", "sealed 2.8"},
	} {
		src := strings.NewReplacer("100 W", c.power, "900 mm", c.length, "1200 rpm: 60 A, 3000 rpm: 80 A", "1200 rpm: 150 A, 3000 rpm: 200 A", "returns to", c.wire+"returns to").Replace(parted)
		review := reviewtest.Of(t, src)
		d := review.Design
		if got := d.Partings[0].Plug.Name; got != c.family {
			t.Errorf("%s: %s, want %s", c.power, got, c.family)
		}
		for _, f := range review.Findings {
			if f.Severity > finding.Advice {
				t.Errorf("%s: %s: %s", c.power, f.Rule, f.What)
			}
		}
	}
}

// TestPartingOfWiresSideBySide: no housing has four ways for 10 mm²; one wire of twice that goes into a housing with
// two. Of four wires of 2.5 mm² a larger housing of another family takes all, where the one given has two ways.
func TestPartingOfWiresSideBySide(t *testing.T) {
	for _, c := range []struct{ power, size, family, change string }{
		{"500 W", "10 mm²", "auto", "lay one wire of at least 20 mm² in place of those side by side: sealed 10 takes it"},
		{"200 W", "2.5 mm²", "sealed 6.3", "use sealed 1.5, the nearest family that fits"},
	} {
		wire := "{size: " + c.size + ", parallel: 2}, "
		src := strings.NewReplacer("100 W", c.power, "family: auto", "family: "+c.family, "returns to", "wire: "+wire+"return wire: "+wire+"returns to").Replace(parted)
		review := reviewtest.Of(t, src)
		got := ""
		for _, f := range review.Findings {
			if f.Rule == "plug-ways" {
				got = f.Change
			}
		}
		if got != c.change {
			t.Errorf("%s: %q, want %q", c.size, got, c.change)
		}
	}
}

// TestPlugBehindParting: two connectors to be chosen on one wire do not hold each other to the largest
// family, be the wire's size given or open.
func TestPlugBehindParting(t *testing.T) {
	for name, wire := range map[string]string{"open": "", "given": "wire: {size: 1.5 mm²}, return wire: {size: 1.5 mm²}, "} {
		src := strings.NewReplacer("100 W", "20 W", "at: rack, fed", "at: rack, plug: auto, "+wire+"fed").Replace(parted)
		review := reviewtest.Of(t, src)
		d := review.Design
		if a, b := d.Partings[0].Plug.Name, d.Loads[0].Plug.Name; a != "sealed 1.5" || b != "sealed 1.5" {
			t.Errorf("%s: %s behind %s, want sealed 1.5 twice", name, b, a)
		}
		for _, f := range review.Findings {
			t.Errorf("%s: %s: %s", name, f.Rule, f.What)
		}
	}
}

// TestPartingTooSmall: of a family that is given and too small the finding names the nearest that fits.
func TestPartingTooSmall(t *testing.T) {
	src := strings.Replace(strings.Replace(parted, "100 W", "300 W", 1), "family: auto", "family: sealed 1.5", 1)
	review := reviewtest.Of(t, src)
	for _, f := range review.Findings {
		if f.Rule == "connector-overload" && f.Change == "use sealed 6.3, the nearest family that fits" {
			return
		}
	}
	for _, f := range review.Findings {
		t.Errorf("%s: %s (%s)", f.Rule, f.What, f.Change)
	}
}
