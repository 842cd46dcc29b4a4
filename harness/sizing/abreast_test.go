package sizing

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"fusewright/library"
)

// longRun is one critical load at the end of a run, behind a blade fuse and, where relay
// is not empty, a relay.
func longRun(systemV, chargeV, lengthM, drawA float64, relay, fedBy string) string {
	return fmt.Sprintf(`fusewright: 1
title: a long run
system: %g V
practice: off-road
battery: {chemistry: AGM, capacity: 100 Ah, rate: 10 h, resistance: 5 mΩ, at: tray}
charging: {regulated: %g V, output: {1000 rpm: 500 A, 3000 rpm: 600 A}, idle: 1000 rpm, cruise: 3000 rpm, hot derating: 10 %%}
vehicle loads: {machine: 60 W}
places: {tray: {ambient: 40 °C}, far: {ambient: 40 °C}}
runs:
  - {from: tray, to: far, length: %g m}
taps:
  keyed feed: {at: tray, hot: key, fuse: 10 A, spare: 5 A, supervised: no}
fuses:
  f: {at: tray, fed by: battery, wire: {length: 120 mm}, stays live: test}
%sloads:
  l: {current: %g A, rated at: %g V, behaves: constant power, critical: yes, at: far, fed by: %s, returns to: battery negative, own switch: yes, stays live: test}
`, systemV, chargeV, lengthM, relay, drawA, systemV, fedBy)
}

// keyedRelay is a relay before the long run.
const keyedRelay = `relays:
  k: {at: tray, fed by: f, wire: {length: 200 mm}, stays live: test, coil: {fed by: keyed feed, wire: {length: 200 mm}, returns to: battery negative, return wire: {length: 200 mm}, suppressed by: resistor}}
`

// TestFeedAndReturnAbreast: where a holder or a relay takes no thicker feed, its return
// does not pay for it: the two lie at most two sizes of a shop apart, and what that
// leaves has a tail into the holder as a way out.
func TestFeedAndReturnAbreast(t *testing.T) {
	for _, c := range []struct {
		name, src, holder string
	}{
		{"12 V, blade holder", longRun(12, 14.3, 12, 10, "", "f"), "f"},
		{"12 V, blade holder, longer", longRun(12, 14.3, 16, 10, "", "f"), "f"},
		{"24 V, relay", longRun(24, 28.6, 16, 9.64, keyedRelay, "k"), "k"},
	} {
		d := read(t, c.src)
		p, err := Complete(d)
		if err != nil {
			t.Fatal(err)
		}
		feed, back := d.Loads[0].FedBy[0].Wire, d.Loads[0].Returns[0].Wire
		if n := shopSizesApart(feed.Type, feed.Size, back.Size); n > 2 {
			t.Errorf("%s: feed %s, return %s: %d sizes apart", c.name, feed.Size.Label, back.Size.Label, n)
		}
		if len(p.Remaining) == 0 {
			continue
		}
		if err := p.Explain(); err != nil {
			t.Fatal(err)
		}
		if !slices.ContainsFunc(p.WaysOut, func(o *WayOut) bool {
			return strings.Contains(o.What, "a tail of 150 mm behind "+c.holder) && o.Left == 0
		}) {
			t.Errorf("%s: %s; no tail among the ways out %+v", c.name, p.Remaining[0].What, p.WaysOut)
		}
	}
}

// shopSizesApart is how many sizes of a shop two sizes lie apart.
func shopSizesApart(kind *library.WireType, a, b *library.WireSize) int {
	list := kind.ShopSizes()
	n := slices.Index(list, a) - slices.Index(list, b)
	return max(n, -n)
}
