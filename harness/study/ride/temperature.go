package ride

// fromC is how warm the battery is as a leg begins: as the leg before left it, else as the air.
func (s *simulation) fromC(airC float64) float64 {
	n := len(s.result.Legs)
	if n == 0 {
		return airC
	}
	return s.batteryC(s.result.Legs[n-1], 0)
}

// batteryC is how warm the battery is in a leg, so many seconds from the moment reached: it follows the air.
func (s *simulation) batteryC(l *Leg, aheadS float64) float64 {
	return s.bat.FollowedC(l.BatteryC, l.AmbientC, s.timeS+aheadS-l.FromS)
}
