package circuit_test

import (
	"fmt"
	"path/filepath"
	"slices"
	"testing"

	"fusewright/harness/network/circuit"
	"fusewright/harness/proof/synth"
)

// TestWhole checks what must hold of every circuit, on the demo designs and on
// synthetic and random ones.
func TestWhole(t *testing.T) {
	demos, err := filepath.Glob("../../../designs/*.yaml")
	if err != nil || len(demos) == 0 {
		t.Fatalf("no demo designs (%v)", err)
	}
	for _, name := range demos {
		t.Run(filepath.Base(name), func(t *testing.T) { checkWhole(t, read(t, name)) })
	}
	for _, n := range []int{3, 10, 40, 300} {
		t.Run(fmt.Sprintf("synthetic %d", n), func(t *testing.T) {
			checkWhole(t, build(t, "s.yaml", string(synth.YAML(n, 5))))
		})
	}
	for seed := int64(0); seed < 30; seed++ {
		t.Run(fmt.Sprintf("random %d", seed), func(t *testing.T) {
			checkWhole(t, build(t, "r.yaml", string(synth.Random(seed))))
		})
	}
}

func checkWhole(t *testing.T, c *circuit.Circuit) {
	t.Helper()
	refs := map[string]bool{}
	ref := func(s string) {
		if s == "" || refs[s] {
			t.Errorf("reference %q is given twice or is empty", s)
		}
		refs[s] = true
	}
	for i, p := range c.Parts {
		ref(p.Ref)
		if p.Index != i || c.PartOf(p.Source) != p && p.Source != nil {
			t.Errorf("part %d (%s) has index %d or is not found", i, p.Name, p.Index)
		}
	}
	for i, n := range c.Nodes {
		if n.Index != i || n.Name == "" {
			t.Errorf("node %d has index %d, name %q", i, n.Index, n.Name)
		}
	}
	for i, b := range c.Branches {
		if b.Index != i || b.Name == "" || (b.Kind != circuit.LoadBranch && b.Ohm <= 0) ||
			(b.Wire == nil) == (b.Part == nil) {
			t.Errorf("branch %d: %+v", i, b)
		}
		if f := b.Fuse; f != nil && b.Part.Kind != circuit.Fuse {
			ref(f.Ref)
		}
		if (b.Kind == circuit.ContactBranch) != (b.Closer != nil) || (b.Kind == circuit.LoadBranch) != (b.Load != nil) {
			t.Errorf("branch %s lacks what its kind needs", b.Name)
		}
	}
	for i, w := range c.Wires {
		if w.Index != i || w.Number != fmt.Sprintf("W%d", i+1) || w.LengthM <= 0 || w.Branch.Wire != w ||
			w.Branch.A != w.From.Node || w.Branch.B != w.To.Node {
			t.Errorf("wire %d: %+v", i, w)
		}
	}
	// What the forward search for guards and the backward search for feeds say
	// of the sources must agree, branch by branch.
	sources := slices.Clone(c.Posts())
	for _, n := range c.Nodes {
		if c.OfCharger(n) {
			sources = append(sources, n)
		}
	}
	guards, live := c.Guards(), circuit.Reach(c, func(*circuit.Branch) bool { return true }, sources...)
	for i, b := range c.Branches {
		if !b.Feeds() {
			continue
		}
		fed := slices.Contains(sources, b.A)
		for j, on := range c.Feeding(b.A) {
			fed = fed || (on && slices.Contains(sources, c.Branches[j].A))
		}
		if fed == guards[i].Unfed {
			t.Errorf("%s: fed %t, guard %+v", b.Name, fed, guards[i])
		}
		if fed && !live[b.A.Index] {
			t.Errorf("%s is fed but cannot be reached", b.Name)
		}
	}
}
