package ride

// refuses tells of a battery that would be charged and is too cold for it.
func (b *store) refuses(charge, volts, celsius float64) bool {
	return b.MostChargeA(celsius) == 0 && volts > b.OpenCircuitV(min(max(charge, 0), 1), celsius)+offeredV
}

// countCold adds a step to the times for which batteries take no charge for the cold.
func (s *simulation) countCold(l *Leg, a, b Point, celsius, stepS float64) {
	if s.first.refuses(a.Charge, a.BusV, celsius) && s.first.refuses(b.Charge, b.BusV, celsius) {
		l.ColdS += stepS
	}
	for i, x := range s.banks {
		if x.refuses(a.Banks[i].Charge, a.Banks[i].V, celsius) && x.refuses(b.Banks[i].Charge, b.Banks[i].V, celsius) {
			l.Banks[i].ColdS += stepS
		}
	}
}
