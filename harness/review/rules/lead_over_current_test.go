package rules_test

import (
	"fmt"
	"strings"
	"testing"

	"fusewright/harness/network/warm"
	"fusewright/harness/proof/buildtest"
	"fusewright/harness/proof/example"
)

// A lead at, below and above what it may carry: the load draws a steady share of that, its power
// known to the last watt; past its class as is likely it is danger.
func TestLeadCurrentByHand(t *testing.T) {
	const tail = "loads:\n  tail lamp: {power: %.6g W, rated at: %.9g V, behaves: constant power, figure: highest, tolerance: 0 %%, lead: {size: 0.14 mm²}, at: rear, fed by: lamp fuse, wire: {size: 2.5 mm²}, returns to: frame}\n" +
		"situations:\n  on: {engine: cruise, on: all}\n"
	c := buildtest.Circuit(t, example.Design(fmt.Sprintf(tail, 5.0, 12.0)))
	feed := c.Wires[1]
	lead := warm.New(c).Lead(feed, 35, 0.14)
	for _, x := range []struct {
		amps float64
		want string
	}{{0.9 * lead.AllowedA, ""}, {1.02 * lead.AllowedA, "fault"}, {1.3 * lead.ToClassA, "danger"}} {
		got := ""
		// At cruise the lamp gets some 14.2 V.
		for _, f := range assess(t, "t.yaml", []byte(example.Design(fmt.Sprintf(tail, x.amps*14.25, 14.25)))) {
			if f.Rule == "lead-over-current" {
				got = f.Severity.String()
				if !strings.Contains(f.What, "0.14 mm² lead may carry") {
					t.Error(f.What)
				}
			}
		}
		if got != x.want {
			t.Errorf("%.3g A of %.3g A, %.3g A to the class: %q, want %q", x.amps, lead.AllowedA, lead.ToClassA, got, x.want)
		}
	}
}
