package formboard_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"strings"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/proof/referencetest"
	"fusewright/harness/proof/synth"
	"fusewright/harness/workshop/formboard"
	"fusewright/library"

	"github.com/google/go-cmp/cmp"
)

func build(t testing.TB, name string, text []byte) *circuit.Circuit {
	t.Helper()
	d, err := design.Read(name, text, library.Default())
	if err != nil {
		t.Fatalf("%s: %v\n%s", name, err, text)
	}
	c, err := circuit.Build(d)
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	return c
}

func demo(t testing.TB, name string) *circuit.Circuit {
	t.Helper()
	text, err := os.ReadFile("../../../designs/" + name + ".yaml")
	if err != nil {
		t.Fatal(err)
	}
	return build(t, name, text)
}

// web writes a design whose places hang together at random, with loops, short
// and long runs and crowded breakouts; a load at every place makes wires lie in
// nearly every run.
func web(seed uint64) []byte {
	r := rand.New(rand.NewPCG(seed, 7))
	n := 3 + r.IntN(28)
	var b strings.Builder
	b.WriteString("fusewright: 1\ntitle: web\nsystem: 12 V\npractice: off-road\nbattery: {chemistry: AGM, capacity: 20 Ah, at: p0}\nplaces:\n")
	for i := range n {
		fmt.Fprintf(&b, "  p%d: {ambient: 30 °C}\n", i)
	}
	b.WriteString("runs:\n")
	for i := 1; i < n; i++ {
		fmt.Fprintf(&b, "  - {name: r%d, from: p%d, to: p%d, length: %d mm, flexes: %s}\n", i, r.IntN(min(i, 1+r.IntN(i))), i,
			20+r.IntN(1200), []string{"yes", "no"}[r.IntN(2)])
	}
	for i := range 1 + r.IntN(4) {
		a := r.IntN(n - 1)
		fmt.Fprintf(&b, "  - {name: loop%d, from: p%d, to: p%d, length: %d mm}\n", i, a, a+1+r.IntN(n-a-1), 20+r.IntN(600))
	}
	b.WriteString("wire: {insulation: ISO 6722 thin wall class C, size: 1 mm², colour: RD, slack: 50 mm}\n")
	b.WriteString("grounds: {stud: {kind: frame stud, at: p0}}\nfuses: {main: {type: blade C, rating: 10 A, at: p0, fed by: battery}}\nloads:\n")
	for i := range n {
		fmt.Fprintf(&b, "  l%d: {power: 3 W, behaves: resistor, at: p%d, fed by: s%d, returns to: stud}\n", i, i, i)
	}
	b.WriteString("switches:\n")
	for i := range n {
		fmt.Fprintf(&b, "  s%d: {rating: 5 A, at: p%d, fed by: main}\n", i, r.IntN(n))
	}
	return []byte(b.String())
}

// made is a named circuit with its board.
type made struct {
	name    string
	circuit *circuit.Circuit
	board   *formboard.Board
}

// laid are the boards of two demos, of made harnesses and of webs: reading them takes most
// of the time, so that it is done once for all tests, none of which may change them.
var laid []made

func lay(t *testing.T) []made {
	add := func(name string, c *circuit.Circuit) { laid = append(laid, made{name, c, formboard.Lay(c)}) }
	if laid != nil {
		return laid
	}
	for _, name := range []string{"fen-runner", "reed-skiff"} {
		add(name, demo(t, name))
	}
	most := 60 // up to 390 wires; a second sixty, as many again, where reference programs are required
	if referencetest.Required() {
		most = 120
	}
	for seed := range most {
		wires := 3 + seed*seed%397
		add(fmt.Sprintf("made, %d wires, seed %d", wires, seed), build(t, "made", synth.YAML(wires, int64(seed))))
	}
	for seed := range 150 {
		add(fmt.Sprintf("web %d", seed), build(t, "web", web(uint64(seed))))
	}
	return laid
}

// boards calls a test with many boards.
func boards(t *testing.T, check func(t *testing.T, c *circuit.Circuit, b *formboard.Board)) {
	for _, m := range lay(t) {
		t.Run(m.name, func(t *testing.T) { check(t, m.circuit, m.board) })
	}
}

// TestToScaleWithoutCrossing: each run that holds wires lies on the board once,
// as long as the design says, across no other.
func TestToScaleWithoutCrossing(t *testing.T) {
	uneven, sections := 0, 0
	boards(t, func(t *testing.T, c *circuit.Circuit, b *formboard.Board) {
		laid := map[*circuit.Bundle]int{}
		for _, s := range b.Sections {
			sections++
			if !s.Even {
				uneven++
			}
			if len(s.Limbs) > formboard.MostLimbs || len(s.Spots) != len(s.Limbs)+1 {
				t.Errorf("section %d: %d runs, %d spots", s.Number, len(s.Limbs), len(s.Spots))
			}
			for i, l := range s.Limbs {
				laid[l.Run.Bundle]++
				got := math.Hypot(l.To.At.X-l.From.At.X, l.To.At.Y-l.From.At.Y)
				if want := l.Run.Bundle.Run.LengthM.Value * 1000; math.Abs(got-want) > 1e-6 {
					t.Errorf("run %s is %g mm long, want %g", l.Run.Bundle.Run.Name, got, want)
				}
				if l.From.Place != l.Run.Bundle.Run.From || l.To.Place != l.Run.Bundle.Run.To {
					t.Errorf("run %s lies between %s and %s", l.Run.Bundle.Run.Name, l.From.Place.Name, l.To.Place.Name)
				}
				for _, other := range s.Limbs[:i] {
					if formboard.Cross(l, other) {
						t.Errorf("section %d: runs %d and %d cross", s.Number, l.Run.Number, other.Run.Number)
					}
				}
				if s.Even && l.Trunk && math.Abs(l.From.At.Y-l.To.At.Y) > 1e-9 {
					t.Errorf("trunk run %d is not level", l.Run.Number)
				}
			}
		}
		for _, bundle := range c.Bundles {
			want := 1
			if len(bundle.Wires) == 0 {
				want = 0
			}
			if laid[bundle] != want {
				t.Errorf("run %s lies on the board %d times, want %d", bundle.Run.Name, laid[bundle], want)
			}
		}
	})
	t.Logf("%d of %d sections fanned out", uneven, sections)
	if uneven*20 > sections {
		t.Errorf("%d of %d sections are too crowded for even angles (at most 5 %%)", uneven, sections)
	}
}

// TestLoops: whatever closes a loop has a loose end of its own.
func TestLoops(t *testing.T) {
	loops := 0
	boards(t, func(t *testing.T, c *circuit.Circuit, b *formboard.Board) {
		for _, s := range b.Sections {
			for _, l := range s.Limbs {
				if (l.Run.LoopAt != nil) != (l.From.Copy || l.To.Copy) {
					t.Errorf("run %d: loop at %v", l.Run.Number, l.Run.LoopAt)
				}
				if l.Run.LoopAt != nil {
					loops++
				}
			}
		}
	})
	if loops == 0 {
		t.Error("no loop occurred: the test shows nothing")
	}
}

func TestEnds(t *testing.T) {
	boards(t, func(t *testing.T, c *circuit.Circuit, b *formboard.Board) {
		seen := map[*circuit.Wire]int{}
		list := append([]formboard.End(nil), b.Nowhere...)
		for _, p := range b.Places {
			list = append(list, p.Ends...)
		}
		free := map[*circuit.Wire]float64{}
		for _, e := range list {
			seen[e.Wire]++
			free[e.Wire] += e.FreeMm
			if (e.Via == nil) != (len(e.Wire.Route) == 0) {
				t.Errorf("%s comes out of %v", e.Wire.Number, e.Via)
			}
		}
		for _, w := range c.Wires {
			routeM := 0.0
			for _, r := range w.Route {
				routeM += r.Run.LengthM.Value
			}
			if seen[w] != 2 {
				t.Errorf("%s has %d ends", w.Number, seen[w])
			}
			if len(w.Route) > 0 && !w.LengthGiven && math.Abs(free[w]-(w.LengthM-routeM)*1000) > 1e-6 {
				t.Errorf("%s: %g mm stand out of the loom, want %g", w.Number, free[w], (w.LengthM-routeM)*1000)
			}
		}
	})
}

func TestSupports(t *testing.T) {
	boards(t, func(t *testing.T, c *circuit.Circuit, b *formboard.Board) {
		for _, r := range b.Runs {
			if len(r.Supports) == 0 {
				t.Fatalf("run %d has no clamp", r.Number)
			}
			last := 0.0
			for i, mm := range r.Supports {
				gap := mm - last
				if mm <= 0 || mm >= r.Length || i > 0 && gap > b.Support.Mm+1e-6 && !r.Bundle.Run.Flexes {
					t.Errorf("run %d of %g mm: clamps at %v, at most %g apart", r.Number, r.Length, r.Supports, b.Support.Mm)
				}
				last = mm
			}
			if edge := r.Length - last; edge > 2.5*formboard.FirstSupportMm/2+1e-6 {
				t.Errorf("run %d: last clamp %g mm from its end", r.Number, edge)
			}
		}
	})
}

// TestSupportLimits holds the limits against the published ones: AC 43.13-1B
// par. 11-96, 24 in; ISO 10133:2012 clause 7.3, 450 mm.
func TestSupportLimits(t *testing.T) {
	lib := library.Default()
	for name, want := range map[string]float64{"motorcycle": 24 * 25.4, "off-road": 24 * 25.4, "marine": 450} {
		if got := formboard.SupportFor(lib.Practice(name)); math.Abs(got.Mm-want) > 1e-9 || got.Source == "" {
			t.Errorf("%s: %+v, want %g mm", name, got, want)
		}
	}
}

// shape is where every spot of a board stands, and the heading of every run.
func shape(b *formboard.Board) map[string]formboard.Point {
	out := map[string]formboard.Point{}
	for _, s := range b.Sections {
		for _, p := range s.Spots {
			out[fmt.Sprintf("%d %s %t", s.Number, p.Place.Name, p.Copy)] = p.At
		}
	}
	return out
}

func TestSameEveryTime(t *testing.T) {
	boards(t, func(t *testing.T, c *circuit.Circuit, b *formboard.Board) {
		if diff := cmp.Diff(shape(b), shape(formboard.Lay(c))); diff != "" {
			t.Error(diff)
		}
	})
}

// TestStable: one more load, or one more place at the end of a run, leaves the
// rest of the board as it was.
func TestStable(t *testing.T) {
	text, err := os.ReadFile("../../../designs/fen-runner.yaml")
	if err != nil {
		t.Fatal(err)
	}
	before := shape(formboard.Lay(build(t, "before", text)))
	tests := map[string]string{
		"load": strings.Replace(string(text), "\nloads:\n", "\nloads:\n  extra: {power: 3 W, behaves: resistor, at: fork, fed by: main, returns to: front stud}\n", 1),
		"place": strings.NewReplacer("\nplaces:\n", "\nplaces:\n  box: {ambient: 30 °C}\n",
			"\nwire: ", "  - {from: under seat, to: box, length: 150 mm}\n\nwire: ",
			"\nloads:\n", "\nloads:\n  extra: {power: 3 W, behaves: resistor, at: box, fed by: main, returns to: rear stud}\n").Replace(string(text)),
	}
	for name, after := range tests {
		t.Run(name, func(t *testing.T) {
			got := shape(formboard.Lay(build(t, name, []byte(after))))
			moved := formboard.Point{}
			for spot, at := range before {
				moved = formboard.Point{X: got[spot].X - at.X, Y: got[spot].Y - at.Y}
				break
			}
			for spot, at := range before {
				to, ok := got[spot]
				if !ok || math.Abs(to.X-at.X-moved.X) > 1e-6 || math.Abs(to.Y-at.Y-moved.Y) > 1e-6 {
					t.Errorf("%s moved from %v to %v", spot, at, to)
				}
			}
		})
	}
}

func BenchmarkLay40(b *testing.B)   { benchmark(b, 40) }
func BenchmarkLay1000(b *testing.B) { benchmark(b, 1000) }

func benchmark(b *testing.B, wires int) {
	c := build(b, "made", synth.YAML(wires, 1))
	for b.Loop() {
		formboard.Lay(c)
	}
}

func Example() {
	d, _ := design.Read("small.yaml", []byte(`
fusewright: 1
title: small
system: 12 V
practice: motorcycle
battery: {chemistry: AGM, capacity: 14 Ah, at: tray}
places: {tray: {ambient: 40 °C}, seat: {ambient: 40 °C}, bar: {ambient: 40 °C}}
runs:
  - {from: tray, to: seat, length: 300 mm}
  - {from: seat, to: bar, length: 700 mm}
wire: {insulation: ISO 6722 thin wall class C, size: 1 mm², colour: RD, slack: 50 mm}
grounds: {stud: {kind: frame stud, at: seat}}
fuses: {main: {type: blade C, rating: 10 A, at: tray, fed by: battery}}
loads: {lamp: {power: 18 W, behaves: resistor, at: bar, fed by: main, returns to: stud}}
`), library.Default())
	c, _ := circuit.Build(d)
	for _, s := range formboard.Lay(c).Sections {
		for _, l := range s.Limbs {
			fmt.Printf("run %d: %s at %.0f, %s at %.0f, clamps at %.0f\n", l.Run.Number, l.From.Place.Name, l.From.At.X,
				l.To.Place.Name, l.To.At.X, l.Run.Supports)
		}
	}
	// Output:
	// run 1: tray at 0, seat at 300, clamps at [100 200]
	// run 2: seat at 300, bar at 1000, clamps at [100 600]
}
