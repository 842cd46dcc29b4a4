package rules_test

import (
	"slices"
	"strings"
	"testing"

	"fusewright/harness/proof/example"
)

// What hangs on a condition: live with the key off only where a situation says so, and asked
// about where nothing of the vehicle's own draws with it.
func TestConditions(t *testing.T) {
	const beam, own = "situations:\n  night: {engine: cruise, with: [brake], on: all}\n", "vehicle loads:\n  brake lamps: {power: 42 W, when: brake}\n"
	for _, c := range []struct{ name, more, want string }{
		{"the vehicle's own draw is given", beam + own, ""},
		{"it is not", beam, "data-missing: what the vehicle itself draws with brake is not given: none of its loads is `when: brake`"},
		{"with the key off too", beam + own + "  camp: {key: off, with: brake, on: all}\n",
			"live-with-key-off: stop can leave tail lamp on with the key off, drawing about 417 mA; a full battery no longer starts the engine after 11.5 h"},
	} {
		more := strings.Replace(c.more, own, "", 1)
		text := example.Design("taps:\n  stop: {at: battery tray, hot: brake, fuse: 10 A, spare: 6 A, supervised: no}\n" +
			"fuses:\n  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: stop, wire: {size: 1 mm², length: 100 mm}}\n" + more)
		if strings.Contains(c.more, own) {
			text = strings.Replace(text, "vehicle loads:\n", own, 1)
		}
		var got []string
		for _, f := range assess(t, "t.yaml", []byte(text)) {
			got = append(got, f.Rule+": "+f.What)
		}
		slices.Sort(got)
		if s := strings.Join(got, "\n"); s != c.want {
			t.Errorf("%s: %s\nwant %s", c.name, s, c.want)
		}
	}
}
