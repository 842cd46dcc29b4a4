package rules

import (
	"fmt"
	"strings"
	"testing"
)

// TestGradingOfParallelFeeds: two fuses of 30 A that feed one place together stand before
// a lower one with 60 A, also when a switch follows; one behind a switch of its own
// leaves the other alone with it.
func TestGradingOfParallelFeeds(t *testing.T) {
	const feeds = `
fuses:
  left: {type: blade C, rating: 30 A, at: battery tray, fed by: battery, wire: {size: 6 mm², length: 100 mm}}
  right: {type: blade C, rating: 30 A, at: battery tray, fed by: battery, wire: {size: 6 mm², length: 100 mm}}
  lamp fuse: {type: blade C, rating: %d A, at: rear, fed by: %s, wire: {size: 6 mm²}}
switches:
  feed switch: {rating: 80 A, at: rear, fed by: %s, wire: {size: 6 mm²}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 6 mm²}, returns to: frame}
  left lamp: {power: 5 W, behaves: resistor, at: rear, fed by: left, wire: {size: 6 mm²}, returns to: frame}
  right lamp: {power: 5 W, behaves: resistor, at: rear, fed by: right, wire: {size: 6 mm²}, returns to: frame}
`
	for name, c := range map[string]struct {
		rating             int
		fedBy, switchFedBy string
		want               string
	}{
		"together":               {30, "[left, right]", "left", ""},
		"together, too near":     {40, "[left, right]", "left", "(left, 30 A) and fuse F2 (right, 30 A), together rated only 1.50 times as high; the minimum is 1.60 times"},
		"a switch follows":       {30, "feed switch", "[left, right]", ""},
		"one through a switch":   {20, "[feed switch, right]", "left", "rated only 1.50 times as high"},
		"one alone":              {20, "right", "left", "(right, 30 A), rated only 1.50 times as high"},
		"one alone, far smaller": {15, "right", "left", ""},
	} {
		p := passOf(t, fuseGrading, fmt.Sprintf(feeds, c.rating, c.fedBy, c.switchFedBy))
		found := p.run()
		if (len(found) == 1) != (c.want != "") || len(found) > 1 {
			t.Errorf("%s: %d findings", name, len(found))
		} else if c.want != "" && !strings.Contains(found[0].What, c.want) {
			t.Errorf("%s: %s", name, found[0].What)
		}
	}
}
