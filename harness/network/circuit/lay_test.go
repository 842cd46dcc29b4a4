package circuit_test

import (
	"math"
	"strings"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/design/problem"
	"fusewright/harness/network/circuit"
	"fusewright/library"
)

// frame is a design of places, runs and one wire between two of the places.
func oneWire(places, runs, from, to, wire string) string {
	return "fusewright: 1\ntitle: t\nsystem: 12 V\npractice: motorcycle\n" +
		"battery: {chemistry: AGM, capacity: 10 Ah, at: " + from + "}\n" +
		"places: {" + places + "}\nruns: [" + runs + "]\n" +
		"fuses:\n  main: {type: blade C, rating: 10 A, at: " + to + ", fed by: battery, wire: {" + wire + "}}\n"
}

// TestLength checks lengths against sums by hand.
func TestLength(t *testing.T) {
	const ring = "{name: ab, from: a, to: b, length: 300 mm}, {name: bc, from: b, to: c, length: 250 mm}, " +
		"{name: cd, from: c, to: d, length: 100 mm}, {name: da, from: d, to: a, length: 500 mm}"
	tests := []struct {
		name, runs, from, to, wire string
		wantM                      float64
		wantRoute                  string
	}{
		{"within one place, slack of both ends alone", ring, "a", "a", "slack: 60 mm", 0.120, ""},
		{"one run: 300 + 2·50", ring, "a", "b", "slack: 50 mm", 0.400, "ab"},
		{"the shorter of two ways: 300 + 250 against 500 + 100", ring, "a", "c", "slack: 50 mm", 0.650, "ab bc"},
		{"against the runs' own direction", ring, "c", "a", "slack: 50 mm", 0.650, "bc ab"},
		{"default slack of 50 mm per end", ring, "a", "d", "size: 1 mm²", 0.600, "da"},
		{"a length given replaces the way and keeps the runs", ring, "a", "b", "length: 2 m", 2, "ab"},
		{"of two equal ways, fewer runs", ring + ", {name: ac, from: a, to: c, length: 550 mm}", "a", "c",
			"slack: 0 mm", 0.550, "ac"},
		{"of two equal runs, the first", "{name: one, from: a, to: b, length: 1 m}, " +
			"{name: two, from: b, to: a, length: 1 m}", "b", "a", "slack: 0 mm", 1, "one"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			c := build(t, "t.yaml", oneWire("a: {}, b: {}, c: {}, d: {}", test.runs, test.from, test.to, test.wire))
			w := c.Wires[0]
			var route []string
			for _, b := range w.Route {
				route = append(route, b.Run.Name)
				if len(b.Wires) != 1 || b.Wires[0] != w {
					t.Errorf("bundle %s does not hold the wire", b.Run.Name)
				}
			}
			if math.Abs(w.LengthM-test.wantM) > 1e-12 || strings.Join(route, " ") != test.wantRoute {
				t.Errorf("got %.3f m by %v, want %.3f m by %s", w.LengthM, route, test.wantM, test.wantRoute)
			}
		})
	}
}

// TestWireResistance is worked by hand: 2.5 mm² has at most 7.6 mΩ/m (ISO
// 6722-1, from memory), 1.2 m of it 9.12 mΩ; a blue M6 ring of the library
// 0.25 mΩ.
func TestWireResistance(t *testing.T) {
	c := build(t, "t.yaml", oneWire("a: {}", "", "a", "a",
		"length: 1200 mm, size: 2.5 mm², insulation: ISO 6722 thin wall class B, "+
			"ends: {from: ring M6 blue, to: ring M6 blue}"))
	w := c.Wires[0]
	if math.Abs(w.ConductorOhm20-9.12e-3) > 1e-9 || math.Abs(w.EndsOhm-0.5e-3) > 1e-9 ||
		math.Abs(w.Branch.Ohm-9.62e-3) > 1e-9 {
		t.Errorf("got conductor %g, ends %g, together %g Ω", w.ConductorOhm20, w.EndsOhm, w.Branch.Ohm)
	}
}

func TestAmbient(t *testing.T) {
	const run = "{name: ab, from: a, to: b, length: 1 m}, {name: bc, from: b, to: c, length: 1 m"
	tests := []struct {
		name, places, runs, to string
		wantC                  float64
		wantAt                 string
		known                  bool
	}{
		{"hottest end", "a: {ambient: 40 °C}, b: {ambient: 60 °C}, c: {}", run + "}", "b", 60, "b", true},
		{"place passed through", "a: {ambient: 40 °C}, b: {ambient: 60 °C}, c: {ambient: 20 °C}", run + "}", "c",
			60, "b", true},
		{"run past something hot", "a: {ambient: 40 °C}, b: {}, c: {}",
			run + ", near: {what: exhaust, ambient: 90 °C}}", "c", 90, "bc", true},
		{"cooler than the default, all given", "a: {ambient: 5 °C}, b: {ambient: 10 °C}, c: {}", run + "}", "b",
			10, "b", true},
		{"a place left out counts with 30 °C", "a: {ambient: 5 °C}, b: {}, c: {}", run + "}", "b", 30, "b", false},
		{"a given 30 °C is given", "a: {}, b: {ambient: 30 °C}, c: {}", run + "}", "b", 30, "b", true},
		{"nothing given", "a: {}, b: {}, c: {}", run + "}", "c", 30, "a", false},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			w := build(t, "t.yaml", oneWire(test.places, test.runs, "a", test.to, "size: 1 mm²")).Wires[0]
			if w.AmbientC != test.wantC || w.AmbientAt != test.wantAt || w.AmbientKnown != test.known {
				t.Errorf("got %g °C at %q (given: %t), want %g °C at %q (given: %t)", w.AmbientC, w.AmbientAt,
					w.AmbientKnown, test.wantC, test.wantAt, test.known)
			}
		})
	}
}

// TestEnds checks which crimp parts end a wire, against the ranges of the
// library: blue rings take 1.65 to 2.63 mm².
func TestEnds(t *testing.T) {
	tests := []struct{ name, wire, wantFrom, wantTo string }{
		{"by the post and the fuse", "size: 2.5 mm²", "ring M6 blue", "fuse contact C"},
		{"by the size", "size: 1 mm²", "ring M6 red", "fuse contact C small"},
		{"larger than the fuse contact takes", "size: 16 mm²", "lug M6 16 mm²", "no crimp part"},
		{"given", "size: 2.5 mm², ends: {from: ring M8 blue}", "ring M8 blue", "fuse contact C"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			w := build(t, "t.yaml", oneWire("a: {}", "", "a", "a",
				"insulation: ISO 6722 thin wall class B, "+test.wire)).Wires[0]
			if crimpName(w.FromEnd) != test.wantFrom || crimpName(w.ToEnd) != test.wantTo {
				t.Errorf("got %s, %s; want %s, %s", crimpName(w.FromEnd), crimpName(w.ToEnd), test.wantFrom,
					test.wantTo)
			}
			if (w.ToEnd == nil) != (w.Branch.Assumed != "") {
				t.Errorf("assumed %q with end %s", w.Branch.Assumed, crimpName(w.ToEnd))
			}
		})
	}
}

// TestBuildRefuses gives Build designs that no reader would let through.
func TestBuildRefuses(t *testing.T) {
	lib := library.Default()
	wire := design.WireSpec{Type: lib.WireTypes[0], Size: lib.WireTypes[0].Sizes[0]}
	a, far := &design.Place{Name: "a"}, &design.Place{Name: "far"}
	at := problem.Pos{File: "t.yaml", Line: 7, Col: 3}
	fuse := func(name string, place *design.Place) *design.Fuse {
		return &design.Fuse{Common: design.Common{Name: name, At: place, Pos: at},
			Type: lib.FuseTypes[0], Rating: lib.FuseTypes[0].Ratings[0]}
	}
	feed := func(from design.Part, w design.WireSpec) []design.Feed {
		return []design.Feed{{From: design.Ref{Text: "x", Part: from, Pos: at}, Wire: w}}
	}
	tests := []struct {
		name string
		make func(d *design.Design)
		want []string
	}{
		{"places that no run joins", func(d *design.Design) {
			d.Fuses = []*design.Fuse{fuse("f", far)}
			d.Fuses[0].FedBy = feed(&design.BatteryPart{}, wire)
		}, []string{`t.yaml:7:3: the wire from "battery" (+) to "f" (in) has no length, since no run joins "a" and "far"`}},
		{"a part without a place", func(d *design.Design) {
			d.Fuses = []*design.Fuse{fuse("f", nil)}
			d.Fuses[0].FedBy = feed(&design.BatteryPart{}, wire)
		}, []string{"does not say where both stand"}},
		{"no size", func(d *design.Design) {
			d.Fuses = []*design.Fuse{fuse("f", a)}
			d.Fuses[0].FedBy = feed(&design.BatteryPart{}, design.WireSpec{})
		}, []string{"has no size"}},
		{"a stranger and nobody", func(d *design.Design) {
			d.Fuses = []*design.Fuse{fuse("f", a), fuse("g", a)}
			d.Fuses[0].FedBy = feed(fuse("other", a), wire)
			d.Fuses[1].FedBy = feed(nil, wire)
		}, []string{`fuse "f" is connected to "x"`, `fuse "g" is connected to "x"`}},
		{"two fuses that feed each other", func(d *design.Design) {
			d.Fuses = []*design.Fuse{fuse("f", a), fuse("g", a)}
			d.Fuses[0].FedBy = feed(d.Fuses[1], wire)
			d.Fuses[1].FedBy = feed(d.Fuses[0], wire)
		}, []string{`fuse "f" is in a circuit that feeds itself`, `fuse "g" is in a circuit`}},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			d := &design.Design{Library: lib, Places: []*design.Place{a, far}}
			d.Battery.At = a
			test.make(d)
			c, err := circuit.Build(d)
			list, ok := err.(problem.List)
			if c != nil || !ok || len(list) != len(test.want) {
				t.Fatalf("got %v, want %d problems", err, len(test.want))
			}
			for i, want := range test.want {
				if !strings.Contains(list[i].String(), want) {
					t.Errorf("problem %d is %q, want %q in it", i, list[i], want)
				}
			}
		})
	}
}
