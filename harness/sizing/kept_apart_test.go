package sizing

import (
	"strings"
	"testing"
)

// A fuse above a switch for either of two lamps of 4 A is chosen for one of them, which take less at the battery's
// 12.8 V than 5 A × 0.8; where each has a switch of its own, for the 8 A that no situation has on: of blade C 10 A.
func TestFuseOfLampsKeptApart(t *testing.T) {
	const lamps = `fusewright: 1
title: t
system: 12 V
practice: motorcycle
battery: {chemistry: AGM, capacity: 12 Ah, resistance: 12 mΩ}
wire: {insulation: ISO 6722 thin wall class B, size: 1.5 mm²}
fuses: {feed: {type: blade C, rating: auto, fed by: battery, wire: {length: 100 mm}}}
switches: {either: {rating: 20 A, fed by: feed, wire: {length: 1 m}POSITIONS}}
loads:
  left: {current: 4 A, behaves: constant powerOWN, fed by: either ONE, wire: {length: 1 m}, returns to: battery negative, return wire: {length: 1 m}}
  right: {current: 4 A, behaves: constant powerOWN, fed by: either OTHER, wire: {length: 1 m}, returns to: battery negative, return wire: {length: 1 m}}
situations: {left: {on: [left]}, right: {on: [right]}}
`
	for _, tt := range []struct{ positions, one, other, own, want string }{
		{", positions: [port, off, starboard]", "port", "starboard", "", "feed blade C 5 A"},
		{"", "", "", ", own switch: yes", "feed blade C 10 A"},
	} {
		got := sizesOf(t, strings.NewReplacer("POSITIONS", tt.positions, " ONE", " "+tt.one, " OTHER", " "+tt.other, "OWN", tt.own).Replace(lamps))
		if got != tt.want {
			t.Errorf("%q: %q, want %q", tt.positions, got, tt.want)
		}
	}
}
