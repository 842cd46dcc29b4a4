package circuit_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/proof/buildtest"
)

const bench = `fusewright: 1
title: t
system: 12 V
practice: marine
battery: {chemistry: AGM, capacity: 60 Ah, at: box}
wire: {insulation: tinned marine 105 °C metric, size: 10 mm²}
places: {box: {}}
fuses: {f: {type: blade C, rating: 30 A, fed by: battery, at: box}}
`

// coilA is what a coil of 85 Ω takes at 12 V.
const coilA = 12 / 85.0

// relays, switches and loads of the bench, short.
func relay(name, contacts, coil string, more ...string) string {
	return fmt.Sprintf("  %s: {form: mini changeover, %sfed by: %s, coil: {fed by: %s, returns to: battery negative}, at: box}\n", name, strings.Join(more, ""), contacts, coil)
}

func lamp(name string, amps float64, from string) string {
	return fmt.Sprintf("  %s: {resistance: %.6f Ω, fed by: %s, returns to: battery negative, at: box}\n", name, 12/amps, from)
}

func plain(names ...string) (s string) {
	for _, n := range names {
		s += "  " + n + ": {rating: 20 A, fed by: f, at: box}\n"
	}
	return s
}

// The sum of what hangs on the fuse, by hand, and as the largest current through it that any setting of the switches gives.
func TestApartByHand(t *testing.T) {
	tests := []struct {
		name, switches, relays, loads string
		wantA                         float64
		exact                         bool // the solver has a state with as much
	}{
		{"a switch feeds a lamp and a coil: 2 + 5, not 2 + 5.5", plain("s"), relay("k", "f", "s"),
			lamp("own", 2, "s") + lamp("made", 5, "k") + lamp("rest", 5.5, "k 87a"), 7 + coilA, true},
		{"at rest as much as pulled in with its lamp", plain("s"), relay("k", "f", "s"),
			lamp("own", 2, "s") + lamp("made", 5, "k") + lamp("rest", 7.5, "k 87a"), 7.5, true},
		{"two relays on one switch, one at rest", plain("s"), relay("k", "f", "s") + relay("l", "f", "s"),
			lamp("made", 5, "k") + lamp("rest", 4, "l 87a"), 5 + 2*coilA, true},
		{"a chain: the second coil hangs on the rest of the first", plain("s"), relay("k", "f", "s") + relay("l", "f", "k 87a"),
			lamp("own", 2, "s") + lamp("made", 5, "l") + lamp("rest", 4, "l 87a"), 2 + 4 + coilA, true},
		{"the same, the first lamp larger", plain("s"), relay("k", "f", "s") + relay("l", "f", "k 87a"),
			lamp("own", 2, "s") + lamp("made", 7, "l") + lamp("rest", 4, "l 87a"), 7 + coilA, true},
		{"two switches in a row work the coil: either may be open", plain("a") + "  b: {rating: 20 A, fed by: a, at: box}\n", relay("k", "f", "b"),
			lamp("first", 2, "a") + lamp("second", 3, "b") + lamp("rest", 4, "k 87a"), 6, true},
		{"a main switch before it all", "  main: {rating: 30 A, fed by: f, at: box}\n  s: {rating: 20 A, fed by: main, at: box}\n", relay("k", "main", "s"),
			lamp("own", 2, "s") + lamp("made", 5, "k") + lamp("rest", 5.5, "k 87a"), 7 + coilA, true},
		{"two switches either of which works the coil", plain("a", "b"), "  k: {form: mini changeover, fed by: f, coil: {fed by: [a, b], returns to: battery negative}, at: box}\n",
			lamp("other", 3, "b") + lamp("rest", 4, "k 87a"), 4, true},
		{"positions that work coils", "  s: {rating: 20 A, fed by: f, positions: {off: none, low: one, high: two}, at: box}\n", relay("k", "f", "s one") + relay("l", "f", "s two"),
			lamp("low", 3, "k") + lamp("high", 5, "l") + lamp("idle", 4, "k 87a"), 5 + 4 + coilA, true},
		{"one that latches may be either", plain("s"), "  k: {form: impulse relay 16 A 12 V, fed by: f, coil: {fed by: s, returns to: battery negative}, at: box}\n" + relay("l", "f", "s"),
			lamp("made", 5, "k") + lamp("rest", 4, "l 87a"), 9, true},
		{"an off delay keeps it on beside the rest", plain("s"), relay("k", "f", "s", "off delay: 1 min, ") + relay("l", "f", "s"),
			lamp("made", 5, "k") + lamp("rest", 4, "l 87a"), 9, true},
		{"an on delay leaves it at rest beside the lamp", plain("s"), relay("k", "f", "s", "on delay: 1 min, "),
			lamp("own", 2, "s") + lamp("made", 5, "k") + lamp("rest", 5.5, "k 87a"), 7.5 + coilA, false},
		{"behind a resistor nobody knows that it pulls in", plain("s"), relay("k", "f", "r"),
			lamp("own", 2, "s") + lamp("rest", 4, "k 87a"), 6, false},
	}
	for _, tt := range tests {
		src := bench + "switches:\n" + tt.switches + "relays:\n" + tt.relays + "loads:\n" + tt.loads
		if strings.Contains(tt.relays, "fed by: r,") {
			src += "resistors: {r: {resistance: 10 Ω, fed by: s, at: box}}\n"
		}
		c := buildtest.Circuit(t, src)
		gotA, _ := sum(c)
		if math.Abs(gotA-tt.wantA) > 1e-5 {
			t.Errorf("%s: %.3f A, by hand %.3f A", tt.name, gotA, tt.wantA)
		}
		if most, _ := largest(c); most > gotA*(1+1e-6) || tt.exact && most < 0.97*gotA {
			t.Errorf("%s: %.3f A, and the solver has %.3f A", tt.name, gotA, most)
		}
	}
}

// sum is what the first fuse is counted with.
func sum(c *circuit.Circuit) (totalA float64, names []string) {
	fuse := c.PartOf(c.Design.Fuses[0])
	below := c.Below(fuse.Terminal("out").Node)
	for _, b := range c.Exclusive().AtOnce(slices.Concat(below.Loads, below.Coils)) {
		totalA, names = totalA+c.DrawA(b), append(names, b.Part.Name)
	}
	return totalA, names
}

// largest is the largest current through the first fuse with every switch in every position and every relay that
// latches or waits as it may be, at 12 V; everOn tells whether each load and coil is on in some of these.
func largest(c *circuit.Circuit) (mostA float64, everOn bool) {
	fuse, on := c.PartOf(c.Design.Fuses[0]).Branches[0], map[*circuit.Branch]bool{}
	each(c, func(s *design.Situation) {
		if sol := solve.Solve(c, s, solve.Options{BatteryV: 12, BatteryOhm: 1e-6}); sol.Status == solve.Converged {
			mostA = max(mostA, math.Abs(sol.Amps(fuse)))
			for _, b := range c.Branches {
				on[b] = on[b] || math.Abs(sol.Amps(b)) > 0.01
			}
		}
	})
	return mostA, !slices.ContainsFunc(c.Branches, func(b *circuit.Branch) bool { return (b.Load != nil && b.Load.Load != nil || b.IsCoil()) && !on[b] })
}

func each(c *circuit.Circuit, yield func(*design.Situation)) {
	var ways []func(s *design.Situation, state int)
	var states []int
	for _, x := range c.Design.Switches {
		if x.Positions == nil {
			ways, states = append(ways, func(s *design.Situation, state int) {
				if state == 1 {
					s.Closed = append(s.Closed, x)
				}
			}), append(states, 2)
			continue
		}
		ways, states = append(ways, func(s *design.Situation, state int) {
			s.Set = append(s.Set, design.Setting{Switch: x, Position: x.Positions[state].Name})
		}), append(states, len(x.Positions))
	}
	for _, r := range c.Design.Relays {
		if r.Latches || r.OffDelayS.Given() {
			ways, states = append(ways, func(s *design.Situation, state int) {
				if state == 1 {
					s.Held = append(s.Held, r)
				}
			}), append(states, 2)
		}
	}
	all := 1
	for _, n := range states {
		all *= n
	}
	for way := range all {
		s := &design.Situation{Name: "any", Key: design.KeyOn}
		for i, set := range ways {
			set(s, way%states[i])
			way /= states[i]
		}
		yield(s)
	}
}

// small is a random network of a few switches, relays and loads on one fuse.
func small(r *rand.Rand) string {
	from := []string{"f"}
	pick := func() string { return from[r.IntN(len(from))] }
	var switches, relays, loads, low strings.Builder
	ground := "battery negative" // of one coil the switch, since several on it feed each other while it is open
	for i := range 1 + r.IntN(3) {
		name := fmt.Sprintf("s%d", i)
		switch r.IntN(4) {
		case 0:
			fmt.Fprintf(&switches, "  %s: {rating: 20 A, fed by: %s, positions: {off: none, low: a, high: b, both: [a, b]}, at: box}\n", name, pick())
			from = append(from, name+" a", name+" b")
		case 1:
			fmt.Fprintf(&switches, "  %s: {rating: 20 A, fed by: %s, positions: {day: a, night: b}, at: box}\n", name, pick())
			from = append(from, name+" a", name+" b")
		default:
			fmt.Fprintf(&switches, "  %s: {rating: 20 A, fed by: %s, at: box}\n", name, pick())
			from = append(from, name)
		}
	}
	if r.IntN(3) == 0 {
		fmt.Fprint(&low, "  low: {rating: 20 A, returns to: battery negative, at: box}\n")
		ground = "low"
	}
	for i := range 1 + r.IntN(3) {
		name, more := fmt.Sprintf("k%d", i), ""
		if r.IntN(6) == 0 {
			more = "off delay: 1 min, "
		}
		fmt.Fprintf(&relays, "  %s: {form: mini changeover, %sfed by: %s, coil: {fed by: %s, returns to: %s}, at: box}\n", name, more, pick(), pick(), ground)
		ground = "battery negative"
		from = append(from, name, name+" 87a")
	}
	for i := range 2 + r.IntN(5) {
		fed := pick()
		if other := pick(); r.IntN(6) == 0 && other != fed {
			fed = "[" + fed + ", " + other + "]"
		}
		loads.WriteString(lamp(fmt.Sprintf("l%d", i), float64(1+r.IntN(6)), fed))
	}
	return bench + "switches:\n" + switches.String() + low.String() + "relays:\n" + relays.String() + "loads:\n" + loads.String()
}

// Of any small network the sum is never below what a setting of its switches draws. Where no delay makes an overlap that
// the solver has not, nothing feeds backwards and everything is on in some setting, it is just that.
func TestApartAgainstTheSolver(t *testing.T) {
	exact, plain := 0, 0
	for seed := range uint64(600) {
		src := small(rand.New(rand.NewPCG(seed, 7)))
		c := buildtest.Circuit(t, src)
		sumA, names := sum(c)
		mostA, everOn := largest(c)
		if mostA > sumA*(1+1e-6) {
			t.Fatalf("seed %d: %s make %.3f A, and the solver has %.3f A\n%s", seed, names, sumA, mostA, src)
		}
		if strings.Contains(src, "delay") || strings.Contains(src, "fed by: [") || !everOn {
			continue
		}
		if plain++; mostA > 0.97*sumA {
			exact++
		} else {
			t.Logf("seed %d: %s make %.3f A, and the solver has %.3f A\n%s", seed, names, sumA, mostA, src)
		}
	}
	if plain < 100 || exact < plain {
		t.Errorf("exact in %d of %d", exact, plain)
	}
}
