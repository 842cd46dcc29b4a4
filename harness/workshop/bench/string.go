package bench

import (
	"fmt"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/formula/battery"
	"fusewright/harness/network/circuit"
)

// How full batteries in series are before they are joined, and by how much their volts may differ
// at rest. Common practice, no source.
const (
	leastInString = 0.8
	stringDiffers = 0.1 // V
)

const basisString = "resting volts of the chemistry, four fifths full to full at 25 °C; no more apart than 100 mV: common practice, no source"

// strings reads the batteries of each string by itself, and how far they are apart.
func (m *maker) strings() []*Section {
	s := &Section{Kind: Strings, Title: "Before power: batteries in series", Setup: []string{
		"Before the links are fitted: every battery charged by itself and then rested for some hours. Read each at its own posts.",
		"Read the plates: all of one kind, capacity and age. That no meter tells, and the design cannot say otherwise.",
		"Then the links, the last one with the insulated spanner clear of the case: from − of each battery to + of the next. The covers go on at once: no fuse stands before a link."}}
	for _, p := range m.c.Parts {
		store := &m.d.Battery
		if bank, ok := p.Source.(*design.Bank); ok {
			store = &bank.Store
		} else if p.Kind != circuit.Battery {
			continue
		}
		bat := battery.New(store, m.d.NominalV())
		if store.InSeries == 0 || bat == nil {
			continue
		}
		volts := func(charge float64) float64 {
			return bat.OpenCircuitV(charge, battery.RatedC) / float64(store.InSeries)
		}
		low, high := widen(volts(leastInString), volts(1), VoltShare, VoltFixedV/2)
		for i := range store.InSeries {
			s.check(&Check{Ref: p.Ref, Name: fmt.Sprintf("%s, %d of %d", p.Name, i+1, store.InSeries), Where: "its own posts, no link",
				Nominal: (volts(leastInString) + volts(1)) / 2, Low: low, High: high})
		}
		s.check(&Check{Ref: p.Ref, Name: p.Name, Where: "highest less lowest of these", Nominal: 0, Low: nan(), High: stringDiffers})
	}
	if len(s.Groups) == 0 {
		return nil
	}
	return []*Section{s}
}

func (s *Section) check(c *Check) {
	c.Quantity, c.Basis = quantity.Voltage, basisString
	if len(s.Groups) == 0 {
		s.Groups = []*Group{{}}
	}
	s.Groups[0].Checks = append(s.Groups[0].Checks, c)
}
