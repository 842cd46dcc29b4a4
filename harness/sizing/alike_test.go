package sizing

import (
	"fmt"
	"strings"
	"testing"
)

// TestPanelInOneSize: the plus and the minus of a panel are of one size where the bar brings back
// what the block feeds alone; each has its own where something else returns there. A switch in a return brings back what the block feeds too.
func TestPanelInOneSize(t *testing.T) {
	const src = `fusewright: 1
title: a panel
system: 12 V
practice: marine
battery: {chemistry: AGM, capacity: 80 Ah, rate: 20 h, resistance: 5 mΩ, at: locker}
charging: {regulated: 14.2 V, output: {900 rpm: 40 A, 2000 rpm: 60 A}, idle: 900 rpm, cruise: 2000 rpm}
places:
  locker: {ambient: 40 °C}
  console: {ambient: 35 °C}
runs:
  - {from: locker, to: console, length: 1.8 m}
wire: {insulation: tinned marine 105 °C metric, colour: RD, return colour: YE}
fuses:
  main: {at: locker, fed by: battery, wire: {length: 100 mm}, stays live: test}
  other: {at: locker, fed by: battery, wire: {length: 100 mm}, stays live: test}
blocks:
  panel: {type: auto, at: console, fed by: main, stays live: test, ways: {1: auto, 2: auto}}
grounds:
  bar: {kind: ground block, at: console, limit: 100 A, returns to: battery negative}
loads:
  lamps: {current: 3 A, behaves: resistor, critical: yes, at: console, own switch: yes, fed by: panel 1, returns to: bar, stays live: test}
  set: {current: 5 A, behaves: resistor, critical: yes, at: console, own switch: yes, fed by: panel 2, returns to: bar, stays live: test}
  pump: {current: 12 A, behaves: resistor, at: console, own switch: yes, fed by: other, returns to: %s, stays live: test}
`
	for _, c := range []struct {
		pumpTo, setTo string
		same          bool
	}{{"battery negative", "bar", true}, {"battery negative", "set switch", true}, {"bar", "bar", false}} {
		text := strings.Replace(fmt.Sprintf(src, c.pumpTo), "fed by: panel 2, returns to: bar", "fed by: panel 2, returns to: "+c.setTo, 1)
		if c.setTo != "bar" {
			text = strings.Replace(text, "main: {at", "main: {type: marine strip, rating: 50 A, at", 1) // its wire by the fuse, the return else by its amperes
			text += "switches:\n  set switch: {type: rocker 16 A, at: console, returns to: bar, return wire: {length: 400 mm}}\n"
		}
		p, err := Complete(read(t, text))
		if err != nil || len(p.Remaining) > 0 {
			t.Fatal(err, p.Remaining)
		}
		plus, minus := p.Design.Blocks[0].FedBy[0].Wire.Size.AreaMm2, p.Design.Grounds[0].Returns[0].Wire.Size.AreaMm2
		if c.same != (plus == minus) || plus > minus {
			t.Errorf("pump to %s, set to %s: plus %g mm², minus %g mm²", c.pumpTo, c.setTo, plus, minus)
		}
	}
}
