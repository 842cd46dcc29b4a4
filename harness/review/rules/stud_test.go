package rules_test

import (
	"slices"
	"strings"
	"testing"
)

// studDesign is an isolator at the stud of a machine of 70 A cold and 52.5 A hot, and what is fed there beside it. A wire of 1 mm² at
// 50 °C carries 16.5 A, one of 6 mm² 52.2 A and one of 10 mm² 76 A.
const studDesign = `fusewright: 1
title: "fed by the stud"
system: 12 V
practice: off-road
battery: {chemistry: AGM, capacity: 75 Ah, rate: 20 h, resistance: 5 mΩ, at: engine, fed by: start end, wire: {size: 25 mm², length: 150 mm}}
charging: {kind: alternator, regulated: 14.4 V, output: {850 rpm: 30 A, 1400 rpm: 50 A, 2200 rpm: 65 A, 6000 rpm: 70 A}, idle: 900 rpm, cruise: 2200 rpm, at: engine}
places:
  engine: {ambient: 50 °C}
  rear: {ambient: 35 °C}
runs:
  - {from: engine, to: rear, length: 3 m, cover: corrugated conduit}
wire: {insulation: ISO 6722 thin wall class B, size: 2.5 mm²}
grounds:
  rgnd: {kind: frame stud, at: rear, limit: 100 A, frame resistance: 1 mΩ}
  egnd: {kind: frame stud, at: engine, limit: 300 A, frame resistance: 1 mΩ}
batteries:
  house: {chemistry: AGM, capacity: 200 Ah, resistance: 3 mΩ, at: rear, fed by: house end, wire: {size: 25 mm², length: 150 mm}, returns to: rgnd, return wire: {size: 25 mm², length: 300 mm}}
diodes:
  isolator: {type: diode isolator 70 A, outputs: 2, at: engine, fed by: charging, wire: {size: 25 mm², length: 600 mm}}
fuses:
  start end: {type: marine strip, rating: 100 A, at: engine, fed by: isolator 1, wire: {size: 25 mm², length: 600 mm}}
  house end: {type: marine strip, rating: 100 A, at: rear, fed by: isolator 2, wire: {size: 25 mm²}}
FUSE
SWITCH
loads:
  lamp: {power: 60 W, at: engine, fed by: FROM, wire: {size: WIRE, length: 1 m}, returns to: egnd, return wire: {size: BACK, length: 1 m}}
`

// What the charging system feeds at its own stud is held against its fuse, and without one that opens against all that the machine gives cold;
// the isolator and its cable are not.
func TestFedByStud(t *testing.T) {
	judged := []string{"fuse-over-wire", "fuse-too-far", "part-below-fuse", "return-below-fuse", "unfused-conductor", "wire-before-fuse"}
	const blade = "  lf: {type: blade C, rating: 15 A, at: engine, fed by: charging, wire: {size: 1 mm², length: 100 mm}}"
	for _, c := range []struct {
		name, fuse, sw, from, wire, back string
		want                             []string
	}{
		{"no fuse", "", "", "charging", "1 mm²", "10 mm²", []string{"unfused-conductor danger lamp"}},
		{"carries the hot output", "", "", "charging", "6 mm²", "10 mm²", []string{"unfused-conductor danger lamp"}},
		{"carries the cold output", "", "", "charging", "10 mm²", "10 mm²", nil},
		{"only its return is thin", "", "", "charging", "10 mm²", "1 mm²", []string{"unfused-conductor danger lamp"}},
		{"a fuse that suits", blade, "", "lf", "1 mm²", "1 mm²", nil},
		{"a fuse too large", strings.NewReplacer("15 A", "40 A", "1 mm²", "10 mm²").Replace(blade), "", "lf", "1 mm²", "10 mm²", []string{"fuse-over-wire danger lamp"}},
		{"a fuse that never opens, wire for the machine", strings.NewReplacer("blade C", "marine strip", "15 A", "100 A", "1 mm²", "10 mm²").Replace(blade), "", "lf", "10 mm²", "10 mm²", nil},
		{"a thin wire before the fuse", strings.Replace(blade, "15 A", "40 A", 1), "", "lf", "10 mm²", "10 mm²", []string{"wire-before-fuse danger lf"}},
		{"a fuse far from the stud", strings.Replace(blade, "100 mm", "500 mm", 1), "", "lf", "1 mm²", "1 mm²", []string{"fuse-too-far fault lf"}},
		{"a switch", "", "switches:\n  sw: {rating: 10 A, at: engine, fed by: charging, wire: {size: 10 mm², length: 500 mm}}", "sw", "10 mm²", "10 mm²", []string{"part-below-fuse fault sw"}},
		{"a switch that bears it", "", "switches:\n  sw: {rating: 40 A, at: engine, fed by: charging, wire: {size: 10 mm², length: 500 mm}}", "sw", "10 mm²", "10 mm²", nil},
	} {
		var got []string
		for _, f := range assess(t, "stud.yaml", []byte(strings.NewReplacer("FUSE", c.fuse, "SWITCH", c.sw, "FROM", c.from, "WIRE", c.wire, "BACK", c.back).Replace(studDesign))) {
			if slices.Contains(judged, f.Rule) {
				got = append(got, f.Rule+" "+f.Severity.String()+" "+f.Part)
			}
		}
		slices.Sort(got)
		if !slices.Equal(got, c.want) {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}

// An output of an isolator that leads nowhere is said.
func TestIsolatorOutputUnused(t *testing.T) {
	for outputs, want := range map[string]string{"2": "", "3": "output 3 of isolator feeds nothing"} {
		got := ""
		text := strings.NewReplacer("FUSE", "", "SWITCH", "", "FROM", "charging", "WIRE", "10 mm²", "BACK", "10 mm²", "outputs: 2", "outputs: "+outputs).Replace(studDesign)
		for _, f := range assess(t, "stud.yaml", []byte(text)) {
			if f.Rule == "part-unused" {
				got += f.What
			}
		}
		if got != want {
			t.Errorf("%s outputs: %q, want %q", outputs, got, want)
		}
	}
}
