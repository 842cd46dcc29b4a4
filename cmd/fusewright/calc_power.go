package main

import (
	"errors"

	"fusewright/harness/design/quantity"
	"fusewright/harness/formula/handbook"
)

// calcPowerCmd answers calc power.
type calcPowerCmd struct {
	Amount string `arg:"" help:"Watts or amperes: '276 W', '23 A'."`
	System amount `of:"voltage" help:"Voltage to convert at." default:"12 V"`
	format
}

// Run turns watts into amperes or back, by the unit given.
func (c *calcPowerCmd) Run(io *streams, _ *program) error {
	in := handbook.PowerInput{Volts: c.System.value}
	watts, errW := quantity.Parse(c.Amount, quantity.Power)
	amperes, errA := quantity.Parse(c.Amount, quantity.Current)
	switch {
	case errW == nil:
		in.PowerW = watts
	case errA == nil:
		in.CurrentA = amperes
	default:
		return errors.New("neither watts nor amperes: " + c.Amount + " (expected such as 276 W or 23 A)")
	}
	answer, err := handbook.Power(in)
	return printAnswer(io, c.format, answer, err)
}
