package library

// Chemistry finds a battery chemistry by name or alias; nil when there is none.
func (l *Library) Chemistry(name string) *Chemistry {
	return find(l.Batteries, name, chemistryNames)
}

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

// House tells whether a battery of a capacity in Ah is a house pack, which has a board
// in series that switches it off.
func (c *Chemistry) House(capacityAh float64) bool { return c.HouseAh > 0 && capacityAh >= c.HouseAh }

// BoardA is what the board of a house pack of a capacity in Ah lets through for good; 0 = it has none.
func (c *Chemistry) BoardA(capacityAh float64) float64 {
	if !c.House(capacityAh) {
		return 0
	}
	return c.BoardShare * capacityAh
}

// Ohm is the internal resistance of a 12 V class battery of a capacity in Ah, full and
// at 25 °C: OhmAh / capacity, and the board of a house pack.
func (c *Chemistry) Ohm(capacityAh float64) float64 {
	ohm := c.OhmAh / capacityAh
	if c.House(capacityAh) {
		ohm += c.BoardOhm
	}
	return ohm
}

func (c *Chemistry) check(m *row) {
	if len(c.OpenCircuit) < 2 {
		m.missing("open circuit")
	}
	if c.HouseAh > 0 && c.BoardShare == 0 {
		m.missing("board A per Ah")
	}
	if len(c.OpenCircuit) > 0 && c.OpenCircuit[0].Volts < c.EmptyV {
		m.r.report(m.node, "\"open circuit\" begins below \"empty V\"", "a battery at rest has what an empty one has under load, or more", "")
	}
	if c.BoardHighV > 0 && c.BoardHighV <= c.MostChargeV {
		m.r.report(m.node, "\"board opens above V\" is not above \"most charge V\"", "", "")
	}
}
