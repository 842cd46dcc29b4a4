package circuit_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/proof/buildtest"
)

const coloured = `fusewright: 1
title: colours
vehicle: invented
system: 12 V
practice: PRACTICE
battery: {chemistry: AGM, capacity: 60 Ah, at: tray}
places: {tray: {ambient: 30 °C}, dash: {ambient: 30 °C}, tail: {ambient: 30 °C}, bow: {ambient: 30 °C}}
runs:
  - {from: tray, to: dash, length: 1 m}
  - {from: dash, to: tail, length: 1 m}
  - {from: dash, to: bow, length: 1 m}
wire: {size: 2.5 mm², insulation: tinned marine 105 °C metric, colour: auto}
fuses:
  main: {type: blade C, rating: 30 A, at: tray, fed by: battery, wire: {size: 10 mm²}}
blocks:
  box: {at: dash, fed by: main, wire: {size: 10 mm²}, ways: {1: {type: blade C, fuse: 5 A}, 2: {type: blade C, fuse: 5 A}, 3: {type: blade C, fuse: 5 A}, 4: {type: blade C, fuse: 5 A}, 5: {type: blade C, fuse: 5 A}}}
relays:
  horn relay: {form: mini make, at: dash, fed by: box 3, wire: {size: 6 mm²}, coil: {fed by: button, returns to: stud}}
switches:
  lamp switch: {rating: 10 A, at: dash, fed by: box 1}
  button: {rating: 10 A, at: dash, fed by: box 4}
splices:
  pair: {at: tail, fed by: lamp switch}
grounds:
  stud: {at: dash, kind: ground block, returns to: battery negative, wire: {size: 10 mm²}}
loads:
  left: {power: 10 W, behaves: filament lamp, at: tail, fed by: pair, returns to: stud}
  right: {power: 10 W, behaves: filament lamp, at: tail, fed by: pair, returns to: stud}
  aft: {power: 10 W, behaves: filament lamp, at: bow, fed by: box 2, returns to: stud}
  horn: {type: horn, at: bow, fed by: horn relay, returns to: stud}
  set: {power: 10 W, behaves: constant power, at: bow, fed by: box 5, wire: {colour: PK}, returns to: stud}
`

// Colours by hand. Of feeds, what hangs on the battery and the trunk of 10 mm² is red. On land so is what nothing switches, up to a
// switch; behind a switch or a relay of their own circuits are yellow, to coils they are violet. Afloat they have ABYC's colours by what they
// serve, before the switch too: lamps dark blue, horns orange, coils violet. A colour that is given stays. Returns are black.
func TestColoursByHand(t *testing.T) {
	for _, c := range []struct {
		practice string
		want     map[string]string // by the ends of the wire
	}{
		{"off-road", map[string]string{"+ main": "RD", "main box": "RD", "box lamp switch": "RD", "lamp switch pair": "YE",
			"pair left": "YE", "pair right": "YE", "box aft": "RD", "box horn relay": "RD", "horn relay horn": "YE",
			"box button": "VT", "button horn relay": "VT", "box set": "PK", "left stud": "BK", "right stud": "BK",
			"aft stud": "BK", "horn stud": "BK", "set stud": "BK", "horn relay stud": "BK", "stud battery": "BK"}},
		{"marine", map[string]string{"+ main": "RD", "main box": "RD", "box lamp switch": "BU", "lamp switch pair": "BU",
			"pair left": "BU", "pair right": "BU", "box aft": "BU", "box horn relay": "OG", "horn relay horn": "OG",
			"box button": "VT", "button horn relay": "VT", "box set": "PK", "left stud": "BK", "right stud": "BK",
			"aft stud": "BK", "horn stud": "BK", "set stud": "BK", "horn relay stud": "BK", "stud battery": "BK"}},
	} {
		got := map[string]string{}
		for _, w := range build(t, "colours.yaml", strings.Replace(coloured, "PRACTICE", c.practice, 1)).Wires {
			from := w.From.Part.Name
			if w.From.Part.Kind == circuit.Battery {
				from = "+"
			}
			got[from+" "+w.To.Part.Name] = w.Spec.Colour.Code()
		}
		for wire, want := range c.want {
			if got[wire] != want {
				t.Errorf("%s, %s: %s, want %s", c.practice, wire, got[wire], want)
			}
		}
		if len(got) != len(c.want) {
			t.Errorf("%s: %d wires, want %d: %v", c.practice, len(got), len(c.want), got)
		}
	}
}

// Feeds up to 6 mm² have a colour of their own, thicker ones that of the trunk.
func TestThickFeedsAreRed(t *testing.T) {
	for size, want := range map[string]string{"6 mm²": "OG", "10 mm²": "RD"} {
		text := strings.Replace(strings.Replace(coloured, "PRACTICE", "marine", 1), "box 3, wire: {size: 6 mm²}", "box 3, wire: {size: "+size+"}", 1)
		c := build(t, "colours.yaml", text)
		if got := named(t, c, "horn relay").Terminal("30").Wires[0].Spec.Colour.Code(); got != want {
			t.Errorf("%s: %s, want %s", size, got, want)
		}
	}
}

// The limit is 6 mm² itself: a wire of a user's own library just above it is thick.
func TestThickByHand(t *testing.T) {
	for area, want := range map[float64]string{5.9: "OG", 6: "OG", 6.1: "RD"} {
		d := buildtest.Design(t, strings.Replace(coloured, "PRACTICE", "marine", 1))
		wire := &d.Relays[0].FedBy[0].Wire
		own := *wire.Size
		own.AreaMm2, wire.Size = area, &own
		c, err := circuit.Build(d)
		if err != nil {
			t.Fatal(err)
		}
		if got := named(t, c, "horn relay").Terminal("30").Wires[0].Spec.Colour.Code(); got != want {
			t.Errorf("%g mm²: %s, want %s", area, got, want)
		}
	}
}

// Wires that could be exchanged are told apart: in a parting of the loom, at a switch with positions, over whose poles they
// are shared, and at a relay that changes over; an exchange of two grounds does no harm, nor one at a plain switch.
func TestExchangesAreToldApart(t *testing.T) {
	text := strings.NewReplacer("PRACTICE", "off-road", "switches:\n", "switches:\n  both: {rating: 10 A, at: dash, fed by: box 2, positions: [one, off, two]}\n",
		"relays:\n", "partings: {bow plug: {family: sealed 1.5, at: tail}}\nrelays:\n  over: {form: mini changeover, at: dash, fed by: box 2, coil: {fed by: button, returns to: stud}}\n",
		"- {from: dash, to: bow,", "- {from: tail, to: bow,",
		"aft: {power: 10 W, behaves: filament lamp, at: bow, fed by: box 2,", "one: {power: 10 W, at: bow, fed by: both one, returns to: stud}\n  two: {power: 10 W, at: bow, fed by: both two, returns to: stud}\n"+
			"  made: {power: 10 W, at: dash, fed by: over, returns to: stud}\n  rest: {power: 10 W, at: dash, fed by: over 87a, returns to: stud}\n  aft: {power: 10 W, behaves: filament lamp, at: bow, fed by: lamp switch,").Replace(coloured)
	c := build(t, "apart.yaml", text)
	code := func(part, end string) string { return named(t, c, part).Terminal(end).Wires[0].Spec.Colour.Code() }
	for _, tt := range []struct {
		name  string
		codes []string
		want  int // colours
	}{
		{"the parting", []string{code("one", "+"), code("two", "+"), code("aft", "+"), code("horn", "+"), code("set", "+")}, 5},
		{"its grounds", []string{code("one", "-"), code("two", "-"), code("aft", "-"), code("horn", "-")}, 1},
		{"a switch with positions", []string{code("both", "in"), code("both", "one"), code("both", "two")}, 3},
		{"a relay that changes over", []string{code("over", "30"), code("over", "87"), code("over", "87a"), code("over", "86"), code("over", "85")}, 5},
		{"one of the parting and one that does not pass it", []string{code("made", "+"), code("left", "+")}, 1},
	} {
		got := slices.Compact(slices.Sorted(slices.Values(tt.codes)))
		if len(got) != tt.want {
			t.Errorf("%s: %q, want %d colours", tt.name, tt.codes, tt.want)
		}
	}
}

// With its labels written, a design that gains a load at any place or loses one recolours
// no wire; without, this one would.
func TestColoursStay(t *testing.T) {
	d := buildtest.Design(t, strings.NewReplacer("PRACTICE", "off-road", "right: {power: 10 W, behaves: filament lamp, at: tail, fed by: pair", // else a control
		"right: {power: 10 W, behaves: filament lamp, at: tail, fed by: button").Replace(coloured))
	codes := func(c *circuit.Circuit) map[string]string {
		m := map[string]string{}
		for _, w := range c.Wires {
			m[w.From.Text()+" "+w.To.Text()+" "+string(w.Role)] = w.Spec.Colour.Code()
		}
		return m
	}
	was, loads := mustBuild(t, d), d.Loads
	recoloured := func(held bool) (n int) {
		d.Numbers = design.Numbers{}
		if held {
			d.Numbers.List = was.Labels()
		}
		for i, l := range loads {
			more := *l
			more.Name = "newcomer"
			for _, list := range [][]*design.Load{slices.Delete(slices.Clone(loads), i, i+1), slices.Insert(slices.Clone(loads), i, &more)} {
				d.Loads = list
				now := codes(mustBuild(t, d))
				for wire, code := range codes(was) {
					if now[wire] != "" && now[wire] != code {
						n++
					}
				}
			}
		}
		return n
	}
	if n := recoloured(false); n == 0 {
		t.Error("nothing is recoloured without labels: this test shows nothing")
	}
	if n := recoloured(true); n > 0 {
		t.Errorf("%d wires recoloured", n)
	}
}

// What `numbers` says of a wire's colour holds while the wire is left open and is sold in
// it; the others of its potential follow.
func TestHeldColours(t *testing.T) {
	for _, c := range []struct{ name, from, to, want string }{
		{"held", "", "", "GNWH GNWH"},
		{"its size has no tracers", "  left: {power: 10 W,", "  left: {wire: {size: 10 mm²}, power: 10 W,", "RD RD"},
		{"stated", "  left: {power: 10 W,", "  left: {wire: {colour: GY}, power: 10 W,", "GY YE"},
		{"it comes from elsewhere", "tail, fed by: pair", "tail, fed by: lamp switch", "YE YE"},
	} {
		text := strings.Replace(coloured, "PRACTICE", "off-road", 1) + "numbers: {W9: \"left, feed from pair, GNWH\"}\n"
		d := mustBuild(t, buildtest.Design(t, strings.Replace(text, c.from, c.to, 1)))
		left, right := named(t, d, "left").Terminal("+").Wires[0], named(t, d, "right").Terminal("+").Wires[0]
		if got := left.Spec.Colour.Code() + " " + right.Spec.Colour.Code(); got != c.want {
			t.Errorf("%s: %s, want %s", c.name, got, c.want)
		}
		if left.Number != "W9" {
			t.Errorf("%s: it is %s", c.name, left.Number)
		}
	}
}

// Lamp circuits that go one way have as many colours as there are bases and tracers; those
// past that say that they share one. Every circuit here meets all others in the parting.
func TestColoursRunOut(t *testing.T) {
	harness := func(n int) *circuit.Circuit {
		var ways, lamps strings.Builder
		for i := range n {
			fmt.Fprintf(&ways, "%d: {type: blade C, fuse: 5 A}, ", i+1)
			fmt.Fprintf(&lamps, "  l%d: {power: 10 W, behaves: filament lamp, at: tail, fed by: box %d, returns to: stud}\n", i+1, i+1)
		}
		text := strings.NewReplacer("PRACTICE", "off-road", "- {from: dash, to: tail, length: 1 m}", "- {from: dash, to: mid, length: 1 m}\n  - {from: mid, to: tail, length: 1 m}", "dash: {", "mid: {}, dash: {").Replace(coloured)
		from, to := strings.Index(text, "blocks:"), strings.Index(text, "grounds:")
		text = text[:from] + "partings: {half way: {family: sealed 1.5, at: mid}}\nblocks: {box: {at: dash, fed by: main, wire: {size: 10 mm²}, ways: {" + ways.String() + "}}}\n" + text[to:]
		return build(t, "many.yaml", text[:strings.Index(text, "loads:")]+"loads:\n"+lamps.String())
	}
	shared := func(n int) (feeds int) {
		seen := map[string]bool{}
		for _, w := range harness(n).Wires {
			if w.From.Part.Kind != circuit.Block {
				continue
			}
			code := w.Spec.Colour.Code()
			if w.ColourShared != seen[code] {
				t.Errorf("%d circuits: %s is %s, said to be shared: %v", n, w.Number, code, w.ColourShared)
			}
			if seen[code] {
				feeds++
			}
			seen[code] = true
		}
		return feeds
	}
	most := 1
	for shared(most) == 0 {
		most++
	}
	if shared(most) != 1 || shared(most+2) != 3 {
		t.Errorf("past %d circuits %d and %d share a colour", most, shared(most), shared(most+2))
	}
}
