package circuit_test

import (
	"os"
	"testing"

	"fusewright/harness/network/circuit"
)

// A fuse on a post shares its node: no wire, no length without a fuse. At the end of a link it is the
// output that is bolted, and what feeds the battery.
func TestFuseOnPost(t *testing.T) {
	src, err := os.ReadFile("../../../testdata/read/ok/on-post.yaml")
	if err != nil {
		t.Fatal(err)
	}
	c := build(t, "on-post.yaml", string(src))
	start, house := named(t, c, "start end"), named(t, c, "house end")
	for _, x := range []struct {
		fuse     *circuit.Part
		terminal string
		post     *circuit.Terminal
	}{{start, "in", named(t, c, "battery").Terminal("+")}, {house, "out", named(t, c, "house").Terminal("+")}} {
		at := x.fuse.Terminal(x.terminal)
		if at.Node != x.post.Node || len(at.Wires) != 0 || at.OnPost() != x.post {
			t.Errorf("%s: %d wires at %s", x.fuse.Name, len(at.Wires), x.terminal)
		}
		if on := x.post.Bolted(); len(on) != 1 || on[0] != at {
			t.Errorf("%d fuses on the post of %s", len(on), x.post.Part.Name)
		}
		if x.fuse.Place == nil || x.fuse.Place != x.post.Part.Place {
			t.Errorf("%s is not where its battery is", x.fuse.Name)
		}
	}
	if house.Terminal("in").OnPost() != nil || !c.MainFeed(house.Terminal("out").Node).Whole {
		t.Error("the link does not lead to the house battery")
	}
	if n := len(named(t, c, "house").Terminal("+").Wires); n != 1 { // the shore charger's
		t.Errorf("%d wires at the house battery, want 1", n)
	}
}
