package starter_test

import (
	"strings"
	"testing"

	"fusewright/harness/design/starter"
	"fusewright/library"
)

// TestABoatIsMoored: a boat's first design speaks of a boat, and its float switch is one
// that may stand in petrol vapour.
func TestABoatIsMoored(t *testing.T) {
	for vehicle, c := range map[string]struct{ says, not string }{
		"boat": {"  moored: {key: off}", "parked"},
		"quad": {"  parked: {key: off}", "moored"},
	} {
		src, err := starter.Write(starter.Answers{Vehicle: vehicle}, library.Default())
		if err != nil {
			t.Fatal(err)
		}
		text := string(src)
		if !strings.Contains(text, c.says) || strings.Contains(text, c.not) || strings.Contains(text, "machine") {
			t.Errorf("%s:\n%s", vehicle, text)
		}
		if float := strings.Contains(text, "ignition protected: yes}   # buy one marked so"); float != (vehicle == "boat") {
			t.Errorf("%s: float switch for petrol vapour is %v", vehicle, float)
		}
	}
}
