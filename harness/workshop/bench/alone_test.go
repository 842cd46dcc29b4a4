package bench_test

import (
	"slices"
	"strings"
	"testing"

	"fusewright/harness/network/circuit"
	"fusewright/harness/workshop/bench"
)

// TestEachFeedAlone: a load fed by two switches is read by each with the other open, as
// one loop of that way alone by hand, whichever is closed in the situation; behind one switch, or past a switch, it is not.
func TestEachFeedAlone(t *testing.T) {
	two := strings.NewReplacer("  s: {rating", "  t: {rating: 10 A, fed by: f, wire: {length: 4 m}}\n  s: {rating",
		"fed by: s, wire: {length: 3 m}", "fed by: [s, t], wire: {length: 3 m}").Replace(tiny)
	named := read(t, strings.Replace(two, "on: [heater]}", "on: [heater], closed: [t]}", 1))
	setup := bench.Make(named).Sections
	for _, s := range setup {
		if s.Kind == bench.InUse && !strings.Contains(s.Setup[0], "Switches closed: S1 t.") {
			t.Errorf("one feed is closed: %s", s.Setup[0])
		}
	}
	for _, c := range []*circuit.Circuit{named, read(t, two)} {
		eachAlone(t, c)
	}
	for name, src := range map[string]string{
		"one switch":    tiny,
		"past a switch": strings.Replace(two, "fed by: [s, t]", "fed by: [s, f]", 1),
	} {
		for _, s := range bench.Make(read(t, src)).Sections {
			for _, g := range s.Groups {
				for _, k := range g.Checks {
					if strings.Contains(k.Where, ", only ") {
						t.Errorf("%s: %s %s", name, k.Ref, k.Where)
					}
				}
			}
		}
	}
}

// TestEachPosition: a load is read in each position that gives it, whether a situation has it there or none does,
// as one loop by hand: with the ohms of the resistor on its way, and without.
func TestEachPosition(t *testing.T) {
	src := strings.NewReplacer("switches:", "resistors:\n  r: {resistance: 1 Ω, rating: 50 W, fed by: s low, wire: {length: 1 m}}\nswitches:", "  s: {rating", "  s: {positions: [off, low, high], rating",
		"fed by: s, wire: {length: 3 m}", "fed by: [r, s high], wire: {length: 3 m}", "on: [heater]}", "on: [heater], switches: {s: low}}").Replace(tiny)
	for name, src := range map[string]string{
		"one situation": src,
		"two":           strings.Replace(src, "  parked:", "  full: {key: on, on: [heater], switches: {s: high}}\n  parked:", 1),
	} {
		c := read(t, src)
		test := bench.Make(c)
		chemistry := c.Design.Battery.Chemistry
		emf, inner := chemistry.OpenCircuitV(0.8), 0.010*(1+(chemistry.EmptyOhmRatio-1)*0.2)
		load := c.PartOf(c.Design.Loads[0])
		paths, _ := c.FeedPaths(load.Terminal("+").Node)
		back := c.MainReturn(load.Terminal("-").Node, c.Negative())
		var got, want []float64
		for _, p := range paths {
			way := 0.0
			for _, b := range append(p.Branches, back.Branches...) {
				way += b.Ohm
			}
			want = append(want, way*emf/(inner+way+2))
		}
		for _, s := range test.Sections {
			for _, k := range s.Checks() {
				if s.Kind == bench.InUse && k.Ref == "E1" && k.Below {
					got = append(got, k.Nominal)
				}
			}
		}
		slices.Sort(got)
		slices.Sort(want)
		if len(got) != len(want) || len(want) != 2 {
			t.Fatalf("%s: read %v, by hand %v", name, got, want)
		}
		for i := range want {
			near(t, name, got[i], want[i])
		}
	}
}

func eachAlone(t *testing.T, c *circuit.Circuit) {
	t.Helper()
	test := bench.Make(c)
	load := c.PartOf(c.Design.Loads[0])
	paths, _ := c.FeedPaths(load.Terminal("+").Node)
	if len(paths) != 2 {
		t.Fatalf("%d ways in", len(paths))
	}
	chemistry := c.Design.Battery.Chemistry
	emf, inner := chemistry.OpenCircuitV(0.8), 0.010*(1+(chemistry.EmptyOhmRatio-1)*0.2)
	back := c.MainReturn(load.Terminal("-").Node, c.Negative())
	for _, p := range paths {
		way, by := 0.0, ""
		for _, b := range append(p.Branches, back.Branches...) {
			way += b.Ohm
			if b.Closer != nil {
				by = b.Part.Ref
			}
		}
		near(t, "only "+by, find(t, test, bench.InUse, "E1", "only "+by).Nominal, way*emf/(inner+way+2))
	}
}
