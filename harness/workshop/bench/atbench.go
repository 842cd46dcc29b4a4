package bench

import (
	"maps"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/design/wording"
	"fusewright/harness/network/solve"
)

// benched is a situation as a bench has it: no sun, no shore power, and further batteries as
// full as the sheet has them charged.
func benched(s *design.Situation) *design.Situation {
	if s.Sun == 0 && !s.Shore && s.Charge == nil {
		return s
	}
	b := *s
	b.Sun, b.SunShare, b.Shore, b.Charge = 0, 0, false, nil
	if b.As == nil {
		b.As = s
	}
	return &b
}

// usual is the state of the batteries for which the expected readings are.
func (m *maker) usual() solve.Options {
	if m.taking {
		return solve.Options{Discharged: takingUsual, BanksDischarged: takingUsual}
	}
	return solve.Options{Discharged: UsualDischarge, BanksDischarged: FurtherUsual}
}

// unlike says in what a pass differs from its situation: where the readings of its sources are,
// and with what charge it is read.
func (m *maker) unlike(s *design.Situation) (lines []string) {
	if s.As == nil {
		return nil
	}
	var off []string
	if s.As.Sun > 0 {
		off = append(off, "panels covered")
	}
	if s.As.Shore {
		off = append(off, "shore lead out")
	}
	if len(off) > 0 {
		lines = append(lines, "Read with the "+wording.And(off)+": what charges is read in use, at the end.")
	}
	var less []string
	for _, b := range slices.SortedFunc(maps.Keys(s.As.Charge), func(a, b *design.Bank) int { return a.Pos.Line - b.Pos.Line }) {
		less = append(less, b.Name+" "+quantity.Format(s.As.Charge[b], quantity.Share))
	}
	if len(less) > 0 {
		lines = append(lines, "The design has "+wording.And(less)+" here: it is read charged, as in all sections.")
	}
	return lines
}
