package circuit_test

import (
	"slices"
	"strings"
	"testing"

	"fusewright/harness/proof/buildtest"
)

// apart is a fuse above a switch for day or night, a two-pole switch for left, off or right, a relay that changes over between
// two lamps, and a horn beside them. At 12 V: day 3 A, night 2 A; left 1 A and 4 A on its second pole, right 6 A; on 87
// 5 A, on 87a 5.5 A, the coil 12 V / 85 Ω = 0.141 A; the horn 1 A.
const apart = `fusewright: 1
title: t
system: 12 V
practice: marine
battery: {chemistry: AGM, capacity: 60 Ah, at: box}
wire: {insulation: tinned marine 105 °C metric, size: 2.5 mm²}
places: {box: {}}
fuses: {f: {type: blade C, rating: 30 A, fed by: battery, at: box}}
switches:
  light: {rating: 16 A, fed by: f, positions: [day, night], at: box}
  side: {rating: 16 A, fed by: f, positions: {left: port, off: none, right: starboard}, at: box}
  bell: {pole of: side, fed by: f, positions: {left: gong}}
  turn: {rating: 16 A, fed by: f, at: box}
relays:
  change: {form: mini changeover, fed by: f, coil: {fed by: turn, returns to: battery negative}, at: box}
loads:
  day: {current: 3 A, fed by: light day, returns to: battery negative, at: box}
  night: {current: 2 A, fed by: light night, returns to: battery negative, at: box}
  port: {current: 1 A, fed by: side port, returns to: battery negative, at: box}
  gong: {current: 4 A, fed by: bell gong, returns to: battery negative, at: box}
  starboard: {current: 6 A, fed by: side starboard, returns to: battery negative, at: box}
  made: {current: 5 A, fed by: change, returns to: battery negative, at: box}
  rest: {current: 5.5 A, fed by: change 87a, returns to: battery negative, at: box}
  horn: {current: 1 A, fed by: f, returns to: battery negative, at: box}
situations: {s: {on: [day]}}
`

// By hand: of day and night the day; of left 1 + 4 = 5 A and right 6 A the right; of 87 with its coil 5.141 A and 87a
// 5.5 A the rest. A little more or less moves the choice where it should.
func TestAtOnce(t *testing.T) {
	tests := []struct{ name, from, to, want string }{
		{"the most of each", "", "", "day horn rest starboard"},
		{"left as much as right: the first", "current: 6 A", "current: 5 A", "day gong horn port rest"},
		{"left less by a tenth of an ampere", "current: 6 A", "current: 5.1 A", "day horn rest starboard"},
		{"87a more than 87 and the coil", "current: 5.5 A", "current: 5.15 A", "day horn rest starboard"},
		{"87a less than 87 and the coil", "current: 5.5 A", "current: 5.13 A", "change day horn made starboard"},
		{"a relay closed by night alone", "coil: {fed by: turn", "coil: {fed by: light night", "day horn rest starboard"},
		{"a relay closed by night alone, worth it", "{form: mini changeover, fed by: f, coil: {fed by: turn, returns to: battery negative}, at: box}", "{form: mini changeover, fed by: f, coil: {fed by: light night, returns to: battery negative}, at: box}\n  big: {form: mini make, fed by: f, coil: {fed by: light night, returns to: battery negative}, at: box}", "big change horn made night siren starboard"},
		{"an off delay keeps on what night gave", "{form: mini changeover, fed by: f, coil: {fed by: turn, returns to: battery negative}, at: box}", "{form: mini changeover, fed by: f, coil: {fed by: turn, returns to: battery negative}, at: box}\n  big: {form: mini make, off delay: 1 min, fed by: f, coil: {fed by: light night, returns to: battery negative}, at: box}", "day horn rest siren starboard"},
		{"a latching relay stays as night left it", "{form: mini changeover, fed by: f, coil: {fed by: turn, returns to: battery negative}, at: box}", "{form: mini changeover, fed by: f, coil: {fed by: turn, returns to: battery negative}, at: box}\n  big: {form: impulse relay 16 A 12 V, fed by: f, coil: {fed by: light night, returns to: battery negative}, at: box}", "day horn rest siren starboard"},
		{"a lamp in both positions is on in either", "fed by: light day", "fed by: [light day, light night]", "day horn night rest starboard"},
	}
	for _, tt := range tests {
		src := strings.Replace(apart, tt.from, tt.to, 1)
		if strings.Contains(tt.to, "big:") {
			src = strings.Replace(src, "  horn:", "  siren: {current: 10 A, fed by: big, returns to: battery negative, at: box}\n  horn:", 1)
		}
		c := buildtest.Circuit(t, src)
		below := c.Below(named(t, c, "f").Terminal("out").Node)
		var got []string
		for _, b := range c.Exclusive().AtOnce(slices.Concat(below.Loads, below.Coils)) {
			got = append(got, b.Part.Name)
		}
		if slices.Sort(got); strings.Join(got, " ") != tt.want {
			t.Errorf("%s: %q, want %q", tt.name, got, tt.want)
		}
	}
}
