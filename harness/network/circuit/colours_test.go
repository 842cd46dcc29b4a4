package circuit_test

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/proof/buildtest"
	"fusewright/harness/proof/synth"
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

// Colours by hand. Of feeds, what hangs on the battery and the trunk of 10 mm² is red. On
// land a lamp circuit is yellow: the first alone; behind the switch, which it meets at the
// dash, red is the first tracer; the third lamp's meets both there, and white does not show
// on yellow (1.49), so black. Afloat ABYC's dark blue takes white first (red: 1.0), then
// black. A colour that is given stays. Returns are black with their circuit's colour; a
// second lamp circuit at the stud has the first tracer that is no feed's: white on land
// (red and brown, of feeds, name those), white afloat too.
func TestColoursByHand(t *testing.T) {
	for _, c := range []struct {
		practice string
		want     map[string]string // by the ends of the wire
	}{
		{"off-road", map[string]string{"+ main": "RD", "main box": "RD", "box lamp switch": "YE", "lamp switch pair": "YERD",
			"pair left": "YERD", "pair right": "YERD", "box aft": "YEBK", "box horn relay": "BN", "horn relay horn": "BNWH",
			"box button": "VT", "button horn relay": "VTWH", "box set": "PK", "left stud": "BKYE", "right stud": "BKYE",
			"aft stud": "BKWH", "horn stud": "BKBN", "set stud": "BKPK", "horn relay stud": "BKVT", "stud battery": "BK"}},
		{"marine", map[string]string{"+ main": "RD", "main box": "RD", "box lamp switch": "BU", "lamp switch pair": "BUWH",
			"pair left": "BUWH", "pair right": "BUWH", "box aft": "BUBK", "box horn relay": "OG", "horn relay horn": "OGRD",
			"box button": "VT", "button horn relay": "VTWH", "box set": "PK", "left stud": "BKBU", "right stud": "BKBU",
			"aft stud": "BKWH", "horn stud": "BKOG", "set stud": "BKPK", "horn relay stud": "BKVT", "stud battery": "BK"}},
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
	for size, want := range map[string]string{"6 mm²": "BN", "10 mm²": "RD"} {
		text := strings.Replace(strings.Replace(coloured, "PRACTICE", "off-road", 1), "box 3, wire: {size: 6 mm²}", "box 3, wire: {size: "+size+"}", 1)
		c := build(t, "colours.yaml", text)
		if got := named(t, c, "horn relay").Terminal("30").Wires[0].Spec.Colour.Code(); got != want {
			t.Errorf("%s: %s, want %s", size, got, want)
		}
	}
}

// The limit is 6 mm² itself: a wire of a user's own library just above it is thick.
func TestThickByHand(t *testing.T) {
	for area, want := range map[float64]string{5.9: "BN", 6: "BN", 6.1: "RD"} {
		d := buildtest.Design(t, strings.Replace(coloured, "PRACTICE", "off-road", 1))
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

// Of a harness made at random, no two feeds of one run that are not of one potential have
// one colour, but those of the trunk, which are too thick for a tracer.
func TestFeedsOfARunTellApart(t *testing.T) {
	given := regexp.MustCompile(`,? ?(return )?colour: [A-Z]+`)
	for seed := range int64(4) {
		text := given.ReplaceAllString(string(synth.YAML(60, seed)), "")
		text = strings.Replace(text, "\nwire: {", "\nwire: {colour: auto, ", 1)
		c := build(t, "random.yaml", text)
		for _, b := range c.Bundles {
			at := map[string]*circuit.Wire{}
			for _, w := range b.Wires {
				if !w.Spec.ColourAuto {
					t.Fatalf("%s has a colour of its own", w.Number)
				}
				code := w.Spec.Colour.Code()
				if w.Role.Returns() || w.Spec.Size.AreaMm2 > 6 {
					continue
				}
				if x := at[code]; x != nil && x.From.Node != w.From.Node && x.To.Node != w.From.Node {
					t.Errorf("seed %d, %s: %s and %s are both %s", seed, b.Run.Name, x.Number, w.Number, code)
				}
				at[code] = w
			}
		}
	}
}

// With its labels written, a design that gains a load at any place or loses one recolours
// no wire; without, this one would.
func TestColoursStay(t *testing.T) {
	d := buildtest.Design(t, strings.Replace(coloured, "PRACTICE", "off-road", 1))
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
		{"stated", "  left: {power: 10 W,", "  left: {wire: {colour: GY}, power: 10 W,", "GY YERD"},
		{"it comes from elsewhere", "tail, fed by: pair", "tail, fed by: lamp switch", "YERD YERD"},
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
// past that say that they share one. Every circuit here meets all others in the run.
func TestColoursRunOut(t *testing.T) {
	harness := func(n int) *circuit.Circuit {
		var ways, lamps strings.Builder
		for i := range n {
			fmt.Fprintf(&ways, "%d: {type: blade C, fuse: 5 A}, ", i+1)
			fmt.Fprintf(&lamps, "  l%d: {power: 10 W, behaves: filament lamp, at: tail, fed by: box %d, returns to: stud}\n", i+1, i+1)
		}
		text := strings.Replace(coloured, "PRACTICE", "off-road", 1)
		from, to := strings.Index(text, "blocks:"), strings.Index(text, "grounds:")
		text = text[:from] + "blocks: {box: {at: dash, fed by: main, wire: {size: 10 mm²}, ways: {" + ways.String() + "}}}\n" + text[to:]
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
