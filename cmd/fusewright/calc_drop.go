package main

import (
	"fusewright/harness/formula/handbook"
	"fusewright/library"
)

// calcDropCmd answers calc drop.
type calcDropCmd struct {
	Size    string            `arg:"" help:"Wire size or copper area: '16 AWG', '1.5 mm²'."`
	Current amount[inAmperes] `arg:"" help:"Current: '12 A'."`
	Length  amount[inMetres]  `arg:"" help:"Length: '3 m', '10 ft'."`
	System  amount[inVolts]   `help:"System voltage." default:"12 V"`
	OneWay  bool              `help:"The length is one way; the return is as long again."`
	At      amount[inCelsius] `help:"Temperature of the conductor." default:"20 °C"`
	wireChoice
	format
}

// Run works the drop out.
func (c *calcDropCmd) Run(io *streams, lib *library.Library) error {
	conductor, err := c.conductor(lib, c.Size)
	if err != nil {
		return err
	}
	answer, err := handbook.Drop(handbook.DropInput{
		Conductor: conductor, CurrentA: c.Current.value, SystemV: c.System.value, ConductorC: c.At.value,
		Path: handbook.Path{LengthM: c.Length.value, OneWay: c.OneWay},
	})
	return printAnswer(io, c.format, answer, err)
}
