// Package synth writes designs that nobody built: realistic ones of any size
// for benchmarks, and odd ones for tests of the network solver. The same size
// and seed always give the same text. It knows the design format and the
// library's names, and nothing of circuits or rules.
package synth

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
)

// LeastWires is the smallest harness that YAML writes: a fuse, a lamp and its
// return.
const LeastWires = 3

// Sizes of what YAML lays out.
const (
	stationWires = 30 // about as many as one relay with its block and loads takes
	zoneStations = 7  // stations behind one fuse at the battery
	plainBelow   = 11 // fewer wires than this make no relay worth while
)

// YAML writes a design with exactly as many wires as asked for (at least
// LeastWires) that reads without problems and, for the most part, stays within
// its limits: a battery and a charging system of fitting size; from about
// eleven wires on a relay switched by the key, with a distribution block; from
// about two hundred on several zones, each behind its own fuse at the battery,
// with a block that feeds the relays of its stations. Loads of every behaviour,
// switches, splices, shared grounds, several wire standards and bundles through
// a tree of runs occur. Large harnesses have many small loads on 24 V, as a
// real one would.
func YAML(wires int, seed int64) []byte {
	g := newGenerator(max(wires, LeastWires), seed)
	if g.left < plainBelow {
		g.plain()
	} else {
		g.zones()
	}
	return g.text()
}

// generator collects the sections of a design.
type generator struct {
	rng      *rand.Rand
	left     int // wires still to be placed
	total    int
	systemV  float64
	chargedV float64
	share    float64 // loads' powers as a share of those on a small vehicle
	loadA    float64 // sum of all loads

	loadNames []string
	sections  map[string]*strings.Builder
}

// order of the sections in the file.
var order = []string{"places", "runs", "taps", "fuses", "relays", "blocks", "switches", "loads", "grounds", "splices"}

func newGenerator(wires int, seed int64) *generator {
	g := &generator{rng: rand.New(rand.NewPCG(uint64(seed), uint64(wires))), left: wires, total: wires,
		systemV: 12, chargedV: 14.4, share: 1, sections: map[string]*strings.Builder{}}
	if wires > 400 {
		g.systemV, g.chargedV = 24, 28.4
	}
	if wires > 100 {
		g.share = math.Sqrt(100 / float64(wires))
	}
	for _, s := range order {
		g.sections[s] = &strings.Builder{}
	}
	return g
}

// put adds a line to a section and, for each wire that it makes, takes one off
// those left.
func (g *generator) put(section string, wires int, format string, args ...any) {
	g.left -= wires
	fmt.Fprintf(g.sections[section], "  "+format+"\n", args...)
}

// text is the whole file.
func (g *generator) text() []byte {
	var b strings.Builder
	g.heading(&b)
	for _, s := range order {
		if g.sections[s].Len() > 0 {
			fmt.Fprintf(&b, "\n%s:\n%s", s, g.sections[s])
		}
	}
	g.situations(&b)
	return []byte(b.String())
}

// heading writes the source and the vehicle, sized by the loads. The battery's
// resistance keeps a short below the 1000 A that small fuses break.
func (g *generator) heading(b *strings.Builder) {
	vehicleA := 8 * math.Max(1, g.loadA/40)
	needA := math.Ceil(1.3*(g.loadA+vehicleA) + 5)
	fmt.Fprintf(b, `fusewright: 1
title: Synthetic harness of %d wires
vehicle: invented; written by a program for tests
system: %g V
practice: off-road
notes: No such vehicle exists.

battery: {chemistry: %s, capacity: %.0f Ah, resistance: %g mΩ, at: battery bay}

charging:
  regulated: %g V
  output: {900 rpm: %.0f A, 1800 rpm: %.0f A, 3500 rpm: %.0f A}
  idle: 900 rpm
  cruise: 2600 rpm

vehicle loads:
  ignition and injection: {current: %.1f A}
  factory lamps: {current: %.1f A, when: key}
  clock: {current: 2 mA, when: always}

wire: {insulation: ISO 6722 thin wall class C, size: 1.5 mm², slack: %d mm}
`, g.total, g.systemV, g.pick("flooded", "AGM", "gel"), math.Ceil(12+2*needA), g.systemV*1.25,
		g.chargedV,
		math.Ceil(0.8*needA), needA, math.Ceil(1.3*needA), 0.6*vehicleA, 0.4*vehicleA, 30+10*g.rng.IntN(4))
}

// situations names three states besides the parked one; a few loads by name
// stand for what a driver really has on.
func (g *generator) situations(b *strings.Builder) {
	some := []string{}
	for _, i := range g.rng.Perm(len(g.loadNames)) {
		if len(some) == 40 {
			break
		}
		some = append(some, g.loadNames[i])
	}
	fmt.Fprintf(b, `
situations:
  parked: {key: off}
  halted: {key: on, engine: stopped, on: [%[1]s]}
  idling: {key: on, engine: idle, on: [%[1]s]}
  driving: {key: on, engine: cruise, on: all}
`, strings.Join(some, ", "))
}

func (g *generator) pick(words ...string) string { return words[g.rng.IntN(len(words))] }

// between is a whole number from lo to hi in steps.
func (g *generator) between(lo, hi, step int) int { return lo + step*g.rng.IntN((hi-lo)/step+1) }
