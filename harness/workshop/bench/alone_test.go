package bench_test

import (
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
