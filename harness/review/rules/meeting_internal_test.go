package rules

import (
	"slices"
	"strings"
	"testing"

	"fusewright/harness/network/circuit"
	"fusewright/harness/proof/buildtest"
)

// What protects a lamp that is fed over the rest of one relay from a fuse of 10 A and over the make of another from one
// of 15 A: with both coils on one switch never both, whichever way round; on two switches both, 25 A, though neither
// all at rest nor all pulled in joins them; with a delay both for as long as that lasts.
func TestGuardsOfContactsApart(t *testing.T) {
	for _, tt := range []struct {
		name, first, second, more string
		wantA                     float64
	}{
		{"one switch", "a", "a", "", 15},
		{"one switch, the other one plain", "b", "b", "", 15},
		{"two switches", "a", "b", "", 25},
		{"one position each, of one handle", "both one", "both two", "", 25},
		{"by a chain, twice turned over", "a", "turn 87a", "", 25},
		{"an off delay of the second", "a", "a", "off delay: 1 min, ", 25},
		{"an on delay of the first", "a", "a", "on delay: 1 min, ", 15},
	} {
		relay := "{form: mini changeover, MOREfed by: FUSE, coil: {fed by: COIL, returns to: battery negative}, at: box}\n"
		put := func(fuse, coil, more string) string {
			return strings.NewReplacer("MORE", more, "FUSE", fuse, "COIL", coil).Replace(relay)
		}
		c := buildtest.Circuit(t, []byte(`fusewright: 1
title: t
system: 12 V
practice: marine
battery: {chemistry: AGM, capacity: 60 Ah, at: box}
wire: {insulation: tinned marine 105 °C metric, size: 6 mm²}
places: {box: {}}
fuses:
  low: {type: blade C, rating: 10 A, fed by: battery, at: box}
  high: {type: blade C, rating: 15 A, fed by: battery, at: box}
switches:
  a: {rating: 16 A, fed by: low, at: box}
  b: {rating: 16 A, fed by: low, at: box}
  both: {rating: 16 A, fed by: low, positions: {off: none, one: one, two: two}, at: box}
relays:
  turn: `+put("low", "a", "")+"  k: "+put("low", tt.first, "")+"  l: "+put("high", tt.second, tt.more)+`loads:
  lamp: {current: 3 A, fed by: [k 87a, l], returns to: battery negative, at: box}
situations: {s: {}}
`))
		f := newFacts(&Input{Circuit: c})
		i := slices.IndexFunc(c.Branches, func(b *circuit.Branch) bool { return b.Load != nil && b.Load.Load != nil })
		if g := f.guards[c.Branches[i].A.Index]; g.A != tt.wantA {
			t.Errorf("%s: %g A, want %g A", tt.name, g.A, tt.wantA)
		}
	}
}
