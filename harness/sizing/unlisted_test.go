package sizing

import (
	"fmt"
	"slices"
	"strings"
	"testing"
)

// threeLamps are a load behind a fuse of its own and two behind another; on says what the
// only situation turns on.
func threeLamps(on string) string {
	return strings.Replace(single("off-road", "18 A", "resistor", 3), "loads:\n",
		"  g: {at: tray, fed by: battery, stays live: \"test\", wire: {length: 120 mm}}\nloads:\n"+
			"  m: {current: 2 A, behaves: resistor, at: far, own switch: yes, stays live: \"test\", fed by: g, returns to: battery negative}\n"+
			"  n: {current: 9 A, behaves: resistor, at: far, own switch: yes, stays live: \"test\", fed by: g, returns to: battery negative}\n", 1) +
		fmt.Sprintf("situations:\n  all: {engine: cruise, on: [%s]}\n", on)
}

// TestUnlistedLoad: a load that no situation turns on gets the wires and the fuse that it
// would have were it on, and is named; the design's situations stay as they were.
func TestUnlistedLoad(t *testing.T) {
	values := func(on string) (string, *Plan) {
		d := read(t, threeLamps(on))
		before := slices.Clone(d.Situations)
		p, err := Complete(d)
		if err != nil {
			t.Fatal(err)
		}
		if on == "l, m" {
			if err := p.Explain(); err != nil {
				t.Fatal(err)
			}
		}
		if !slices.Equal(before, d.Situations) {
			t.Errorf("on [%s]: the design's situations changed", on)
		}
		return strings.Join(labels(p.s, p.s.best), "; "), p
	}
	want, p := values("l, m, n")
	if len(p.AsIfOn) > 0 {
		t.Errorf("all are listed, and %q are sized as if on", p.AsIfOn)
	}
	for on, names := range map[string][]string{"l, m": {"n"}, "": {"l", "m", "n"}} {
		got, p := values(on)
		if got != want {
			t.Errorf("on [%s]:\n%s\nlisted\n%s", on, got, want)
		}
		if !slices.Equal(p.AsIfOn, names) {
			t.Errorf("on [%s]: %q sized as if on, want %q", on, p.AsIfOn, names)
		}
	}
}
