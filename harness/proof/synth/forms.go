package synth

import (
	"fmt"
	"math/rand/v2"
	"strings"
)

// Form is a shape of harness taken to the extreme. No builder would draw one of
// a thousand wires; a step whose time grows with more than the number of wires
// shows on one of them.
type Form string

// The forms.
const (
	Star      Form = "star"       // one bus bar, a fuse and a load on each of its arms
	Chain     Form = "chain"      // splice after splice, a load at each
	Ladder    Form = "ladder"     // a chain of splices out, a chain of ground blocks home, a load at each rung
	WideBlock Form = "wide-block" // blocks of as many ways as a design may have
)

// Forms are all of them.
var Forms = []Form{Star, Chain, Ladder, WideBlock}

// blockWays is the most ways that a design's block may have.
const blockWays = 200

// formW is what all loads of a form draw together, however many there are.
const formW = 60.0

// YAML writes a design of the form with exactly as many wires as asked for (at
// least LeastWires), readable without problems. It has findings: the end of a
// long chain is nearly dark. The same size and seed give the same text.
func (form Form) YAML(wires int, seed int64) []byte {
	wires = max(wires, LeastWires)
	g := &former{rng: rand.New(rand.NewPCG(uint64(seed), uint64(wires))), left: wires, wires: wires}
	switch form {
	case Star:
		g.star()
	case Ladder:
		g.ladder()
	case WideBlock:
		g.wideBlocks()
	default:
		g.chain()
	}
	g.leads()
	return g.text(form)
}

// former collects the sections of a form's design.
type former struct {
	rng         *rand.Rand
	left, wires int
	lead        string // what the wires left over hang on
	sections    [len(formSections)]strings.Builder
}

// formSections in the order of the file.
var formSections = [...]string{"places", "runs", "fuses", "blocks", "loads", "grounds", "splices"}

// put adds a line to a section and takes the wires it makes off those left.
func (g *former) put(section string, wires int, format string, args ...any) {
	g.left -= wires
	for i, name := range formSections {
		if name == section {
			fmt.Fprintf(&g.sections[i], "  "+format+"\n", args...)
		}
	}
}

// bay puts in the battery's place with its stud and a fuse there.
func (g *former) bay(fuse string) {
	g.put("places", 0, "bay: {ambient: 40 °C}")
	g.put("grounds", 0, "stud: {kind: frame stud, at: bay, limit: 100 A, frame resistance: 1 mΩ}")
	g.put("fuses", 1, "%s: {type: blade C, rating: 15 A, at: bay, fed by: battery, wire: {length: 150 mm}}", fuse)
	g.lead = fuse
}

// star is a bus bar behind the main fuse; twenty arms share a place.
func (g *former) star() {
	g.bay("main")
	if g.left < 4 {
		return
	}
	g.put("splices", 1, "bus: {at: bay, fed by: main, wire: {length: 200 mm}}")
	g.lead = "bus"
	for i := 0; g.left >= 3; i++ {
		if i%20 == 0 {
			g.next("bay", i/20)
		}
		at := fmt.Sprintf("p%d", i/20)
		g.put("fuses", 1, "f%d: {type: blade F, rating: 2 A, at: bay, fed by: bus, wire: {size: 1 mm², length: 100 mm}}", i)
		g.load(i, at, fmt.Sprintf("f%d", i), "stud")
	}
}

// chain is splice after splice; each load goes to a stud beside it.
func (g *former) chain() {
	g.bay("main")
	feed, at := "main", "bay"
	for i := 0; g.left >= 3; i++ {
		at = g.next(at, i)
		g.put("grounds", 0, "s%d: {kind: frame stud, at: %s, limit: 30 A, frame resistance: 2 mΩ}", i, at)
		g.put("splices", 1, "c%d: {at: %s, fed by: %s}", i, at, feed)
		feed = fmt.Sprintf("c%d", i)
		g.load(i, at, feed, fmt.Sprintf("s%d", i))
	}
	g.lead = feed
}

// ladder is a chain whose returns are a chain too.
func (g *former) ladder() {
	g.bay("main")
	feed, back, at := "main", "stud", "bay"
	for i := 0; g.left >= 4; i++ {
		at = g.next(at, i)
		g.put("splices", 1, "c%d: {at: %s, fed by: %s}", i, at, feed)
		g.put("grounds", 1, "g%d: {kind: ground block, at: %s, limit: 30 A, returns to: %s}", i, at, back)
		feed, back = fmt.Sprintf("c%d", i), fmt.Sprintf("g%d", i)
		g.load(i, at, feed, back)
	}
	g.lead = feed
}

// wideBlocks are blocks of blockWays ways, each behind a fuse at the battery.
func (g *former) wideBlocks() {
	g.bay("f0")
	for i := 0; g.left >= 3; i++ {
		if i > 0 {
			g.put("fuses", 1, "f%d: {type: blade C, rating: 15 A, at: bay, fed by: battery, wire: {length: 150 mm}}", i)
		}
		at, ways := g.next("bay", i), []string{}
		g.left-- // the block's feed
		for n := 1; n <= blockWays && g.left >= 2; n++ {
			ways = append(ways, fmt.Sprintf("%d: {fuse: 2 A, type: blade F}", n))
			g.load(i*blockWays+n, at, fmt.Sprintf("b%d %d", i, n), "stud")
		}
		g.put("blocks", 0, "b%d: {way limit: 20 A, total limit: 60 A, at: %s, fed by: f%[1]d, ways: {%[3]s}}", i, at,
			strings.Join(ways, ", "))
	}
}

// next makes a place with a run to it from another.
func (g *former) next(from string, n int) string {
	name := fmt.Sprintf("p%d", n)
	g.put("places", 0, "%s: {ambient: %d °C}", name, 25+5*g.rng.IntN(4))
	g.put("runs", 0, "- {from: %s, to: %s, length: %d mm, cover: corrugated conduit}", from, name, 100+10*g.rng.IntN(20))
	return name
}

// load puts in a load of some behaviour and its two wires.
func (g *former) load(n int, at, feed, back string) {
	behaves := []string{"resistor", "filament lamp", "motor"}[g.rng.IntN(3)]
	watts := formW / float64(g.wires) * (2 + 2*g.rng.Float64())
	g.put("loads", 2, "l%d: {power: %.4g W, rated at: 13.2 V, behaves: %s, symbol: lamp, at: %s, fed by: %s, "+
		"wire: {size: 1 mm²}, returns to: %s, return wire: {size: 1 mm²}}", n, watts, behaves, at, feed, back)
}

// leads uses up the wires that make no load: spliced ends for later.
func (g *former) leads() {
	for i := 0; g.left > 0; i++ {
		g.put("splices", 1, "lead%d: {at: bay, fed by: %s, wire: {length: 100 mm}}", i, g.lead)
	}
}

func (g *former) text(form Form) []byte {
	var b strings.Builder
	fmt.Fprintf(&b, `fusewright: 1
title: %s of %d wires
vehicle: invented; written by a program for tests
system: 12 V
practice: off-road

battery: {chemistry: AGM, capacity: 40 Ah, resistance: 12 mΩ, at: bay}

charging:
  regulated: 14.4 V
  output: {900 rpm: 20 A, 3500 rpm: 40 A}
  idle: 900 rpm
  cruise: 2600 rpm

wire: {insulation: ISO 6722 thin wall class C, size: 2.5 mm², slack: 30 mm}
`, form, g.wires)
	for i, name := range formSections {
		if g.sections[i].Len() > 0 {
			fmt.Fprintf(&b, "\n%s:\n%s", name, &g.sections[i])
		}
	}
	b.WriteString("\nsituations:\n  parked: {key: off}\n  driving: {key: on, engine: cruise, on: all}\n")
	return []byte(b.String())
}
