package library

import "fmt"

// Interrupting is what overcurrent devices must break behind a battery of up to a
// cold-cranking current: main devices, which feed others, and branch devices.
type Interrupting struct {
	CrankingA, MainA, BranchA float64
	Source                    Source
}

// InterruptingFor is the row of a cold-cranking current; nil beyond the table.
func (l *Library) InterruptingFor(crankingA float64) *Interrupting {
	for _, x := range l.Interrupting {
		if crankingA <= x.CrankingA {
			return x
		}
	}
	return nil
}

func readInterrupting(m *row, s Source) {
	x := &Interrupting{
		CrankingA: m.needNumber("cranking A", 1, 1e5),
		MainA:     m.needNumber("main A", 1, 1e5),
		BranchA:   m.needNumber("branch A", 1, 1e5),
		Source:    s,
	}
	m.r.sourced(m.node, s)
	m.r.lib.Interrupting = add(m, "interrupting capacities", m.r.lib.Interrupting, x, fmt.Sprint(x.CrankingA), nil)
}
