package sizing

import (
	"strings"
	"testing"
)

// pilot is a relay with a lamp behind thick wire, and its coil behind a pilot fuse on a
// few decimetres of wire, all of one colour.
const pilot = `
places: {bay: {ambient: 60 °C}, cab: {ambient: 40 °C}, rear: {ambient: 40 °C}}
runs:
  - {from: tray, to: bay, length: 100 mm}
  - {from: bay, to: cab, length: 1.5 m, cover: corrugated conduit}
  - {from: cab, to: rear, length: 3 m, cover: corrugated conduit}
grounds: {bus: {kind: ground block, at: cab, limit: 100 A, returns to: battery negative, wire: {size: 10 mm²}}}
taps: {ign: {at: cab, hot: key, fuse: 10 A, spare: 1 A, supervised: no}}
fuses:
  a: {at: bay, fed by: battery, wire: {length: 150 mm}}
  p: {at: cab, fed by: ign, wire: {length: 150 mm}}
relays: {k: {at: bay, fed by: a, coil: {fed by: sw, returns to: bus, suppressed by: diode}}}
switches: {sw: {type: rocker 16 A, at: cab, fed by: p}}
loads:
  bar: {type: LED light bar, power: 180 W, at: rear, fed by: k, returns to: bus}
situations: {night: {engine: cruise, on: all}}
`

// TestNoneTooThick: no wire is more than one size of a shop above what the rules let
// through, the rest being as it is, however little is left over of what is bought so.
func TestNoneTooThick(t *testing.T) {
	for _, w := range []string{"120 W", "150 W", "180 W", "240 W"} {
		p, err := Complete(read(t, strings.Replace(bench(strings.Replace(pilot, "places: {", "places: {tray: {ambient: 30 °C}, ", 1)), "180 W", w, 1)))
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range p.Choices {
			if (c.Part == "p, wire" || c.Part == "sw, wire") && c.Value != "0.75 mm²" && c.Value != "1 mm²" {
				t.Errorf("%s: %s is %s", w, c.Part, c.Value)
			}
		}
		for _, part := range tooThick(p.s) {
			t.Errorf("%s: %s could be two sizes thinner", w, part)
		}
	}
}

// tooThick are the wires of an answer that the rules let through in a size two steps down.
func tooThick(s *search) (list []string) {
	best := s.best
	defer s.take(best)
	for i, x := range s.slots {
		if x.kind != WireSize || best.at[i] < 2 {
			continue
		}
		s.take(best)
		x.set(best.at[i] - 2)
		if a, err := s.answer(); err != nil || s.firstNew(best.verdict.findings, a.verdict.findings) == nil {
			list = append(list, x.part)
		}
	}
	return list
}
