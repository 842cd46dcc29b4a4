package ride_test

import (
	"os"
	"strings"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/study/ride"
)

// A link that is closed with the engine stopped lets both batteries run down, which a ride
// that follows the first alone says; a relay that opens by itself keeps them apart.
func TestLinkedBatteriesRunDownTogether(t *testing.T) {
	src, err := os.ReadFile("../../../testdata/rules/ok/house-by-sensing-relay.yaml")
	if err != nil {
		t.Fatal(err)
	}
	const legs = "rides:\n  day: {legs: [{lasts: 3 h, situation: at camp, on: [cabin lamp]}, {lasts: 1 h, situation: driving, on: [cabin lamp]}]}\n"
	at := strings.Index(string(src), "relays:")
	end := strings.Index(string(src), "loads:\n  cabin")
	closed := string(src[:at]) + "switches:\n  charging relay: {type: battery switch 100 A, at: battery tray, fed by: start end, wire: {length: 120 mm}}\n" +
		strings.Replace(string(src[end:]), "key: off,", "key: off, closed: [charging relay],", 1)
	for text, want := range map[string]int{closed: 1, string(src): 0} {
		d, err := design.Read("link.yaml", []byte(text+legs), nil)
		if err != nil {
			t.Fatal(err)
		}
		c, err := circuit.Build(d)
		if err != nil {
			t.Fatal(err)
		}
		r, err := ride.Simulate(c, d.Rides[0], ride.Options{})
		if err != nil {
			t.Fatal(err)
		}
		if got := r.Shared(); got != want {
			t.Errorf("shared from leg %d, want %d:\n%s", got, want, text)
		}
	}
}
