package circuit_test

import (
	"fmt"
	"strings"
	"testing"

	"fusewright/harness/proof/buildtest"
)

// TestJoints: the wires of a splice end in one crimp part for all their copper,
// two of them in a butt splice for the thicker; a tap counts the factory wire
// twice, as thick as ours. Sums by hand: 3 x 0.5 = 1.5, 0.5 + 0.5 + 0.75 = 1.75
// (above the 1.65 of the smallest), tap 0.5 + 2 x 0.5 = 1.5, 3 x 10 = 30; 25 + 25 + 35 = 85, above the 76.28 of the largest.
func TestJoints(t *testing.T) {
	for _, c := range []struct {
		name, wires, part, want string
	}{
		{"three thin", "{size: 0.5 mm²}/{size: 0.5 mm²}/{size: 0.5 mm²}", "j", "open-barrel splice 1.5 mm²"},
		{"three above the barrel", "{size: 0.5 mm²}/{size: 0.5 mm²}/{size: 0.75 mm²}", "j", "open-barrel splice 2.5 mm²"},
		{"two", "{size: 0.5 mm²}/{size: 2.5 mm²}", "j", "butt splice blue"},
		{"the factory wire", "{size: 0.5 mm²}/{size: 0.5 mm²}", "key feed", "open-barrel splice 1.5 mm²"},
		{"thick ones", "{size: 10 mm²}/{size: 10 mm²}/{size: 10 mm²}", "j", "parallel splice 35 mm²"},
		{"more than any takes", "{size: 25 mm²}/{size: 25 mm²}/{size: 35 mm²}", "j", "none"},
		{"chosen by the design", "{size: 0.5 mm²}/{size: 0.5 mm²}/{size: 0.5 mm², ends: {from: butt splice red}}", "j", "own"},
	} {
		t.Run(c.name, func(t *testing.T) {
			net := buildtest.Circuit(t, jointed(c.wires))
			at := named(t, net, c.part).Terminals[0]
			got := "own"
			if at.Jointed {
				got = "none"
				if at.Joint != nil {
					got = at.Joint.Name
				}
			}
			if got != c.want {
				t.Errorf("%s, want %s", got, c.want)
			}
			for _, w := range at.Wires {
				if end := w.Crimp(w.From == at); at.Jointed && end != at.Joint {
					t.Errorf("%s ends in %v", w.Number, end)
				}
			}
		})
	}
}

// TestJointAtLead: the two wires of a pump's feed and its lead go into one part: 2 × 2.5 mm² and
// the lead, 1.5 mm² as given (6.5) or as thick as ours (7.5). A wire alone keeps its butt splice.
func TestJointAtLead(t *testing.T) {
	for lead, want := range map[string]string{"lead: {size: 1.5 mm²}, ": "open-barrel splice 6 mm²", "": "open-barrel splice 10 mm²"} {
		net := buildtest.Circuit(t, twoFeeds(lead))
		pump := named(t, net, "pump")
		plus, minus := pump.Terminal("+"), pump.Terminal("-")
		if !plus.Jointed || plus.Joint.Name != want || minus.Jointed {
			t.Errorf("%q: feed jointed %t, return %t", lead, plus.Jointed, minus.Jointed)
			continue
		}
		for _, w := range plus.Wires {
			if w.Crimp(false) != plus.Joint {
				t.Errorf("%s ends in %v", w.Number, w.Crimp(false))
			}
		}
		if end := minus.Wires[0].Crimp(true); end == nil || end.Name != "butt splice blue" {
			t.Errorf("the return ends in %v", end)
		}
	}
}

func twoFeeds(lead string) string {
	return `fusewright: 1
title: t
system: 12 V
practice: off-road
battery: {chemistry: AGM, capacity: 10 Ah, at: a}
places: {a: {}}
wire: {insulation: ISO 6722 thin wall class B, size: 2.5 mm²}
fuses: {f: {type: blade C, rating: 5 A, at: a, fed by: battery}}
switches:
  float: {rating: 10 A, at: a, fed by: f}
  hand: {rating: 10 A, at: a, fed by: f}
loads:
  pump: {type: bilge pump, ` + lead + `at: a, fed by: [float, hand], returns to: battery negative}
`
}

// jointed is a splice j fed from a tap by the first wire, with a lamp on each of
// the others.
func jointed(wires string) string {
	list := strings.Split(wires, "/")
	text := `fusewright: 1
title: t
vehicle: v
system: 12 V
practice: off-road
battery: {chemistry: AGM, capacity: 14 Ah, at: tray}
places: {tray: {ambient: 25 °C}}
taps: {key feed: {at: tray, hot: key}}
splices: {j: {at: tray, fed by: key feed, wire: ` + list[0] + `}}
loads:
`
	for i, w := range list[1:] {
		text += fmt.Sprintf("  lamp %d: {power: 5 W, at: tray, fed by: j, wire: %s, returns to: battery negative}\n", i, w)
	}
	return text
}
