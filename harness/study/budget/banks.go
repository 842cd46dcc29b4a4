package budget

import (
	"math"

	"fusewright/harness/design"
	"fusewright/harness/formula/battery"
	"fusewright/harness/network/solve"
)

// BankLine is what a further battery gives in a situation, on average.
type BankLine struct {
	Bank   *design.Bank
	A      float64 // out of it, full; negative = it is charged
	PeakA  float64 // the same with all that is on drawing at once
	Charge float64 // how full it is, 0..1
	// Hours are those from there down to its reserve, Peukert's law and self-discharge counted; +Inf when it
	// gives nothing.
	Hours float64
}

// Reserve is the state of charge down to which a further battery is used: below it a
// discharge shortens its life.
func Reserve(b *design.Bank) float64 { return b.Store.Chemistry.DeepBelow }

// banksOf are the further batteries in an averaged solution, and in that of all that is on at once.
func banksOf(mean, peak *solve.Solution) (list []BankLine) {
	for _, p := range mean.Circuit.Parts {
		bank, ok := p.Source.(*design.Bank)
		if !ok {
			continue
		}
		line := BankLine{Bank: bank, A: mean.Given(p.Branches[0]), PeakA: peak.Given(p.Branches[0]), Charge: mean.Situation.ChargeOf(bank), Hours: math.Inf(1)}
		if line.A > 0 {
			line.Hours = battery.New(&bank.Store, mean.Circuit.Design.NominalV()).DaysBetween(line.Charge, Reserve(bank), line.A, careC) * 24
		}
		list = append(list, line)
	}
	return list
}
