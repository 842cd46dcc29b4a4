package sources_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/proof/buildtest"
	"fusewright/harness/review/sources"
	"fusewright/library"
)

func demo(t testing.TB, name string) *circuit.Circuit {
	t.Helper()
	c := buildtest.Circuit(t, buildtest.File(t, "../../../designs/"+name))
	return c
}

// TestOf: every row that a wire, fuse, relay, block, switch, load or cover of the
// demo designs comes from is named under its source, once; sources come surest
// first and none is without a text.
func TestOf(t *testing.T) {
	for _, name := range []string{"fen-runner.yaml", "reed-skiff.yaml"} {
		c := demo(t, name)
		under := map[string]library.Source{} // by use
		last := -1
		for _, u := range sources.Of(c) {
			at := slices.Index(library.Certainties, u.Source.Certainty)
			if at < last {
				t.Errorf("%s: %q comes behind a less sure one", name, u.Source.Text)
			}
			last = at
			if u.Source.Text == "" || len(u.For) == 0 {
				t.Errorf("%s: source without text or use: %+v", name, u)
			}
			for i, use := range u.For {
				if slices.Contains(u.For[:i], use) {
					t.Errorf("%s: %q is given twice under %q", name, use, u.Source.Text)
				}
				under[use] = u.Source
			}
		}
		want := func(use string, s library.Source) {
			if under[use] != s {
				t.Errorf("%s: %q is under %q, want %q", name, use, under[use], s)
			}
		}
		for _, w := range c.Wires {
			want("wire "+w.Spec.Type.Name+" "+w.Spec.Size.Label, w.Spec.Size.Source)
			for _, end := range []*library.Terminal{w.FromEnd, w.ToEnd} {
				if end != nil {
					want("terminal "+end.Name, end.Source)
				}
			}
		}
		for _, r := range c.Design.Relays {
			want("relay "+r.Form.Name, r.Form.Source)
		}
		for _, l := range c.Design.Loads {
			if l.Type != nil && l.Type.Source.Text != "" {
				want("load "+l.Type.Name, l.Type.Source)
			}
		}
		want("battery "+c.Design.Battery.Chemistry.Name, c.Design.Battery.Chemistry.Source)
	}
}

// TestAssumptions: every branch with an assumed value is named once.
func TestAssumptions(t *testing.T) {
	c := demo(t, "reed-skiff.yaml")
	named := map[string]int{}
	for _, a := range sources.Assumptions(c) {
		for _, at := range a.At {
			named[at+" "+a.What]++
		}
	}
	for _, b := range c.Branches {
		if got := named[b.Name+" "+b.Assumed]; b.Assumed != "" && got != 1 {
			t.Errorf("%s (%s) is named %d times", b.Name, b.Assumed, got)
		}
	}
	if len(named) == 0 {
		t.Error("no assumption found")
	}
}

func ExampleOf() {
	src := []byte(strings.TrimSpace(`
fusewright: 1
title: one lamp
vehicle: invented
revision: A
system: 12 V
practice: motorcycle
battery: {chemistry: AGM, capacity: 12 Ah}
wire: {insulation: ISO 6722 thin wall class B, size: 1 mm²}
fuses:
  f: {type: blade C, rating: 5 A, fed by: battery, wire: {length: 100 mm}}
loads:
  lamp: {power: 10 W, rated at: 12 V, behaves: resistor, fed by: f, wire: {length: 1 m}, returns to: battery negative, return wire: {length: 1 m}}
`))
	d, err := design.Read("lamp.yaml", src, library.Default())
	if err != nil {
		panic(err)
	}
	c, err := circuit.Build(d)
	if err != nil {
		panic(err)
	}
	for _, u := range sources.Of(c) {
		if slices.Contains(u.For, "fuse blade C") {
			fmt.Println(u.Source.Certainty)
		}
	}
	// Output: two sources
}
