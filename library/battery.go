package library

// Chemistry finds a battery chemistry by name or alias; nil when there is none.
func (l *Library) Chemistry(name string) *Chemistry {
	return find(l.Batteries, name, chemistryNames)
}

// ChemistryNames lists the chemistries in file order.
func (l *Library) ChemistryNames() []string { return namesOf(l.Batteries, chemistryNames) }

func chemistryNames(c *Chemistry) (string, []string) { return c.Name, c.Aliases }

// OpenCircuitV is the resting voltage of a 12 V class battery at a state of
// charge 0..1, by straight lines between the rows of the table; charges
// outside 0..1 are taken as the end rows.
func (c *Chemistry) OpenCircuitV(charge float64) float64 {
	t := c.OpenCircuit
	if len(t) == 0 {
		return 0
	}
	if charge <= t[0].Charge {
		return t[0].Volts
	}
	for i := 1; i < len(t); i++ {
		if charge <= t[i].Charge {
			share := (charge - t[i-1].Charge) / (t[i].Charge - t[i-1].Charge)
			return t[i-1].Volts + share*(t[i].Volts-t[i-1].Volts)
		}
	}
	return t[len(t)-1].Volts
}

func readChemistry(m *row, s Source) {
	c := &Chemistry{
		Name:             m.needText("name"),
		Aliases:          m.texts("aliases"),
		Peukert:          m.needNumber("peukert", 1, 2),
		RatedH:           m.needNumber("rated h", 0.1, 200),
		OhmAh:            m.needNumber("ohm Ah", 0.001, 10),
		ChargeShare:      m.needNumber("charge share", 0.01, 10),
		ChargeEfficiency: m.needNumber("charge efficiency", 0.1, 1),
		StartReserve:     m.needNumber("start reserve", 0, 1),
		Source:           s,
	}
	m.r.sourced(m.node, s)
	m.each("open circuit", s, func(z *row, _ Source) {
		c.OpenCircuit = append(c.OpenCircuit, VoltsAt{
			Charge: z.needNumber("charge", 0, 1),
			Volts:  z.needNumber("volts", 1, 100),
		})
	})
	if len(c.OpenCircuit) < 2 {
		m.missing("open circuit")
	}
	m.r.ascending(m.node, "open circuit", len(c.OpenCircuit),
		func(i int) float64 { return c.OpenCircuit[i].Charge })
	m.r.lib.Batteries = add(m, "batteries", m.r.lib.Batteries, c, c.Name, c.Aliases)
}
