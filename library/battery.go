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
		CrankingRated:    m.yes("cranking rated"),
		OhmAh:            m.needNumber("ohm Ah", 0.001, 10),
		ChargeShare:      m.needNumber("charge share", 0.01, 10),
		ChargeEfficiency: m.needNumber("charge efficiency", 0.1, 1),
		StartReserve:     m.needNumber("start reserve", 0, 1),
		OpenCircuitVPerC: m.number("open circuit volts per C", -0.1, 0.1),
		EmptyOhmRatio:    m.numberOr("empty ohm ratio", 1, 20, 1),
		ColdOhmRatio:     m.numberOr("cold ohm ratio", 1, 20, 1),
		NoChargeBelowC:   m.numberOr("no charge below C", -273, 60, -273),
		MostChargeV:      m.number("most charge V", 1, 100),
		SelfDischarge:    m.number("self discharge", 0, 0.9),
		Source:           s,
	}
	m.r.sourced(m.node, s)
	m.readTables(c, s)
	m.r.lib.Batteries = add(m, "batteries", m.r.lib.Batteries, c, c.Name, c.Aliases)
}

// readTables reads what a chemistry has by state of charge and by temperature.
func (m *row) readTables(c *Chemistry, s Source) {
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
	m.each("capacity at", s, func(z *row, _ Source) {
		c.CapacityAt = append(c.CapacityAt, ShareAtC{
			Celsius: z.needNumber("celsius", -60, 80), Share: z.needNumber("share", 0.01, 2)})
	})
	m.r.ascending(m.node, "capacity at", len(c.CapacityAt),
		func(i int) float64 { return c.CapacityAt[i].Celsius })
	m.each("acceptance", s, func(z *row, _ Source) {
		c.Acceptance = append(c.Acceptance, AcceptedAt{
			Charge: z.needNumber("charge", 0, 1), Share: z.needNumber("share", 1e-4, 10)})
	})
	m.r.ascending(m.node, "acceptance", len(c.Acceptance),
		func(i int) float64 { return c.Acceptance[i].Charge })
}

// numberOr is a number that has a usual value.
func (m *row) numberOr(key string, lo, hi, usual float64) float64 {
	if !m.has(key) {
		m.mark(key)
		return usual
	}
	return m.number(key, lo, hi)
}
