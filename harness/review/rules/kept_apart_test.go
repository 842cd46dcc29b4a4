package rules_test

import (
	"strings"
	"testing"

	"fusewright/harness/proof/example"
)

// What a feed's branches draw together leaves out what a switch with positions or a relay that changes over keeps apart:
// of vests of 4 A (48 W at 12 V) and 3 A either position takes less than 5 A, both together more; at 6 A one of them
// alone is more than the fuse. A coil takes 12 V / 85 Ω = 0.14 A.
func TestKeptApart(t *testing.T) {
	const vests = `
fuses:
  feed fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: keyed feed, wire: {size: 1.5 mm², length: 100 mm}}
switches:
  either: {rating: 16 A, at: rear, fed by: feed fuse, wire: {size: 1.5 mm²}POSITIONS}
RELAYloads:
  left vest: {current: LEFT, rated at: 12 V, behaves: constant power, at: rear, fed by: FROM, wire: {size: 1.5 mm²}, returns to: frame}
  right vest: {current: 3 A, rated at: 12 V, behaves: constant power, at: rear, fed by: TO, wire: {size: 1.5 mm²}, returns to: frame}
situations:
  none: {key: on, engine: cruise}
`
	const relay = "relays:\n  change: {form: mini changeover, at: rear, fed by: feed fuse, wire: {size: 1.5 mm²}, coil: {fed by: either, returns to: frame, wire: {size: 1.5 mm²}, return wire: {size: 1.5 mm²}}}\n"
	for _, tt := range []struct{ name, positions, relay, from, to, left, want string }{
		{"a plain switch for both", "", "", "either", "either", "4 A", "left vest and right vest, which draw 7.00 A together"},
		{"either, or none", ", positions: [one, off, other]", "", "either one", "either other", "4 A", ""},
		{"either always", ", positions: [one, other]", "", "either one", "either other", "4.9 A", ""},
		{"at the rating", ", positions: [one, off, other]", "", "either one", "either other", "5 A", ""},
		{"one alone is too much", ", positions: [one, off, other]", "", "either one", "either other", "6 A", "left vest, which draws 6.00 A"},
		{"both in one of three", ", positions: {one: one, off: none, both: [one, other]}", "", "either one", "either other", "4 A", "left vest and right vest, which draw 7.00 A together"},
		{"a relay that changes over", "", relay, "change 87a", "change", "4 A", ""},
		{"with its coil, below", "", relay, "change", "change 87a", "4.8 A", ""},
		{"with its coil, above", "", relay, "change", "change 87a", "4.9 A", "change and left vest, which draw 5.04 A together"},
		{"the coil's switch feeds a vest too, below", "", relay, "either", "change 87a", "4.8 A", ""},
		{"the coil's switch feeds a vest too, above", "", relay, "either", "change 87a", "4.9 A", "change and left vest, which draw 5.04 A together"},
		{"and a vest over the relay: all on", "", relay, "either", "change", "4.8 A", "change, left vest and right vest, which draw 7.94 A together"},
	} {
		src := strings.NewReplacer("POSITIONS", tt.positions, "RELAY", tt.relay, "FROM", tt.from, "TO", tt.to, "LEFT", tt.left).Replace(vests)
		got := ""
		for _, f := range assess(t, "vests.yaml", []byte(example.Design(src))) {
			if f.Rule == "feed-fuse-under-branches" {
				_, got, _ = strings.Cut(f.What, " feeds ")
			}
		}
		if got != tt.want {
			t.Errorf("%s: %q, want %q", tt.name, got, tt.want)
		}
	}
}
