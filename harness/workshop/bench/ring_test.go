package bench_test

import (
	"strings"
	"testing"

	"fusewright/harness/network/circuit"
	"fusewright/harness/workshop/bench"
)

// TestRingOneFuseOut: with one fuse out its load side has the volts of the joint, which lose what the other leg does
// at all the current; of a feed alone there is no such reading.
func TestRingOneFuseOut(t *testing.T) {
	src := strings.NewReplacer("switches:", "  g: {type: blade C, rating: 10 A, fed by: battery, wire: {length: 4 m}}\nsplices:\n  joint: {fed by: [f, g], wire: {length: 2 m}}\nswitches:",
		"fed by: f, wire: {length: 1 m}", "fed by: joint, wire: {length: 1 m}", "  parked: {key: off}\n", "").Replace(tiny)
	c := read(t, src)
	test := bench.Make(c)
	chemistry := c.Design.Battery.Chemistry
	emf, inner := chemistry.OpenCircuitV(0.8), 0.010*(1+(chemistry.EmptyOhmRatio-1)*0.2)
	heater := c.PartOf(c.Design.Loads[0])
	paths, _ := c.FeedPaths(heater.Terminal("+").Node)
	back := c.MainReturn(heater.Terminal("-").Node, c.Negative())
	if len(paths) != 2 {
		t.Fatalf("%d ways", len(paths))
	}
	for _, p := range paths {
		whole, leg, other := 0.0, 0.0, ""
		for _, b := range append(p.Branches, back.Branches...) {
			whole += b.Ohm
			if b.Wire != nil && b.Wire.To.Part.Name == "joint" || b.B.Terminals[0].Part.Name == "f" || b.B.Terminals[0].Part.Name == "g" || b.Kind == circuit.FuseBranch {
				leg += b.Ohm
			}
			if b.Kind == circuit.FuseBranch {
				other = map[string]string{"f": "g", "g": "f"}[b.Part.Name]
			}
		}
		ref := ""
		for _, x := range c.Parts {
			if x.Name == other {
				ref = x.Ref
			}
		}
		near(t, other+" out", find(t, test, bench.InUse, ref, ref+" out").Nominal, leg*emf/(inner+whole+2))
	}
	for _, s := range bench.Make(read(t, tiny)).Sections {
		for _, k := range s.Checks() {
			if strings.HasSuffix(k.Where, " out") && strings.Contains(k.Where, "holder") {
				t.Errorf("without a ring: %s", k.Where)
			}
		}
	}
}
