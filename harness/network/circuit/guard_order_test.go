package circuit_test

import (
	"slices"
	"strings"
	"testing"

	"fusewright/harness/network/circuit"
	"fusewright/harness/proof/buildtest"
)

// The fuses above one are listed nearest first, and of parallel feeds in the order
// of their branches, whichever is named first as a feed.
func TestUpstreamOfParallelFeeds(t *testing.T) {
	const text = `fusewright: 1
title: t
system: 12 V
practice: motorcycle
battery: {chemistry: AGM, capacity: 10 Ah, at: a}
places: {a: {ambient: 30 °C}}
fuses:
  trunk: {type: blade C, rating: 30 A, at: a, fed by: battery}
  left: {type: blade C, rating: 15 A, at: a, fed by: trunk}
  right: {type: blade C, rating: 15 A, at: a, fed by: trunk}
  lamp: {type: blade C, rating: 5 A, at: a, fed by: [FEEDS]}
loads:
  lamp: {power: 5 W, behaves: resistor, at: a, fed by: lamp, returns to: battery negative}
`
	for _, feeds := range []string{"left, right", "right, left"} {
		c := buildtest.Circuit(t, strings.ReplaceAll(strings.Replace(text, "FEEDS", feeds, 1), "  lamp: {power", "  glow: {power"))
		var got []string
		for _, b := range c.Branches {
			if b.Kind == circuit.FuseBranch && b.Part.Name == "lamp" {
				for _, up := range c.Guards().Upstream(b) {
					got = append(got, up.Part.Name)
				}
			}
		}
		if want := []string{"left", "right", "trunk"}; !slices.Equal(got, want) {
			t.Errorf("fed by %s: %v, want %v", feeds, got, want)
		}
	}
}
