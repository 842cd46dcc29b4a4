package rules

import (
	"testing"

	"fusewright/harness/formula/battery"
	"fusewright/harness/review/finding"
	"fusewright/harness/study/cranking"
)

// A starter takes as much as the battery's protection lets through, and more is a fault: advice where it is assumed. The design's own is on in a situation.
func TestStartOnBoard(t *testing.T) {
	const snippet = "battery: {chemistry: LiFePO4, capacity: 60 Ah, rate: 20 h, resistance: 5 mΩ, board: 100 A, at: battery tray}\n"
	for _, c := range []struct {
		start battery.Start
		want  finding.Severity
	}{
		{battery.Start{CurrentA: 99}, 0}, {battery.Start{CurrentA: 100}, 0}, {battery.Start{CurrentA: 101}, finding.Fault},
		{battery.Start{CurrentA: 101, Assumed: true}, finding.Advice}, {battery.Start{CurrentA: 101, Own: true}, 0},
	} {
		p := passOf(t, boardOverloaded, snippet)
		p.in.Cranking = &cranking.Study{Start: c.start, BoardA: p.d.Battery.BoardA(), Cases: make([]cranking.Case, 1)}
		says(t, "a start", p.run(), c.want)
	}
}
