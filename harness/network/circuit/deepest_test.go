package circuit

import (
	"fmt"
	"strings"
	"testing"

	"fusewright/harness/design"
	"fusewright/library"
)

// The switch behind a load is found through three relays in a row, each of whose coils the next one
// feeds, and not through four.
func TestLastSwitchBehindRelays(t *testing.T) {
	for relays, want := range map[int]int{0: 1, 1: 1, 3: 1, 4: 0} {
		text := "fusewright: 1\ntitle: relays\nvehicle: invented\nsystem: 12 V\npractice: camper\n" +
			"battery: {chemistry: AGM, capacity: 60 Ah}\nwire: {size: 1 mm²}\n" +
			"fuses: {main: {type: blade C, rating: 10 A, fed by: battery, wire: {length: 100 mm}}}\n" +
			"switches: {hand: {rating: 10 A, fed by: main, wire: {length: 100 mm}}}\nrelays:\n"
		feed := "hand"
		for i := range relays {
			text += fmt.Sprintf("  relay %d: {form: mini make, fed by: main, wire: {length: 100 mm}, coil: {fed by: %s, wire: {length: 100 mm}, returns to: battery negative, return wire: {length: 100 mm}}}\n", i, feed)
			feed = fmt.Sprintf("relay %d", i)
		}
		text = strings.TrimSuffix(text, "relays:\n") + "loads: {lamp: {power: 20 W, behaves: resistor, fed by: " + feed +
			", wire: {length: 1 m}, returns to: battery negative, return wire: {length: 1 m}}}\n"
		d, err := design.Read("relays.yaml", []byte(text), library.Default())
		if err != nil {
			t.Fatal(err)
		}
		c, err := Build(d)
		if err != nil {
			t.Fatal(err)
		}
		paths, _ := c.FeedPaths(c.PartOf(d.Loads[0]).Terminal("+").Node)
		if got := c.lastSwitches(paths[0], 0); len(paths) != 1 || len(got) != want {
			t.Errorf("through %d relays: %d ways, %d switches, want %d", relays, len(paths), len(got), want)
		}
	}
}
