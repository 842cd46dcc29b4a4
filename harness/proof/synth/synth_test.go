package synth_test

import (
	"bytes"
	"fmt"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/proof/synth"
)

// build reads a synthetic design and makes its circuit.
func build(t testing.TB, src []byte) *circuit.Circuit {
	t.Helper()
	d, err := design.Read("synthetic.yaml", src, nil)
	if err != nil {
		t.Fatalf("%v\n%s", err, src)
	}
	c, err := circuit.Build(d)
	if err != nil {
		t.Fatalf("%v\n%s", err, src)
	}
	return c
}

// TestYAML reads harnesses of every small size and some large ones: each has
// exactly the wires asked for, and the same seed gives the same text.
func TestYAML(t *testing.T) {
	sizes := []int{0, 100, 137, 250, 499, 1000, 3000, 10000}
	for n := synth.LeastWires; n <= 80; n++ {
		sizes = append(sizes, n)
	}
	for _, n := range sizes {
		t.Run(fmt.Sprint(n), func(t *testing.T) {
			src := synth.YAML(n, int64(n%7))
			if !bytes.Equal(src, synth.YAML(n, int64(n%7))) {
				t.Error("two calls give two texts")
			}
			c := build(t, src)
			if want := max(n, synth.LeastWires); len(c.Wires) != want {
				t.Errorf("%d wires, want %d\n%s", len(c.Wires), want, src)
			}
		})
	}
}

func TestSeeds(t *testing.T) {
	if bytes.Equal(synth.YAML(100, 1), synth.YAML(100, 2)) {
		t.Error("two seeds give one text")
	}
}

// TestVariety checks that what a large harness should hold occurs in one of a
// hundred wires already.
func TestVariety(t *testing.T) {
	c := build(t, synth.YAML(100, 1))
	kinds, behaviours, insulation := map[circuit.Kind]int{}, map[design.Behaviour]int{}, map[string]int{}
	roles, crowded := map[circuit.Role]int{}, 0
	for _, p := range c.Parts {
		kinds[p.Kind]++
	}
	for _, l := range c.Design.Loads {
		behaviours[l.Behaves]++
	}
	for _, w := range c.Wires {
		insulation[w.Spec.Type.Name]++
		roles[w.Role]++
		if w.FromEnd == nil || w.ToEnd == nil {
			t.Errorf("%s from %s to %s: no crimp part fits", w.Number, w.From.Node.Name, w.To.Node.Name)
		}
	}
	for _, b := range c.Bundles {
		if len(b.Wires) >= 5 {
			crowded++
		}
	}
	if len(kinds) != 11 || len(behaviours) != 4 || len(insulation) < 2 || len(roles) != 4 || crowded == 0 {
		t.Errorf("kinds %v, behaviours %v, insulation %v, roles %v, %d bundles of five or more wires", kinds,
			behaviours, insulation, roles, crowded)
	}
}

var benchSizes = []int{10, 100, 1000, 10000}

func BenchmarkRead(b *testing.B) {
	for _, n := range benchSizes {
		src := synth.YAML(n, 1)
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			b.SetBytes(int64(len(src)))
			b.ReportAllocs()
			for b.Loop() {
				if _, err := design.Read("synthetic.yaml", src, nil); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkBuild(b *testing.B) {
	for _, n := range benchSizes {
		d, err := design.Read("synthetic.yaml", synth.YAML(n, 1), nil)
		if err != nil {
			b.Fatal(err)
		}
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := circuit.Build(d); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// BenchmarkQueries runs what the rules ask of a whole circuit.
func BenchmarkQueries(b *testing.B) {
	for _, n := range benchSizes {
		c := build(b, synth.YAML(n, 1))
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			for b.Loop() {
				c.Guards()
				c.LiveKeyOff(true)
				for _, s := range c.Design.Situations {
					circuit.Contacts(c, s)
				}
				for _, br := range c.Branches {
					switch {
					case br.Load != nil:
						c.MainFeed(br.A)
						c.MainReturn(br.B, c.Negative())
					case br.Fuse != nil:
						c.BelowBranch(br)
					}
				}
			}
		})
	}
}
