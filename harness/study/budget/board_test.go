package budget_test

import (
	"math"
	"strings"
	"testing"
)

// A board of 50 A promises nothing of 60 A, one of 70 A does: 672 W at 12.8 V and 0.8 of the draw on average.
func TestBoardOpensOnWhatIsDrawn(t *testing.T) {
	for board, opens := range map[string]bool{"50 A": true, "70 A": false} {
		text := strings.NewReplacer("chemistry: AGM, capacity: 12 Ah", "chemistry: LiFePO4, board: "+board+", capacity: 50 Ah", "blade C, rating: 10 A", "blade C, rating: 30 A",
			"power: 56 W, rated at: 14 V, behaves: resistor, duty: 50 %", "power: 800 W, rated at: 13.3 V, behaves: resistor, duty: 50 %").Replace(example) + "  camp: {key: off, on: [vest]}\n"
		l := budgetOf(t, text).KeyOff[0]
		if l.Opens != opens || math.IsInf(l.BatteryHours, 1) || !(l.PeakA > 50 && l.PeakA < 70) {
			t.Errorf("%s: %t, %g A at peak, %g A", board, l.Opens, l.PeakA, l.BatteryA)
		}
	}
}
