package main

import (
	"fusewright/harness/formula/handbook"
	"fusewright/library"
)

// calcBatteryCmd answers calc battery.
type calcBatteryCmd struct {
	Capacity  amount  `arg:"" of:"charge" help:"Capacity: '12 Ah'."`
	Current   amount  `arg:"" of:"current" help:"Current drawn: '1.2 A'."`
	Chemistry string  `help:"Battery chemistry from the library; it sets those of the figures below that are not given." default:"AGM" placeholder:"NAME"`
	Rate      amount  `of:"time" help:"Hour rate of the capacity." placeholder:"TIME"`
	Peukert   float64 `help:"Peukert exponent; 1 leaves rate effects out." placeholder:"N"`
	Keep      amount  `of:"share" help:"Share left in the battery for starting." placeholder:"SHARE"`
	format
}

const secondsPerHour = 3600

// Run works out how long the battery lasts.
func (c *calcBatteryCmd) Run(io *streams, lib *library.Library) error {
	chem := lib.Chemistry(c.Chemistry)
	if chem == nil {
		return notFound("battery chemistry", c.Chemistry, lib.Names("batteries"))
	}
	in := handbook.BatteryInput{CapacityAh: c.Capacity.value, CurrentA: c.Current.value, Chemistry: chem.Name,
		RateH: chem.RatedH, Peukert: chem.Peukert, KeepShare: chem.StartReserve}
	if c.Rate.given {
		in.RateH = c.Rate.value / secondsPerHour
	}
	if c.Peukert != 0 {
		in.Peukert = c.Peukert
	}
	if c.Keep.given {
		in.KeepShare = c.Keep.value
	}
	answer, err := handbook.Battery(in)
	return printAnswer(io, c.format, answer, err)
}
