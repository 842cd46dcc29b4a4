package library

import "fmt"

// Interrupting is what overcurrent devices must break behind a battery of up to a
// cold-cranking current: main devices, which feed others, and branch devices.
type Interrupting struct {
	CrankingA float64 `key:"cranking A" need:"" in:"1,1e5"`
	MainA     float64 `key:"main A" need:"" in:"1,1e5"`
	BranchA   float64 `key:"branch A" need:"" in:"1,1e5"`
	Source    Source
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

func interruptingNames(x *Interrupting) (string, []string) { return fmt.Sprint(x.CrankingA), nil }
