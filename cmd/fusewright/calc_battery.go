package main

import "fusewright/harness/formula/handbook"

// calcBatteryCmd answers calc battery.
type calcBatteryCmd struct {
	Capacity amount  `arg:"" of:"charge" help:"Capacity: '12 Ah'."`
	Current  amount  `arg:"" of:"current" help:"Current drawn: '1.2 A'."`
	Rate     amount  `of:"time" help:"Hour rate of the capacity." default:"10 h"`
	Peukert  float64 `help:"Peukert exponent; 1 leaves rate effects out." default:"1.0" placeholder:"N"`
	Keep     amount  `of:"share" help:"Share left in the battery for starting." default:"0 %"`
	format
}

const secondsPerHour = 3600

// Run works out how long the battery lasts.
func (c *calcBatteryCmd) Run(io *streams, _ *program) error {
	answer, err := handbook.Battery(handbook.BatteryInput{
		CapacityAh: c.Capacity.value, RateH: c.Rate.value / secondsPerHour, Peukert: c.Peukert,
		CurrentA: c.Current.value, KeepShare: c.Keep.value,
	})
	return printAnswer(io, c.format, answer, err)
}
