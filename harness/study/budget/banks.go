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
	A      float64 // out of it, over day and night, of what goes in only what it stores; negative = it is charged
	PeakA  float64 // the same with all that is on drawing at once
	Charge float64 // how full it is, 0..1
	// Hours are those from there down to its reserve, Peukert's law and self-discharge counted; +Inf when it
	// gives nothing.
	Hours float64
	Opens bool // its protection lets less through: it switches it off, and Hours is 0
}

// Reserve is the state of charge down to which a further battery is used: below it a
// discharge shortens its life.
func Reserve(b *design.Bank) float64 { return b.Store.Chemistry.DeepBelow }

// banksOf are the further batteries in an averaged solution, in that of its day (nil = it is all the same), and in
// that of all that is on at once.
func banksOf(mean, day, peak *solve.Solution) (list []BankLine) {
	for _, p := range mean.Circuit.Parts {
		bank, ok := p.Source.(*design.Bank)
		if !ok {
			continue
		}
		line := BankLine{Bank: bank, A: mean.Given(p.Branches[0]), PeakA: peak.Given(p.Branches[0]), Charge: mean.Situation.ChargeOf(bank), Hours: math.Inf(1)}
		line.Opens = opens(&bank.Store, max(line.A, line.PeakA))
		store := battery.New(&bank.Store, mean.Circuit.Design.NominalV())
		if lit := mean.Situation.Sunlit(); day != nil && store != nil {
			line.A = (1-lit)*store.WorthA(line.A) + lit*store.WorthA(day.Given(p.Branches[0]))
		}
		switch {
		case line.Opens:
			line.Hours = 0
		case line.A > 0:
			line.Hours = store.DaysBetween(line.Charge, Reserve(bank), line.A, careC) * 24
		}
		list = append(list, line)
	}
	return list
}

// opens tells of a protection that lets less through than is drawn.
func opens(b *design.Battery, amps float64) bool { return b.BoardA() > 0 && amps > b.BoardA() }

// inTheSun has further batteries take charge as on their way down, half way to their reserve: a full one would take none
// of what it takes every day after the first night.
func inTheSun(s *solve.Solution, opt solve.Options) solve.Options {
	was := opt.BankCharge
	opt.BankCharge = map[*design.Bank]float64{}
	for _, b := range s.Circuit.Design.Batteries {
		charge, ok := was[b]
		if !ok {
			charge = s.Situation.ChargeOf(b)
		}
		opt.BankCharge[b] = (charge + min(charge, Reserve(b))) / 2
	}
	return opt
}
