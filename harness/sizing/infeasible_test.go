package sizing

import (
	"fmt"
	"maps"
	"regexp"
	"strings"
	"testing"
)

// bench is one load behind one fuse on an invented machine; the cases give
// places, wires and parts.
func bench(parts string) string {
	return `fusewright: 1
title: "bench"
system: 12 V
practice: off-road
battery: {chemistry: AGM, capacity: 60 Ah, rate: 20 h, resistance: 14 mΩ, at: tray}
charging: {regulated: 14.2 V, output: {1300 rpm: 60 A, 4000 rpm: 80 A}, idle: 1300 rpm, cruise: 4000 rpm}
wire: {insulation: ISO 6722 thin wall class B}
` + parts
}

// TestSaysWhatConflicts: what no choice meets is said with the constraint that
// stands against mending it, or with a way out that was tried, or both.
func TestSaysWhatConflicts(t *testing.T) {
	for _, c := range []struct {
		name, parts string
		rule        string // what is left
		conflict    string // "mend: rule", or nothing
		wayOut      string
	}{
		{"drop against the terminals", `
places: {tray: {ambient: 40 °C}, roof: {ambient: 40 °C}}
runs: [{from: tray, to: roof, length: 9 m}]
fuses: {f: {type: blade C, at: tray, fed by: battery, wire: {length: 100 mm}, stays live: "test"}}
loads: {bar: {power: 230 W, behaves: resistor, at: roof, fed by: f, wire: {ends: {to: receptacle 6.3 yellow}}, returns to: battery negative, return wire: {ends: {from: receptacle 6.3 yellow}}}}
`, "voltage-drop", "thicker wires: no-terminal-fits", "shorten the runs"},
		{"heat: the place is as hot as the insulation", `
places: {tray: {ambient: 40 °C}, roof: {ambient: 98 °C}}
runs: [{from: tray, to: roof, length: 1 m}]
fuses: {f: {type: blade C, at: tray, fed by: battery, wire: {length: 100 mm}, stays live: "test"}}
loads: {bar: {power: 60 W, behaves: resistor, at: roof, fed by: f, returns to: battery negative}}
`, "insulation-class", "", "insulation ISO 6722 thin wall class C"},
		{"terminal fit: the part's tab is too small", `
places: {tray: {ambient: 40 °C}, roof: {ambient: 40 °C}}
runs: [{from: tray, to: roof, length: 1 m}]
fuses: {f: {type: blade C, at: tray, fed by: battery, wire: {length: 100 mm}, stays live: "test"}}
loads: {bar: {power: 130 W, behaves: resistor, at: roof, fed by: f, wire: {ends: {to: receptacle 2.8}}, returns to: battery negative}}
`, "terminal-overload", "", ""},
		{"selectivity: the main fuse is given", `
places: {tray: {ambient: 40 °C}, roof: {ambient: 40 °C}}
runs: [{from: tray, to: roof, length: 1 m}]
fuses:
  main: {type: blade C, rating: 10 A, at: tray, fed by: battery, wire: {length: 100 mm}, stays live: "test"}
  f: {type: blade C, at: roof, fed by: main, wire: {length: 900 mm}, stays live: "test"}
  g: {type: blade C, at: roof, fed by: main, wire: {length: 900 mm}, stays live: "test"}
loads:
  bar: {power: 70 W, behaves: resistor, at: roof, fed by: f, returns to: battery negative}
  lamp: {power: 20 W, behaves: resistor, at: roof, fed by: g, returns to: battery negative}
`, "fuse-grading", "smaller fuses: fuse-under-load", "other fuses than those given: main from blade C 10 A"},
		{"block: the given one bears too little", `
places: {tray: {ambient: 40 °C}, roof: {ambient: 40 °C}}
runs: [{from: tray, to: roof, length: 1 m}]
fuses: {main: {type: strip SF30, at: tray, fed by: battery, wire: {length: 100 mm}, stays live: "test"}}
blocks: {box: {way limit: 10 A, total limit: 20 A, at: roof, fed by: main, stays live: "test", ways: {1: auto, 2: auto}}}
loads:
  bar: {power: 170 W, behaves: resistor, at: roof, fed by: box 1, returns to: battery negative}
  lamp: {power: 120 W, behaves: resistor, at: roof, fed by: box 2, returns to: battery negative}
`, "block-way-overload", "", "other relays, blocks or plugs than those given: box"},
		{"plug: the given family bears too little", `
places: {tray: {ambient: 40 °C}, roof: {ambient: 40 °C, wet: yes}}
runs: [{from: tray, to: roof, length: 1 m}]
fuses: {f: {type: blade C, at: tray, fed by: battery, wire: {length: 100 mm}, stays live: "test"}}
loads: {bar: {power: 300 W, behaves: resistor, at: roof, plug: sealed 1.5, fed by: f, returns to: battery negative}}
`, "plug-overload", "", "other relays, blocks or plugs than those given: bar from sealed 1.5 to sealed 2.8"},
	} {
		t.Run(c.name, func(t *testing.T) {
			p, err := Complete(read(t, bench(c.parts)))
			if err != nil {
				t.Fatal(err)
			}
			before := everything(p.Design)
			if err := p.Explain(); err != nil {
				t.Fatal(err)
			}
			var said []string
			left, against, out := false, c.conflict == "", c.wayOut == ""
			for _, f := range p.Remaining {
				left = left || f.Rule == c.rule
				said = append(said, f.Rule+": "+f.What)
			}
			for _, x := range p.Conflicts {
				text := x.Mend + ": " + x.Against.Rule
				against = against || x.Of.Rule == c.rule && text == c.conflict
				said = append(said, "  "+x.Of.Rule+": "+text+": "+x.Against.What)
			}
			for _, w := range p.WaysOut {
				out = out || strings.HasPrefix(w.What, c.wayOut)
				said = append(said, fmt.Sprintf("  way out: %s, %d left", w.What, w.Left))
			}
			if !left || !against || !out {
				t.Errorf("want %s, %q and %q\n%s", c.rule, c.conflict, c.wayOut, strings.Join(said, "\n"))
			}
			if !maps.Equal(everything(p.Design), before) {
				t.Error("explaining changed the choices")
			}
			t.Log(strings.Join(said, "\n"))
		})
	}
}

// TestLacking: what no relay or block of the library bears is said as that.
func TestLacking(t *testing.T) {
	for watts, want := range map[int]string{100: "", 2400: `no block in the library is rated for the 134 A that box carries.*`} {
		p, err := Complete(read(t, bench(fmt.Sprintf(`
places: {tray: {ambient: 40 °C}, roof: {ambient: 40 °C}}
runs: [{from: tray, to: roof, length: 20 m}]
fuses: {main: {type: strip SF51, at: tray, fed by: battery, wire: {length: 100 mm}, stays live: "test"}}
blocks: {box: {at: tray, fed by: main, wire: {length: 100 mm}, stays live: "test", ways: {1: auto}}}
loads: {bar: {power: %d W, behaves: resistor, critical: yes, at: roof, fed by: box 1, returns to: battery negative}}
`, watts))))
		if err != nil {
			t.Fatal(err)
		}
		if err := p.Explain(); err != nil {
			t.Fatal(err)
		}
		if got := strings.Join(p.Lacking, "; "); !regexp.MustCompile("^" + want + "$").MatchString(got) {
			t.Errorf("%d W: %q, want %q; remaining %d", watts, got, want, len(p.Remaining))
		}
	}
}

// TestNoCoilForTheSystem: a relay with no coil for the system's voltage is said as that,
// with the nearest there is.
func TestNoCoilForTheSystem(t *testing.T) {
	src := strings.Replace(bench(`
places: {tray: {ambient: 40 °C}}
fuses: {f: {type: blade C, at: tray, fed by: battery, wire: {length: 100 mm}, stays live: "test"}}
relays: {r: {at: tray, fed by: f, coil: {fed by: f, returns to: battery negative, suppressed by: diode}}}
loads: {l: {current: 4 A, behaves: resistor, at: tray, fed by: r, returns to: battery negative}}
`), "system: 12 V", "system: 6 V", 1)
	p, err := Complete(read(t, src))
	if err != nil {
		t.Fatal(err)
	}
	if err := p.Explain(); err != nil {
		t.Fatal(err)
	}
	want := "no relay with a coil of 6 V in the library: none is chosen for r; the nearest is 12 V"
	if got := strings.Join(p.Lacking, "; "); got != want {
		t.Errorf("%q, want %q; remaining %d", got, want, len(p.Remaining))
	}
	for _, c := range p.Choices {
		if c.Kind == RelayForm {
			t.Errorf("%s is chosen for %s", c.Value, c.Part)
		}
	}
}

// TestSaysTheClass: beside an exhaust of 130 °C the way out is the insulation that stands
// it, past those of a better class that do not.
func TestSaysTheClass(t *testing.T) {
	p, err := Complete(read(t, exhaust+"wire: {insulation: ISO 6722 thin wall class B}\n"))
	if err != nil {
		t.Fatal(err)
	}
	if err := p.Explain(); err != nil {
		t.Fatal(err)
	}
	if len(p.WaysOut) == 0 || !strings.Contains(p.WaysOut[0].What, "class D") || p.WaysOut[0].Left != 0 {
		t.Errorf("%d findings left; ways out %+v", len(p.Remaining), p.WaysOut)
	}
}

// exhaust is a load whose wires pass one of 130 °C.
var exhaust = strings.Replace(single("motorcycle", "4 A", "resistor", 0.6), "length: 0.6 m", "length: 600 mm, near: {what: exhaust, ambient: 130 °C}, cover: braided glass sleeve", 1)
