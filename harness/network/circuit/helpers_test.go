package circuit_test

import (
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/library"
)

func placeName(p *design.Place) string {
	if p == nil {
		return "-"
	}
	return p.Name
}

func crimpName(t *library.Terminal) string {
	if t == nil {
		return "no crimp part"
	}
	return t.Name
}

// named finds a part by its name in the design.
func named(t testing.TB, c *circuit.Circuit, name string) *circuit.Part {
	t.Helper()
	for _, p := range c.Parts {
		if p.Name == name {
			return p
		}
	}
	t.Fatalf("no part %q", name)
	return nil
}

// branch finds a branch by name.
func branch(t testing.TB, c *circuit.Circuit, name string) *circuit.Branch {
	t.Helper()
	for _, b := range c.Branches {
		if b.Name == name {
			return b
		}
	}
	t.Fatalf("no branch %q", name)
	return nil
}

// node is the node of a part's terminal.
func node(t testing.TB, c *circuit.Circuit, part, terminal string) *circuit.Node {
	t.Helper()
	x := named(t, c, part).Terminal(terminal)
	if x == nil {
		t.Fatalf("no terminal %q of %q", terminal, part)
	}
	return x.Node
}

// names lists the branches by name.
func names(list []*circuit.Branch) []string {
	out := []string{}
	for _, b := range list {
		out = append(out, b.Name)
	}
	return out
}
