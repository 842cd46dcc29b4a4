package diagnosis

import (
	"strings"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/workshop/bench"
	"fusewright/library"
)

// slow is a resistor behind a dropping resistor, and a lamp on another fuse that returns by a frame stud.
const slow = `
fusewright: 1
title: slow
system: 12 V
practice: off-road
battery: {chemistry: AGM, capacity: 60 Ah, resistance: 6 mΩ}
wire: {insulation: ISO 6722 thin wall class B, size: 1.5 mm²}
grounds:
  stud: {kind: frame stud, frame resistance: 2 mΩ}
fuses:
  f: {type: blade C, rating: 10 A, fed by: battery, wire: {length: 150 mm}}
  g: {type: blade C, rating: 10 A, fed by: battery, wire: {length: 150 mm}}
switches:
  speed: {type: rocker 16 A, fed by: f, wire: {length: 500 mm}, positions: [off, low, high]}
resistors:
  dropper: {resistance: 0.6 Ω, rating: 30 W, fed by: speed low, wire: {length: 500 mm}}
loads:
  blower: {power: 90 W, behaves: resistor, fed by: [speed high, dropper], wire: {length: 500 mm}, return wire: {length: 500 mm}, returns to: battery negative}
  lamp: {power: 60 W, behaves: filament lamp, fed by: g, wire: {length: 1 m}, returns to: stud, return wire: {length: 500 mm}, own switch: yes}
  horn: {power: 60 W, behaves: resistor, fed by: g, wire: {length: 1 m}, returns to: stud, return wire: {length: 500 mm}, own switch: yes}
situations:
  low: {key: on, on: [blower, lamp, horn], switches: {speed: low}}
`

func slowly(t *testing.T, src string, texts map[string]string) *Diagnosis {
	t.Helper()
	design, err := design.Read("slow.yaml", []byte(src), library.Default())
	if err != nil {
		t.Fatal(err)
	}
	c, err := circuit.Build(design)
	if err != nil {
		t.Fatal(err)
	}
	test := bench.Make(c)
	var typedIn []string
	for _, s := range test.Sections {
		for _, k := range s.Checks() {
			if text, ok := texts[k.Ref]; ok && s.Kind == bench.InUse {
				typedIn = append(typedIn, k.Number+"="+text)
				delete(texts, k.Ref)
			}
		}
	}
	if len(texts) > 0 {
		t.Fatalf("nowhere read: %v", texts)
	}
	d, err := Of(c, test, typed(t, "", typedIn...))
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// 9.5 V at 1.6 Ω are 5.9 A, and 3.2 V over 0.6 Ω 5.3 A, where 4.6 A are read: no joint is named, none to be undone, and no negative
// loss is reckoned. One lamp low is explained.
func TestNothingExplains(t *testing.T) {
	d := slowly(t, slow, map[string]string{"G1": "12.7V", "W1": "4.6A", "E1": "9.5V"})
	if d.Failed == 0 || d.Unexplained == "" || strings.Contains(d.Advice, "Undo") {
		t.Errorf("%d failed, %q, %q, %+v", d.Failed, d.Unexplained, d.Advice, d.Explanations)
	}
	for _, e := range d.Explanations {
		if len(e.Sums) > 0 || strings.Contains(e.Text, "stud") {
			t.Errorf("%+v", e)
		}
	}
	if d = slowly(t, slow, map[string]string{"G1": "12.7V", "E2": "11.2V", "E3": "12.3V"}); d.Unexplained != "" || len(d.Explanations) == 0 || strings.Contains(d.Advice, "earth strap") {
		t.Errorf("%q, %+v, %q", d.Unexplained, d.Explanations, d.Advice)
	}
}

// What returns by a frame stud and reads low does so by the stud, the frame or the battery's earth strap alike;
// what returns by another stud and reads right clears the strap.
func TestStudOrEarthStrap(t *testing.T) {
	other := strings.Replace(slow, "frame resistance: 2 mΩ}", "frame resistance: 2 mΩ}\n  post: {kind: frame stud, frame resistance: 2 mΩ}", 1)
	other = strings.Replace(other, "returns to: battery negative", "returns to: post", 1)
	for name, src := range map[string]string{"the only stud": slow, "two": other} {
		d := slowly(t, src, map[string]string{"G1": "12.7V", "E2": "11.2V", "E3": "11.2V", "E1": "9.1V"})
		if e := d.Explanations[0]; !strings.Contains(e.Text, "stud loose") {
			t.Fatalf("%s: %+v", name, e)
		}
		strap := name == "the only stud"
		if strings.Contains(d.Explanations[0].Text, "earth strap") != strap || strings.Contains(d.Advice, "bolt of the stud itself to bare frame") != strap {
			t.Errorf("%s: %s; %s", name, d.Explanations[0].Text, d.Advice)
		}
	}
}
